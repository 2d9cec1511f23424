/** Addresses in files: capitals without dollar signs. */

import { readAddress } from '../expression/index.ts';
import type { Block } from '../document/index.ts';

/** Row and column of "B3"; undefined for anything else, "B03" included: a cell has one address. */
export function addressPlace(text: string): { readonly row: number; readonly column: number } | undefined {
  if (!/^[A-Z]{1,2}[1-9]\d*$/.test(text)) return undefined;
  const corner = readAddress(text);
  return corner && { row: corner.row, column: corner.column };
}

/** The block of "B3" or "B3:C9"; undefined for anything else. */
export function blockPlace(text: string): Block | undefined {
  const [first = '', last = first, ...more] = text.split(':');
  const from = addressPlace(first);
  const to = addressPlace(last);
  if (!from || !to || more.length > 0 || to.row < from.row || to.column < from.column) return undefined;
  return { ...from, rows: to.row - from.row + 1, columns: to.column - from.column + 1 };
}
