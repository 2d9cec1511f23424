/** Small notebooks for the tests, and a way to do commands that must be possible. */

import { apply, cellAt, emptyNotebook, enter, isRefusal, worksheetOf } from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';
import { readAddress } from '../../src/expression/index.ts';

/** The notebook after a command; throws with the refusal's words. */
export function done(notebook: Notebook, answer: Transaction | Refusal): Notebook {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(notebook, answer.changes);
}

/** The words of a refusal; throws where the command was possible. */
export function refusalOf(answer: Transaction | Refusal): string {
  if (!isRefusal(answer)) throw new Error(`possible: ${answer.description}`);
  return answer.message;
}

export function placeOf(address: string): { row: number; column: number } {
  const corner = readAddress(address);
  if (!corner) throw new Error(`no address: ${address}`);
  return { row: corner.row, column: corner.column };
}

/** Types texts into cells of a worksheet. */
export function typed(
  notebook: Notebook,
  cells: Readonly<Record<string, string>>,
  worksheet = 'w1',
): Notebook {
  let after = notebook;
  for (const [address, text] of Object.entries(cells)) {
    after = done(after, enter(after, { worksheet, ...placeOf(address), typed: text }));
  }
  return after;
}

export function sample(cells: Readonly<Record<string, string>> = {}): Notebook {
  return typed(emptyNotebook({ id: 'n1', title: 'Trial', worksheetTitle: 'Feeds' }), cells);
}

/** The content at an address; "" where empty. */
export function contentAt(notebook: Notebook, address: string, worksheet = 'w1'): string {
  const { row, column } = placeOf(address);
  return cellAt(worksheetOf(notebook, worksheet), row, column)?.content ?? '';
}

/** "B3" as a block of one cell, "B3:C9" as a larger one. */
export function block(text: string): { row: number; column: number; rows: number; columns: number } {
  const [first = '', last = first] = text.split(':');
  const [from, to] = [placeOf(first), placeOf(last)];
  return { ...from, rows: to.row - from.row + 1, columns: to.column - from.column + 1 };
}
