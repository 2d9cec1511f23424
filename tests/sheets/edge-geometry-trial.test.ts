/** The trial of two edge geometries: from plan through record to decision, worked by hand and read a second way from the trial itself. */

import jstat from 'jstat';
import { expect, test } from 'vitest';
import { isRefusal, partsOf } from '../../src/document/index.ts';
import { decide, planTrial, readTrial } from '../../src/trial/index.ts';
import { computedSheet } from './computed-sheet.ts';

const FILE = 'edge-geometry-trial.json';

/** A given that is changed, and how the decision reads before and after. */
const FLIPS = [
  [
    'set_honed',
    '30 EUR',
    /^yes: it lasts 1\.21 to 1\.76 times as long and pays from 375 parts on/,
    /^not yet: at the low end/,
  ],
  ['set_honed', '60 EUR', /^yes/, /^no: a part would cost more/],
  [
    'sure',
    '99.9 %',
    /^yes/,
    /^not yet: the honed edge lasts 0\.\d\d to 2\.\d\d times as long, run more edges/,
  ],
  ['power_max', '9 kW', /^yes/, /^no: the spindle was loaded with 9\.2 kW/],
] as const;

test.each(FLIPS)('the decision turns when %s becomes %s', (name, content, before, after) => {
  const sheet = computedSheet(FILE);
  expect(sheet.named('decision').value).toMatch(before);
  sheet.type(name, content);
  expect(sheet.named('decision').value).toMatch(after);
});

const GROUND = [20, 22, 24];
const HONED = [30, 32, 34];

test('lives, ratio and costs are those worked by hand', () => {
  const { named, notebook } = computedSheet(FILE);
  const value = (name: string): number => Number(named(name).value);
  const geometric = (list: readonly number[]): number =>
    Math.exp(list.reduce((sum, each) => sum + Math.log(each), 0) / list.length);
  expect(value('T_ground') / 60).toBeCloseTo(geometric(GROUND), 9);
  expect(value('T_honed') / 60).toBeCloseTo(geometric(HONED), 9);
  // Welch on logarithms with another library.
  const [a, b] = [GROUND.map(Math.log), HONED.map(Math.log)];
  const mean = (list: readonly number[]): number => list.reduce((sum, each) => sum + each, 0) / list.length;
  const share = (list: readonly number[]): number =>
    list.reduce((sum, each) => sum + (each - mean(list)) ** 2, 0) / 2 / 3;
  const [va, vb] = [share(a), share(b)];
  const freedom = (va + vb) ** 2 / ((va ** 2 + vb ** 2) / 2);
  const room = jstat.studentt.inv(0.975, freedom) * Math.sqrt(va + vb);
  expect(value('ratio_low')).toBeCloseTo(Math.exp(mean(b) - mean(a) - room), 6);
  expect(value('ratio_high')).toBeCloseTo(Math.exp(mean(b) - mean(a) + room), 6);
  // 21.94 min: 6 parts of 3.5 min; 31.96 min: 9; 21.94 x 1.2086 = 26.5 min: 7. A part: 84 EUR/h x 5 min = 7 EUR,
  // a change 84 EUR/h x 4 min = 5.6 EUR: 7 + 29.6/6, 7 + 33.6/9, 7 + 33.6/7 EUR.
  expect([value('parts_ground'), value('parts_honed'), value('parts_low')]).toEqual([6, 9, 7]);
  expect(value('cost_ground')).toBeCloseTo(7 + 29.6 / 6, 9);
  expect(value('cost_honed')).toBeCloseTo(7 + 33.6 / 9, 9);
  expect(value('cost_low')).toBeCloseTo(7 + 33.6 / 7, 9);
  expect(value('saved')).toBeCloseTo(7200, 6);
  expect(value('saved_low')).toBeCloseTo(800, 6);
  expect(value('pays_from')).toBe(375);
  const log =
    partsOf(notebook, 'recordings')[0]?.columns.find((column) => column.name === 'power')?.values ?? [];
  expect(value('power')).toBeCloseTo(1000 * Math.max(...log.map(Number)), 6);
});

test('the trial in the notebook, read pass by pass, says the same as the cells', () => {
  const { notebook, named } = computedSheet(FILE);
  const [trial] = partsOf(notebook, 'trials');
  if (!trial) throw new Error('no trial');
  const reading = readTrial(trial, { currency: 'EUR' });
  expect(reading.cautions.join()).not.toMatch(/planned order|runs are cut/);
  const at = (title: string): number => reading.variants.findIndex((variant) => variant.title === title);
  const [ground, honed] = [at('ground, 180 m/min'), at('honed, 180 m/min')];
  expect(reading.variants[ground]?.lives.ended.map((life) => Math.round(life / 60)).sort()).toEqual(GROUND);
  expect(reading.variants[honed]?.lives.ended.map((life) => Math.round(life / 60)).sort()).toEqual(HONED);
  const compared = reading.comparisons.find(({ a, b }) => a === ground && b === honed);
  expect(compared?.low).toBeCloseTo(Number(named('ratio_low').value), 9);
  expect(compared?.high).toBeCloseTo(Number(named('ratio_high').value), 9);
  expect(compared?.sentence).toBe(
    'honed, 180 m/min lasts 1.2 to 1.8 times as long as ground, 180 m/min (95 %).',
  );
  expect(reading.taylor.map(({ exponent }) => exponent)).toEqual([
    expect.closeTo(Number(named('n_ground').value), 9) as number,
    expect.closeTo(Number(named('n_honed').value), 9) as number,
  ]);
  const decision = decide(reading, {
    a: ground,
    b: honed,
    costs: {
      a: { edgeSet: '24 EUR', cutPerPart: '3.5 min', timePerPart: '5 min' },
      b: { edgeSet: '28 EUR', cutPerPart: '3.5 min', timePerPart: '5 min', once: '450 EUR' },
    },
    machineRate: '84 EUR/h',
    changeTime: '4 min',
    partsPerYear: 6000,
    currency: 'EUR',
  });
  if (isRefusal(decision)) throw new Error(decision.message);
  expect(decision.savesAYear).toBeCloseTo(7200, 6);
  expect(decision.savesLow).toBeCloseTo(800, 6);
  expect(decision.paysFrom).toBe(375);
});

test('the runs of the trial stand in the order that the plan gives, and the stock lasts', () => {
  const { notebook, engine } = computedSheet(FILE);
  const [trial] = partsOf(notebook, 'trials');
  if (!trial) throw new Error('no trial');
  const order = Array.from({ length: 12 }, (_, k) =>
    Number(engine.result({ worksheet: 'w2', row: 13 + k, column: 1 }).value),
  );
  expect(trial.runs.map(({ levels: [g = 0, s = 0] }) => g * 2 + s)).toEqual(
    order.map((run) => (run - 1) % 4),
  );
  const plan = planTrial({ ...trial, currency: 'EUR' });
  if (isRefusal(plan)) throw new Error(plan.message);
  expect(plan.trial.runs).toEqual(trial.runs);
  expect(plan.stock).toMatchObject({ runs: 13, fits: true });
});

test('one slip of the keypad was corrected, and what was typed first stands beside it', () => {
  const { notebook } = computedSheet(FILE);
  const corrected = (partsOf(notebook, 'trials')[0]?.passes ?? []).filter(({ corrections }) => corrections);
  expect(corrected.map(({ values, corrections }) => [values[0]?.content, corrections?.[0]?.was])).toEqual([
    ['0.28 mm', '0.82 mm'],
  ]);
});
