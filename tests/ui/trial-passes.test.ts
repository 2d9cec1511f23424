/** Which pass comes next, and what a pass being written down becomes. */

import { expect, test } from 'vitest';
import { apply, emptyNotebook, isRefusal, partsOf } from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction, Trial } from '../../src/document/index.ts';
import { addTrial } from '../../src/trial/index.ts';
import { numberFields, passAnswer, passDraft, withText } from '../../src/ui/pass-saving.ts';
import { draftOf, freshDraft, isPlan, planArgs, planOf } from '../../src/ui/trial-draft.ts';
import { cutSoFar, limitReached, nextPass, runWords } from '../../src/ui/trial-passes.ts';

const carried = (notebook: Notebook, answer: Transaction | Refusal): Notebook => {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(notebook, answer.changes);
};
const trialOf = (notebook: Notebook): Trial => {
  const [trial] = partsOf(notebook, 'trials');
  if (!trial) throw new Error('no trial');
  return trial;
};
const signed = { by: 'JK', at: '2026-11-25T14:20:00.000Z' };

function planned(): Notebook {
  const notebook = emptyNotebook({ id: 'n1', title: 'trial', reading: 'metric' });
  return carried(
    notebook,
    addTrial(notebook, {
      title: 'A against B',
      factors: [{ name: 'geometry', levels: ['A', 'B'] }],
      repeats: 2,
      seed: 7,
      measurands: [{ name: 'VB', unit: 'mm', limit: '0.3 mm' }],
    }),
  );
}

function recorded(notebook: Notebook, cut: string, wear: string): Notebook {
  const trial = trialOf(notebook);
  const draft = withText(withText(passDraft(trial, undefined, 'EUR'), 'cut', cut), 'VB', wear);
  return carried(notebook, passAnswer(notebook, trial, draft, signed).answer);
}

test('the edge in hand goes on until a limit is reached, then the next run of the order comes with a fresh edge', () => {
  let notebook = planned();
  const [first, second] = trialOf(notebook).runs;
  expect(nextPass(trialOf(notebook), 'EUR')).toEqual({ run: first?.id, edge: '1' });
  notebook = recorded(notebook, '6', '0.12');
  expect(nextPass(trialOf(notebook), 'EUR')).toEqual({ run: first?.id, edge: '1' });
  notebook = recorded(notebook, '360 s', '310 um');
  expect(cutSoFar(trialOf(notebook), first?.id ?? '', '1', 'EUR').replaceAll(/\s/g, ' ')).toBe('12 min');
  expect(limitReached(trialOf(notebook), first?.id ?? '', '1', 'EUR')).toBe('VB has reached 0.3 mm');
  expect(nextPass(trialOf(notebook), 'EUR')).toEqual({
    run: second?.id,
    edge: '2',
    ended: 'Edge 1: VB has reached 0.3 mm',
  });
  expect(trialOf(notebook).passes.map(({ cut, values }) => [cut, values[0]?.content])).toEqual([
    ['6 min', '0.12 mm'],
    ['360 s', '310 um'],
  ]);
});

test('a refusal names the field that is to blame', () => {
  const notebook = planned();
  const trial = trialOf(notebook);
  const fresh = passDraft(trial, undefined, 'EUR');
  expect(passAnswer(notebook, trial, fresh, signed).key).toBe('cut');
  const wrong = withText(withText(fresh, 'cut', '6'), 'VB', '3 min');
  expect(passAnswer(notebook, trial, wrong, signed)).toMatchObject({
    key: 'VB',
    answer: { message: expect.stringContaining('not a time') },
  });
  expect(passAnswer(notebook, trial, withText(withText(fresh, 'cut', '6'), 'edge', ''), signed).key).toBe(
    'edge',
  );
});

test('a correction changes what was changed only, in one step, and keeps what stood there', () => {
  const notebook = recorded(planned(), '6', '0.12');
  const trial = trialOf(notebook);
  const [pass] = trial.passes;
  const draft = withText(passDraft(trial, pass, 'EUR'), 'VB', '0.13');
  const answer = passAnswer(notebook, trial, draft, { by: 'MK', at: signed.at }).answer;
  if (isRefusal(answer)) throw new Error(answer.message);
  expect(answer.changes.length).toBe(1);
  expect(trialOf(apply(notebook, answer.changes)).passes[0]).toMatchObject({
    cut: '6 min',
    values: [{ measurand: 'VB', content: '0.13 mm' }],
    corrections: [{ by: 'MK', what: 'VB', was: '0.12 mm' }],
  });
});

test('fields say how far the edge is and where it stops', () => {
  const notebook = recorded(planned(), '6', '0.12');
  const trial = trialOf(notebook);
  const fields = numberFields(trial, passDraft(trial, undefined, 'EUR'), 'EUR');
  expect(fields.map(({ about }) => about.replaceAll(/\s/g, ' '))).toEqual([
    'this edge so far 6 min',
    'stop at 0.3 mm',
  ]);
});

test('a plan is read from its fields, and a planned trial gives the same fields again', () => {
  const notebook = emptyNotebook({ id: 'n1', title: 'trial', reading: 'metric' });
  const draft = {
    ...freshDraft(Date.UTC(2026, 10, 25)),
    factors: [{ name: 'vc', levels: '220 m/min; 260 m/min;' }],
    atHand: '5 dm3',
    perRun: '0.9 dm3',
  };
  expect(planArgs(draft, notebook)).toMatchObject({
    factors: [{ name: 'vc', levels: ['220 m/min', '260 m/min'] }],
    repeats: 3,
    seed: 20261125,
    stock: { atHand: '5 dm3', perRun: '0.9 dm3' },
  });
  const plan = planOf(draft, notebook);
  if (!isPlan(plan)) throw new Error(plan.message);
  // 5 / 0.9 is 5.6: five whole runs for six planned ones.
  expect(plan.stock).toMatchObject({ runs: 5, fits: false });
  const again = draftOf({ id: 't1', ...plan.trial }, 'EUR');
  expect(planArgs(again, notebook)).toEqual(planArgs(draft, notebook));
  expect(isPlan(planOf({ ...draft, repeats: 'three' }, notebook))).toBe(false);
});

test('a run is named by its place in the order and its levels', () => {
  const trial = trialOf(planned());
  const [first] = trial.runs;
  expect(first && runWords(trial, first)).toMatch(/^Run 1 · [AB]$/);
});
