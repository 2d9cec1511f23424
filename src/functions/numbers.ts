/** The numbers of a checked list argument. */

import { isGrid, type Value } from '../expression/index.ts';

/** Row by row; the argument check has seen to it that nothing else is in a list of numbers. A single number is a list of one. */
export function numbersOf(value: Value | undefined): number[] {
  if (value === undefined || value === null) return [];
  const scalars = isGrid(value) ? value.grid.flat() : [value];
  return scalars.filter((scalar): scalar is number => typeof scalar === 'number');
}
