/** Adding, renaming, ordering, deleting and duplicating worksheets, and bringing one from another notebook. */

import { forEachCell, worksheetOf } from '../cells.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { freeTitle, checkTitle } from '../check-name.ts';
import { emptyWorksheet } from '../empty-notebook.ts';
import { carriedContent, followed } from '../follow-references.ts';
import type { Notebook, Worksheet } from '../notebook.ts';
import { isRefusal } from '../refusal.ts';
import type { Refusal } from '../refusal.ts';
import { foreignNotice } from '../foreign-notice.ts';
import { rewrittenCell } from '../tidy-cell.ts';
import { freshWorksheetId, withWorksheet } from '../with-worksheet.ts';

const inserted = (notebook: Notebook, worksheet: Worksheet, index: number): Notebook => ({
  ...notebook,
  worksheets: notebook.worksheets.toSpliced(index, 0, Object.freeze(worksheet)),
});

/** An empty worksheet at a place (at the end where left out); its title is made free where none is given. */
export function addWorksheet(
  notebook: Notebook,
  { title, index = notebook.worksheets.length }: { readonly title?: string; readonly index?: number } = {},
): Transaction | Refusal {
  const given = title ?? freeTitle(notebook, `Worksheet ${notebook.worksheets.length + 1}`);
  const refusal = checkTitle(notebook, given);
  if (refusal) return refusal;
  const made = emptyWorksheet(freshWorksheetId(notebook), given);
  return transactionTo(notebook, inserted(notebook, made, index), `add ${given}`);
}

/** Formulas that name the worksheet are rewritten. */
export function renameWorksheet(
  notebook: Notebook,
  { worksheet, title }: { readonly worksheet: string; readonly title: string },
): Transaction | Refusal {
  const before = worksheetOf(notebook, worksheet);
  const refusal = checkTitle(notebook, title, worksheet);
  if (refusal) return refusal;
  const after = followed(notebook, withWorksheet(notebook, { ...before, title }), {});
  return transactionTo(notebook, after, `rename ${before.title} to ${title}`);
}

/** Puts a worksheet at another place among them, counted without it. */
export function moveWorksheet(
  notebook: Notebook,
  { worksheet, index }: { readonly worksheet: string; readonly index: number },
): Transaction | Refusal {
  const moved = worksheetOf(notebook, worksheet);
  const others = notebook.worksheets.filter((each) => each.id !== worksheet);
  if (!Number.isInteger(index) || index < 0 || index > others.length) {
    throw new RangeError(`place ${index}: must lie in 0 to ${others.length}`);
  }
  const worksheets = others.toSpliced(index, 0, moved);
  // The first common worksheet that has a name gives it: what was meant is qualified where the order would change it.
  const after = followed(notebook, { ...notebook, worksheets }, {});
  return transactionTo(notebook, after, `move ${moved.title}`);
}

/** What referred to it reads #REF! (see `usersOf`). The last one stays. */
export function deleteWorksheet(
  notebook: Notebook,
  { worksheet }: { readonly worksheet: string },
): Transaction | Refusal {
  const { title } = worksheetOf(notebook, worksheet);
  if (notebook.worksheets.length === 1) return { message: 'A notebook keeps at least one worksheet.' };
  const worksheets = notebook.worksheets.filter((each) => each.id !== worksheet);
  const after = followed(
    notebook,
    { ...notebook, worksheets },
    {
      block: (id, block) => (id === worksheet ? undefined : { worksheet: id, block }),
      name: (id, name) => (id === worksheet ? undefined : { worksheet: id, name }),
    },
  );
  return transactionTo(notebook, after, `delete ${title}`);
}

/** The copy stands behind the original; what referred to the original's own cells refers to the copy's. */
export function duplicateWorksheet(
  notebook: Notebook,
  { worksheet, title }: { readonly worksheet: string; readonly title?: string },
): Transaction | Refusal {
  const original = worksheetOf(notebook, worksheet);
  const given = title ?? freeTitle(notebook, original.title);
  const refusal = checkTitle(notebook, given);
  if (refusal) return refusal;
  const made = { ...original, id: freshWorksheetId(notebook), title: given, common: false };
  const index = notebook.worksheets.indexOf(original) + 1;
  const after = inserted(notebook, made, index);
  const copy = rewrittenCopy(notebook, after, made, worksheet);
  const shared = original.common
    ? { notice: `${given} is not marked common: its names would hide behind those of ${original.title}.` }
    : {};
  return transactionTo(
    notebook,
    isRefusal(copy) ? copy : withWorksheet(after, copy),
    `duplicate ${original.title}`,
    shared,
  );
}

/** The new worksheet with its formulas meaning its own cells where they meant the original's. */
function rewrittenCopy(
  before: Notebook,
  after: Notebook,
  made: Worksheet,
  original: string,
): Worksheet | Refusal {
  const own = (id: string): string => (id === original ? made.id : id);
  let refusal: Refusal | undefined;
  const rows = made.rows.map((row) =>
    row?.map((cell) => {
      if (!cell?.content.startsWith('=')) return cell;
      const content = carriedContent(before, after, cell, original, made.id, {
        block: (id, block) => ({ worksheet: own(id), block }),
        name: (id, name) => ({ worksheet: own(id), name }),
      });
      if (typeof content === 'object') refusal ??= content;
      return typeof content === 'object' ? cell : rewrittenCell(cell, content);
    }),
  );
  return refusal ?? { ...made, rows };
}

/** A copy of a worksheet of another notebook; references to its other worksheets keep their words. */
export function copyWorksheetFrom(
  notebook: Notebook,
  {
    from,
    worksheet,
    index,
  }: { readonly from: Notebook; readonly worksheet: string; readonly index?: number },
): Transaction | Refusal {
  const original = worksheetOf(from, worksheet);
  const title = freeTitle(notebook, original.title);
  const made = { ...original, id: freshWorksheetId(notebook), title };
  const source = { ...from, worksheets: [original] };
  const renamed = withWorksheet(source, { ...made, id: original.id });
  const rewritten = followed(source, renamed, {});
  if (isRefusal(rewritten)) return rewritten;
  const [copy = original] = rewritten.worksheets;
  const contents: string[] = [];
  forEachCell(copy, (cell) => contents.push(cell.content));
  const after = inserted(notebook, { ...copy, id: made.id }, index ?? notebook.worksheets.length);
  const notice = foreignNotice(from, after, contents, title);
  return transactionTo(notebook, after, `copy ${title} from ${from.title}`, notice ? { notice } : {});
}
