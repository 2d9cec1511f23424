/** Dimensions: exponents of the base quantities, and the scales that behave as dimensions of their own in sums and comparisons. */

/** A scale keeps its values from being added to or compared with others of the same exponents (F11). */
export type Scale = '' | 'angle' | 'HRC' | 'HB' | 'HV' | 'date';

/** Exponents of the base quantities (fractions allowed) and a scale. Interned: equal dimensions are the same object. */
export interface Dimension {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly temperature: number;
  readonly money: number;
  readonly scale: Scale;
}

const interned = new Map<string, Dimension>();

/** Exponents closer than this are equal. */
const EXPONENT_STEP = 1e-9;
/** Fractions up to this denominator are kept exactly, so that 1/3 three times over is 1. */
const LARGEST_DENOMINATOR = 12;

function tidy(exponent: number): number {
  for (let denominator = 1; denominator <= LARGEST_DENOMINATOR; denominator += 1) {
    const fraction = Math.round(exponent * denominator) / denominator;
    if (Math.abs(exponent - fraction) < EXPONENT_STEP) return fraction || 0;
  }
  return Math.round(exponent / EXPONENT_STEP) * EXPONENT_STEP || 0;
}

/** The one dimension with these exponents; those left out are 0. */
export function dimension(exponents: Partial<Dimension> = {}): Dimension {
  const { length = 0, mass = 0, time = 0, temperature = 0, money = 0, scale = '' } = exponents;
  const key = [length, mass, time, temperature, money].map((x) => tidy(x).toFixed(9)).join(' ') + scale;
  const known = interned.get(key);
  if (known) return known;
  const made = Object.freeze({
    length: tidy(length),
    mass: tidy(mass),
    time: tidy(time),
    temperature: tidy(temperature),
    money: tidy(money),
    scale,
  });
  interned.set(key, made);
  return made;
}

/** The dimension of a plain number. */
export const DIMENSIONLESS: Dimension = dimension();

/** The dimension of a product; an angle counts as its radian value. */
export function multiplied(a: Dimension, b: Dimension): Dimension {
  return dimension({
    length: a.length + b.length,
    mass: a.mass + b.mass,
    time: a.time + b.time,
    temperature: a.temperature + b.temperature,
    money: a.money + b.money,
  });
}

/** The dimension of a power with a constant exponent; an angle counts as its radian value. */
export function raised(base: Dimension, exponent: number): Dimension {
  return dimension({
    length: base.length * exponent,
    mass: base.mass * exponent,
    time: base.time * exponent,
    temperature: base.temperature * exponent,
    money: base.money * exponent,
  });
}

/** The dimension of a quotient; an angle counts as its radian value. */
export function divided(a: Dimension, b: Dimension): Dimension {
  return multiplied(a, raised(b, -1));
}
