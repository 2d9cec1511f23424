/** What is typed into a field of the machine-side page: taken, or refused with words before it reaches the cell. */

import { canonicalContent, contentOf, isRefusal, readContent } from '../document/index.ts';
import type { Cell, Limits, Notebook } from '../document/index.ts';
import { ONE_UNIT, describeDimension, exactIn, exactSI } from '../quantity/index.ts';
import type { Kind, Unit } from '../quantity/index.ts';
import { isNumberField, kindOf } from './machine-cells.ts';
import type { MachineCell } from './machine-cells.ts';
import { editedText, markedDigits, typing } from './number-locale.ts';
import { compared, limitIn, shownNumber } from './stepping.ts';

export type Entry =
  | { readonly type: 'same' }
  | { readonly type: 'refused'; readonly words: string }
  /** `breach`: the limit it passes, in words. */
  | { readonly type: 'taken'; readonly content: string; readonly breach?: string };

/** "above 5 mm (more than this is roughing)"; undefined within the limits. */
function passedLimit(
  digits: string,
  own: Unit,
  shown: Unit,
  limits: Limits | undefined,
  currency: string,
): string | undefined {
  for (const [side, word, sign] of [
    ['low', 'below', -1],
    ['high', 'above', 1],
  ] as const) {
    const text = limits?.[side];
    const limit = limitIn(text, shown, currency);
    if (!limit || compared(exactIn(exactSI(digits, own), shown), limit) * sign <= 0) continue;
    const words = limits?.[`${side}Text`];
    return `${word} ${markedDigits(text ?? '')}${words ? ` (${words})` : ''}`;
  }
  return undefined;
}

/** Reads a text for a cell that takes this kind of number (undefined: any text). Nothing typed leaves the value as it is. */
export function readEntry(
  cell: Cell,
  typed: string,
  kind: Kind | undefined,
  { currency }: Pick<Notebook, 'currency'>,
): Entry {
  if (typed.trim() === '') return { type: 'same' };
  if (typed.trim().startsWith('=')) return { type: 'refused', words: 'Formulas are written at the desk.' };
  const canonical = canonicalContent(typed, { ...typing(), currency }, cell);
  if (isRefusal(canonical)) return { type: 'refused', words: canonical.message };
  const { content } = canonical;
  if (content === cell.content) return { type: 'same' };
  if (!kind) return { type: 'taken', content };
  const read = readContent(content, currency);
  if (read.type === 'unknownUnit') {
    const near = read.near.length > 0 ? `; near it: ${read.near.join(', ')}` : '';
    return { type: 'refused', words: `The unit ${read.unknown} is not known${near}.` };
  }
  if (read.type !== 'quantity' && read.type !== 'number')
    return { type: 'refused', words: `${typed.trim()} is not a number that can be read.` };
  if (read.kind.dimension !== kind.dimension)
    return {
      type: 'refused',
      words: `Here stands ${describeDimension(kind.dimension)}, not ${describeDimension(read.kind.dimension)}.`,
    };
  const was = contentOf(cell, currency);
  const shown = was.type === 'quantity' ? was.unit : ONE_UNIT;
  const own = read.type === 'quantity' ? read.unit : ONE_UNIT;
  const breach = passedLimit(read.digits, own, shown, cell.limits, currency);
  return { type: 'taken', content, ...(breach !== undefined && { breach }) };
}

/** The same for a cell of the page, which knows what kind of number it takes. */
export const entryAt = (one: MachineCell, typed: string, notebook: Notebook): Entry =>
  readEntry(one.cell, typed, isNumberField(one, notebook) ? kindOf(one, notebook) : undefined, notebook);

/** What stands in the field of a cell when it is taken in hand: the number as it is shown, without its unit, or the text. */
export const textInField = (cell: Cell, { currency }: Pick<Notebook, 'currency'>): string =>
  markedDigits(shownNumber(cell, currency)?.text ?? editedText(cell.content, currency).replace(/^'/, ''));
