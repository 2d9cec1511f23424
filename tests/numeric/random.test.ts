import { expect, test } from 'vitest';
import { normalDraws, randomStream, studentDraws, Xoshiro } from '../../src/numeric/index.ts';

test('the generator gives the words of the reference implementation', () => {
  // xoshiro128starstar.c 1.1 (prng.di.unimi.it) from the state {1, 2, 3, 4}: values as in the tests of rand_xoshiro.
  const random = new Xoshiro([1, 2, 3, 4]);
  const words = Array.from({ length: 10 }, () => random.word());
  expect(words).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
  ]);
});

test('the same seed gives the same draws, another seed or stream others', () => {
  const first = (seed: number, stream: number): number => randomStream(seed, stream).next();
  expect(first(7, 0)).toBe(first(7, 0));
  expect(new Set([first(7, 0), first(7, 1), first(8, 0), first(8, 1), first(0, 0)]).size).toBe(5);
});

const moments = (draws: Float64Array) => {
  const mean = draws.reduce((sum, x) => sum + x, 0) / draws.length;
  const variance = draws.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (draws.length - 1);
  const beyond = draws.filter((x) => Math.abs(x) > 1.959964).length / draws.length;
  return { mean, variance, beyond };
};

/** Five standard errors of the mean of N draws with standard deviation s. */
const room = (n: number, s = 1): number => (5 * s) / Math.sqrt(n);

test('normal draws have the moments and the tails of the normal distribution', () => {
  const n = 200_000;
  const { mean, variance, beyond } = moments(normalDraws(randomStream(3), new Float64Array(n)));
  expect(Math.abs(mean)).toBeLessThan(room(n));
  // The variance of a squared normal draw is 2.
  expect(Math.abs(variance - 1)).toBeLessThan(room(n, Math.SQRT2));
  expect(Math.abs(beyond - 0.05)).toBeLessThan(room(n, Math.sqrt(0.05 * 0.95)));
});

test('t draws have the variance n/(n - 2), for few and for many degrees of freedom', () => {
  const n = 400_000;
  for (const freedom of [9, 30]) {
    const { mean, variance } = moments(studentDraws(randomStream(5), freedom, new Float64Array(n)));
    const expected = freedom / (freedom - 2);
    // The fourth moment is 3 v^2/((v - 2)(v - 4)).
    const fourth = (3 * freedom ** 2) / ((freedom - 2) * (freedom - 4));
    expect(Math.abs(mean)).toBeLessThan(room(n, Math.sqrt(expected)));
    expect(Math.abs(variance - expected)).toBeLessThan(room(n, Math.sqrt(fourth - expected ** 2)));
  }
});
