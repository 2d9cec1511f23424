/** Cells a what-if question can be about: numbers that are given, and numbers that are worked out, with what they are called. */

import { forEachCell, labelOf } from '../../document/index.ts';
import type { CellPlace, Notebook } from '../../document/index.ts';
import { addressText } from '../../expression/index.ts';
import type { Session } from '../session.ts';
import type { KnownResult } from '../results.ts';

export interface Candidate {
  readonly key: string;
  readonly place: CellPlace;
  /** Title of its worksheet. */
  readonly worksheet: string;
  /** "B3 z, teeth". */
  readonly words: string;
  readonly result: KnownResult;
  readonly given: boolean;
}

export const keyOf = ({ worksheet, row, column }: CellPlace): string => `${worksheet} ${row} ${column}`;

export function placeOfKey(key: string): CellPlace | undefined {
  const [worksheet, row, column] = key.split(' ');
  return worksheet && row && column ? { worksheet, row: Number(row), column: Number(column) } : undefined;
}

interface Known {
  readonly version: number;
  readonly list: readonly Candidate[];
}
const known = new WeakMap<Session, Known>();

/** All numbers of the notebook, in order of worksheets, rows and columns. */
export function candidateCells(session: Session): readonly Candidate[] {
  const before = known.get(session);
  if (before?.version === session.version) return before.list;
  const list: Candidate[] = [];
  for (const sheet of session.notebook.worksheets) {
    forEachCell(sheet, (cell, row, column) => {
      const result = session.results.at(sheet.id, row, column);
      const worked = cell.content.startsWith('=');
      if (!result || !(typeof result.value === 'number' || (worked && result.error))) return;
      const name = sheet.names.find(({ target }) => target.row === row && target.column === column)?.name;
      const label = labelOf(sheet, row, column);
      const place = { worksheet: sheet.id, row, column };
      list.push({
        key: keyOf(place),
        place,
        worksheet: sheet.title,
        words: [addressText(column, row), name, label && `· ${shortened(label)}`].filter(Boolean).join(' '),
        result,
        given: !worked,
      });
    });
  }
  known.set(session, { version: session.version, list });
  return list;
}

const shortened = (words: string): string => (words.length > 44 ? `${words.slice(0, 42)}…` : words);

export const givensOf = (session: Session): readonly Candidate[] =>
  candidateCells(session).filter(({ given }) => given);

export const workedOf = (session: Session): readonly Candidate[] =>
  candidateCells(session).filter(({ given }) => !given);

export const candidateAt = (session: Session, place: CellPlace): Candidate | undefined =>
  candidateCells(session).find(({ key }) => key === keyOf(place));

/** The selected cell where it is a candidate of the list, else the first of it. */
export function proposed(session: Session, list: readonly Candidate[]): Candidate | undefined {
  return list.find(({ key }) => key === keyOf(session.address)) ?? list[0];
}

/** What a cell is called on one line, whatever it holds: "B3 z · teeth". */
export function cellWords(session: Session, place: CellPlace): string {
  const found = candidateAt(session, place);
  if (found) return found.words;
  return titledAddress(session.notebook, place);
}

function titledAddress(notebook: Notebook, { worksheet, row, column }: CellPlace): string {
  const title = notebook.worksheets.find(({ id }) => id === worksheet)?.title ?? '';
  return `${title} ${addressText(column, row)}`;
}
