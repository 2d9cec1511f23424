/** Reading numbers as typed: one decimal mark, groups of three, and a refusal where a text has two readings (F2). */

/** Canonical text: decimal point, no grouping, "-" or nothing in front, E for the exponent; digits and trailing zeros as typed. */
export interface ReadNumber {
  readonly digits: string;
}

/** A number with two readings under this decimal mark: nothing is guessed. */
export interface RefusedNumber {
  readonly refused: string;
  /** What it may mean, canonical: "1.234", "1234". */
  readonly readings: readonly string[];
}

export type DecimalMark = '.' | ',';

/** One sign for every minus, one blank for every no-break and thin space. */
export function plainText(text: string): string {
  return text
    .replace(/[−‒–]/g, '-')
    .replace(/[\u00a0\u2007\u2009\u202f\u2002-\u2006\u200a]/g, ' ')
    .trim();
}

/** A number at the start of a text: whole part in groups of three or without, one separator, exponent. */
export const NUMBER_START =
  /^([+-]?)(?:(\d{1,3}(?: \d{3})+(?!\d)|\d+)(?:([.,])(\d*))?|([.,])(\d+))(?:[eE]([+-]?\d{1,4}))?/;

/** What NUMBER_START has matched, read under a decimal mark. */
export function numberFrom(match: RegExpExecArray, decimalMark: string): ReadNumber | RefusedNumber {
  const [, sign = '', grouped = '', separator = match[5], part = match[6] ?? '', , , exponent] = match;
  const minus = sign === '-' ? '-' : '';
  const whole = grouped.replaceAll(' ', '') || '0';
  const scale = exponent === undefined ? '' : `E${exponent}`;
  const digits = minus + whole + (part && `.${part}`) + scale;
  // The other mark before exactly three digits may part thousands: not after a 0, a longer run, a space group or with an exponent.
  const ambiguous =
    separator !== undefined &&
    separator !== decimalMark &&
    /^\d{3}$/.test(part) &&
    /^[1-9]\d{0,2}$/.test(grouped) &&
    !scale;
  return ambiguous ? { refused: match[0], readings: [digits, minus + whole + part] } : { digits };
}

/** The number that the whole text is, a refusal with both readings, or undefined where it is not clearly a number. */
export function readNumber(text: string, decimalMark = '.'): ReadNumber | RefusedNumber | undefined {
  const plain = plainText(text);
  const match = NUMBER_START.exec(plain);
  return match && match[0].length === plain.length ? numberFrom(match, decimalMark) : undefined;
}
