import jstat from 'jstat';
import { expect, test } from 'vitest';
import { isRefusal } from '../../src/document/index.ts';
import {
  compareLives,
  decide,
  findingsOf,
  outward,
  readLife,
  readTrial,
  variantCost,
} from '../../src/trial/index.ts';
import type { Decision, DecisionArgs, Lives, TrialReading } from '../../src/trial/index.ts';
import { unitNamed } from '../../src/quantity/index.ts';
import { REFERENCE_CASES } from '../functions/reference-case.ts';
import { planned, recorded, runsOf, theTrial, withLives } from './trial-of.ts';

const MIN = unitNamed('min');
const minutes = (list: readonly number[]): number[] => list.map((each) => each * 60);
const lives = (
  title: string,
  ended: readonly number[],
  running: readonly number[] = [],
  early: readonly number[] = [],
): Lives => ({
  title,
  ended: minutes(ended),
  running: minutes(running),
  early: minutes(early),
});

const caseOf = (id: string) => {
  const found = REFERENCE_CASES.find((each) => each.id === id);
  if (!found) throw new Error(`no case ${id}`);
  return {
    numbers: (name: string): number[] => [found.inputs[name]?.value ?? []].flat().map(Number),
    expected: (name: string): number => Number(found.expected[name]?.value),
  };
};

test('m01 3 a published pair of wear curves gives its lives and the exponent of Taylor that follows from them', () => {
  const { numbers, expected } = caseOf('m01');
  let notebook = planned({
    factors: [{ name: 'speed', levels: ['125 m/min', '165 m/min'] }],
    repeats: 1,
    measurands: [{ name: 'VB', unit: 'mm', limit: '0.75' }],
  });
  for (const [level, speed] of ['125', '165'].entries()) {
    const [times, wears] = [numbers(`t_${speed}`), numbers(`VB_${speed}`)];
    const steps = times.map((time, i): [string, string] => [
      String(time - (times[i - 1] ?? 0)),
      String(wears[i]),
    ]);
    notebook = recorded(notebook, runsOf(notebook, [level])[0] ?? '', steps);
  }
  const { variants, edges, taylor, comparisons } = readTrial(theTrial(notebook));
  expect((variants[0]?.life.life ?? 0) / 60).toBeCloseTo(expected('T_125_VB0.75'), 1);
  expect((variants[1]?.life.life ?? 0) / 60).toBeCloseTo(expected('T_165_VB0.75'), 1);
  expect(taylor[0]?.exponent).toBeCloseTo(expected('n_VB0.75_interpolated'), 8);
  expect(taylor[0]?.words).toMatch(/2 edges show no scatter/);
  expect(comparisons[0]?.sentence).toMatch(/one edge only/);
  // Least squares over (5, 0.27), (11, 0.45), (15, 0.58), (20, 0.73): the first reading is running in, the last lies above the limit.
  const rate = edges.find(({ variant }) => variant === 0)?.curves[0]?.rate;
  const [x, y] = [
    [5, 11, 15, 20],
    [0.27, 0.45, 0.58, 0.73],
  ];
  const [mx, my] = [12.75, 0.5075];
  const slope =
    x.reduce((s, each, i) => s + (each - mx) * ((y[i] ?? 0) - my), 0) /
    x.reduce((s, each) => s + (each - mx) ** 2, 0);
  expect((rate?.slope ?? 0) * 60_000).toBeCloseTo(slope, 9);
});

test('d11 Taylor from three edges at three speeds agrees with the published regression', () => {
  const { numbers, expected } = caseOf('d11');
  const speeds = numbers('v');
  const notebook = withLives(
    planned({ factors: [{ name: 'speed', levels: speeds.map((each) => `${each} m/min`) }], repeats: 1 }),
    numbers('T').map((life, level) => ({ levels: [level], minutes: [life] })),
  );
  const [reading] = readTrial(theTrial(notebook)).taylor;
  expect(reading?.exponent).toBeCloseTo(expected('n_regression'), 7);
  expect((reading?.constant ?? 0) * 60).toBeCloseTo(expected('C_regression'), 4);
  expect(reading?.low).toBeLessThan(expected('n_regression'));
});

