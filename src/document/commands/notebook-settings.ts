/** Settings of the notebook and of a worksheet: title, display system, currency, common mark, column widths. */

import { forEachCell, setSparse, trimmed, worksheetOf } from '../cells.ts';
import type { Settings, Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { followed } from '../follow-references.ts';
import { addressOf } from '../formula-references.ts';
import { LIMITS } from '../notebook.ts';
import type { Notebook } from '../notebook.ts';
import type { Refusal } from '../refusal.ts';
import { withWorksheet } from '../with-worksheet.ts';

/** Changes what is given. The system in which plain numbers are read is not among it (F15). */
export function changeSettings(notebook: Notebook, settings: Partial<Settings>): Transaction | Refusal {
  const { title = notebook.title, display = notebook.display, currency = notebook.currency } = settings;
  if (title.trim() === '') return { message: 'A notebook needs a title.' };
  if (title.length > LIMITS.titleLength || /\p{Cc}/u.test(title)) {
    return { message: `A title is one line of at most ${LIMITS.titleLength} characters.` };
  }
  if (!/^[A-Z]{3}$/.test(currency)) {
    return { message: `A currency is a code of three capitals, such as EUR; "${currency}" is none.` };
  }
  const after = { ...notebook, title, display, currency };
  const notice = currency === notebook.currency ? undefined : currencyNotice(notebook);
  return transactionTo(notebook, after, 'change settings', notice === undefined ? {} : { notice });
}

function currencyNotice({ currency, worksheets }: Notebook): string | undefined {
  const cells: string[] = [];
  for (const worksheet of worksheets) {
    forEachCell(worksheet, (cell, row, column) => {
      if (cell.content.includes(currency)) cells.push(`${worksheet.title}, ${addressOf(row, column)}`);
    });
  }
  if (cells.length === 0) return undefined;
  const more = cells.length > 5 ? ` and ${cells.length - 5} more` : '';
  return `Currencies do not convert. ${currency} stands in ${cells.slice(0, 5).join('; ')}${more}.`;
}

/** Marks a worksheet common: its names are found from every other (F6a). Formulas go on meaning the names they meant. */
export function setCommon(
  notebook: Notebook,
  { worksheet, common }: { readonly worksheet: string; readonly common: boolean },
): Transaction | Refusal {
  const before = worksheetOf(notebook, worksheet);
  const words = common ? 'common' : 'not common';
  const after = followed(notebook, withWorksheet(notebook, { ...before, common }), {});
  return transactionTo(notebook, after, `mark ${before.title} ${words}`);
}

/** Keeps the first row or column in sight while the rest scrolls, or no longer; what is left out stays as it is. */
export function setHeads(
  notebook: Notebook,
  args: { readonly worksheet: string; readonly headRow?: boolean; readonly headColumn?: boolean },
): Transaction | Refusal {
  const { headRow, headColumn, ...before } = worksheetOf(notebook, args.worksheet);
  const [row = headRow, column = headColumn] = [args.headRow, args.headColumn];
  const after = { ...before, ...(row && { headRow: row }), ...(column && { headColumn: column }) };
  return transactionTo(notebook, withWorksheet(notebook, after), `what stays in sight on ${before.title}`);
}

export const COLUMN_WIDTHS = Object.freeze({ least: 32, most: 1000 });

/** Width of columns in CSS pixels; undefined: the usual one. */
export function setWidth(
  notebook: Notebook,
  args: {
    readonly worksheet: string;
    readonly column: number;
    readonly columns?: number;
    readonly width?: number;
  },
): Transaction | Refusal {
  const { worksheet, column, columns = 1, width } = args;
  if (width !== undefined && !(width >= COLUMN_WIDTHS.least && width <= COLUMN_WIDTHS.most)) {
    return { message: `A column is ${COLUMN_WIDTHS.least} to ${COLUMN_WIDTHS.most} pixels wide.` };
  }
  const before = worksheetOf(notebook, worksheet);
  const widths = [...before.widths];
  for (let each = column; each < column + columns; each++) setSparse(widths, each, width);
  const after = withWorksheet(notebook, { ...before, widths: trimmed(widths) });
  return transactionTo(notebook, after, `width of ${columns === 1 ? 'a column' : `${columns} columns`}`);
}
