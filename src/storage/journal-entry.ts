/** What an entry of the journal says: one transaction as text and back, and the steps that can be taken back. */

import { EMPTY_HISTORY, inverse, LIMITS, PART_NAMES, recorded, redo, undo } from '../document/index.ts';
import type { Change, History, Selection, Transaction } from '../document/index.ts';

/** `at` in milliseconds since 1970. */
export function entryBody(transaction: Transaction, at: number): string {
  const { changes, description, origin, selectionBefore, selectionAfter } = transaction;
  return JSON.stringify({ at, description, origin, changes, selectionBefore, selectionAfter });
}

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isCount = (value: unknown, limit: number): boolean =>
  typeof value === 'number' && Number.isInteger(value) && value >= 0 && value < limit;
const orAbsent = (value: unknown, holds: (value: unknown) => boolean): boolean =>
  value === undefined || holds(value);

const isCell = (value: unknown): boolean => isFields(value) && typeof value['content'] === 'string';
const isSparse = (value: unknown, holds: (value: unknown) => boolean): boolean =>
  Array.isArray(value) && value.every((each) => orAbsent(each ?? undefined, holds));
const isWorksheet = (value: unknown): boolean =>
  isFields(value) &&
  typeof value['id'] === 'string' &&
  typeof value['title'] === 'string' &&
  isCount(value['rowCount'], LIMITS.rows + 1) &&
  isCount(value['columnCount'], LIMITS.columns + 1) &&
  isSparse(value['rows'], (row) => isSparse(row, isCell)) &&
  isSparse(value['widths'], (width) => typeof width === 'number') &&
  Array.isArray(value['names']) &&
  value['names'].every((name) => isFields(name) && typeof name['name'] === 'string');
const isSettings = (value: unknown): boolean =>
  isFields(value) &&
  ['title', 'currency'].every((key) => typeof value[key] === 'string') &&
  (value['display'] === 'metric' || value['display'] === 'inch');
const isIds = (value: unknown): boolean =>
  Array.isArray(value) && value.every((each) => typeof each === 'string');
const isPart = (value: unknown): boolean => isFields(value) && typeof value['id'] === 'string';

const SHAPES: ReadonlyMap<unknown, (change: Fields) => boolean> = new Map([
  [
    'cell',
    ({ worksheet, row, column, from, to }: Fields) =>
      typeof worksheet === 'string' &&
      isCount(row, LIMITS.rows) &&
      isCount(column, LIMITS.columns) &&
      orAbsent(from, isCell) &&
      orAbsent(to, isCell),
  ],
  [
    'worksheet',
    ({ index, from, to }: Fields) =>
      isCount(index, LIMITS.worksheets) && orAbsent(from, isWorksheet) && orAbsent(to, isWorksheet),
  ],
  ['order', ({ from, to }: Fields) => isIds(from) && isIds(to)],
  ['settings', ({ from, to }: Fields) => isSettings(from) && isSettings(to)],
  [
    'part',
    ({ part, index, from, to }: Fields) =>
      PART_NAMES.some((name) => name === part) &&
      isCount(index, 2 ** 31) &&
      orAbsent(from, isPart) &&
      orAbsent(to, isPart),
  ],
]);

const isChange = (value: unknown): value is Change =>
  isFields(value) && (SHAPES.get(value['type'])?.(value) ?? false);
const isOrigin = (value: unknown): value is Transaction['origin'] =>
  ['user', 'undo', 'redo', 'replay', 'remote'].some((each) => each === value);
const isSelection = (value: unknown): value is Selection =>
  isFields(value) &&
  typeof value['worksheet'] === 'string' &&
  ['row', 'toRow'].every((key) => isCount(value[key], LIMITS.rows)) &&
  ['column', 'toColumn'].every((key) => isCount(value[key], LIMITS.columns));

/** JSON has no undefined: the empty places of a worksheet's sparse lists come back as null and are made undefined again. */
function revived(change: Change): Change {
  if (change.type !== 'worksheet') return change;
  const whole = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map((each) => (each === null ? undefined : whole(each)));
    if (!isFields(value)) return value;
    return Object.fromEntries(
      Object.entries(value).map(([name, each]) => [name, name === 'kept' ? each : whole(each)]),
    );
  };
  return whole(change) as Change;
}

/** The transaction of an entry's body; undefined where it is none. */
export function readBody(body: string): Transaction | undefined {
  let value: unknown;
  try {
    value = JSON.parse(body);
  } catch {
    return undefined;
  }
  if (!isFields(value)) return undefined;
  const { changes, description, origin, selectionBefore, selectionAfter } = value;
  if (!Array.isArray(changes) || !changes.every(isChange)) return undefined;
  return {
    changes: changes.map(revived),
    description: typeof description === 'string' ? description : '',
    origin: isOrigin(origin) ? origin : 'user',
    ...(isSelection(selectionBefore) && { selectionBefore }),
    ...(isSelection(selectionAfter) && { selectionAfter }),
  };
}

/** The history after one more entry of the journal; what can not be read cuts off everything before it. */
export function historyAfter(history: History, step: Transaction | undefined): History {
  if (!step) return EMPTY_HISTORY;
  const { past, future } = history;
  if (step.origin === 'undo') return undo(history)?.history ?? { past, future: [inverse(step), ...future] };
  if (step.origin === 'redo') return redo(history)?.history ?? { past: [...past, step], future };
  return recorded(history, step);
}
