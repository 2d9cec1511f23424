/** Workings of the results marked to be shown: equation, values put in, result, steps, source; as the margin shows them. */

import { html, nothing, type TemplateResult } from 'lit';
import type { CellAddress, Explanation } from '../../calculation/index.ts';
import { forEachCell, labelOf } from '../../document/index.ts';
import type { Cell, Worksheet } from '../../document/index.ts';
import { addressWords } from '../cell-links.ts';
import { equation } from '../elements/equation.ts';
import { editedText, inWords } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { resultText } from '../value-text.ts';
import { workingOf } from '../working.ts';

export interface MarkedResult {
  readonly address: CellAddress;
  readonly worksheet: Worksheet;
  readonly cell: Cell;
}

/** More than these would make a book. */
const MOST = 200;

/** Formula cells marked to be shown at the machine, in the order of the notebook. */
export function markedResults({ notebook }: Session): readonly MarkedResult[] {
  const marked: MarkedResult[] = [];
  for (const worksheet of notebook.worksheets)
    forEachCell(worksheet, (cell, row, column) => {
      if (cell.machine?.place === 'shown' && cell.content.startsWith('=') && marked.length < MOST)
        marked.push({ address: { worksheet: worksheet.id, row, column }, worksheet, cell });
    });
  return marked;
}

/** Letters of an equation beyond which it is set smaller, and beyond which its values are listed instead: no sheet is wide enough. */
const LONG = 80;
const LONGEST = 130;
const lettersOf = (markup: string): number => markup.replaceAll(/<[^>]*>/g, '').length;

/** What the formula refers to, each with its value. */
function withValues(session: Session, explanation: Explanation | undefined): TemplateResult | typeof nothing {
  const operands = explanation?.operands ?? [];
  if (operands.length === 0) return nothing;
  return html`<p class="small">
    With
    ${operands.map((each, k) => html`${k > 0 ? '; ' : ''}<span class="term">${each.text} = ${resultText(each, session.notebook)}</span>`)}.
  </p>`;
}

export const explanationKey = ({ worksheet, row, column }: CellAddress): string =>
  `${worksheet} ${row} ${column}`;

export function resultWorkings(
  session: Session,
  explanations: ReadonlyMap<string, Explanation>,
): TemplateResult | typeof nothing {
  const marked = markedResults(session);
  if (marked.length === 0) return nothing;
  return html`<h2>Workings of the marked results</h2>
    ${marked.map((one) => working(session, one, explanations.get(explanationKey(one.address))))}`;
}

function working(
  session: Session,
  { address, worksheet, cell }: MarkedResult,
  explanation: Explanation | undefined,
): TemplateResult {
  const { notebook } = session;
  const { row, column } = address;
  const found = workingOf(session, { cell, explanation });
  const result = session.results.at(worksheet.id, row, column);
  const math = (text: string | undefined): unknown =>
    text === undefined
      ? nothing
      : (equation(text, (markup) => session.world.trustedMarkup(markup)) ?? nothing);
  const steps = (explanation?.calls ?? []).flatMap((call) => call.steps);
  const length = Math.max(...[found?.equation, found?.substituted].map((text) => lettersOf(text ?? '')));
  const values = length > LONGEST || typeof result?.value === 'string';
  return html`<div class="working">
    <h3>${worksheet.title}, ${addressWords(session, address, true)}: ${labelOf(worksheet, row, column)}</h3>
    <p class="formula">${editedText(cell.content, notebook.currency)}</p>
    ${
      values
        ? withValues(session, explanation)
        : html`<div class=${length > LONG ? 'long' : ''}>
              ${math(found?.equation)} ${math(found?.substituted)}
            </div>
            ${found?.substituted ? nothing : withValues(session, explanation)}`
    }
    <p class="result">${result ? `= ${resultText(result, notebook, cell.format)}` : 'not worked out yet'}</p>
    ${
      steps.length === 0
        ? nothing
        : html`<p class="small">
            With
            ${steps.map((step, k) => html`${k > 0 ? '; ' : ''}<i>${step.symbol}</i>${step.meaning ? ` (${step.meaning})` : ''} = ${resultText(step, notebook)}`)}.
          </p>`
    }
    ${(result?.cautions ?? []).map((each) => html`<p class="small">${each.type === 'assumed' ? '' : '▲ '}${inWords(each.text)}</p>`)}
    ${(found?.definitions ?? []).map(
      ({ name, sources }) =>
        html`<p class="small">
          ${name}: ${sources.map((key) => session.catalogue?.sources.get(key) ?? key).join('; ')}
        </p>`,
    )}
  </div>`;
}