/** Welch's interval on logarithms, worked with another statistics library. */
function welchByHand(a: readonly number[], b: readonly number[]): [number, number] {
  const [la, lb] = [a.map(Math.log), b.map(Math.log)];
  const mean = (list: number[]): number => list.reduce((s, each) => s + each, 0) / list.length;
  const over = (list: number[]): number =>
    list.reduce((s, each) => s + (each - mean(list)) ** 2, 0) / (list.length - 1) / list.length;
  const [va, vb] = [over(la), over(lb)];
  const df = (va + vb) ** 2 / (va ** 2 / (la.length - 1) + vb ** 2 / (lb.length - 1));
  const room = jstat.studentt.inv(0.975, df) * Math.sqrt(va + vb);
  return [Math.exp(mean(lb) - mean(la) - room), Math.exp(mean(lb) - mean(la) + room)];
}

test('4 the ratio of lives has the interval of Welch on logarithms, and the sentence rounds it outward', () => {
  const [a, b] = [
    [18, 20, 22, 19],
    [27, 31, 33, 29],
  ];
  const [low, high] = welchByHand(a, b);
  const reading = compareLives(lives('A', a), lives('B', b), MIN);
  expect(reading.low).toBeCloseTo(low, 7);
  expect(reading.high).toBeCloseTo(high, 7);
  expect(reading.proven).toBe(true);
  expect(reading.sentence).toBe(
    `B lasts ${Math.floor(low * 10) / 10} to ${Math.ceil(high * 10) / 10} times as long as A (95 %).`,
  );
});

test('4 the interval of a mean life is that of Student on logarithms', () => {
  const reading = readLife(lives('A', [18, 20, 22, 19]), MIN);
  const logs = [18, 20, 22, 19].map(Math.log);
  const centre = logs.reduce((s, each) => s + each, 0) / 4;
  const s = Math.sqrt(logs.reduce((so, each) => so + (each - centre) ** 2, 0) / 3);
  // t of 3 degrees of freedom, 95 % two-sided: 3.182446 (any table).
  expect((reading.high ?? 0) / 60).toBeCloseTo(Math.exp(centre + (3.182446305 * s) / 2), 6);
  expect((reading.low ?? 0) / 60).toBeCloseTo(Math.exp(centre - (3.182446305 * s) / 2), 6);
});

test('4 too few readings say so in plain words', () => {
  const words = (a: Lives, b: Lives): string => compareLives(a, b, MIN).sentence;
  expect(words(lives('A', [20, 21]), lives('B', [30, 32]))).toMatch(
    /^B lasts .* as long as A \(95 %\); 2 edges each are too few to say more\.$/,
  );
  expect(words(lives('A', [20, 30]), lives('B', [25, 32, 29]))).toMatch(
    /^No difference is proven: .*; 3 edges of B and 2 of A are too few/,
  );
  expect(words(lives('A', [20]), lives('B', [30, 32]))).toBe(
    'B lasted 1.5 times as long as A, but of A there is one edge only: whether that is more than scatter can not be said.',
  );
  expect(words(lives('A', []), lives('B', [30]))).toMatch(/no edge was read to its end/);
  expect(words(lives('A', [20, 20]), lives('B', [30, 30]))).toMatch(/neither shows any scatter/);
  expect(readLife(lives('A', [20]), MIN).words).toMatch(/one edge: how far lives scatter is not known/);
  expect(readLife(lives('A', []), MIN)).toEqual({ words: 'no edge was read to its end' });
});

test('3 edges that were stopped early are never taken as lives', () => {
  const reading = readLife(lives('A', [20, 22], [25]), MIN);
  expect(reading.life).toBeUndefined();
  expect(reading.words).toMatch(
    /2 edges lasted 20.0 min, 22.0 min; 1 edge had not reached a limit after 25.0 min: no interval/,
  );
  expect(compareLives(lives('A', [20, 22], [25]), lives('B', [30, 33]), MIN).sentence).toMatch(
    /can not be stated/,
  );
  expect(readLife(lives('A', [20, 22], [], [3]), MIN).words).toMatch(
    /passed a limit before the first reading/,
  );
});

test('l29 from ten edges on, running ones are counted by a Weibull fit', () => {
  const { numbers, expected } = caseOf('l29');
  const running = Array.from({ length: 10 }, () => numbers('censor_time')[0] ?? 0);
  const reading = readLife(lives('A', numbers('failures'), running), MIN);
  expect(reading.weibull?.shape).toBeCloseTo(expected('shape'), 6);
  expect((reading.weibull?.tenPercent.life ?? 0) / 60).toBeCloseTo(expected('B10_life'), 3);
  // Median of the distribution: scale (ln 2)^(1/shape).
  expect((reading.life ?? 0) / 60).toBeCloseTo(expected('scale') * Math.LN2 ** (1 / expected('shape')), 3);
  const doubled = compareLives(
    lives('A', numbers('failures'), running),
    lives(
      'B',
      numbers('failures').map((t) => 2 * t),
      running.map((t) => 2 * t),
    ),
    MIN,
  );
  expect(doubled.ratio).toBeCloseTo(2, 9);
  expect((doubled.low ?? 0) * (doubled.high ?? 0)).toBeCloseTo(4, 9);
});

