/** The references of the formula being typed: which cells of the page in sight they mean, and their colour in text and page. */

import { resolveName, worksheetTitled } from '../document/index.ts';
import type { Block, Notebook } from '../document/index.ts';
import { writtenReferences } from '../expression/index.ts';
import type { Reference } from '../expression/index.ts';

/** How many colours there are; further references begin again. */
const COLOURS = 6;

export interface ReferenceMark {
  /** Place in the text. */
  readonly from: number;
  readonly to: number;
  /** 0 to 5: the same block has the same one. */
  readonly colour: number;
  /** Id of the worksheet it lies on. */
  readonly worksheet: string;
  readonly block: Block;
}

function targetOf(
  notebook: Notebook,
  here: string,
  node: Reference,
): Pick<ReferenceMark, 'worksheet' | 'block'> | undefined {
  const on = node.worksheet === undefined ? undefined : worksheetTitled(notebook, node.worksheet);
  if (node.worksheet !== undefined && !on) return undefined;
  if (node.type === 'name') {
    if (on) {
      const defined = on.names.find(({ name }) => name === node.name);
      return defined && { worksheet: on.id, block: defined.target };
    }
    const found = resolveName(notebook, here, node.name);
    return found && { worksheet: found.worksheet.id, block: found.defined.target };
  }
  const [start, end] = node.type === 'cell' ? [node, node] : [node.start, node.end];
  return {
    worksheet: on?.id ?? here,
    block: {
      row: Math.min(start.row, end.row),
      column: Math.min(start.column, end.column),
      rows: Math.abs(start.row - end.row) + 1,
      columns: Math.abs(start.column - end.column) + 1,
    },
  };
}

/** From left to right; `here` is the worksheet of the cell being edited. */
export function referenceMarks(notebook: Notebook, here: string, text: string): readonly ReferenceMark[] {
  if (!text.startsWith('=')) return [];
  const colours = new Map<string, number>();
  return writtenReferences(text).flatMap((node): ReferenceMark[] => {
    const target = targetOf(notebook, here, node);
    if (!target) return [];
    const { row, column, rows, columns } = target.block;
    const key = [target.worksheet, row, column, rows, columns].join(' ');
    const colour = colours.get(key) ?? colours.size % COLOURS;
    colours.set(key, colour);
    return [{ ...target, colour, from: node.from, to: node.to }];
  });
}
