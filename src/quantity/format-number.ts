/** Numbers as shown: rounding, thin spaces between thousands, fractions of an inch. */

/** How a number is written; without one the general form is used. */
export type NumberFormatLike =
  | { readonly type: 'significant'; readonly digits: number }
  | { readonly type: 'decimals'; readonly digits: number }
  | { readonly type: 'fraction'; readonly denominator: number }
  /** All digits a double is sure of (15), trailing zeros dropped. */
  | { readonly type: 'full' };

const THIN_SPACE = '\u202f';
const MINUS = '\u2212';

/** Digits of the general form; a decimal that is exact within EXACT digits shows them all. */
const GENERAL = 6;
const EXACT = 10;
const FULL = 15;
/** Outside these a number is written with an exponent, in digits that can be typed. */
const SMALLEST = 1e-5;
const LARGEST = 1e15;
/** ISO 80000-1: groups of three; four digits stay together. */
const GROUPED_FROM = 5;

function grouped(whole: string, grouping: boolean): string {
  return grouping && whole.length >= GROUPED_FROM ? whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE) : whole;
}

function written(plain: string, decimalMark: string, grouping: boolean): string {
  const [, sign = '', whole = '', part, exponent] = /^(-?)(\d+)(?:\.(\d+))?(?:e(.+))?$/.exec(plain) ?? [];
  const zero = !/[1-9]/.test(whole + (part ?? ''));
  return (
    (sign && !zero ? MINUS : '') +
    grouped(whole, grouping) +
    (part === undefined ? '' : decimalMark + part) +
    (exponent === undefined ? '' : `E${Number(exponent)}`)
  );
}

const withoutZeros = (plain: string): string =>
  plain.replace(/(\.\d*?)0+(?=e|$)/, '$1').replace(/\.(?=e|$)/, '');

/** Significant digits without ever losing whole ones, in plain or exponent form as the magnitude asks. */
function significant(value: number, digits: number): string {
  const size = Math.abs(value);
  if (size !== 0 && (size < SMALLEST || size >= LARGEST)) return value.toExponential(digits - 1);
  const before = size < 1 ? 0 : Math.floor(Math.log10(size)) + 1;
  if (before > digits) return value.toFixed(0);
  const rounded = value.toPrecision(Math.max(digits, 1));
  if (!rounded.includes('e')) return rounded;
  return value.toFixed(Math.min(100, Math.max(0, digits - Math.floor(Math.log10(size)) - 1)));
}

function general(value: number): string {
  const all = withoutZeros(significant(value, FULL));
  const digits = all.replace(/e.*|\D/g, '').replace(/^0+/, '');
  return digits.length <= EXACT ? all : withoutZeros(significant(value, GENERAL));
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** "1 3/8"; a value between two fractions is marked as rounded with "≈". */
function fraction(value: number, denominator: number, grouping: boolean): string {
  const parts = Math.round(Math.abs(value) * denominator);
  const common = gcd(parts, denominator) || 1;
  const whole = Math.floor(parts / denominator);
  const [above, below] = [(parts % denominator) / common, denominator / common];
  const exact = Math.abs(parts / denominator - Math.abs(value)) <= 1e-12 * Math.abs(value);
  const sign = value < 0 && parts > 0 ? MINUS : '';
  const shown = whole === 0 && above > 0 ? '' : grouped(String(whole), grouping);
  return `${exact ? '' : '≈ '}${sign}${shown}${shown && above ? ' ' : ''}${above ? `${above}/${below}` : ''}`;
}

const MOST_DECIMALS = 15;

/**
 * A number for the eye. Without a format: all digits where the number is a decimal of at most 10, else 6 significant
 * ones without trailing zeros; whole digits are never rounded off below 1E15. A thin no-break space (U+202F) parts
 * thousands from five digits on unless `grouping` is false. Infinite or NaN throws RangeError.
 */
export function formatNumber(
  value: number,
  format?: NumberFormatLike,
  decimalMark = '.',
  grouping = true,
): string {
  if (!Number.isFinite(value)) throw new RangeError(`Not a number that can be shown: ${value}`);
  switch (format?.type) {
    case 'significant': {
      const digits = Math.min(Math.max(format.digits, 1), FULL);
      return written(significant(value, digits), decimalMark, grouping);
    }
    case 'decimals': {
      if (Math.abs(value) >= LARGEST) return formatNumber(value, { type: 'full' }, decimalMark);
      // Rounds the decimal that is shown elsewhere, so that 1.005 to two places is 1.01.
      const digits = Math.min(Math.max(format.digits, 0), MOST_DECIMALS);
      return written(roundedHalfUp(value, digits), decimalMark, grouping);
    }
    case 'fraction':
      return fraction(value, format.denominator, grouping);
    case 'full':
      return written(withoutZeros(significant(value, FULL)), decimalMark, grouping);
    case undefined:
      return written(general(value), decimalMark, grouping);
  }
}

/** To so many decimals, halves away from zero, as the 15-digit decimal reads. */
function roundedHalfUp(value: number, digits: number): string {
  const shifted = Number(`${Number(Math.abs(value).toPrecision(FULL))}e${digits}`);
  if (!Number.isFinite(shifted) || shifted >= LARGEST) return value.toFixed(digits);
  const whole = String(Math.floor(shifted + 0.5)).padStart(digits + 1, '0');
  const cut = whole.length - digits;
  return (value < 0 ? '-' : '') + whole.slice(0, cut) + (digits ? `.${whole.slice(cut)}` : '');
}
