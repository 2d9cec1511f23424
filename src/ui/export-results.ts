/** The results as the exchange formats want them. */

import type { CellResult } from '../calculation/index.ts';
import type { PassingResults } from '../exchange/index.ts';
import { addressText } from '../expression/index.ts';
import type { ResultRow } from './results.ts';
import type { Session } from './session.ts';

/** By worksheet id, then by address ("B3"). */
export function resultsFor(session: Session): Map<string, Map<string, CellResult>> {
  const all = new Map<string, Map<string, CellResult>>();
  session.results.forEach((result, worksheet, row, column) => {
    const cells = all.get(worksheet) ?? new Map<string, CellResult>();
    all.set(worksheet, cells);
    cells.set(addressText(column, row), result);
  });
  return all;
}

/** The same as they are now, to be gone through once and later: what changes meanwhile is not seen. Takes no time for each. */
export function resultsAsTheyAre(session: Session): PassingResults {
  const all = session.results.rowsAsTheyAre();
  return new Map([...all].map(([worksheet, rows]) => [worksheet, addressed(rows)]));
}

function* addressed(rows: Iterable<readonly [number, ResultRow]>): Generator<readonly [string, CellResult]> {
  for (const [row, cells] of rows)
    for (const [column, result] of cells) yield [addressText(column, row), result];
}
