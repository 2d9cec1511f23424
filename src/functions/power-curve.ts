/** A spindle's power curve: straight lines between its points. */

import { failure, type Failure } from '../expression/index.ts';
import { interpolateLinear } from '../numeric/index.ts';

const perMinute = (value: number | undefined): string =>
  `${Number(((value ?? 0) * 60).toPrecision(6))} 1/min`;

/** Power in W at a speed in 1/s; a failure outside the curve or for a curve that does not rise in speed. */
export function powerAt(
  speed: number,
  speeds: readonly number[],
  powers: readonly number[],
): number | Failure {
  if (speeds.length !== powers.length) return failure('#VALUE!', 'speeds and powers differ in count');
  if (speeds.some((each, i) => i > 0 && each <= (speeds[i - 1] ?? 0)))
    return failure('#NUM!', 'the speeds of the curve must rise from point to point');
  const power = interpolateLinear(speeds, powers, speed);
  if (power !== undefined) return power;
  return failure(
    '#NUM!',
    `spindle speed ${perMinute(speed)} is outside the curve, ${perMinute(speeds[0])} to ${perMinute(speeds.at(-1))}`,
  );
}
