/** The sections of a report: each gives markup, or undefined where the notebook has nothing for it. */

import { cellAt, findWorksheet, forEachCell, labelOf, roleOf } from '../document/index.ts';
import type { Cell, Notebook, Trial, TrialPass, Worksheet } from '../document/index.ts';
import { addressText, columnLetters } from '../expression/index.ts';
import { addressPlace } from './address-place.ts';
import { inertMarkup } from './inert-markup.ts';
import { markup } from './markup.ts';
import type { Markup } from './markup.ts';
import { shownValue } from './shown-value.ts';
import type { StoredResults } from './stored-result.ts';

export interface ReportWorking {
  /** "Feeds, B7, cutting speed" */
  readonly title: string;
  /** MathML texts, one below the other: equation, with the values put in. */
  readonly markup: readonly string[];
  /** Where the equation comes from. */
  readonly sources: readonly string[];
}

export interface ReportFigure {
  readonly title: string;
  /** One SVG element. */
  readonly svg: string;
  /** The readable table behind the drawing. */
  readonly table?: { readonly headers: readonly string[]; readonly rows: readonly (readonly string[])[] };
}

interface Place {
  readonly worksheet: Worksheet;
  readonly row: number;
  readonly column: number;
}

const where = ({ worksheet, row, column }: Place): string =>
  `${worksheet.title}, ${addressText(column, row)}`;

/** A field of a table; short ones stay on one line. */
const field = (text: string): Markup =>
  text.length <= 24 ? markup`<td class="place">${text}</td>` : markup`<td>${text}</td>`;

/** An instant as it is read: date and minute, in universal time. */
const moment = (iso: string): string =>
  iso.replace(/^(\d{4}-\d\d-\d\d)T(\d\d:\d\d)(?::\d\d(?:\.\d+)?)?Z$/, '$1 $2 UTC');

function table(headers: readonly string[], rows: readonly (readonly string[])[], caption?: string): Markup {
  return markup`<div class="scroll">
    <table>
      ${
        caption === undefined
          ? ''
          : markup`<caption>
              ${caption}
            </caption>`
      }
      <tr>
        ${headers.map((each) => markup`<th scope="col">${each}</th>`)}
      </tr>
      ${rows.map(
        (row) =>
          markup`<tr>
            ${row.map(field)}
          </tr> `,
      )}
    </table>
  </div> `;
}

function section(title: string, inner: readonly Markup[]): Markup | undefined {
  return inner.length === 0
    ? undefined
    : markup`<section>
        <h2>${title}</h2>
        ${inner}
      </section> `;
}

function limitWords({ limits }: Cell): string {
  if (!limits) return '';
  const side = (word: string, limit: string | undefined, words: string | undefined): string[] =>
    limit === undefined ? [] : [`${word} ${limit}${words ? ` (${words})` : ''}`];
  return [
    ...side('at least', limits.low, limits.lowText),
    ...side('at most', limits.high, limits.highText),
  ].join(', ');
}

function changeWords({ changed }: Cell): string {
  if (!changed) return '';
  return `changed at the machine by ${changed.by}, ${moment(changed.at)}; was ${changed.from || 'empty'}${changed.reason ? `; ${changed.reason}` : ''}`;
}

/** All given, chosen and measured values, with source, limits and remarks. */
export function givenSection(notebook: Notebook, results: StoredResults): Markup | undefined {
  const inner = notebook.worksheets.flatMap((worksheet) => {
    const rows: string[][] = [];
    forEachCell(worksheet, (cell, row, column) => {
      const role = roleOf(cell);
      if (role === 'worked' || role === 'note') return;
      const remarks = [cell.note ?? '', changeWords(cell)].filter(Boolean).join('; ');
      rows.push([
        addressText(column, row),
        labelOf(worksheet, row, column),
        shownValue(notebook, worksheet, row, column, results).text,
        limitWords(cell),
        cell.source ?? '',
        remarks,
      ]);
    });
    return rows.length === 0
      ? []
      : [table(['cell', 'value of', 'value', 'limits', 'source', 'remarks'], rows, worksheet.title)];
  });
  return section('Given values', inner);
}

