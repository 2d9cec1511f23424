/** A question that can not be worked on, in the user's words. */

import type { CellAddress } from '../calculation/index.ts';

export class Refused extends Error {
  readonly cell: CellAddress | undefined;

  constructor(message: string, cell?: CellAddress) {
    super(message);
    this.name = 'Refused';
    this.cell = cell;
  }
}
