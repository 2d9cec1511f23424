/** Bringing together what two devices made of one notebook: nothing of either side goes without being listed. */

import { apply, findWorksheet, isRefusal, isSame, transactionTo } from '../document/index.ts';
import type { Notebook, Refusal, Transaction, Trial } from '../document/index.ts';
import { laidOut } from './common-lines.ts';
import type { Three } from './common-lines.ts';
import { titled, withNames } from './common-titles.ts';
import { compareNotebooks, takeDifferences } from './compare-notebooks.ts';
import type { Difference } from './compare-notebooks.ts';
import { mergedTrial } from './merge-trials.ts';

export interface Merged {
  /** What they changed and we did not: one step on our notebook. */
  readonly transaction: Transaction | Refusal;
  /**
   * What both changed, each in another way: ours stays until chosen. Places are those of the merged notebook, so that
   * `takeDifferences` on it takes theirs.
   */
  readonly conflicts: readonly Difference[];
  /** What was taken over, with what stood in our notebook before. */
  readonly taken: readonly Difference[];
  /** What we changed and they did not, with what theirs still holds. */
  readonly kept: readonly Difference[];
}

/** The same place has the same key whichever two states are compared. */
export function placeKey(difference: Difference): string {
  switch (difference.type) {
    case 'cell':
      return JSON.stringify(['cell', difference.worksheet, difference.row, difference.column]);
    case 'name':
      return JSON.stringify(['name', difference.worksheet, difference.name]);
    case 'mark':
      return JSON.stringify(['mark', difference.worksheet]);
    case 'worksheet':
      return JSON.stringify(['worksheet', (difference.ours ?? difference.theirs)?.id]);
    case 'setting':
      return JSON.stringify(['setting', difference.key]);
    case 'part':
      return JSON.stringify(['part', difference.part, difference.id]);
  }
}

interface Sorted {
  readonly taken: Difference[];
  readonly conflicts: Difference[];
  readonly kept: Difference[];
}

const trialIn = ({ parts }: Notebook, id: string): Trial | undefined =>
  parts?.trials?.find((trial) => trial.id === id);

/** A trial that both went on with: all passes of both, as one to be taken; undefined where a choice is needed. */
function bothTrials({ base, ours, theirs }: Three, difference: Difference): Difference | undefined {
  if (difference.type !== 'part' || difference.part !== 'trials') return undefined;
  const [here, there] = [trialIn(ours, difference.id), trialIn(theirs, difference.id)];
  const merged = here && there && mergedTrial(trialIn(base, difference.id), here, there);
  return merged && { ...difference, theirs: merged };
}

/** A worksheet that one side took away while the other went on with it. */
function isContested({ base, ours, theirs }: Three, difference: Difference): boolean {
  if (difference.type !== 'worksheet') return false;
  const { id = '' } = difference.ours ?? difference.theirs ?? {};
  const before = findWorksheet(base, id);
  const after = findWorksheet(ours, id) ?? findWorksheet(theirs, id);
  return before !== undefined && !isSame(before, after);
}

function sorted(three: Three): Sorted {
  const ourChanges = new Set(compareNotebooks(three.base, three.ours).map(placeKey));
  const theirChanges = new Set(compareNotebooks(three.base, three.theirs).map(placeKey));
  const result: Sorted = { taken: [], conflicts: [], kept: [] };
  for (const difference of compareNotebooks(three.ours, three.theirs)) {
    const key = placeKey(difference);
    if (isContested(three, difference)) result.conflicts.push(difference);
    else if (!theirChanges.has(key)) result.kept.push(difference);
    else if (!ourChanges.has(key)) result.taken.push(difference);
    else {
      const both = bothTrials(three, difference);
      if (both) result.taken.push(both);
      else result.conflicts.push(difference);
    }
  }
  return result;
}

/**
 * Brings together what two devices made of one notebook, `base` being the last state both had. Rows and columns that
 * either side inserted, took away or moved are laid upon one another first, and what one side renamed is renamed on the
 * other, so that only what really differs is compared.
 */
export function mergeNotebooks(base: Notebook, ours: Notebook, theirs: Notebook): Merged {
  const named = titled({ base, ours, theirs: { ...theirs, id: ours.id } });
  const laid = laidOut(named);
  const { removed } = laid;
  const three = withNames(laid);
  const { taken, conflicts, kept } = sorted(three);
  const step = takeDifferences(three.ours, taken);
  const merged = isRefusal(step) ? step : apply(three.ours, step.changes);
  return {
    transaction: transactionTo(ours, merged, 'merge what was changed elsewhere'),
    conflicts: [...named.conflicts, ...conflicts],
    taken: [...named.taken, ...taken, ...removed.filter((each) => each.ours !== undefined)],
    kept: [...named.kept, ...kept, ...removed.filter((each) => each.theirs !== undefined)],
  };
}

export interface Beside {
  /** The step that makes room in our notebook for lines that only theirs has; without changes where none is needed. */
  readonly room: Transaction | Refusal;
  /** Theirs as it lies beside our notebook once there is room, worksheets called as ours are. */
  readonly theirs: Notebook;
  /** The state both had, laid out alike; absent where none is known. */
  readonly base?: Notebook;
}

/**
 * Their notebook laid beside ours row by row and column by column, so that `compareNotebooks` finds what really differs
 * even where one side inserted or deleted some. Nothing is taken and nothing removed.
 */
export function laidBeside(ours: Notebook, theirs: Notebook, base?: Notebook): Beside {
  const named = titled({ base: base ?? ours, ours, theirs: { ...theirs, id: ours.id } });
  const laid = laidOut({ ...named, ours }, false);
  return {
    room: transactionTo(ours, laid.ours, 'make room for what was inserted elsewhere'),
    theirs: laid.theirs,
    ...(base && { base: laid.base }),
  };
}
