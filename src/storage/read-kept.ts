/** From the records of a notebook to the notebook as it was after the last edit that can be read, and the steps before it. */

import { apply, EMPTY_HISTORY } from '../document/index.ts';
import type { History, Notebook } from '../document/index.ts';
import { readNotebook } from '../exchange/index.ts';
import { stepsTo } from './chain.ts';
import type { Chain, Entry } from './chain.ts';
import { historyAfter, readBody } from './journal-entry.ts';
import type { Leg } from './leg.ts';
import { chainOf, findRecords, type Found } from './notebook-records.ts';

export interface KeptNotebook {
  readonly notebook: Notebook;
  readonly history: History;
  readonly best: Chain;
  /** By leg. */
  readonly finds: readonly Found[];
  readonly chains: readonly (Chain | undefined)[];
  /** Every entry that is still there, oldest first. */
  readonly steps: readonly Entry[];
  /** Written by a newer program: to be read, not to be changed. */
  readonly newer: boolean;
}

/** Undefined where no leg has the notebook; throws with the reason where it is there and can not be read at all. */
export async function readKept(legs: readonly Leg[], id: string): Promise<KeptNotebook | undefined> {
  const finds = await Promise.all(legs.map((leg, k) => findRecords(leg, id, k === 0)));
  const refused = new Set<string>();
  let words = '';
  for (;;) {
    const chains = finds.map((find) => chainOf(find, refused));
    const best = chains.reduce((a, b) => (b && (!a || b.seq > a.seq) ? b : a), undefined);
    if (!best) {
      if (words !== '') throw new Error(words);
      return undefined;
    }
    const read = readNotebook(best.snapshot.body, 'own');
    if ('notebook' in read) {
      const replayed = replay(read.notebook, best);
      const steps = await stepsBefore(legs, id, finds, replayed.best);
      const history = steps.reduce((sum, { body }) => historyAfter(sum, readBody(body)), EMPTY_HISTORY);
      return { ...replayed, history, finds, chains, steps, newer: read.newer === true };
    }
    words = read.message;
    refused.add(best.snapshot.check);
  }
}

/** The notebook after the entries that can be carried out; the chain ends with the last of them. */
function replay(start: Notebook, chain: Chain): { readonly notebook: Notebook; readonly best: Chain } {
  let notebook = start;
  for (const [k, entry] of chain.entries.entries()) {
    try {
      const step = readBody(entry.body);
      if (!step) throw new TypeError('no transaction');
      notebook = apply(notebook, step.changes);
    } catch {
      const { seq, hash } = chain.entries[k - 1] ?? chain.snapshot;
      return {
        notebook,
        best: { ...chain, entries: chain.entries.slice(0, k), seq, hash, damaged: true },
      };
    }
  }
  return { notebook, best: chain };
}

/** From the first leg; where its steps are missing (it was thrown away), from the others. */
async function stepsBefore(
  legs: readonly Leg[],
  id: string,
  finds: readonly Found[],
  best: Chain,
): Promise<readonly Entry[]> {
  const own = stepsTo(best, finds[0]?.entries ?? []);
  if (own.length > 0 && own.length >= Math.max(0, ...finds.map((find) => find.entryNumbers.length)))
    return own;
  let longest = own;
  for (const leg of legs.slice(1)) {
    const steps = stepsTo(best, (await findRecords(leg, id, true)).entries);
    if (steps.length > longest.length) longest = steps;
  }
  return longest;
}
