/** Whether the selected cell stands on the machine-side page, and by what step it is changed there. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { setMachinePlace } from '../../document/index.ts';
import type { Cell, MachinePlace } from '../../document/index.ts';
import { addressText } from '../../expression/index.ts';
import { readQuantity } from '../../quantity/index.ts';
import { selectedBlock } from '../editing.ts';
import { momentText } from '../machine-change.ts';
import { storedText, markedDigits } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';

export class MachineMark extends LitElement {
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 2px 8px;
      }
      select {
        min-block-size: var(--least, 26px);
        padding: 0 4px;
        font-size: 14px;
      }
      button.link {
        min-block-size: 24px;
        font-size: 14px;
      }
      p {
        flex-basis: 100%;
        margin: 2px 0;
        font-size: 14px;
      }
    `,
  ];

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    const { cell } = session ?? {};
    if (!session || !cell || session.draft) return nothing;
    const place = cell.machine?.place;
    const formula = cell.content.startsWith('=');
    return html`<select
        aria-label="at the machine"
        ?disabled=${session.readOnly}
        @change=${(event: Event) => this.#set(session, event)}
      >
        <option value="" .selected=${place === undefined}>not there</option>
        ${
          formula
            ? nothing
            : html`<option value="changed" .selected=${place === 'changed'}>changed at the machine</option>`
        }
        <option value="shown" .selected=${place === 'shown'}>shown at the machine</option>
      </select>
      ${
        cell.machine?.place === 'changed'
          ? html`<button
              class="link"
              ?disabled=${session.readOnly}
              @click=${() => this.#askStep(session, cell.machine)}
            >
              ${cell.machine.step ? `step ${markedDigits(cell.machine.step)}` : 'step…'}
            </button>`
          : nothing
      }
      ${this.#setThere(session, cell)}`;
  }

  #setThere(session: Session, { changed }: Cell): TemplateResult | typeof nothing {
    if (!changed) return nothing;
    const { by, at, from, reason } = changed;
    const why = reason === undefined ? '' : `; limit passed: ${reason}`;
    return html`<p>
      ✎ set at the machine by ${by}, ${momentText(at, session.world.clock.now())}; before: ${from}${why}
    </p>`;
  }

  #set(session: Session, { target }: Event): void {
    const place = target instanceof HTMLSelectElement ? target.value : '';
    mark(session, place === 'changed' || place === 'shown' ? { place } : undefined);
  }

  #askStep(session: Session, machine: MachinePlace | undefined): void {
    const { row, column } = session.address;
    this.dispatchEvent(
      new CustomEvent('ask-text', {
        bubbles: true,
        composed: true,
        detail: {
          title: `Step of ${addressText(column, row)} at the machine`,
          words:
            'A number in the cell\u2019s unit, or a quantity (0.1 mm). Empty: a step that suits the value.',
          value: machine?.place === 'changed' ? markedDigits(machine.step ?? '') : '',
          done: (typed: string) => setStep(session, storedText(typed, session.notebook.currency)),
        },
      }),
    );
  }
}

const mark = (session: Session, machine: MachinePlace | undefined): boolean =>
  session.run(
    setMachinePlace(session.notebook, {
      worksheet: session.worksheet.id,
      block: selectedBlock(session),
      ...(machine && { machine }),
    }),
  );

function setStep(session: Session, step: string): void {
  if (step === '') return void mark(session, { place: 'changed' });
  const read = readQuantity(step, { currency: session.notebook.currency });
  if (!read || !('percent' in read) || !(Number(read.digits) > 0))
    return session.say(`A step is a number above 0 with or without a unit, not "${step}".`, true);
  mark(session, { place: 'changed', step });
}

customElements.define('machine-mark', MachineMark);
