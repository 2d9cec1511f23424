/** A report that any browser opens from a mail: values, workings, cautions, figures, and the notebook's data as inert text. No script. */

import type { Notebook } from '../document/index.ts';
import { escaped, markup, Markup } from './markup.ts';
import {
  cautionSection,
  figureSection,
  givenSection,
  recordSection,
  reviewSection,
  trialSection,
  workingSection,
  worksheetSection,
} from './report-sections.ts';
import type { ReportFigure, ReportWorking } from './report-sections.ts';
import { REPORT_STYLES, REPORT_STYLES_HASH } from './report-styles.ts';
import type { StoredResults } from './stored-result.ts';
import { writeNotebook } from './write-notebook.ts';

export interface ReportContent {
  readonly notebook: Notebook;
  readonly results: StoredResults;
  /** MathML of the workings, as the margin shows them; damaged markup is replaced by words. */
  readonly workings?: readonly ReportWorking[];
  /** SVG of the figures; what could run or load is taken out. */
  readonly figures?: readonly ReportFigure[];
  /** What the trials tell, by trial id: a sentence each. */
  readonly findings?: ReadonlyMap<string, readonly string[]>;
  /** The cautions that always hold. */
  readonly usualCautions: readonly string[];
  /** Name and version: "Swarfbook 0.1.0". */
  readonly program: string;
  /** When it was made, in words for the reader. */
  readonly made: string;
}

/** Id of the element that holds the notebook. */
export const DATA_ID = 'notebook-data';

const POLICY = `default-src 'none'; style-src '${REPORT_STYLES_HASH}'; img-src data:; base-uri 'none'; form-action 'none'`;

/** The report as one HTML text. `readReport` opens it again as a notebook. */
export function writeReport(content: ReportContent): string {
  const { notebook, results, workings = [], figures = [], findings, usualCautions, program, made } = content;
  const sections = [
    givenSection(notebook, results),
    worksheetSection(notebook, results),
    workingSection(workings),
    figureSection(figures),
    trialSection(notebook, findings),
    recordSection(notebook),
    reviewSection(notebook),
  ];
  const data = escaped(writeNotebook(notebook, results));
  const { text } = markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${notebook.title}</title>
<style>${new Markup(REPORT_STYLES)}</style>
</head>
<body>
<h1>${notebook.title}</h1>
<p class="quiet">Made ${made} with ${program}. Plain numbers are read as ${notebook.reading}; money in ${notebook.currency}.</p>
<p class="quiet">This page only shows what was computed; nothing in it runs. Open the file with the program to check, change and compute again: the whole notebook is inside.</p>
${cautionSection(notebook, results, usualCautions)}${sections}
<template id="${DATA_ID}">${new Markup(data)}</template>
</body>
</html>
`;
  return text;
}
