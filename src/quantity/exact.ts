/** Exact numbers: fractions of big integers, with pi to 40 digits where an angle needs it. */

/** numerator / denominator, lowest terms, denominator positive. */
export interface Exact {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

const gcd = (a: bigint, b: bigint): bigint => {
  let [x, y] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (y) [x, y] = [y, x % y];
  return x;
};

/** The fraction in lowest terms; a zero denominator throws RangeError. */
export function exact(numerator: bigint, denominator = 1n): Exact {
  if (denominator === 0n) throw new RangeError('Denominator must not be 0.');
  const common = gcd(numerator, denominator) || 1n;
  const sign = denominator < 0n ? -1n : 1n;
  return { numerator: (sign * numerator) / common, denominator: (sign * denominator) / common };
}

export const ONE: Exact = exact(1n);

export function times(a: Exact, b: Exact): Exact {
  return exact(a.numerator * b.numerator, a.denominator * b.denominator);
}

/** a / b; b = 0 throws RangeError. */
export function over(a: Exact, b: Exact): Exact {
  return exact(a.numerator * b.denominator, a.denominator * b.numerator);
}

export function plus(a: Exact, b: Exact): Exact {
  return exact(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
}

/** a^n for a whole n. */
export function power(a: Exact, n: number): Exact {
  const k = BigInt(Math.abs(n));
  return n < 0 ? exact(a.denominator ** k, a.numerator ** k) : exact(a.numerator ** k, a.denominator ** k);
}

const DECIMAL = /^([+-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d+))?$/;

/** Exponents beyond this are outside what a double holds, whatever the digits (2 048 characters at most). */
const EXPONENT_LIMIT = 4000;

/** A decimal text ("-12.50", "1E3") as a fraction; other text throws RangeError. */
export function exactDecimal(text: string): Exact {
  const [, sign = '', whole = '', part = '', exponent = '0'] = DECIMAL.exec(text) ?? [];
  if (!whole && !part) throw new RangeError(`Not a decimal number: ${text}`);
  const shift = Math.max(-EXPONENT_LIMIT, Math.min(EXPONENT_LIMIT, Number(exponent))) - part.length;
  const digits = BigInt(sign + whole + part === sign ? '0' : whole + part) * (sign === '-' ? -1n : 1n);
  return shift < 0 ? exact(digits, 10n ** BigInt(-shift)) : exact(digits * 10n ** BigInt(shift));
}

/** pi to 40 decimals. */
const PI = exactDecimal('3.1415926535897932384626433832795028841972');

/** A product of decimals and pi such as "0.45359237*9.80665/0.3048" or "pi/180", from left to right. */
export function exactProduct(text: string): Exact {
  let result = ONE;
  for (const [, operator, factor = ''] of text.matchAll(/([*/]?)([^*/]+)/g)) {
    const value = factor === 'pi' ? PI : exactDecimal(factor);
    result = operator === '/' ? over(result, value) : times(result, value);
  }
  return result;
}

const bits = (n: bigint): number => n.toString(2).length;

/** The double nearest to the fraction (ties to even); beyond the largest double it is infinite. */
export function nearestDouble({ numerator, denominator }: Exact): number {
  if (numerator === 0n) return 0;
  const magnitude = numerator < 0n ? -numerator : numerator;
  // A quotient of at least 64 bits, never finer than the smallest subnormal, with a sticky last bit.
  const shift = Math.min(66 - bits(magnitude) + bits(denominator), 1074);
  const scaled = shift > 0 ? magnitude << BigInt(shift) : magnitude;
  const divisor = shift < 0 ? denominator << BigInt(-shift) : denominator;
  let quotient = scaled / divisor;
  const inexact = quotient * divisor !== scaled;
  if (shift === 1074 && quotient < 1n << 53n) {
    // The quotient counts the smallest subnormal: round half to even by hand.
    const twice = (scaled - quotient * divisor) * 2n;
    if (twice > divisor || (twice === divisor && quotient & 1n)) quotient += 1n;
  } else if (inexact) quotient |= 1n;
  const half = Math.trunc(shift / 2);
  const value = Number(quotient) * 2 ** -half * 2 ** (half - shift);
  return numerator < 0n ? -value : value;
}

/** Decimal text of the fraction to so many significant digits, without exponent and without trailing zeros. */
export function decimalText({ numerator, denominator }: Exact, significant = 30): string {
  if (numerator === 0n) return '0';
  const magnitude = numerator < 0n ? -numerator : numerator;
  let places = significant - (magnitude / denominator).toString().length;
  if (magnitude < denominator) {
    places = significant + (denominator / magnitude).toString().length;
  }
  const scale = 10n ** BigInt(Math.max(places, 0));
  const rounded = (2n * magnitude * scale + denominator) / (2n * denominator);
  const digits = rounded.toString().padStart(Math.max(places, 0) + 1, '0');
  const cut = digits.length - Math.max(places, 0);
  const part = digits.slice(cut).replace(/0+$/, '');
  return (numerator < 0n ? '-' : '') + digits.slice(0, cut) + (part && `.${part}`);
}
