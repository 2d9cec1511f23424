/** Recordings as formulas see them: named columns outside the cells, read as title.column. */

import { forEachCell } from './cells.ts';
import type { CellPlace } from './cells.ts';
import { checkName } from './check-name.ts';
import { referencesIn } from './formula-references.ts';
import type { Notebook } from './notebook.ts';
import { PART_LIMITS } from './parts.ts';
import type { Recording } from './parts.ts';
import type { Refusal } from './refusal.ts';

export type RecordingColumn = Recording['columns'][number];

/** The recording with this title; a worksheet of the same title would come first, so there is never one. */
export function recordingTitled({ parts }: Notebook, title: string): Recording | undefined {
  return parts?.recordings?.find((recording) => recording.title === title);
}

export function recordingColumn({ columns }: Recording, name: string): RecordingColumn | undefined {
  return columns.find((column) => column.name === name);
}

/** Why a text can not be the title of a recording; `except` is the id of the one that is being renamed. */
export function checkRecordingTitle(notebook: Notebook, title: string, except?: string): Refusal | undefined {
  const wrong = checkName(title);
  if (wrong) return wrong;
  if (notebook.worksheets.some((worksheet) => worksheet.title === title))
    return { message: `There is a worksheet ${title}: a recording needs another title.` };
  const same = recordingTitled(notebook, title);
  return same && same.id !== except ? { message: `There is a recording ${title} already.` } : undefined;
}

/** A title that is free and a name, made from any text: "Log 1.csv" gives Log_1. */
export function freeRecordingTitle(notebook: Notebook, text: string): string {
  const plain = asName(text.replace(/\.\w{1,5}$/, ''), 'Recording');
  let title = plain;
  for (let number = 2; checkRecordingTitle(notebook, title); number += 1) title = `${plain}_${number}`;
  return title;
}

/** Any text as a name: itself where it is one, else the suggestion, else `otherwise`. */
export function asName(text: string, otherwise: string): string {
  const trimmed = text.trim().slice(0, 50);
  const wrong = checkName(trimmed);
  return wrong ? (wrong.suggestion ?? otherwise) : trimmed;
}

/** What is wrong with the columns of a recording, in words. */
export function checkColumns(columns: Recording['columns']): Refusal | undefined {
  if (columns.length === 0) return { message: 'A recording has at least one column.' };
  if (columns.length > PART_LIMITS.recordingColumns)
    return { message: `A recording has at most ${PART_LIMITS.recordingColumns} columns.` };
  const seen = new Set<string>();
  for (const { name, values } of columns) {
    const wrong = checkName(name);
    if (wrong)
      return {
        message: `Column ${name}: ${wrong.message}`,
        ...(wrong.suggestion !== undefined && { suggestion: wrong.suggestion }),
      };
    if (seen.has(name)) return { message: `The column ${name} stands twice.` };
    seen.add(name);
    if (values.length > PART_LIMITS.recordingRows)
      return { message: `A recording has at most ${PART_LIMITS.recordingRows} rows.` };
    if (values.length !== columns[0]?.values.length)
      return {
        message: `The column ${name} has ${values.length} rows, ${columns[0]?.name} has ${columns[0]?.values.length}.`,
      };
  }
  return undefined;
}

/** The cells whose formulas read a recording, or one of its columns. */
export function usersOfRecording(
  notebook: Notebook,
  { title, column }: { readonly title: string; readonly column?: string },
): readonly CellPlace[] {
  const users: CellPlace[] = [];
  for (const worksheet of notebook.worksheets) {
    forEachCell(worksheet, (cell, row, at) => {
      const uses = referencesIn(cell).some(
        (node) =>
          node.worksheet === title && node.type === 'name' && (column === undefined || node.name === column),
      );
      if (uses) users.push({ worksheet: worksheet.id, row, column: at });
    });
  }
  return users;
}