test('outward rounding never makes an interval narrower, nor hides that it leaves 1', () => {
  for (let k = 1; k < 2000; k++) {
    const value = Math.exp((k - 1000) / 150);
    expect(outward(value, false)).toBeLessThanOrEqual(value * (1 + 1e-9));
    expect(outward(value, true)).toBeGreaterThanOrEqual(value * (1 - 1e-9));
  }
  expect([outward(1.0123, false), outward(1.96, true), outward(0.973, true), outward(13.2, true)]).toEqual([
    1.01, 2, 0.973, 14,
  ]);
});

test('a trial with two geometries goes from passes to a sentence, withdrawn passes left out', () => {
  const notebook = withLives(planned(), [
    { levels: [0], minutes: [18, 20, 22] },
    { levels: [1], minutes: [30, 33, 36] },
  ]);
  const reading = readTrial(theTrial(notebook));
  const [low, high] = welchByHand([18, 20, 22], [30, 33, 36]);
  expect(reading.comparisons[0]?.low).toBeCloseTo(low, 7);
  expect(reading.comparisons[0]?.high).toBeCloseTo(high, 7);
  expect(reading.runsDone).toBe(6);
  const trial = theTrial(notebook);
  const withdrawn = {
    ...trial,
    passes: trial.passes.map((pass, i) => (i > 9 ? { ...pass, withdrawn: 'wrong bar' } : pass)),
  };
  expect(readTrial(withdrawn).cautions.join(' ')).toMatch(
    /5 of 6 runs are cut.*2 withdrawn passes do not count/,
  );
});

test('readings that fall, lie far apart or come too late are told', () => {
  const notebook = planned({ repeats: 1 });
  const [run = ''] = runsOf(notebook, [0]);
  const [other = ''] = runsOf(notebook, [1]);
  let so = recorded(notebook, run, [
    ['2', '0.1'],
    ['2', '0.08'],
    ['10', '0.5'],
  ]);
  so = recorded(so, other, [['4', '0.35']]);
  const { edges } = readTrial(theTrial(so));
  const first = edges.find((edge) => edge.run === run);
  expect(first?.cautions.join('; ')).toMatch(/reading 2 of VB is smaller.*more than 30 % of the life/);
  expect(edges.find((edge) => edge.run === other)?.words).toMatch(/less than 4.00 min/);
});

test('runs that were not cut in the planned order are told', () => {
  const notebook = planned({ repeats: 1 });
  const [first = '', second = ''] = theTrial(notebook).runs.map(({ id }) => id);
  const so = recorded(recorded(notebook, second, [['1', '0.1']]), first, [['1', '0.1']]);
  expect(readTrial(theTrial(so)).cautions.join()).toMatch(/not cut in the planned order/);
});

test('d37 the cost of a part with whole parts of an edge is the published one', () => {
  const { numbers, expected } = caseOf('d37');
  const [rate = 0, handling = 0, change = 0, edgeSet = 0] = [
    numbers('Co')[0],
    numbers('Th')[0],
    numbers('Tt')[0],
    numbers('Ct')[0],
  ];
  for (const which of ['1', '2']) {
    const cut = expected(`Tm_${which}`) * 60;
    const cost = variantCost(
      expected(`T_${which}`) * 60,
      { edgeSet, once: 0, cutPerPart: cut, timePerPart: cut + handling * 60 },
      { rate: rate / 60, change: change * 60, partsPerShift: undefined },
    );
    expect(cost.partsPerEdge).toBe(expected(`np_${which}`));
    expect(Math.abs(cost.perPart - expected(`cost_${which}`))).toBeLessThan(0.011);
  }
});

const COSTS: Omit<DecisionArgs, 'a' | 'b'> = {
  costs: {
    a: { edgeSet: '12 EUR', cutPerPart: '4 min' },
    b: { edgeSet: '15 EUR', cutPerPart: '4 min', once: '200 EUR' },
  },
  machineRate: '60 EUR/h',
  changeTime: '3 min',
  partsPerYear: 2000,
};

