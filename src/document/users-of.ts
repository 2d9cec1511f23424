/** Who uses a block, a name or a worksheet: the list that is shown before it is deleted. */

import { doBlocksMeet, forEachCell, isInBlock, worksheetTitled } from './cells.ts';
import type { CellPlace } from './cells.ts';
import { addressOf, blockOf, referencesIn } from './formula-references.ts';
import { titleText } from '../expression/index.ts';
import type { Reference } from '../expression/index.ts';
import type { Block, Notebook } from './notebook.ts';
import { namesOn, resolveName } from './resolve-name.ts';

/** What is to be deleted: a block, a name, or the whole worksheet. */
export interface Used {
  /** Worksheet id. */
  readonly worksheet: string;
  readonly block?: Block;
  readonly name?: string;
}

export interface User extends CellPlace {
  /** "Feeds.B3" as it stands in formulas. */
  readonly text: string;
}

function isUsing(notebook: Notebook, home: string, node: Reference, used: Used): boolean {
  if (node.type !== 'name') {
    if (used.name !== undefined) return false;
    const target = node.worksheet === undefined ? home : worksheetTitled(notebook, node.worksheet)?.id;
    return target === used.worksheet && (!used.block || doBlocksMeet(blockOf(node), used.block));
  }
  const worksheet =
    node.worksheet === undefined
      ? resolveName(notebook, home, node.name)?.worksheet
      : worksheetTitled(notebook, node.worksheet);
  if (worksheet?.id !== used.worksheet) return false;
  if (used.name !== undefined) return used.name === node.name;
  const target = namesOn(worksheet).get(node.name)?.target;
  return !used.block || (target !== undefined && doBlocksMeet(target, used.block));
}

/** The cells outside of it whose formulas refer to it, by address or by name. */
export function usersOf(notebook: Notebook, used: Used): readonly User[] {
  const users: User[] = [];
  for (const worksheet of notebook.worksheets) {
    forEachCell(worksheet, (cell, row, column) => {
      const inside =
        used.name === undefined &&
        worksheet.id === used.worksheet &&
        (!used.block || isInBlock(used.block, row, column));
      if (inside || !referencesIn(cell).some((node) => isUsing(notebook, worksheet.id, node, used))) return;
      const text = `${titleText(worksheet.title)}.${addressOf(row, column)}`;
      users.push({ worksheet: worksheet.id, row, column, text });
    });
  }
  return users;
}
