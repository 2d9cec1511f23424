/** Intervals tried on lives drawn from known distributions: how often they hold the truth. Seeded, so that the counts repeat. */

import { expect, test } from 'vitest';
import { normal, randomStream, weibull } from '../../src/numeric/index.ts';
import { unitNamed } from '../../src/quantity/index.ts';
import { compareLives, readLife } from '../../src/trial/index.ts';
import type { Lives } from '../../src/trial/index.ts';

const MIN = unitNamed('min');

const lives = (ended: readonly number[], running: readonly number[] = []): Lives => ({
  title: 'A',
  ended,
  running,
  early: [],
});

/** Share of `count` tries whose interval holds the truth; those without an interval do not count. */
function coverage(
  count: number,
  truth: number,
  interval: () => { readonly low?: number; readonly high?: number },
): { readonly share: number; readonly stated: number } {
  let [held, stated] = [0, 0];
  for (let k = 0; k < count; k++) {
    const { low, high } = interval();
    if (low === undefined || high === undefined) continue;
    stated += 1;
    if (low <= truth && truth <= high) held += 1;
  }
  return { share: held / stated, stated };
}

test.each([2, 3, 5, 9])(
  '4 the interval of a life from %i edges holds the truth as often as it says',
  (edges) => {
    const random = randomStream(edges);
    const draw = (): number => random.next();
    const { share } = coverage(2000, 1200, () =>
      readLife(
        lives(Array.from({ length: edges }, () => 1200 * Math.exp(0.2 * normal().quantile(draw())))),
        MIN,
      ),
    );
    // Standard error of the share: 0.005.
    expect(share).toBeGreaterThan(0.933);
    expect(share).toBeLessThan(0.967);
  },
);

test.each([
  [2, 2],
  [3, 3],
  [3, 6],
])('4 the interval of a ratio of %i and %i edges holds the truth at least as often as it says', (a, b) => {
  const random = randomStream(100 * a + b);
  const draw = (): number => random.next();
  const some = (count: number, middle: number, scatter: number): number[] =>
    Array.from({ length: count }, () => middle * Math.exp(scatter * normal().quantile(draw())));
  const { share } = coverage(2000, 1.5, () =>
    compareLives(lives(some(a, 1000, 0.15)), lives(some(b, 1500, 0.3)), MIN),
  );
  // Welch's approximation is careful with few readings.
  expect(share).toBeGreaterThan(0.932);
});

test.each([
  [12, Infinity],
  [12, 1.1],
  [20, 0.95],
])(
  '4 the interval of %i edges that follow a Weibull law, stopped at %f of its scale, holds the truth nearly as often as it says',
  (edges, stop) => {
    const random = randomStream(edges, Math.round(10 * Math.min(stop, 9)));
    const draw = (): number => random.next();
    const law = weibull(3, 1200);
    const { share, stated } = coverage(2000, 1200 * Math.LN2 ** (1 / 3), () => {
      const all = Array.from({ length: edges }, () => law.quantile(draw()));
      const end = stop * 1200;
      const running = all.filter((life) => life > end).map(() => end);
      const made = lives(
        all.filter((life) => life <= end),
        running,
      );
      const reading = readLife(made, MIN);
      return reading.method === 'Weibull' || stop === Infinity ? reading : {};
    });
    expect(stated).toBeGreaterThan(500);
    expect(share).toBeGreaterThan(0.93);
  },
);

test.each([10, 20])(
  '4 the life that nine in ten of %i edges reach has an interval that holds the truth as often as it says',
  (edges) => {
    const random = randomStream(edges);
    const law = weibull(3, 1200);
    const { share } = coverage(2000, law.quantile(0.1), () => {
      const all = Array.from({ length: edges }, () => law.quantile(random.next()));
      return readLife(lives(all), MIN).weibull?.tenPercent ?? {};
    });
    // Standard error of the share: 0.005, and as much again of the tries behind the interval.
    expect(share).toBeGreaterThan(0.932);
    expect(share).toBeLessThan(0.968);
  },
);