function decided(reading: TrialReading, more: Partial<DecisionArgs> = {}): Decision {
  const answer = decide(reading, { ...COSTS, a: 0, b: 1, ...more });
  if (isRefusal(answer)) throw new Error(answer.message);
  return answer;
}

const reading = (): TrialReading =>
  readTrial(
    theTrial(
      withLives(planned(), [
        { levels: [0], minutes: [18, 20, 22] },
        { levels: [1], minutes: [30, 33, 36] },
      ]),
    ),
  );

test('what the better edge is worth, worked by hand', () => {
  // Lives: (18*20*22)^(1/3) = 19.93 min: 4 parts of 4 min; (30*33*36)^(1/3) = 32.91 min: 8 parts.
  // Cost: 4 + (3 + 12)/4 = 7.75 EUR; 4 + (3 + 15)/8 = 6.25 EUR; 1.5 EUR saved, 200/1.5 = 133.3: 134 parts.
  const { a, b, savesAYear, paysFrom, savesLow = 0, savesHigh = 0, curve, sentence } = decided(reading());
  expect([a.partsPerEdge, b.partsPerEdge]).toEqual([4, 8]);
  expect(a.perPart).toBeCloseTo(7.75, 9);
  expect(b.perPart).toBeCloseTo(6.25, 9);
  expect(savesAYear).toBeCloseTo(3000, 6);
  expect(paysFrom).toBe(134);
  expect(savesLow).toBeLessThan(3000);
  expect(savesHigh).toBeGreaterThan(savesLow);
  expect(curve[20]).toMatchObject({ parts: 2000, a: 15_500, b: 12_700 });
  expect(sentence).toMatch(
    /^round saves 3000 EUR a year at 2000 parts \(95 %: .* EUR\); it pays from 134 parts on/,
  );
});

test('whole shifts: an edge changed at the end of a shift makes whole shifts of parts', () => {
  const { a, b, cautions } = decided(reading(), { partsPerShift: 3 });
  expect([a.shifts, a.changedAfter, b.shifts, b.changedAfter]).toEqual([1, 3, 2, 6]);
  expect(decided(reading(), { partsPerShift: 7 }).cautions.join()).toMatch(
    /sharp does not last a whole shift/,
  );
  expect(cautions.join()).toMatch(/interval is that of the ratio/);
});

test('what a trial tells comes as sentences, with nothing of what was not cut', () => {
  expect(findingsOf(readTrial(theTrial(planned())))).toEqual([]);
  const told = findingsOf(reading());
  expect(told[0]).toMatch(/^Life, sharp: 19\.9 min \(.* to .*, 95 %\) from 3 edges\.$/);
  expect(told.join(' ')).toMatch(/round lasts 1\.\d to \d\.?\d* times as long as sharp \(95 %\)\./);
});

test('a decision is no surer than its lives', () => {
  const few = readTrial(theTrial(withLives(planned(), [{ levels: [0], minutes: [20, 30] }, { levels: [1], minutes: [25, 33] }]))); // prettier-ignore
  expect(decided(few).sentence).toMatch(/It is not proven|at the low end/);
  const single = readTrial(theTrial(withLives(planned(), [{ levels: [0], minutes: [20] }, { levels: [1], minutes: [33] }]))); // prettier-ignore
  expect(decided(single).sentence).toMatch(/how certain that is can not be said/);
  const none = decide(readTrial(theTrial(planned())), { ...COSTS, a: 0, b: 1 });
  expect(isRefusal(none) && none.message).toMatch(/no edge was read/);
});

test('what can not be decided is refused in words', () => {
  const words = (more: Partial<DecisionArgs>): string => {
    const answer = decide(reading(), { ...COSTS, a: 0, b: 1, ...more });
    return isRefusal(answer) ? answer.message : 'decided';
  };
  expect(words({ machineRate: '60 EUR' })).toMatch(/money an hour/);
  expect(words({ changeTime: '3 mm' })).toMatch(/takes a time/);
  expect(words({ partsPerYear: 0 })).toMatch(/how many parts/);
  expect(words({ b: 0 })).toMatch(/two variants/);
  expect(words({ costs: { ...COSTS.costs, a: { edgeSet: '12 mm', cutPerPart: '4 min' } } })).toMatch(
    /costs money/,
  );
  expect(words({ costs: { ...COSTS.costs, a: { edgeSet: '12 EUR', cutPerPart: '4 m' } } })).toMatch(
    /cut of one part/,
  );
});
