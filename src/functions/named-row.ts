/** Finds a row of a table by one of its names, or tells what the table has. */

import { failure, type Failure, type Grid, type Scalar } from '../expression/index.ts';

/** Case, spaces, hyphens and dots do not tell names apart. */
const plain = (text: string): string => text.toLowerCase().replaceAll(/[^a-z0-9%]/g, '');

/** The row, or #N/A with the first names of all rows: for short tables. */
export function namedRow<Row extends { readonly names: readonly string[] }>(
  rows: readonly Row[],
  name: Scalar | Grid | undefined,
): Row | Failure {
  if (typeof name !== 'string') return failure('#VALUE!', 'value missing: name');
  const found = rows.find(({ names }) => names.some((each) => plain(each) === plain(name)));
  if (found) return found;
  const known = rows.map(({ names }) => `"${names[0]}"`).join(', ');
  return failure('#N/A', `no "${name}" in the table; it has ${known}`);
}
