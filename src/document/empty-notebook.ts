/** A new notebook with one empty worksheet. */

import type { Notebook, UnitSystem, Worksheet } from './notebook.ts';

export interface NewNotebook {
  /** Made by the caller (no randomness here); never changes. */
  readonly id: string;
  readonly title?: string;
  /** In which plain numbers are read, for good (F15). */
  readonly reading?: UnitSystem;
  /** In which results are shown; as read where left out. */
  readonly display?: UnitSystem;
  /** ISO 4217 code. */
  readonly currency?: string;
  readonly worksheetTitle?: string;
}

/** Size of a new worksheet; it grows as it is filled. */
export const NEW_WORKSHEET = Object.freeze({ rows: 60, columns: 12 });

export function emptyWorksheet(id: string, title: string): Worksheet {
  return Object.freeze({
    id,
    title,
    common: false,
    rowCount: NEW_WORKSHEET.rows,
    columnCount: NEW_WORKSHEET.columns,
    widths: Object.freeze([]),
    rows: Object.freeze([]),
    names: Object.freeze([]),
  });
}

export function emptyNotebook(options: NewNotebook): Notebook {
  const { id, title = 'Notebook', reading = 'metric', currency = 'EUR' } = options;
  return Object.freeze({
    id,
    title,
    reading,
    display: options.display ?? reading,
    currency,
    worksheets: Object.freeze([emptyWorksheet('w1', options.worksheetTitle ?? 'Worksheet 1')]),
  });
}
