/** The results as the exchange formats want them. */

import type { CellResult } from '../calculation/index.ts';
import { addressText } from '../expression/index.ts';
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
