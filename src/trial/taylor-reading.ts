/** Taylor's law from a trial whose speeds differ: ln T over ln vc, as ISO 3685 has it. */

import { fittedLine } from '../numeric/index.ts';

export interface TaylorReading {
  /** What holds for all of these edges: the levels of the other factors. */
  readonly title: string;
  readonly edges: number;
  readonly speeds: number;
  /** n in vc T^n = C; absent where none follows. */
  readonly exponent?: number;
  /** 95 % interval of n; high absent where the lives may not depend on speed. */
  readonly low?: number;
  readonly high?: number;
  /** C, the speed for a life of 1 min, in m/s. */
  readonly constant?: number;
  readonly words: string;
}

const MINUTE = 60;

/** From speeds (m/s) and lives (s) of edges that reached their limit. */
export function readTaylor(
  title: string,
  speeds: readonly number[],
  lives: readonly number[],
  confidence = 0.95,
): TaylorReading {
  const different = new Set(speeds).size;
  const counts = { title, edges: lives.length, speeds: different };
  if (different < 2) return { ...counts, words: 'one speed only: no exponent follows from it' };
  const line = fittedLine(speeds.map(Math.log), lives.map(Math.log), confidence);
  if (!line || !(line.slope < 0))
    return { ...counts, words: 'the lives do not fall with speed: no exponent follows from them' };
  const exponent = -1 / line.slope;
  const constant = Math.exp((Math.log(MINUTE) - line.intercept) / line.slope);
  const margin = line.slopeMargin;
  const steep = Number.isFinite(margin) ? -1 / (line.slope - margin) : undefined;
  const flat = Number.isFinite(margin) && line.slope + margin < 0 ? -1 / (line.slope + margin) : undefined;
  const three = (value: number): number => Number(value.toPrecision(3));
  const interval =
    steep === undefined
      ? '; 2 edges show no scatter about the line'
      : flat === undefined
        ? `; with ${lives.length} edges the lives may as well not depend on speed`
        : ` (${three(steep)} to ${three(flat)}, 95 %)`;
  const close = Math.max(...speeds) < 1.3 * Math.min(...speeds) * (1 - 1e-9);
  return {
    ...counts,
    exponent,
    constant,
    ...(steep !== undefined && { low: steep }),
    ...(flat !== undefined && { high: flat }),
    words: `n = ${three(exponent)}${interval}, C = ${three(constant * MINUTE)} m/min, from ${lives.length} edges at ${different} speeds${close ? '; the speeds lie less than 1.3 times apart: the exponent is uncertain' : ''}; holds between these speeds only`,
  };
}
