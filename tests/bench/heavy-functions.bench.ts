/**
 * What the heavy functions of the library cost: processor time of one call beside a fixed loop of sines and roots in the same run,
 * the best of several turns taken in alternation, after a warm-up. The aims are for a quiet machine; nothing is asserted of time.
 */

import { expect, test } from 'vitest';
import { compileDefinition, type FunctionDefinition } from '../../src/definition/index.ts';
import type { Value } from '../../src/expression/index.ts';
import bestSpeed from '../../src/functions/chatter/best-speed.ts';
import millFloor from '../../src/functions/chatter/mill-floor.ts';
import millLimitFull from '../../src/functions/chatter/mill-limit-full.ts';
import millLimit from '../../src/functions/chatter/mill-limit.ts';
import sampleSize from '../../src/functions/life/sample-size.ts';
import weibullScale from '../../src/functions/life/weibull-scale.ts';
import weibullShape from '../../src/functions/life/weibull-shape.ts';
import forcePeak from '../../src/functions/mill/force-peak.ts';

const TURNS = 9;

/** Milliseconds of processor time of one call, many in a row where one is short. */
function cost(work: () => void, calls: number): number {
  const before = process.cpuUsage();
  for (let i = 0; i < calls; i += 1) work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / calls;
}

/** The same work everywhere: 200 000 sines and roots. */
function reference(): number {
  let total = 0;
  for (let i = 0; i < 200_000; i += 1) total += Math.sqrt(2 + Math.sin(i * 0.001));
  return total;
}

const list = (...values: number[]): Value => ({ grid: [values] });

/** Coherent SI: a 20 mm cutter with 4 teeth in a slot, two modes. */
const CUTTER: readonly Value[] = [0.02, 4, 0.02, 'down'];
const MODES: readonly Value[] = [
  6e8,
  0.3,
  list(600),
  list(0.035),
  list(1e7),
  list(660),
  list(0.035),
  list(1.2e7),
];
const NARROW: readonly Value[] = [0.02, 4, 0.002, 'down'];
const LIVES = Array.from({ length: 20 }, (_, i) => 60 * (18 + 5 * Math.sqrt(i) + 3 * Math.sin(7 * i)));

const CASES: readonly (readonly [
  what: string,
  FunctionDefinition,
  readonly Value[],
  calls: number,
  aim?: number,
])[] = [
  ['zero-order limit at one speed', millLimit, [...CUTTER, 9500 / 60, ...MODES], 10, 5],
  ['zero-order floor', millFloor, [...CUTTER, ...MODES], 10],
  ['best speed in a range', bestSpeed, [...CUTTER, ...MODES, 8000 / 60, 11_000 / 60], 3],
  ['full limit at one speed, slot', millLimitFull, [...CUTTER, 9500 / 60, ...MODES], 1, 200],
  ['full limit at one speed, a tenth wide', millLimitFull, [...NARROW, 9500 / 60, ...MODES], 1, 200],
  [
    'peak force of an end mill',
    forcePeak,
    [0.02, 4, (38 * Math.PI) / 180, 0.0001, 0.02, 0.002, 1.7e9, 0.25, 0.3],
    20,
    5,
  ],
  ['Weibull shape of 20 lives', weibullShape, [list(...LIVES)], 50, 1],
  ['Weibull scale of 20 lives', weibullScale, [list(...LIVES)], 50, 1],
  ['sample size of a trial', sampleSize, [1.3, 0.2, 0.95, 0.8], 10],
];

for (const [what, definition, args, calls, aim] of CASES)
  test(what, () => {
    const { evaluate } = compileDefinition(definition);
    let value: Value = null;
    const best = [Infinity, Infinity] as [number, number];
    for (let turn = 0; turn < TURNS; turn += 1) {
      const ours = cost(() => {
        value = evaluate(args, {});
      }, calls);
      const fixed = cost(reference, 3);
      if (turn > 0) [best[0], best[1]] = [Math.min(best[0], ours), Math.min(best[1], fixed)];
    }
    console.log(
      `${what}: ${best[0].toFixed(3)} ms${aim === undefined ? '' : ` (aim ${aim} ms)`}, ${(best[0] / best[1]).toFixed(3)} of the fixed loop (${best[1].toFixed(2)} ms)`,
    );
    expect(typeof value).toBe('number');
  });
