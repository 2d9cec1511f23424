/** Trials for the tests: planned and recorded through the commands, in a small notebook. */

import { emptyNotebook } from '../../src/document/index.ts';
import type { Notebook, Trial } from '../../src/document/index.ts';
import { addTrial, recordPass, trialOf } from '../../src/trial/index.ts';
import type { PlanArgs } from '../../src/trial/index.ts';
import { done } from '../document/sample.ts';

export const PLAN: Omit<PlanArgs, 'currency'> = {
  title: 'Round against sharp',
  factors: [{ name: 'geometry', levels: ['sharp', 'round'] }],
  repeats: 3,
  seed: 20260309,
  measurands: [{ name: 'VB', unit: 'mm', limit: '0.3' }],
};

export const AT = '2026-03-09T08:00:00Z';

export function planned(args: Partial<Omit<PlanArgs, 'currency'>> = {}): Notebook {
  const notebook = emptyNotebook({ id: 'n1' });
  return done(notebook, addTrial(notebook, { ...PLAN, ...args }));
}

export const theTrial = (notebook: Notebook): Trial => {
  const trial = trialOf(notebook, 't1');
  if (!trial) throw new Error('no trial');
  return trial;
};

/** Runs of a combination of levels, in the order in which they are cut. */
export const runsOf = (notebook: Notebook, levels: readonly number[]): readonly string[] =>
  theTrial(notebook)
    .runs.filter((run) => run.levels.join() === levels.join())
    .map(({ id }) => id);

/** Records passes of one run: cut of each pass and wear after it, as typed. */
export function recorded(
  notebook: Notebook,
  run: string,
  passes: readonly (readonly [cut: string, wear: string])[],
  measurand = 'VB',
): Notebook {
  return passes.reduce(
    (so, [cut, content]) =>
      done(
        so,
        recordPass(so, {
          trial: 't1',
          run,
          edge: '1',
          cut,
          values: [{ measurand, content }],
          by: 'ab',
          at: AT,
        }),
      ),
    notebook,
  );
}

/** A notebook in which every edge of a combination lasts exactly as long as stated (min): 0.2 mm before, 0.4 mm after, 2 min apart. */
export function withLives(
  notebook: Notebook,
  lives: readonly { readonly levels: readonly number[]; readonly minutes: readonly number[] }[],
): Notebook {
  let so = notebook;
  for (const { levels, minutes } of lives) {
    const runs = runsOf(so, levels);
    for (const [index, life] of minutes.entries())
      so = recorded(so, runs[index] ?? '', [
        [String(life - 1), '0.2'],
        ['2', '0.4'],
      ]);
  }
  return so;
}
