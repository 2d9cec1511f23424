/** Three states of a notebook with their rows and columns laid one upon the other: lines that one side added or took away are made up for. */

import {
  apply,
  deleteLines,
  findWorksheet,
  insertLines,
  isRefusal,
  isSame,
  LIMITS,
  PART_NAMES,
} from '../document/index.ts';
import type {
  AnyPart,
  Axis,
  Block,
  Cell,
  Lines,
  Notebook,
  Refusal,
  Transaction,
  Worksheet,
} from '../document/index.ts';
import { alignedLines, linesOf } from './align-lines.ts';
import type { Difference } from './compare-notebooks.ts';

/** Base, ours, theirs. */
export interface Three {
  readonly base: Notebook;
  readonly ours: Notebook;
  readonly theirs: Notebook;
}

type Side = keyof Three;

/** One line of the common frame: its place on each side; undefined where that side has none. */
type Slot = { readonly [side in Side]: number | undefined };

export interface LaidOut extends Three {
  /** Cells of lines that one side took away while the other had left them as they were. */
  readonly removed: readonly Difference[];
}

function cellsOfLine(worksheet: Worksheet, axis: Axis, at: number): Map<number, Cell> {
  const cells = new Map<number, Cell>();
  if (axis === 'row') {
    for (const [column, cell] of (worksheet.rows[at] ?? []).entries()) if (cell) cells.set(column, cell);
    return cells;
  }
  for (const [row, line] of worksheet.rows.entries()) {
    const cell = line?.[at];
    if (cell) cells.set(row, cell);
  }
  return cells;
}

/** True for lines that both added where they may be one: nothing of the one stands where the other has something else. */
function canBeOne(a: Worksheet, b: Worksheet, axis: Axis, [i, j]: readonly [number, number]): boolean {
  const right = cellsOfLine(b, axis, j);
  return [...cellsOfLine(a, axis, i)].every(([at, cell]) => !right.has(at) || isSame(cell, right.get(at)));
}

function isSameLine(a: Worksheet, b: Worksheet, axis: Axis, [i, j]: readonly [number, number]): boolean {
  const [left, right] = [cellsOfLine(a, axis, i), cellsOfLine(b, axis, j)];
  return left.size === right.size && [...left].every(([at, cell]) => isSame(cell, right.get(at)));
}

/** Every line of base, ours and theirs in one order; what both added alike is one line. */
function slotsOf(sheets: Readonly<Record<Side, Worksheet>>, axis: Axis): Slot[] {
  const [base, ours, theirs] = [
    linesOf(sheets.base, axis),
    linesOf(sheets.ours, axis),
    linesOf(sheets.theirs, axis),
  ];
  const [toOurs, toTheirs] = [alignedLines(base, ours), alignedLines(base, theirs)];
  const slots: Slot[] = [];
  let [nextOurs, nextTheirs] = [0, 0];
  const added = (untilOurs: number, untilTheirs: number): void => {
    while (nextOurs < untilOurs || nextTheirs < untilTheirs) {
      const both =
        nextOurs < untilOurs &&
        nextTheirs < untilTheirs &&
        canBeOne(sheets.ours, sheets.theirs, axis, [nextOurs, nextTheirs]);
      if (both) slots.push({ base: undefined, ours: nextOurs++, theirs: nextTheirs++ });
      else if (nextOurs < untilOurs) slots.push({ base: undefined, ours: nextOurs++, theirs: undefined });
      else slots.push({ base: undefined, ours: undefined, theirs: nextTheirs++ });
    }
  };
  for (let at = 0; at < base.length; at++) {
    const [here, there] = [toOurs[at], toTheirs[at]];
    added(here ?? nextOurs, there ?? nextTheirs);
    slots.push({ base: at, ours: here, theirs: there });
    nextOurs = here === undefined ? nextOurs : here + 1;
    nextTheirs = there === undefined ? nextTheirs : there + 1;
  }
  added(ours.length, theirs.length);
  return slots;
}

/** Adds the lines of a worksheet that a record names. */
function namedLines(value: unknown, worksheet: string, axis: Axis, found: Set<number>): void {
  if (typeof value !== 'object' || value === null) return;
  for (const each of Object.values(value)) namedLines(each, worksheet, axis, found);
  if (!('worksheet' in value) || value.worksheet !== worksheet) return;
  const place = 'block' in value ? value.block : value;
  const { row, column, rows = 1, columns = 1 } = place as Partial<Block>;
  const [first = 0, count] = axis === 'row' ? [row, rows] : [column, columns];
  for (let at = first; at < first + count; at++) found.add(at);
}

/** Lines of a worksheet that records name which the side has changed or added: it has not left them as they were. */
function usedLines(base: Notebook, side: Notebook, worksheet: string, axis: Axis): ReadonlySet<number> {
  const found = new Set<number>();
  for (const part of PART_NAMES) {
    const before = new Map((base.parts?.[part] ?? []).map((record: AnyPart) => [record.id, record]));
    for (const record of side.parts?.[part] ?? [])
      if (!isSame(before.get(record.id), record)) namedLines(record, worksheet, axis, found);
  }
  return found;
}

