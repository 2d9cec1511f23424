/** Random edits as a user makes them, every text that is typed being one of a kind, so that it can be traced. */

import fc from 'fast-check';
import {
  addWorksheet,
  apply,
  cut,
  paste,
  defineName,
  deleteLines,
  deleteWorksheet,
  enter,
  insertLines,
  isRefusal,
  moveLines,
  putPart,
  renameName,
  renameWorksheet,
} from '../../src/document/index.ts';
import type { Notebook, Refusal, Transaction } from '../../src/document/index.ts';

export interface Edit {
  readonly what: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

export const edits = (most: number): fc.Arbitrary<readonly Edit[]> =>
  fc.array(fc.record({ what: fc.nat(19), a: fc.nat(11), b: fc.nat(5), c: fc.nat(11) }), {
    minLength: 1,
    maxLength: most,
  });

const ROWS = 9;
const COLUMNS = 4;

/** The answer of the command that an edit stands for; texts carry the tag of their side. */
function command(
  notebook: Notebook,
  { what, a, b, c }: Edit,
  tag: string,
): Transaction | Refusal | undefined {
  const sheet = notebook.worksheets[a % notebook.worksheets.length];
  if (!sheet) return undefined;
  const worksheet = sheet.id;
  const place = { worksheet, row: c % ROWS, column: b % COLUMNS };
  const axis = b % 3 === 0 ? ('column' as const) : ('row' as const);
  const at = axis === 'row' ? c % ROWS : b % COLUMNS;
  const target = { row: a % ROWS, column: b % COLUMNS, rows: 1 + (c % 2), columns: 1 };
  switch (what) {
    case 0:
    case 1:
    case 2:
    case 3:
    case 4:
    case 5:
      return enter(notebook, { ...place, typed: `text ${tag}` });
    case 6:
    case 7:
      return enter(notebook, { ...place, typed: `=B${(a % ROWS) + 1} & "${tag}"` });
    case 8:
      return enter(notebook, { ...place, typed: '' });
    case 9:
    case 10:
      return insertLines(notebook, { worksheet, axis, at, count: 1 + (a % 2) });
    case 11:
      return deleteLines(notebook, { worksheet, axis, at, count: 1 });
    case 12:
      return moveLines(notebook, {
        worksheet,
        axis,
        at,
        count: 1,
        to: (at + 3) % (axis === 'row' ? ROWS : COLUMNS),
      });
    case 13:
      return paste(notebook, { clipboard: cut(notebook, { worksheet, block: target }), ...place });
    case 14:
      return renameWorksheet(notebook, { worksheet, title: `Sheet ${tag}` });
    case 15:
      return addWorksheet(notebook, c % 2 === 0 ? {} : { title: `Added ${tag}` });
    case 16:
      return defineName(notebook, { worksheet, name: `n_${tag}`, target });
    case 17: {
      const name = sheet.names[0]?.name;
      return name === undefined ? undefined : renameName(notebook, { worksheet, name, to: `m_${tag}` });
    }
    case 18:
      return notebook.worksheets.length > 1 && c === 0 ? deleteWorksheet(notebook, { worksheet }) : undefined;
    default:
      return putPart(notebook, {
        part: 'variants',
        record: {
          id: `v${1 + (c % 3)}`,
          title: `variant ${tag}`,
          values: [{ place, content: `text ${tag}v` }],
        },
        description: 'variant',
      });
  }
}

/** The notebook after the edits that are possible; `side` begins every text. */
export function edited(notebook: Notebook, list: readonly Edit[], side: string): Notebook {
  return list.reduce((so, edit, index) => {
    const answer = command(so, edit, `${side}${index}`);
    return !answer || isRefusal(answer) ? so : apply(so, answer.changes);
  }, notebook);
}

/** Every text of a kind in a value: tags as typed. */
export function tagsIn(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value === 'string') {
    for (const [tag] of value.matchAll(/\b(?:base|our|their)\d+v?\b/g)) found.add(tag);
  } else if (typeof value === 'object' && value !== null)
    for (const each of Object.values(value)) tagsIn(each, found);
  return found;
}
