/** What a user typed under a locale, as canonical text (F1, F1a, F2): the edge where the locale ends. */

import { tokenize } from '../expression/index.ts';
import { isUnknownUnit, ONE_UNIT, parseUnit, readQuantity } from '../quantity/index.ts';
import { readContent } from './content.ts';
import { LIMITS } from './notebook.ts';
import type { Cell } from './notebook.ts';
import type { Refusal } from './refusal.ts';

export interface TypingLocale {
  /** What the user writes before the decimals; the point where left out. */
  readonly decimalMark?: '.' | ',';
  /** What parts arguments: ; always, and , as well where the decimal mark is a point (F9). */
  readonly separator?: ';' | 'both';
  /** The notebook's currency code. */
  readonly currency?: string;
}

export interface Canonical {
  readonly content: string;
  /** The cell's own display unit is to go: "1.8 1" was typed (F1a). */
  readonly dropsUnit?: true;
}

const SPACES = /[\u00a0\u2007\u2009\u202f\u2002-\u2006\u200a]/g;

/** Minus signs and spaces that only look different, made plain (F2). */
const normalised = (typed: string): string => typed.replaceAll(SPACES, ' ').replaceAll('\u2212', '-');

function canonicalFormula(typed: string, locale: TypingLocale): Canonical | Refusal {
  const { decimalMark = '.', currency } = locale;
  const separator = locale.separator ?? (decimalMark === '.' ? 'both' : ';');
  let content = '';
  let done = 0;
  for (const token of tokenize(typed, {
    decimalMark,
    separator,
    ...(currency !== undefined && { currency }),
  })) {
    const written = typed.slice(token.from, token.to);
    content += typed.slice(done, token.from).replaceAll(SPACES, ' ');
    done = token.to;
    if (token.type === 'number') {
      if (token.wrong !== undefined && decimalMark === ',' && written.includes('.')) {
        const around = (reading: string): string => content + reading + typed.slice(token.to);
        return {
          message: `${written} can be read in two ways: ${token.wrong}.`,
          readings: [around(written), around(written.replace('.', ''))],
        };
      }
      content += written.replaceAll(SPACES, ' ').replace(',', '.');
    } else if (token.type === 'separator') content += token.wrong === undefined ? ';' : written;
    else if (/^(?:cell|function|logical|operator)$/.test(token.type)) {
      content += token.wrong === undefined ? token.value : written;
    } else content += written;
  }
  content += typed.slice(done);
  return { content: content.trimEnd() };
}

/** The unit in which a cell shows its number: its own choice, else as typed; undefined for a plain number or a text. */
export function shownUnit(cell: Cell | undefined, currency?: string): string | undefined {
  if (!cell) return undefined;
  if (cell.unit !== undefined) return cell.unit;
  const content = readContent(cell.content, currency);
  return content.type === 'quantity' ? content.unitText : undefined;
}

/** A plain number with the unit of the cell it is put into (F1a); `%` stands behind a space as well. */
function withUnit(number: string, cell: Cell | undefined, currency: string | undefined): string {
  const unit = shownUnit(cell, currency);
  return unit === undefined || unit === '1' || unit === '' ? number : `${number} ${unit}`;
}

/**
 * The text to be stored for what was typed into a cell. A plain number takes the unit that the cell shows.
 * Refused: a number with two readings, a text over the limit.
 */
export function canonicalContent(typed: string, locale: TypingLocale = {}, cell?: Cell): Canonical | Refusal {
  if (typed.length > LIMITS.contentLength) {
    return {
      message: `The entry has ${typed.length} characters; ${LIMITS.contentLength} is the most.`,
    };
  }
  const trimmed = normalised(typed).trim();
  if (trimmed === '') return { content: '' };
  if (typed.startsWith("'")) return { content: typed };
  if (trimmed.startsWith('=')) return canonicalFormula(typed.trim(), locale);
  const { decimalMark = '.', currency } = locale;
  const read = readQuantity(trimmed, { decimalMark, ...(currency !== undefined && { currency }) });
  if (!read)
    return {
      content: /^(?:true|false)$/i.test(trimmed) ? trimmed.toUpperCase() : textContent(typed, currency),
    };
  if ('refused' in read) {
    const [first = '', second = ''] = read.readings.map((reading) => reading.replace('.', decimalMark));
    return {
      message: `${read.refused} can be read in two ways: ${first} or ${second}. Write the one that is meant.`,
      readings: read.readings.map((reading) => withUnitIfPlain(reading, cell, currency)),
    };
  }
  const content = trimmed.replace(/^([+-]?[\d ]*),/, '$1.');
  if ('unknown' in read) return { content };
  if (read.unit === ONE_UNIT) return { content: content.replace(/\s+1$/, ''), dropsUnit: true };
  return { content: read.unit ? content : withUnit(content, cell, currency) };
}

const withUnitIfPlain = (reading: string, cell: Cell | undefined, currency: string | undefined): string =>
  /\s/.test(reading) ? reading : withUnit(reading, cell, currency);

/** Text as typed; with an apostrophe where it would read as something else in canonical form. */
function textContent(typed: string, currency: string | undefined): string {
  const plain = typed.trimEnd();
  const reading = readContent(plain, currency).type;
  return reading === 'text' || reading === 'date' ? plain : `'${plain}`;
}

/** True where both units measure the same dimension. */
export function isSameDimension(a: string, b: string, currency?: string): boolean {
  const [first, second] = [parseUnit(a, currency), parseUnit(b, currency)];
  return !isUnknownUnit(first) && !isUnknownUnit(second) && first.kind.dimension === second.kind.dimension;
}
