/** The decimal mark of the person at this device: everything shown and typed goes through here, stored text never changes (F1, F2, F9). */

import { canonicalContent, isRefusal, readContent } from '../document/index.ts';
import { tokenize } from '../expression/index.ts';
import type { DecimalMark } from '../quantity/index.ts';

const KEPT = 'decimal-mark';
let mark: DecimalMark | undefined;

function keptMark(): DecimalMark | undefined {
  try {
    const kept = localStorage.getItem(KEPT);
    return kept === '.' || kept === ',' ? kept : undefined;
  } catch {
    return undefined;
  }
}

/** As the browser's language writes 1.5; the point where it uses neither point nor comma. */
function browserMark(): DecimalMark {
  const { navigator: browser } = globalThis as { readonly navigator?: Navigator };
  const parts = new Intl.NumberFormat(browser?.language).formatToParts(1.5);
  return parts.find(({ type }) => type === 'decimal')?.value === ',' ? ',' : '.';
}

export const decimalMark = (): DecimalMark => (mark ??= keptMark() ?? browserMark());

/** Sets the mark and keeps it on this device. */
export function setDecimalMark(wanted: DecimalMark): void {
  mark = wanted;
  try {
    localStorage.setItem(KEPT, wanted);
  } catch {
    // A window without storage keeps the mark until it is closed.
  }
}

/** How typed text is to be read: for `enter`, `parse`, `tokenize` and `readQuantity`. */
export const typing = (): { readonly decimalMark: DecimalMark; readonly separator: ';' | 'both' } =>
  decimalMark() === ',' ? { decimalMark: ',', separator: ';' } : { decimalMark: '.', separator: 'both' };

const FIRST_POINT = /^([+-]?[\d ]*)\.(?=\d)/;

/** Canonical digits as written here. */
export const markedDigits = (digits: string): string =>
  decimalMark() === ',' ? digits.replace(FIRST_POINT, '$1,') : digits;

/** A cell's stored text as it is shown for editing and copied; typed again it gives the stored text back. */
export function editedText(content: string, currency: string): string {
  if (decimalMark() === '.' || !content.includes('.')) return content;
  if (!content.startsWith('=')) {
    const { type } = readContent(content, currency);
    return ['quantity', 'number', 'unknownUnit'].includes(type) ? markedDigits(content) : content;
  }
  let text = '';
  let at = 0;
  for (const { type, from, to } of tokenize(content, { currency })) {
    if (type !== 'number') continue;
    text += content.slice(at, from) + content.slice(from, to).replace('.', ',');
    at = to;
  }
  return text + content.slice(at);
}

/** What was typed, as stored text; undefined where it has two readings. */
export function canonicalText(typed: string, currency: string): string | undefined {
  const read = canonicalContent(typed, { ...typing(), currency });
  return isRefusal(read) ? undefined : read.content;
}

/** What was typed into a field for a quantity, as stored text; what has two readings stays a text, which no such field takes: nothing is guessed. */
export const storedText = (typed: string, currency: string): string =>
  canonicalText(typed, currency) ?? `'${typed}`;

/** A decimal by itself: not in a name (kc1.1), a designation (M8x1.25), a run of numbers (1.2.3) or quotation marks. */
const DECIMAL = /(?<![\p{L}\p{N}_.,"'])(\d+)\.(\d+)(?![\p{N}"']|\.\d)/gu;

/** Words of the calculator with their numbers as written here. */
export const inWords = (message: string): string =>
  decimalMark() === ',' ? message.replaceAll(DECIMAL, '$1,$2') : message;
