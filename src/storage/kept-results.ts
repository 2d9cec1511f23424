/** The last computed results beside a notebook: painted at its next start until they are confirmed. */

import { NO_RESULTS, readResults, writeResults } from '../exchange/index.ts';
import type { PassingResults } from '../exchange/index.ts';
import type { Notebook } from '../document/index.ts';
import type { KeptResults } from './opened-notebook.ts';
import type { KeptNotebook } from './read-kept.ts';

/** Longest text of results that is kept; a notebook with more is painted when it is computed. */
const LONGEST = 2_000_000;

interface ResultsRecord {
  /** Of the entry after which they were computed. */
  readonly hash: string;
  readonly program: string;
  readonly body: string;
}

const isKeptText = (value: unknown): value is ResultsRecord =>
  typeof value === 'object' &&
  value !== null &&
  ['hash', 'program', 'body'].every((key) => typeof (value as Record<string, unknown>)[key] === 'string');

/**
 * The record of results that belong to the notebook whose last entry has this hash: written piece by piece, `next` between
 * them. Undefined where there are none or too many to be kept, or where `next` says that they are no longer wanted.
 */
export async function resultsRecord(
  notebook: Notebook,
  results: PassingResults,
  { hash, program }: { readonly hash: string; readonly program: string },
  next: () => Promise<boolean>,
): Promise<ResultsRecord | undefined> {
  if (results.size === 0) return undefined;
  let body = '';
  for (const piece of writeResults(notebook, results)) {
    body += piece;
    if (body.length > LONGEST || !(await next())) return undefined;
  }
  return body === '{}' ? undefined : { hash, program, body };
}

export function keptResultsOf({ notebook, best, finds }: KeptNotebook): KeptResults {
  const kept = finds.map((find) => find.results).find(isKeptText);
  if (!kept) return { results: NO_RESULTS, program: '', exact: false };
  const { body, program, hash } = kept;
  return { results: readResults(body, notebook), program, exact: hash === best.hash };
}
