/** What the machine-side page says besides its values: the band of cautions, and how cells come onto the page. */

import { html, nothing, type TemplateResult } from 'lit';
import { hasMachineCells, machineCautions, machineCells } from '../machine-cells.ts';
import type { MachineCell, MachineCells } from '../machine-cells.ts';
import { inWords, markedDigits } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { cautionsAtMachine } from '../machine-cautions.ts';
import type { ShownNumber } from '../stepping.ts';
import { unitText } from '../value-text.ts';

interface OpenLines {
  readonly look: 'bad' | '' | 'calm';
  readonly elsewhere: number;
  readonly lines: readonly TemplateResult[];
}

/** Errors, limits passed and open cautions of the cells shown, a line each. */
function openLines(session: Session, cells: MachineCells): OpenLines {
  const { here, elsewhere } = machineCautions(session, session.worksheet, cells);
  const labels = new Map(
    [...cells.changed, ...cells.shown].map((one) => [`${one.row} ${one.column}`, one.label]),
  );
  return {
    look: here.some(({ type }) => type !== 'caution') ? 'bad' : here.length > 0 ? '' : 'calm',
    elsewhere,
    lines: here.map(
      ({ type, text, address: { row, column } }) =>
        html`<li class=${type === 'caution' ? '' : 'error-line'}>
          ▲ ${labels.get(`${row} ${column}`)}: ${inWords(text)}
        </li>`,
    ),
  };
}

const usual = (session: Session): TemplateResult => {
  const { added, always } = cautionsAtMachine(session);
  return html`<p class="usual">
    ${added.map((words) => html`<b>▲ ${words}</b> `)}<span class="always">${always.join(' ')}</span>
  </p>`;
};

/** The cautions over a form that covers the band: what is open here, and the usual ones. */
export function cautionsInShort(session: Session): TemplateResult {
  const { look, lines } = openLines(session, machineCells(session, session.worksheet));
  return html`<section class="cautions ${look}" aria-label="cautions">
    ${
      lines.length === 0
        ? nothing
        : html`<ul tabindex="0" aria-label="open cautions">
            ${lines}
          </ul>`
    }
    ${usual(session)}
  </section>`;
}

/** Errors, limits passed and open cautions of the cells shown, then the usual cautions that apply. */
export function cautionBand(
  session: Session,
  cells: MachineCells,
  all: boolean,
  toggle: () => void,
): TemplateResult {
  const { look, elsewhere, lines } = openLines(session, cells);
  const count = lines.length + (elsewhere > 0 ? 1 : 0);
  return html`<section class="cautions ${look} ${all ? 'all' : ''}" aria-label="cautions">
    <ul tabindex="0" aria-label="open cautions">
      ${lines}
      ${
        lines.length === 0
          ? html`<li class="calm-line">No error, no limit passed, no caution here.</li>`
          : nothing
      }
      ${
        elsewhere > 0
          ? html`<li>
              ${elsewhere} more ${elsewhere === 1 ? 'caution' : 'cautions'} elsewhere: see the desk.
            </li>`
          : nothing
      }
    </ul>
    ${
      count > 2 || all
        ? html`<button aria-expanded=${all ? 'true' : 'false'} @click=${toggle}>
            ${all ? 'Fewer' : `All ${count}`}
          </button>`
        : nothing
    }
    ${usual(session)}
  </section>`;
}

/** Where no cell is marked: how to mark one, and the worksheets that have some. */
export function nothingMarked(session: Session, open: (worksheet: string) => void): TemplateResult {
  return html`<main>
    <div class="nothing">
      <p>Nothing on this worksheet is marked for the machine yet.</p>
      <p>
        At the desk, select a given value and choose <b>changed at the machine</b> in the margin, under
        <b>Working, About this cell</b>; for a result choose <b>shown at the machine</b>.
      </p>
      ${session.notebook.worksheets
        .filter(hasMachineCells)
        .map(({ id, title }) => html`<button @click=${() => open(id)}>Open ${title}</button>`)}
    </div>
  </main>`;
}

export function savedWords({ saved }: Session): string {
  if (saved.type === 'saving') return 'saving…';
  if (saved.type === 'failed') return 'NOT saved';
  const at = new Date(saved.at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit', hour12: false });
  return `saved ${at} on this device`;
}

/** What a step says: "vc 265 m/min", and the limit at which it ends. */
export function stepWords(
  { cell, label }: MachineCell,
  digits: string,
  { unit }: ShownNumber,
  stoppedAt: 'low' | 'high' | undefined,
): string {
  const words =
    stoppedAt &&
    (cell.limits?.[`${stoppedAt}Text`] ?? `the ${stoppedAt === 'high' ? 'highest' : 'lowest'} value`);
  const said = `${label} ${markedDigits(digits)} ${unitText(unit.symbol === '1' ? '' : unit.symbol)}`;
  return words ? `${said}, ${words}` : said;
}
