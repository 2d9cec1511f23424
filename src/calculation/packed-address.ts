/** Cell addresses as whole numbers, for the columns of changed numbers. */

/** Cells of one worksheet: 2 048 rows of 64 columns. */
const WORKSHEET_CELLS = 2 ** 17;
const COLUMNS = 64;

/** worksheetIndex * 2^17 + row * 64 + column; up to 32 768 worksheets. */
export function packAddress(worksheetIndex: number, row: number, column: number): number {
  return worksheetIndex * WORKSHEET_CELLS + row * COLUMNS + column;
}

export function unpackAddress(packed: number): {
  readonly worksheetIndex: number;
  readonly row: number;
  readonly column: number;
} {
  const within = packed % WORKSHEET_CELLS;
  return {
    worksheetIndex: Math.floor(packed / WORKSHEET_CELLS),
    row: Math.floor(within / COLUMNS),
    column: within % COLUMNS,
  };
}