/** True for a line that one side took away and the other left as it was. */
function isRemoved(
  { base, ours, theirs }: Slot,
  sheets: Readonly<Record<Side, Worksheet>>,
  axis: Axis,
  used: { readonly ours: ReadonlySet<number>; readonly theirs: ReadonlySet<number> },
): boolean {
  if (base === undefined) return false;
  if (ours === undefined) {
    if (theirs === undefined) return true;
    return !used.theirs.has(theirs) && isSameLine(sheets.base, sheets.theirs, axis, [base, theirs]);
  }
  if (theirs !== undefined || used.ours.has(ours)) return false;
  return isSameLine(sheets.base, sheets.ours, axis, [base, ours]);
}

function carriedOut(notebook: Notebook, answer: Transaction | Refusal): Notebook | undefined {
  return isRefusal(answer) ? undefined : apply(notebook, answer.changes);
}

/** The side with exactly these lines in this order, empty ones where it had none; undefined where a limit forbids it. */
function withLines(
  notebook: Notebook,
  worksheet: string,
  axis: Axis,
  places: readonly (number | undefined)[],
  length: number,
): Notebook | undefined {
  let so: Notebook | undefined = notebook;
  const most = LIMITS[axis === 'row' ? 'rows' : 'columns'];
  const change = (what: typeof insertLines, at: number, count: number): void => {
    const lines: Lines = { worksheet, axis, at, count };
    if (so && count > 0) so = at + count > most ? undefined : carriedOut(so, what(so, lines));
  };
  let next = length;
  let missing = 0;
  for (let slot = places.length - 1; slot >= 0; slot--) {
    const place = places[slot];
    if (place === undefined) {
      missing += 1;
      continue;
    }
    // Behind this line: first what is to go, then room for what is missing.
    change(deleteLines, place + 1, next - place - 1);
    change(insertLines, place + 1, missing);
    missing = 0;
    next = place;
  }
  change(deleteLines, 0, next);
  change(insertLines, 0, missing);
  return so;
}

const SIDES = ['base', 'ours', 'theirs'] as const;

function layAxis(laid: LaidOut, id: string, axis: Axis, drops: boolean): LaidOut {
  const sheets = {
    base: findWorksheet(laid.base, id),
    ours: findWorksheet(laid.ours, id),
    theirs: findWorksheet(laid.theirs, id),
  };
  const { base, ours, theirs } = sheets;
  if (!base || !ours || !theirs) return laid;
  const known = { base, ours, theirs };
  const used = {
    ours: usedLines(laid.base, laid.ours, id, axis),
    theirs: usedLines(laid.base, laid.theirs, id, axis),
  };
  const all = slotsOf(known, axis);
  const slots: Slot[] = [];
  const removed: Difference[] = [];
  for (const slot of all) {
    if (!drops || !isRemoved(slot, known, axis, used)) {
      slots.push(slot);
      continue;
    }
    const side = slot.ours === undefined ? 'theirs' : 'ours';
    const place = slot[side];
    if (place === undefined) continue;
    for (const [other, cell] of cellsOfLine(known[side], axis, place)) {
      const [row, column] = axis === 'row' ? [slots.length, other] : [other, slots.length];
      removed.push({ type: 'cell', worksheet: id, row, column, [side]: cell });
    }
  }
  const trivial =
    all.length === slots.length && slots.every((slot) => SIDES.every((side) => slot[side] !== undefined));
  if (trivial) return laid;
  const made = SIDES.map((side) => {
    const length = all.filter((slot) => slot[side] !== undefined).length;
    return withLines(
      laid[side],
      id,
      axis,
      slots.map((slot) => slot[side]),
      length,
    );
  });
  const [newBase, newOurs, newTheirs] = made;
  if (!newBase || !newOurs || !newTheirs) return laid;
  return { base: newBase, ours: newOurs, theirs: newTheirs, removed: [...laid.removed, ...removed] };
}

/** How many places a record of a list names. */
function placesIn(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  const own = 'worksheet' in value ? 1 : 0;
  return Object.values(value).reduce((sum: number, each: unknown) => sum + placesIn(each), own);
}

/** Records that have lost a place along with a line that was taken away. */
function reducedRecords(before: Notebook, after: Notebook, side: 'ours' | 'theirs'): Difference[] {
  if (before.parts === after.parts) return [];
  return PART_NAMES.flatMap((part) => {
    const list: readonly AnyPart[] = before.parts?.[part] ?? [];
    const left = new Map((after.parts?.[part] ?? []).map((record: AnyPart) => [record.id, record]));
    return list.flatMap((record): Difference[] =>
      placesIn(left.get(record.id)) < placesIn(record)
        ? [{ type: 'part', part, id: record.id, [side]: record }]
        : [],
    );
  });
}

/**
 * The three states with every worksheet that all have laid out alike; where a limit forbids it, it stays as it is.
 * With `drops`, lines that one side took away and the other had left alone go everywhere, and are listed; else room is
 * made for them again.
 */
export function laidOut(three: Three, drops = true): LaidOut {
  let laid: LaidOut = { ...three, removed: [] };
  for (const { id } of three.ours.worksheets) {
    laid = layAxis(laid, id, 'row', drops);
    laid = layAxis(laid, id, 'column', drops);
  }
  const records = (['ours', 'theirs'] as const).flatMap((side) =>
    reducedRecords(three[side], laid[side], side),
  );
  return { ...laid, removed: [...laid.removed, ...records] };
}
