/** Taking a list of cells back in: what would change, cell by cell, before it does. One step. */

import {
  addWorksheet,
  apply,
  cellAt,
  isRefusal,
  readContent,
  roleOf,
  takeCells,
  worksheetOf,
  worksheetTitled,
} from '../document/index.ts';
import type { Cell, GivenCell, LeftAsItWas, Notebook, Refusal, Transaction } from '../document/index.ts';
import { readCsvList, writeCsvList } from '../exchange/index.ts';
import type { ListedCell } from '../exchange/index.ts';

/** A cell that would not be as it is. */
export interface ListedChange extends GivenCell {
  /** Contents before and after, canonical; "" for none. */
  readonly was: string;
  readonly is: string;
}

export interface TakenList {
  readonly transaction: Transaction | Refusal;
  readonly changes: readonly ListedChange[];
  /** How many cells of the list are here as they stand in it. */
  readonly same: number;
  /** Titles of worksheets that are not here yet. */
  readonly added: readonly string[];
  /** Titles of all worksheets as they will be, by id. */
  readonly titles: ReadonlyMap<string, string>;
  readonly left: readonly LeftAsItWas[];
  /** Units that are not known, with near ones; they have to be chosen before. */
  readonly unknownUnits: ReadonlyMap<string, readonly string[]>;
}

/** One key for a cell whatever the case in which its worksheet is written. */
const keyIn = (notebook: Notebook, { worksheet, row, column }: ListedCell): string =>
  `${row} ${column} ${worksheetTitled(notebook, worksheet)?.id ?? ''}`;

const FIELDS = ['content', 'label', 'role', 'name', 'symbol'] as const;

/** What the list says of a cell and the notebook, written as a list itself, does not. A name or label that is missing takes none away. */
function differing(
  listed: ListedCell,
  now: ListedCell | undefined,
): Omit<GivenCell, 'worksheet'> | undefined {
  const fields = FIELDS.filter((key) => listed[key] !== undefined && listed[key] !== now?.[key]);
  // A cell that is not there and of which the list says nothing is no change.
  if (fields.length === 0 || (!now && listed.content === '' && listed.name === undefined)) return undefined;
  const { row, column } = listed;
  return { row, column, ...Object.fromEntries(fields.map((key) => [key, listed[key]])) };
}

/** What taking these cells would do to the notebook. */
export function takenList(notebook: Notebook, cells: readonly ListedCell[], from: string): TakenList {
  const own = readCsvList(writeCsvList(notebook), { delimiter: ',' });
  const now = new Map(isRefusal(own) ? [] : own.map((cell) => [keyIn(notebook, cell), cell]));
  let ready = notebook;
  let refusal: Refusal | undefined;
  const added: string[] = [];
  const given: GivenCell[] = [];
  let same = 0;
  for (const listed of cells) {
    const change = differing(listed, now.get(keyIn(notebook, listed)));
    if (!change) {
      same += 1;
      continue;
    }
    const { worksheet: title } = listed;
    if (!worksheetTitled(ready, title)) {
      const answer = addWorksheet(ready, { title });
      if (isRefusal(answer)) {
        refusal ??= answer;
        continue;
      }
      ready = apply(ready, answer.changes);
      added.push(title);
    }
    given.push({ ...change, worksheet: worksheetTitled(ready, title)?.id ?? '' });
  }
  const { transaction, left } = takeCells(ready, given, `take ${from} in`, notebook);
  const after = isRefusal(transaction) ? ready : apply(notebook, transaction.changes);
  const cellIn = (book: Notebook, { worksheet, row, column }: GivenCell): Cell | undefined =>
    cellAt(worksheetOf(book, worksheet), row, column);
  const changed = ({ role, ...each }: GivenCell): ListedChange => {
    const [was, is] = [cellIn(ready, each), cellIn(after, each)];
    const taken = role !== undefined && is && roleOf(is) === role;
    return { ...each, ...(taken && { role }), was: was?.content ?? '', is: is?.content ?? '' };
  };
  const unknownUnits = new Map<string, readonly string[]>();
  for (const { content } of given) {
    const read = readContent(content ?? '', notebook.currency);
    if (read.type === 'unknownUnit') unknownUnits.set(read.unknown, read.near);
  }
  return {
    transaction: refusal ?? transaction,
    changes: given.map(changed),
    same,
    added,
    titles: new Map(ready.worksheets.map(({ id, title }) => [id, title])),
    left,
    unknownUnits,
  };
}
