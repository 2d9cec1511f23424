/** Adding, renaming and removing recordings. Formulas follow new names; of a removed one they say that it is gone. */

import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { checkName } from '../check-name.ts';
import { followed } from '../follow-references.ts';
import { addressOf } from '../formula-references.ts';
import type { Notebook } from '../notebook.ts';
import type { Recording } from '../parts.ts';
import { checkColumns, checkRecordingTitle, recordingColumn, usersOfRecording } from '../recordings.ts';
import type { Refusal } from '../refusal.ts';
import { worksheetOf } from '../cells.ts';
import { freshPartId, partsOf, putPart, removeParts, withPart } from './part-commands.ts';

/** A new recording at the end of the list. */
export function addRecording(notebook: Notebook, recording: Omit<Recording, 'id'>): Transaction | Refusal {
  const { title, columns } = recording;
  const wrong = checkRecordingTitle(notebook, title) ?? checkColumns(columns);
  if (wrong) return wrong;
  const record = { ...recording, id: freshPartId(notebook, 'recordings') };
  return putPart(notebook, { part: 'recordings', record, description: `add the recording ${title}` });
}

const found = (notebook: Notebook, id: string): Recording | undefined =>
  partsOf(notebook, 'recordings').find((recording) => recording.id === id);

const NOT_THERE: Refusal = { message: 'This recording is not in the notebook.' };

/** Another title; formulas that read its columns are rewritten. */
export function renameRecording(
  notebook: Notebook,
  { recording: id, title }: { readonly recording: string; readonly title: string },
): Transaction | Refusal {
  const before = found(notebook, id);
  if (!before) return NOT_THERE;
  const wrong = checkRecordingTitle(notebook, title, id);
  if (wrong) return wrong;
  const after = followed(notebook, withPart(notebook, 'recordings', { ...before, title }), {
    recording: (was, column) => ({ title: was === before.title ? title : was, column }),
  });
  return transactionTo(notebook, after, `rename the recording ${before.title} to ${title}`);
}

/** Another name or unit of a column; formulas that read it are rewritten. A new unit says what the numbers were all along. */
export function changeRecordingColumn(
  notebook: Notebook,
  args: {
    readonly recording: string;
    readonly column: string;
    readonly to?: string;
    /** Empty: plain numbers. */
    readonly unit?: string;
  },
): Transaction | Refusal {
  const before = found(notebook, args.recording);
  if (!before) return NOT_THERE;
  const { column, to = column, unit } = args;
  if (!recordingColumn(before, column)) return { message: `${before.title} has no column ${column}.` };
  const wrong = checkName(to);
  if (wrong) return wrong;
  if (to !== column && recordingColumn(before, to))
    return { message: `${before.title} has a column ${to} already.` };
  const columns = before.columns.map((each) => {
    if (each.name !== column) return each;
    const { unit: was, ...rest } = each;
    const now = unit ?? was ?? '';
    return { ...rest, name: to, ...(now !== '' && { unit: now }) };
  });
  const after = followed(notebook, withPart(notebook, 'recordings', { ...before, columns }), {
    recording: (title, old) => ({ title, column: title === before.title && old === column ? to : old }),
  });
  return transactionTo(notebook, after, `change the column ${column} of ${before.title}`);
}

/** Removes a recording. Formulas keep its name and say that it is not there, so that one of the same title heals them. */
export function removeRecording(
  notebook: Notebook,
  { recording: id }: { readonly recording: string },
): Transaction | Refusal {
  const before = found(notebook, id);
  if (!before) return NOT_THERE;
  const removed = removeParts(notebook, {
    part: 'recordings',
    ids: [id],
    description: `remove the recording ${before.title}`,
  });
  const users = usersOfRecording(notebook, { title: before.title });
  if ('message' in removed || users.length === 0) return removed;
  const places = users
    .slice(0, 5)
    .map(
      ({ worksheet, row, column }) => `${worksheetOf(notebook, worksheet).title}.${addressOf(row, column)}`,
    );
  const more = users.length > 5 ? ` and ${users.length - 5} more` : '';
  return { ...removed, notice: `${before.title} was read in ${places.join(', ')}${more}.` };
}
