/** Where something stands on a worksheet; rows and columns count from 0. */

/** Corners count from 0, both included. */
export interface Block {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
}

/** One cell, wherever rows and columns take it. */
export interface CellPlace {
  /** Worksheet id. */
  readonly worksheet: string;
  readonly row: number;
  readonly column: number;
}

/** A block of cells on its worksheet. */
export interface BlockPlace {
  readonly worksheet: string;
  readonly block: Block;
}
