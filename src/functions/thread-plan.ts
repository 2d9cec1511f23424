/** The rule table of common practice for making an internal thread. */

import { interpolateLinear } from '../numeric/index.ts';
import { HARDNESS_ROWS } from './hardness.table.ts';

/** HRC of a hardness in any scale; 0 where it is too soft for HRC, undefined where it is beyond the table. */
export function rockwellOf(hardness: number, scale: string): number | undefined {
  if (scale === 'HRC') return hardness;
  const rows = HARDNESS_ROWS.flatMap(([vickers, brinell, , rockwell]) => {
    const from = scale === 'HB' ? brinell : vickers;
    return from === undefined || rockwell === undefined ? [] : [{ from, rockwell }];
  });
  if (hardness < (rows[0]?.from ?? 0)) return 0;
  return interpolateLinear(
    rows.map(({ from }) => from),
    rows.map(({ rockwell }) => rockwell),
    hardness,
  );
}

export interface ThreadWork {
  /** Depth of the thread over its major diameter. */
  readonly depthRatio: number;
  /** HRC. */
  readonly hardness: number;
  /** Elongation at fracture, 0.14 for 14 %. */
  readonly elongation: number;
  readonly blind: boolean;
}

export type Verdict = 'possible' | 'doubtful' | 'not possible';

export interface ThreadMethod {
  readonly method: 'forming' | 'cutting' | 'milling';
  readonly verdict: Verdict;
  /** Why it is not simply possible. */
  readonly reasons: readonly string[];
}

/** A limit that is passed: what it means and why. */
type Passed = readonly [verdict: Verdict, reason: string];

const above = (value: number, limit: number): boolean => value > limit * (1 + 1e-9);
const below = (value: number, limit: number): boolean => value < limit * (1 - 1e-9);

function judged(method: ThreadMethod['method'], passed: readonly (Passed | false)[]): ThreadMethod {
  const found = passed.filter((each) => each !== false);
  const verdicts = found.map(([verdict]) => verdict);
  const verdict = verdicts.includes('not possible') ? 'not possible' : (verdicts[0] ?? 'possible');
  return { method, verdict, reasons: found.map(([, reason]) => reason) };
}

/** Verdicts on forming, cutting and milling, in this order. */
export function threadPlan({ depthRatio, hardness, elongation, blind }: ThreadWork): readonly ThreadMethod[] {
  return [
    judged('forming', [
      above(hardness, 43)
        ? ['not possible', 'hardness above 43 HRC']
        : above(hardness, 40) && ['doubtful', 'hardness above 40 HRC'],
      below(elongation, 0.08) && ['not possible', 'elongation below 8 %'],
    ]),
    judged('cutting', [
      above(hardness, 55)
        ? ['not possible', 'hardness above 55 HRC']
        : above(hardness, 45) && ['doubtful', 'hardness above 45 HRC'],
      blind && above(depthRatio, 3) && ['doubtful', 'blind and deeper than 3 diameters'],
    ]),
    judged('milling', [above(depthRatio, 2.5) && ['doubtful', 'deeper than 2.5 diameters']]),
  ];
}

/** "forming possible; cutting doubtful (hardness above 45 HRC); milling possible" */
export const planText = (plan: readonly ThreadMethod[]): string =>
  plan
    .map(({ method, verdict, reasons }) =>
      reasons.length === 0 ? `${method} ${verdict}` : `${method} ${verdict} (${reasons.join(', ')})`,
    )
    .join('; ');
