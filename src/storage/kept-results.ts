/** The last computed results beside a notebook: painted at its next start until they are confirmed. */

import { NO_RESULTS, readResults, writeResults } from '../exchange/index.ts';
import type { StoredResults } from '../exchange/index.ts';
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

/** Undefined where they are too many to be kept. */
export function resultsRecord(
  notebook: Notebook,
  results: StoredResults,
  hash: string,
  program: string,
): ResultsRecord | undefined {
  const body = results.size > 0 ? writeResults(notebook, results) : '';
  return body === '' || body.length > LONGEST ? undefined : { hash, program, body };
}

export function keptResultsOf({ notebook, best, finds }: KeptNotebook): KeptResults {
  const kept = finds.map((find) => find.results).find(isKeptText);
  if (!kept) return { results: NO_RESULTS, program: '', exact: false };
  const { body, program, hash } = kept;
  return { results: readResults(body, notebook), program, exact: hash === best.hash };
}
