/** Passes that were recorded on both sides of one trial: all of them stay. */

import { isSame } from '../document/index.ts';
import type { Trial, TrialPass } from '../document/index.ts';

function planOf({ passes: _passes, ...plan }: Trial): Omit<Trial, 'passes'> {
  return plan;
}

const byId = ({ passes }: Trial): Map<string, TrialPass> => new Map(passes.map((pass) => [pass.id, pass]));

/**
 * Both sides' passes in one trial; undefined where that can not be said without a choice: the plan differs on both
 * sides, or one pass was changed on both.
 */
export function mergedTrial(base: Trial | undefined, ours: Trial, theirs: Trial): Trial | undefined {
  const before = base ? planOf(base) : undefined;
  const [here, there] = [planOf(ours), planOf(theirs)];
  const ourPlan = !isSame(here, before);
  if (ourPlan && !isSame(there, before) && !isSame(here, there)) return undefined;
  const [known, own] = [base ? byId(base) : new Map<string, TrialPass>(), byId(ours)];
  const passes = [...ours.passes];
  let next =
    Math.max(0, ...[...ours.passes, ...theirs.passes].map(({ id }) => Number(/\d+$/.exec(id)?.[0] ?? 0))) + 1;
  for (const pass of theirs.passes) {
    const [was, is] = [known.get(pass.id), own.get(pass.id)];
    if (is && isSame(is, pass)) continue;
    if (!was && !is) passes.push(pass);
    else if (!was) {
      passes.push({ ...pass, id: `p${next}` });
      next += 1;
    } else if (isSame(was, pass)) continue;
    else if (is && isSame(was, is)) passes[passes.indexOf(is)] = pass;
    else return undefined;
  }
  // A pass that they took away while we left it stays: records are not removed in silence.
  return { ...(ourPlan ? here : there), passes };
}
