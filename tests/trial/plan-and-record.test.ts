import { expect, test } from 'vitest';
import { apply, inverse, isRefusal, partsOf } from '../../src/document/index.ts';
import type { Photograph, Refusal, Transaction } from '../../src/document/index.ts';
import {
  addTrial,
  attachPhotograph,
  changeTrial,
  correctPass,
  firstValue,
  passValue,
  planTrial,
  recordPass,
  removeTrial,
  withdrawPass,
} from '../../src/trial/index.ts';
import type { PlanArgs, TrialPlan } from '../../src/trial/index.ts';
import { done, refusalOf } from '../document/sample.ts';
import { calculated } from '../functions/calculated.ts';
import { AT, PLAN, planned, recorded, runsOf, theTrial } from './trial-of.ts';

const plan = (args: Partial<PlanArgs> = {}): TrialPlan => {
  const answer = planTrial({ ...PLAN, ...args });
  if (isRefusal(answer)) throw new Error(answer.message);
  return answer;
};
const words = (args: Partial<PlanArgs>): string => {
  const answer = planTrial({ ...PLAN, ...args });
  return isRefusal(answer) ? answer.message : 'planned';
};

test('1 a plan cuts every combination as often as asked, in the order of TRIAL.ORDER', () => {
  const two = plan({
    factors: [
      { name: 'geometry', levels: ['sharp', 'round'] },
      { name: 'speed', levels: ['150 m/min', '200 m/min'] },
    ],
    repeats: 2,
  });
  expect([two.combinations, two.runs]).toEqual([4, 8]);
  const all = [[0, 0], [0, 1], [1, 0], [1, 1]]; // prettier-ignore
  // TRIAL.ORDER(8; 20260309) is 1 8 7 3 4 6 5 2, followed by hand (see its definition).
  const order = [1, 8, 7, 3, 4, 6, 5, 2];
  expect(calculated('=INDEX(TRIAL.ORDER(8; 20260309); 2)').value).toBe(order[1]);
  expect(two.trial.runs.map(({ levels }) => levels)).toEqual(order.map((run) => all[(run - 1) % 4]));
  expect(plan().trial.runs).toEqual(plan().trial.runs);
  expect(plan({ seed: 1 }).trial.runs).not.toEqual(plan().trial.runs);
});

test('1 what the block gives is told before cutting', () => {
  // 5.6 dm3 at 0.7 dm3 a run: 8 runs; by hand.
  const stock = { atHand: '5.6 dm3', perRun: '0.7 dm3' };
  expect(plan({ stock }).stock).toEqual({
    runs: 8,
    fits: true,
    repeats: 4,
    words: '5.6 dm3 at 0.7 dm3 a run gives 8 runs; 6 are planned: it fits.',
  });
  const short = plan({ stock, repeats: 5 });
  expect(short.stock?.words).toBe(
    '5.6 dm3 at 0.7 dm3 a run gives 8 runs; 10 are planned: 2 runs too many. It lasts for 4 repeats of everything.',
  );
  expect(short.cautions).toContain(short.stock?.words);
  expect(words({ stock: { atHand: '2 m', perRun: '3 kg' } })).toMatch(/not of one dimension/);
});

test('a plan says when an edge is stopped, what is measured when, and what weakens it', () => {
  const one = plan({
    repeats: 1,
    measurands: [
      { name: 'VB', unit: 'mm', limit: '0.3', when: 'after every third pass' },
      { name: 'Ra', unit: 'um' },
    ],
  });
  expect(one.stops).toEqual(['Stop the edge when VB reaches 0.3 mm.']);
  expect(one.measured).toEqual(['VB in mm: after every third pass', 'Ra in um: after every pass']);
  expect(one.cautions.join()).toMatch(/no scatter/);
  expect(plan({ measurands: [{ name: 'VB', unit: 'mm' }] }).cautions.join()).toMatch(/no tool life/);
});

test('what can not be planned is refused in words', () => {
  expect(words({ title: ' ' })).toMatch(/title/);
  expect(words({ repeats: 0 })).toMatch(/at least once/);
  expect(words({ repeats: 501 })).toMatch(/1002 runs; 1000 is the most/);
  expect(words({ seed: -1 })).toMatch(/whole number/);
  expect(words({ factors: [{ name: 'a', levels: [] }] })).toMatch(/no level/);
  expect(words({ factors: [{ name: 'a', levels: ['x', 'x'] }] })).toMatch(/stands twice/);
  expect(words({ measurands: [] })).toMatch(/at least one thing/);
  expect(words({ measurands: [{ name: 'cut', unit: 'mm' }] })).toMatch(/word of the record/);
  expect(words({ measurands: [{ name: 'VB', unit: 'mn' }] })).toMatch(/not known/);
  expect(words({ measurands: [{ name: 'VB', unit: 'mm', limit: '3 min' }] })).toMatch(/not a time/);
  expect(words({ cutUnit: 'mmm' })).toMatch(/is none/);
});