/** A row of the grid; undefined where nothing stands in it. A text with nothing beside it takes the room to the right, as on the page. */
function gridRow(
  notebook: Notebook,
  worksheet: Worksheet,
  row: number,
  columns: number,
  results: StoredResults,
): Markup | undefined {
  const shown = Array.from({ length: columns }, (_column, column) =>
    shownValue(notebook, worksheet, row, column, results),
  );
  const last = shown.findLastIndex(({ text }) => text !== '');
  if (last < 0) return undefined;
  const cells = shown.map(({ text, number }, column) => {
    const content = cellAt(worksheet, row, column)?.content;
    const title = content?.startsWith('=') ? markup` title="${content}"` : '';
    const spans = column === last && !number && column < columns - 1;
    if (column > last && !(shown[last]?.number ?? true)) return '';
    return markup`<td${number ? markup` class="number"` : ''}${spans ? markup` colspan="${columns - column}"` : ''}${title}>${text}</td>`;
  });
  return markup`<tr><th scope="row">${row + 1}</th>${cells}</tr>`;
}

function worksheetTable(
  notebook: Notebook,
  worksheet: Worksheet,
  results: StoredResults,
): Markup | undefined {
  let rows = worksheet.rows.length;
  let columns = 0;
  forEachCell(worksheet, (_cell, _row, column) => {
    columns = Math.max(columns, column + 1);
  });
  for (const address of results.get(worksheet.id)?.keys() ?? []) {
    const place = addressPlace(address);
    if (!place) continue;
    columns = Math.max(columns, place.column + 1);
    rows = Math.max(rows, place.row + 1);
  }
  if (rows === 0 || columns === 0) return undefined;
  const lines = Array.from({ length: rows }, (_row, row) =>
    gridRow(notebook, worksheet, row, columns, results),
  );
  const heads = Array.from(
    { length: columns },
    (_, column) => markup`<th scope="col">${columnLetters(column)}</th>`,
  );
  return markup`<h3>${worksheet.title}</h3>
    <div class="scroll">
      <table>
        <tr>
          <td></td>
          ${heads}
        </tr>
        ${lines}
      </table>
    </div> `;
}

/** Every worksheet as it stands, and the formulas behind its results. */
export function worksheetSection(notebook: Notebook, results: StoredResults): Markup | undefined {
  const inner = notebook.worksheets.flatMap((worksheet) => {
    const grid = worksheetTable(notebook, worksheet, results);
    if (!grid) return [];
    const formulas: string[][] = [];
    forEachCell(worksheet, (cell, row, column) => {
      if (!cell.content.startsWith('=')) return;
      const { text } = shownValue(notebook, worksheet, row, column, results);
      formulas.push([addressText(column, row), labelOf(worksheet, row, column), cell.content, text]);
    });
    return formulas.length === 0
      ? [grid]
      : [grid, table(['cell', 'value of', 'formula', 'result'], formulas, `Formulas of ${worksheet.title}`)];
  });
  return section('Worksheets', inner);
}

export function workingSection(workings: readonly ReportWorking[]): Markup | undefined {
  const inner = workings.map(({ title, markup: texts, sources }) => {
    const equations = texts.map(
      (each) => inertMarkup(each) ?? markup`<em>not shown: its markup is damaged</em>`,
    );
    return markup`<h3>${title}</h3>
      ${equations.map((each) => markup`<p>${each}</p> `)}${sources.map((each) => markup`<p class="quiet">Source: ${each}</p> `)}`;
  });
  return section('Workings', inner);
}

/** Errors and cautions with the cells they stand on, and why they were accepted. */
export function cautionSection(
  notebook: Notebook,
  results: StoredResults,
  usual: readonly string[],
): Markup | undefined {
  const inner = usual.map((each) => markup`<p class="caution">${each}</p> `);
  for (const worksheet of notebook.worksheets) {
    for (const [address, { error, cautions = [] }] of results.get(worksheet.id) ?? []) {
      const at = `${worksheet.title}, ${address}`;
      if (error) inner.push(markup`<p class="error"><b>${at}</b>: ${error.code} ${error.message}</p> `);
      for (const { text } of cautions) inner.push(markup`<p class="caution"><b>${at}</b>: ${text}</p> `);
    }
    forEachCell(worksheet, (cell, row, column) => {
      for (const { text, reason } of cell.acknowledged ?? []) {
        inner.push(
          markup`<p class="quiet">
            <b>${where({ worksheet, row, column })}</b>: accepted, because: ${reason} (${text})
          </p> `,
        );
      }
    });
  }
  return section('Cautions', inner);
}

