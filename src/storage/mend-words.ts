/** What the user is told where something on the device was damaged. */

import type { KeptNotebook } from './read-kept.ts';

const PLACE = 'One of the two places where this browser keeps the notebook';

/** Said where every place is damaged: what could not be read is missing. */
export const damageWords = ({ best, chains }: KeptNotebook): string[] =>
  best.damaged && chains.every((chain) => !chain || chain.damaged)
    ? ['A record on this device was damaged: the notebook was restored to the last edit that could be read.']
    : [];

/** About a place that lagged behind and was, or could not be, restored from the other. */
export function mendWords(found: KeptNotebook, restored: boolean): string[] {
  const { best, chains } = found;
  if (!restored) return [`${PLACE} can not be written: save a file copy.`];
  if (chains.some((chain) => !chain)) return [`${PLACE} was empty: it was restored from the other.`];
  // One edit behind is how a place looks where the program ended between the two writes: nothing was lost.
  const damaged = chains.some((chain) => chain && (chain.damaged || chain.seq < best.seq - 1));
  return damaged && damageWords(found).length === 0
    ? [`${PLACE} was damaged: it was restored from the other.`]
    : [];
}
