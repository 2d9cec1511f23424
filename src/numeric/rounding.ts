/** Decimal rounding of doubles as a reader of 15 digits expects it: half away from zero, 109.499999999999986 being 109.5. */

const shifted = (value: number, digits: number): number => {
  const [mantissa, exponent = '0'] = String(value).split('e');
  return Number(`${mantissa}e${Number(exponent) + digits}`);
};

/** The nearest double to the 15-digit decimal of a value. */
export function fifteenDigits(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(15)) : value;
}

function roundedBy(step: (value: number) => number, value: number, digits: number): number {
  if (digits > 300) return value;
  if (digits < -308) return 0;
  const magnitude = step(shifted(fifteenDigits(Math.abs(value)), digits));
  return Math.sign(value) * shifted(magnitude, -digits) || 0;
}

/** Half away from zero at `digits` decimals; negative digits round to tens, hundreds. */
export const rounded = (value: number, digits: number): number =>
  roundedBy((x) => Math.floor(x + 0.5), value, digits);
/** Away from zero. */
export const roundedUp = (value: number, digits: number): number => roundedBy(Math.ceil, value, digits);
/** Towards zero. */
export const truncated = (value: number, digits = 0): number => roundedBy(Math.floor, value, digits);
/** The largest whole number not above the value. */
export const floored = (value: number): number => Math.floor(fifteenDigits(value)) || 0;

/** The multiple of `step` next to `value` by `pick` (Math.floor, Math.ceil, ...); a step of 0 gives 0. */
export function multipleOf(step: number, value: number, pick: (ratio: number) => number): number {
  return step === 0 ? 0 : fifteenDigits(pick(fifteenDigits(value / step)) * step) || 0;
}