export function figureSection(figures: readonly ReportFigure[]): Markup | undefined {
  const inner = figures.map(({ title, svg, table: behind }) => {
    const drawing =
      inertMarkup(svg) ?? markup`<p class="quiet">The drawing is not shown: its markup is damaged.</p>`;
    return markup`<figure>
      <figcaption><h3>${title}</h3></figcaption>
      ${drawing} ${behind ? table(behind.headers, behind.rows) : ''}
    </figure> `;
  });
  return section('Figures', inner);
}

function passRow(trial: Trial, pass: TrialPass): Markup {
  const run = trial.runs.find(({ id }) => id === pass.run);
  const levels = trial.factors.map(({ levels: all }, index) => all[run?.levels[index] ?? -1] ?? '');
  const values = trial.measurands.map(
    ({ name }) => pass.values.find(({ measurand }) => measurand === name)?.content ?? '',
  );
  const corrections = (pass.corrections ?? []).map(
    ({ at, by, what, was }) => `${what} was ${was === '' ? 'empty' : was} (${by}, ${moment(at)})`,
  );
  const remarks = [
    pass.note ?? '',
    pass.withdrawn === undefined ? '' : `withdrawn: ${pass.withdrawn}`,
    ...corrections,
  ];
  const cells = [
    pass.run,
    ...levels,
    pass.edge,
    pass.cut,
    ...values,
    pass.by,
    moment(pass.at),
    remarks.filter(Boolean).join('; '),
  ];
  const struck = pass.withdrawn === undefined ? markup`` : markup` class="struck"`;
  return markup`<tr${struck}>${cells.map(field)}</tr>\n`;
}

/** What every trial tells, its plan and its record, corrections included. */
export function trialSection(
  { parts }: Notebook,
  findings: ReadonlyMap<string, readonly string[]> = new Map(),
): Markup | undefined {
  const inner = (parts?.trials ?? []).map((trial) => {
    const heads = [
      'run',
      ...trial.factors.map(({ name }) => name),
      'edge',
      'cut',
      ...trial.measurands.map(({ name }) => name),
      'by',
      'at',
      'remarks',
    ];
    const plan = `${trial.runs.length} runs, ${trial.repeats} of each, in an order of chance from the seed ${trial.seed}. ${trial.measurands.map(({ name, limit }) => (limit === undefined ? name : `${name}: stopped at ${limit}`)).join('; ')}.`;
    const told = findings.get(trial.id) ?? [];
    return markup`<h3>${trial.title}</h3>
      <p>${plan}</p>
      ${told.length === 0 ? '' : markup`<ul>${told.map((each) => markup`<li>${each}</li>`)}</ul>`}
      <div class="scroll">
        <table>
          <tr>
            ${heads.map((each) => markup`<th scope="col">${each}</th>`)}
          </tr>
          ${trial.passes.map((pass) => passRow(trial, pass))}
        </table>
      </div> `;
  });
  return section('Trials', inner);
}

/** Photographs, and what recordings there are. */
export function recordSection({ parts }: Notebook): Markup | undefined {
  const photographs = (parts?.photographs ?? []).map(
    ({ type, data, words, width, height, at }) =>
      markup`<figure>
        <img src="data:${type};base64,${data}" width="${width}" height="${height}" alt="${words}" />
        <figcaption>${words}${at === undefined ? '' : `, ${at}`}</figcaption>
      </figure> `,
  );
  const recordings = (parts?.recordings ?? []).map(({ title, columns, source }) => [
    title,
    columns.map(({ name, unit }) => (unit === undefined ? name : `${name} in ${unit}`)).join(', '),
    String(columns[0]?.values.length ?? 0),
    source ?? '',
  ]);
  const list = recordings.length === 0 ? [] : [table(['recording', 'columns', 'rows', 'source'], recordings)];
  return section('Recordings and photographs', [...list, ...photographs]);
}

/** Which formulas were looked through, and whether they are still the same. */
export function reviewSection(notebook: Notebook): Markup | undefined {
  const rows = (notebook.parts?.reviews ?? []).flatMap(({ place, content, initials, at }) => {
    const worksheet = findWorksheet(notebook, place.worksheet);
    if (!worksheet) return [];
    const now = cellAt(worksheet, place.row, place.column)?.content;
    return [
      [
        where({ worksheet, row: place.row, column: place.column }),
        content,
        initials,
        moment(at),
        now === content ? '' : 'the formula has changed since',
      ],
    ];
  });
  return section('Reviewed', rows.length === 0 ? [] : [table(['cell', 'formula', 'by', 'at', ''], rows)]);
}