test('2 passes are recorded with units, and a refusal changes nothing', () => {
  const notebook = planned();
  const [run = ''] = runsOf(notebook, [0]);
  const pass = {
    trial: 't1',
    run,
    edge: '1',
    cut: '3',
    values: [{ measurand: 'VB', content: '0,12' }],
    by: 'ab',
    at: AT,
    locale: { decimalMark: ',' as const },
  };
  const after = done(notebook, recordPass(notebook, pass));
  expect(theTrial(after).passes).toEqual([
    {
      id: 'p1',
      run,
      edge: '1',
      cut: '3 min',
      values: [{ measurand: 'VB', content: '0.12 mm' }],
      by: 'ab',
      at: AT,
    },
  ]);
  const refused = (more: Partial<typeof pass>): string =>
    refusalOf(recordPass(notebook, { ...pass, ...more }));
  expect(refused({ cut: '3 mm' })).toMatch(/here stands a time, not a length/);
  expect(refused({ cut: '-3' })).toMatch(/not less than nothing/);
  expect(refused({ cut: '' })).toBe('Cut is missing.');
  expect(refused({ cut: '=1+1' })).toMatch(/not a formula/);
  expect(refused({ values: [{ measurand: 'VB', content: 'much' }] })).toMatch(/not a number/);
  expect(refused({ values: [{ measurand: 'KB', content: '1' }] })).toMatch(/not measured/);
  expect(refused({ by: ' ' })).toMatch(/who cut/);
  expect(refused({ run: 'r99' })).toMatch(/not in the plan/);
  expect(refused({ edge: '' })).toMatch(/which edge/);
});

test('2 a correction keeps the first value with who and when, however often it is corrected', () => {
  const notebook = planned();
  const [run = ''] = runsOf(notebook, [0]);
  let so = recorded(notebook, run, [['3', '0.12']]);
  const correct = (what: string, typed: string): Transaction | Refusal =>
    correctPass(so, { trial: 't1', pass: 'p1', what, typed, by: 'cd', at: AT });
  so = done(so, correct('VB', '0.21'));
  so = done(so, correct('VB', '0.22'));
  so = done(so, correct('cut', '4 min'));
  so = done(so, correct('note', 'chipped'));
  so = done(so, correct('edge', '2'));
  const [pass] = theTrial(so).passes;
  if (!pass) throw new Error('no pass');
  expect([passValue(pass, 'VB'), firstValue(pass, 'VB')]).toEqual(['0.22 mm', '0.12 mm']);
  expect([pass.cut, firstValue(pass, 'cut'), pass.note, pass.edge, firstValue(pass, 'edge')]).toEqual([
    '4 min',
    '3 min',
    'chipped',
    '2',
    '1',
  ]);
  expect(pass.corrections).toHaveLength(5);
  so = done(so, correct('VB', ''));
  expect(theTrial(so).passes[0]?.values).toEqual([]);
  expect(theTrial(so).passes[0]?.corrections?.at(-1)).toEqual({
    at: AT,
    by: 'cd',
    what: 'VB',
    was: '0.22 mm',
  });
  expect(refusalOf(correct('VB', 'x'))).toMatch(/not a number/);
  const same = correct('cut', '4 min');
  expect(isRefusal(same) ? [] : same.changes).toEqual([]);
});

test('2 a pass is withdrawn with a reason and stays; a trial with passes goes only with its count told, and comes back', () => {
  const notebook = planned();
  const [run = ''] = runsOf(notebook, [0]);
  const so = recorded(notebook, run, [['3', '0.12']]);
  const sign = { trial: 't1', pass: 'p1', by: 'cd', at: AT };
  expect(refusalOf(withdrawPass(so, { ...sign, reason: ' ' }))).toMatch(/with a reason/);
  const after = done(so, withdrawPass(so, { ...sign, reason: 'wrong insert' }));
  expect(theTrial(after).passes[0]).toMatchObject({ withdrawn: 'wrong insert', cut: '3 min' });
  const back = done(after, withdrawPass(after, { ...sign, reason: '' }));
  expect(theTrial(back).passes[0]?.withdrawn).toBeUndefined();
  expect(theTrial(back).passes[0]?.corrections).toHaveLength(2);
  const removed = removeTrial(so, { trial: 't1' });
  if (isRefusal(removed)) throw new Error(removed.message);
  expect(removed.notice).toMatch(/with 1 recorded pass; undo brings it back/);
  expect(apply(apply(so, removed.changes), inverse(removed).changes)).toEqual(so);
  expect(refusalOf(changeTrial(so, { ...PLAN, trial: 't1' }))).toMatch(/the plan stays/);
  expect(
    theTrial(done(notebook, changeTrial(notebook, { ...PLAN, trial: 't1', repeats: 4 }))).runs,
  ).toHaveLength(8);
});

const PHOTOGRAPH: Omit<Photograph, 'id'> = {
  type: 'image/jpeg',
  data: 'AAAA',
  width: 4,
  height: 3,
  words: 'edge 1',
};

test('a photograph comes with its pass, and the file keeps at most 40', () => {
  let so = planned();
  const [run = ''] = runsOf(so, [0]);
  const pass = { trial: 't1', run, edge: '1', cut: '1', values: [], by: 'ab', at: AT };
  so = done(so, recordPass(so, { ...pass, photograph: PHOTOGRAPH }));
  expect(theTrial(so).passes[0]?.photograph).toBe('p1');
  expect(partsOf(so, 'photographs')).toHaveLength(1);
  expect(refusalOf(attachPhotograph(so, { trial: 't1', pass: 'p1', photograph: PHOTOGRAPH }))).toMatch(
    /already/,
  );
  for (let k = 1; k < 40; k++) so = done(so, recordPass(so, { ...pass, photograph: PHOTOGRAPH }));
  expect(refusalOf(recordPass(so, { ...pass, photograph: PHOTOGRAPH }))).toMatch(/40 photographs/);
  expect(
    refusalOf(recordPass(planned(), { ...pass, photograph: { ...PHOTOGRAPH, data: 'A'.repeat(170_001) } })),
  ).toMatch(/too large/);
});

test('a second trial has an id of its own', () => {
  const notebook = planned();
  expect(partsOf(done(notebook, addTrial(notebook, PLAN)), 'trials').map(({ id }) => id)).toEqual([
    't1',
    't2',
  ]);
});
