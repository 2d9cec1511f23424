/** From the records of a notebook to the notebook as it was after the last edit that can be read, and the steps before it. */

import { apply, EMPTY_HISTORY } from '../document/index.ts';
import type { History, Notebook } from '../document/index.ts';
import { readNotebook } from '../exchange/index.ts';
import { stepsTo } from './chain.ts';
import type { Chain, Entry } from './chain.ts';
import { historyAfter, readBody } from './journal-entry.ts';
import type { Leg } from './leg.ts';
import { chainOf, findRecords, recordKey, type Found, type Head } from './notebook-records.ts';

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

/**
 * From the first leg alone, where everything there is sound and the heads of the others say the same: reading hundreds of
 * records from Cache Storage takes longer than all the rest. Undefined where all legs have to be read.
 */
export async function readFirst(legs: readonly Leg[], id: string): Promise<KeptNotebook | undefined> {
  const [first, ...others] = legs;
  if (!first) return undefined;
  const key = recordKey.head(id);
  const [find, ...heads] = await Promise.all([
    findRecords(first, id, true),
    ...others.map((leg) => leg.get(key).catch(() => undefined)),
  ]);
  const chain = chainOf(find, new Set());
  if (!chain || chain.damaged || ![find.head, ...heads].every((head) => isHeadOf(chain, head)))
    return undefined;
  const read = readNotebook(chain.snapshot.body, 'own');
  if (!('notebook' in read)) return undefined;
  const replayed = replay(read.notebook, chain);
  const steps = stepsTo(chain, find.entries);
  if (replayed.best.damaged || steps.length < find.entryNumbers.length) return undefined;
  return {
    ...replayed,
    history: historyOf(steps),
    finds: [find],
    chains: [chain],
    steps,
    newer: read.newer === true,
  };
}

/** The longer one; of two equal ones that in which nothing was damaged. */
const isBetter = (a: Chain, b: Chain): boolean =>
  a.seq > b.seq || (a.seq === b.seq && b.damaged && !a.damaged);

const isHeadOf = ({ seq, hash }: Chain, head: unknown): boolean =>
  JSON.stringify(head) === JSON.stringify({ seq, hash } satisfies Head);

const historyOf = (steps: readonly Entry[]): History =>
  steps.reduce((sum, { body }) => historyAfter(sum, readBody(body)), EMPTY_HISTORY);

/** Undefined where no leg has the notebook; throws with the reason where it is there and can not be read at all. */
export async function readKept(legs: readonly Leg[], id: string): Promise<KeptNotebook | undefined> {
  const finds = await Promise.all(legs.map((leg, k) => findRecords(leg, id, k === 0)));
  const refused = new Set<string>();
  let words = '';
  for (;;) {
    const chains = finds.map((find) => chainOf(find, refused));
    const best = chains.reduce((a, b) => (b && (!a || isBetter(b, a)) ? b : a), undefined);
    if (!best) {
      if (words !== '') throw new Error(words);
      return undefined;
    }
    const read = readNotebook(best.snapshot.body, 'own');
    if ('notebook' in read) {
      const replayed = replay(read.notebook, best);
      const steps = await stepsBefore(legs, id, finds, replayed.best);
      return { ...replayed, history: historyOf(steps), finds, chains, steps, newer: read.newer === true };
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
