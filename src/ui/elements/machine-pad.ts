/** The keypad with what is being typed above it: the text, its unit, and the limit it would pass. */

import { html, nothing, type TemplateResult } from 'lit';
import { readQuantity } from '../../quantity/index.ts';
import type { EditedText } from '../keypad-press.ts';
import { groupedDigits, kindOf } from '../machine-cells.ts';
import type { MachineCell } from '../machine-cells.ts';
import { readEntry } from '../machine-entry.ts';
import { decimalMark } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { shownNumber } from '../stepping.ts';
import { unitText } from '../value-text.ts';
import './keypad.ts';

/** The field being typed into. */
export interface OpenField {
  readonly address: string;
  readonly edited: EditedText;
  /** Why what was typed could not be taken. */
  readonly refusal?: string;
}

export function machinePad(
  { notebook }: Session,
  one: MachineCell,
  open: OpenField | undefined,
  last: boolean,
): TemplateResult {
  const { currency } = notebook;
  const kind = kindOf(one, notebook);
  const text = open?.edited.text ?? '';
  const read = readQuantity(text, { decimalMark: decimalMark(), currency });
  const typed = read && 'unit' in read ? read.unit?.symbol : undefined;
  const own = shownNumber(one.cell, currency)?.unit.symbol ?? '';
  const entry = readEntry(one.cell, text, kind, notebook);
  const words = open?.refusal ?? (entry.type === 'taken' ? entry.breach : undefined);
  return html`<on-screen-keypad
    .kind=${kind.name}
    .currency=${currency}
    .unit=${typed ?? own}
    .decimalMark=${decimalMark()}
    .for=${one.label}
    .last=${last}
  >
    <div class="typing">
      <span class="what">${one.label}</span>
      <output>${groupedDigits(text) || ' '}</output>
      <span class="note">${typed === undefined ? unitText(own === '1' ? '' : own) : ''}</span>
      ${words ? html`<span class="passed" role="alert">▲ ${words}</span>` : nothing}
    </div>
  </on-screen-keypad>`;
}
