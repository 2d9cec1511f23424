/** A log on its way into a recording: what was chosen about it, and the reading itself with pauses for the page. Loaded with the recordings. */

import { addRecording, freeRecordingTitle } from '../document/index.ts';
import type { Refusal, Transaction } from '../document/index.ts';
import { inPieces, readRecording, understandRecording } from '../exchange/index.ts';
import type { ReadRecording, RecordingOptions, UnderstoodTable } from '../exchange/index.ts';
import { formatNumber } from '../quantity/index.ts';
import type { Session } from './session.ts';

export interface ChosenLog {
  /** Name of the file. */
  readonly from: string;
  readonly text: string;
  readonly title: string;
  readonly options: RecordingOptions;
}

export function chosenLog(session: Session, from: string, text: string): ChosenLog {
  const { notebook } = session;
  return { from, text, title: freeRecordingTitle(notebook, from), options: { currency: notebook.currency } };
}

/** How it is written, from its first lines. */
export const understoodLog = ({ text, options }: ChosenLog): UnderstoodTable | Refusal =>
  understandRecording(text, options);

/** Lets the page draw and take keys. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** Reads the log; `told` hears how many rows are in. */
export function readLog(
  { text, options }: ChosenLog,
  told: (rows: number) => void,
): Promise<ReadRecording | Refusal> {
  return inPieces(readRecording(text, options), breath, told);
}

/** The step that puts it into the notebook. */
export function addedLog({ notebook }: Session, log: ChosenLog, read: ReadRecording): Transaction | Refusal {
  return addRecording(notebook, { title: log.title, columns: read.columns, source: log.from });
}

/** What was read, in words: rows, columns, what was left out. */
export function readWords({ rows, columns, leftOut, missing }: ReadRecording): string {
  const out = leftOut.length === 0 ? '' : ` ${leftOut.join(', ')} held no numbers and stayed outside.`;
  const gaps = missing === 0 ? '' : ` ${missing} readings are missing.`;
  return `${formatNumber(rows)} rows, ${columns.length} ${columns.length === 1 ? 'column' : 'columns'}.${out}${gaps}`;
}
