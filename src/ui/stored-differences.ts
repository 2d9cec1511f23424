/** What the calculator finds otherwise than the results a notebook came with: by another program, or changed by hand in the file. */

import type { CellAddress } from '../calculation/index.ts';
import { addressText, readAddress } from '../expression/index.ts';
import { cellAt, findWorksheet } from '../document/index.ts';
import type { Notebook } from '../document/index.ts';
import type { StoredResult } from '../exchange/index.ts';
import type { KeptResults } from './ports.ts';
import type { KnownResult, Results } from './results.ts';

export interface StoredDifference {
  readonly worksheet: string;
  readonly row: number;
  readonly column: number;
  /** Absent: there was no result. */
  readonly stored?: StoredResult;
  /** Absent: there is none now. */
  readonly now?: KnownResult;
}

export interface StoredDifferences {
  /** Version of the program that computed the stored results; "" where it is not known. */
  readonly program: string;
  readonly list: readonly StoredDifference[];
}

/** Larger relative differences are told. */
const TOLERANCE = 1e-9;

const isSameValue = (a: StoredResult['value'], b: StoredResult['value']): boolean =>
  typeof a === 'number' && typeof b === 'number'
    ? Math.abs(a - b) <= TOLERANCE * Math.max(Math.abs(a), Math.abs(b))
    : a === b;

const isSameResult = (stored: StoredResult, now: KnownResult): boolean =>
  isSameValue(stored.value, now.value) &&
  stored.kind === now.kind &&
  stored.unit === now.unit &&
  stored.error?.code === now.error?.code;

const placeText = ({ worksheet, row, column }: CellAddress): string => `${worksheet} ${row} ${column}`;

/** Undefined where nothing differs, or where the stored results are of an earlier state of the notebook. */
export function storedDifferences(
  { results: stored, program, exact }: KeptResults,
  results: Results,
  notebook: Notebook,
): StoredDifferences | undefined {
  if (!exact || stored.size === 0) return undefined;
  const list: StoredDifference[] = [];
  /** Formulas of whose further values some are stored: where none are, the file was written without them. */
  const filling = new Set<string>();
  for (const [worksheet, cells] of stored)
    for (const [address, before] of cells) {
      const place = readAddress(address);
      if (!place) continue;
      const { row, column } = place;
      const now = results.at(worksheet, row, column);
      if (now?.origin) filling.add(placeText(now.origin));
      if (!now || !isSameResult(before, now))
        list.push({ worksheet, row, column, stored: before, ...(now && { now }) });
    }
  results.forEach((now, worksheet, row, column) => {
    const sheet = findWorksheet(notebook, worksheet);
    const cell = sheet && cellAt(sheet, row, column);
    // What was typed is not stored: it speaks for itself.
    if (!sheet || (cell && !cell.content.startsWith('='))) return;
    if (now.origin && !filling.has(placeText(now.origin))) return;
    if (!stored.get(worksheet)?.has(addressText(column, row))) list.push({ worksheet, row, column, now });
  });
  return list.length === 0 ? undefined : { program, list };
}
