/** The one form in which a cell is kept: no empty properties, and no cell at all where nothing is left. */

import type { Cell } from './notebook.ts';

/** The cell frozen, without empty lists; undefined where it has neither content nor property. */
export function tidyCell(cell: Cell): Cell | undefined {
  const { acknowledged, choices, ...rest } = cell;
  const tidy: Cell = {
    ...rest,
    ...(choices && choices.length > 0 && { choices }),
    ...(acknowledged && acknowledged.length > 0 && { acknowledged }),
  };
  return tidy.content === '' && Object.keys(tidy).length === 1 ? undefined : Object.freeze(tidy);
}

/** The cell with its formula rewritten but meaning the same: its acknowledgements hold on. */
export function rewrittenCell(cell: Cell, content: string): Cell {
  if (content === cell.content) return cell;
  const acknowledged = cell.acknowledged?.map((each) =>
    each.content === cell.content ? { ...each, content } : each,
  );
  return Object.freeze({ ...cell, content, ...(acknowledged && { acknowledged }) });
}
