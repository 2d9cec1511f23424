/** The notebook inside a report. The page around it is not looked at, and nothing in the file is trusted. */

import type { Refusal } from '../document/index.ts';
import { FILE_LIMITS } from './guarded-json.ts';
import { unescaped } from './markup.ts';
import { readNotebook } from './read-notebook.ts';
import type { ReadNotebook } from './read-notebook.ts';
import { DATA_ID } from './write-report.ts';

/** Longest report that is read, in characters: the notebook with its tables, figures and photographs. */
const MOST = 4 * FILE_LIMITS.file;

const START = new RegExp(`<template\\b[^<>]{0,200}\\bid\\s*=\\s*["']?${DATA_ID}["']?[^<>]{0,200}>`, 'gi');

/** True where a text is an HTML page rather than a notebook file. */
export const looksLikeReport = (text: string): boolean =>
  /^(?:\ufeff)?\s*<(?:!doctype\s+html|html)\b/i.test(text.slice(0, 500));

/** Reads the notebook out of a report. Refused in words: no notebook in it, more than one, a damaged one. */
export function readReport(text: string): ReadNotebook | Refusal {
  if (text.length > MOST) return { message: 'The report is larger than what is read.' };
  const starts = [...text.matchAll(START)];
  const [start] = starts;
  if (!start) return { message: 'This page is no report with a notebook inside.' };
  if (starts.length > 1) return { message: 'The report is not opened: it holds more than one notebook.' };
  const from = start.index + start[0].length;
  const to = text.indexOf('</template', from);
  if (to < 0) return { message: 'The report ends too early: a part is missing; open another copy of it.' };
  const inside = text.slice(from, to);
  if (inside.includes('<')) return { message: 'The report is not opened: what it holds is no plain text.' };
  return readNotebook(unescaped(inside));
}

/** Reads a text from outside, whichever it is: a notebook file or a report. */
export function readAnyNotebook(text: string): ReadNotebook | Refusal {
  return looksLikeReport(text) ? readReport(text) : readNotebook(text);
}
