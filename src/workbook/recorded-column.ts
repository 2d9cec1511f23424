/** A column of a recording as an operand: its values in coherent SI and its type. Made once, however often the workbook is built. */

import { isUnknownUnit, PLAIN, parseUnit } from '../quantity/index.ts';
import type { RecordingColumn } from '../document/index.ts';
import { failure } from '../expression/index.ts';
import type { Failure, Grid, GridType, Scalar } from '../expression/index.ts';

export interface RecordedColumn {
  readonly grid: Grid;
  readonly type: GridType;
}

const known = new WeakMap<RecordingColumn, Map<string, RecordedColumn>>();

/** The column in SI; #UNIT! where its unit is not known. Missing readings are blanks. */
export function recordedColumn(column: RecordingColumn, currency: string): RecordedColumn | Failure {
  const made = known.get(column) ?? new Map<string, RecordedColumn>();
  known.set(column, made);
  const before = made.get(currency);
  if (before) return before;
  const { name, unit: text, values } = column;
  const unit = text === undefined || text === '' ? undefined : parseUnit(text, currency);
  if (unit && isUnknownUnit(unit))
    return failure('#UNIT!', `the column ${name} has the unknown unit ${unit.unknown}`);
  const { scale, shift, kind } = unit ?? { scale: 1, shift: 0, kind: PLAIN };
  const rows = values.map((value): readonly Scalar[] => {
    const si = value === null ? null : value * scale + shift;
    return [si === null || Number.isFinite(si) ? si : failure('#NUM!', `a number in ${name} is too large`)];
  });
  const recorded: RecordedColumn = {
    grid: { grid: rows.length > 0 ? rows : [[null]] },
    type: {
      type: 'grid',
      columns: [rows.length > 0 ? { type: 'number', kind } : { type: 'blank' }],
      rows: Math.max(rows.length, 1),
    },
  };
  made.set(currency, recorded);
  return recorded;
}
