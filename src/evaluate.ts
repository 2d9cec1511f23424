/** The command line: computes a notebook file, formulas alone, or lists the functions; no browser. */

import { readFileSync } from 'node:fs';
import { BUILTINS, DEFINITIONS, functionTable } from './catalogue.ts';
import {
  apply,
  canonicalContent,
  cellAt,
  emptyNotebook,
  isRefusal,
  labelOf,
  namesOn,
  resolveName,
  roleOf,
  worksheetTitled,
} from './document/index.ts';
import type { Cell, Notebook, Worksheet } from './document/index.ts';
import { createEngine } from './engine/index.ts';
import type { Engine } from './engine/index.ts';
import { readNotebook } from './exchange/index.ts';
import { addressText, isFailure, parse } from './expression/index.ts';
import type { Scalar } from './expression/index.ts';
import { fromSI, isUnknownUnit, parseUnit } from './quantity/index.ts';
import type { CellResult } from './calculation/index.ts';

const USAGE = `usage:
  npm run --silent evaluate -- FILE [--set "Worksheet.name=12 mm"]... [--format table|csv|json]
  npm run --silent evaluate -- [FILE] --formula "=..." [--formula "=..."]... [--formulas FILE]
  npm run --silent evaluate -- --functions`;

/** What can not be carried out, in one line. */
class Refused extends Error {}

type Format = 'table' | 'csv' | 'json';

interface Request {
  file?: string;
  readonly sets: string[];
  readonly formulas: string[];
  format: Format;
  functions: boolean;
}

function read(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new Refused(`${path} can not be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}

const isFormat = (text: string): text is Format => text === 'table' || text === 'csv' || text === 'json';

function requestOf(args: readonly string[]): Request {
  const request: Request = { sets: [], formulas: [], format: 'table', functions: false };
  const rest = [...args];
  const valueOf = (option: string): string => {
    const value = rest.shift();
    if (value === undefined) throw new Refused(`${option} needs a value after it`);
    return value;
  };
  for (let arg = rest.shift(); arg !== undefined; arg = rest.shift()) {
    if (arg === '--set') request.sets.push(valueOf(arg));
    else if (arg === '--formula') request.formulas.push(valueOf(arg));
    else if (arg === '--formulas') {
      request.formulas.push(
        ...read(valueOf(arg))
          .split(/\r?\n/)
          .filter((line) => line.trim() !== ''),
      );
    } else if (arg === '--functions') request.functions = true;
    else if (arg === '--format') {
      const format = valueOf(arg);
      if (!isFormat(format)) throw new Refused(`--format is table, csv or json, not ${format}`);
      request.format = format;
    } else if (arg.startsWith('--')) throw new Refused(`there is no option ${arg}`);
    else if (request.file === undefined) request.file = arg;
    else throw new Refused(`one file at a time: ${request.file} or ${arg}`);
  }
  return request;
}

function openFile(path: string): Notebook {
  const opened = readNotebook(read(path));
  if (isRefusal(opened)) throw new Refused(`${path} can not be opened: ${opened.message}`);
  return opened.notebook;
}

/** On a command line a worksheet's title needs no quotation marks. */
function withQuotedTitle(notebook: Notebook, text: string): string {
  const titled = notebook.worksheets.find(({ title }) => text.startsWith(`${title}.`));
  return titled ? `'${titled.title.replaceAll("'", "''")}'${text.slice(titled.title.length)}` : text;
}

/** Where the left side of --set leads: Worksheet.name, Worksheet.B3, or a name or cell of the first worksheet. */
function targetOf(notebook: Notebook, text: string): { worksheet: Worksheet; row: number; column: number } {
  const { tree } = parse(`=${withQuotedTitle(notebook, text.trim())}`);
  const [first] = notebook.worksheets;
  if (!first || (tree?.type !== 'cell' && tree?.type !== 'name')) {
    throw new Refused(`--set ${text}: name a cell as Worksheet.name or Worksheet.B3`);
  }
  const titled = tree.worksheet === undefined ? undefined : worksheetTitled(notebook, tree.worksheet);
  if (tree.worksheet !== undefined && !titled)
    throw new Refused(`--set ${text}: there is no worksheet ${tree.worksheet}`);
  if (tree.type === 'cell') return { worksheet: titled ?? first, row: tree.row, column: tree.column };
  const found = titled
    ? { worksheet: titled, defined: namesOn(titled).get(tree.name) }
    : resolveName(notebook, first.id, tree.name);
  if (!found?.defined) throw new Refused(`--set ${text}: there is no name ${tree.name}`);
  const { target } = found.defined;
  if (target.rows * target.columns !== 1)
    throw new Refused(`--set ${text}: ${tree.name} names more than one cell`);
  return { worksheet: found.worksheet, row: target.row, column: target.column };
}

/** The notebook with one given changed; a formula is not overwritten. */
function withSet(notebook: Notebook, assignment: string): Notebook {
  const equals = assignment.indexOf('=');
  if (equals < 1) throw new Refused(`--set ${assignment}: write it as "Worksheet.name=12 mm"`);
  const { worksheet, row, column } = targetOf(notebook, assignment.slice(0, equals));
  const from = cellAt(worksheet, row, column);
  if (from?.content.startsWith('=')) {
    const address = addressText(column, row);
    throw new Refused(
      `--set ${assignment}: ${worksheet.title}.${address} holds a formula and is not overwritten`,
    );
  }
  const typed = canonicalContent(assignment.slice(equals + 1).trim(), { currency: notebook.currency }, from);
  if (isRefusal(typed)) throw new Refused(`--set ${assignment}: ${typed.message}`);
  const { unit: _unit, ...plain }: Cell = from ?? { content: '' };
  const to: Cell = { ...(typed.dropsUnit ? plain : (from ?? plain)), content: typed.content };
  return apply(notebook, [{ type: 'cell', worksheet: worksheet.id, row, column, ...(from && { from }), to }]);
}

/** The number in its display unit; everything else as it is. */
function shownValue(value: Scalar, unit: string, currency: string): number | string | boolean | null {
  if (isFailure(value)) return null;
  if (typeof value !== 'number' || unit === '') return value;
  const known = parseUnit(unit, currency);
  return isUnknownUnit(known) ? value : fromSI(value, known);
}

const numberOf = (value: Scalar): number | null => (typeof value === 'number' ? value : null);

const errorText = ({ error }: CellResult): string | null => (error ? `${error.code} ${error.message}` : null);

const cautionTexts = ({ cautions }: CellResult): string[] => cautions.map(({ text }) => text);

interface Line {
  readonly worksheet: string;
  readonly cell: string;
  readonly name: string;
  readonly label: string;
  readonly value: number | string | boolean | null;
  readonly unit: string;
  readonly si: number | null;
  readonly kind: string;
  readonly error: string | null;
  readonly cautions: readonly string[];
}

const COLUMNS = [
  'worksheet',
  'cell',
  'name',
  'label',
  'value',
  'unit',
  'si',
  'kind',
  'error',
  'cautions',
] as const;

/** Every filled cell that is not a note, further values of formulas included, in the order of worksheets and rows. */
function linesOf(notebook: Notebook, engine: Engine): Line[] {
  const { results } = engine.open(notebook);
  return results.flatMap(({ address, result }) => {
    const worksheet = notebook.worksheets.find(({ id }) => id === address.worksheet);
    const { row, column } = address;
    if (!worksheet || !result) return [];
    const cell = cellAt(worksheet, row, column);
    if (cell && (cell.content === '' ? !result.origin : roleOf(cell) === 'note')) return [];
    const isNamed = ({ target }: Worksheet['names'][number]): boolean =>
      target.row === row && target.column === column && target.rows === 1 && target.columns === 1;
    return [
      {
        worksheet: worksheet.title,
        cell: addressText(column, row),
        name: worksheet.names.find(isNamed)?.name ?? '',
        label: labelOf(worksheet, row, column),
        value: shownValue(result.value, result.unit, notebook.currency),
        unit: result.unit,
        si: numberOf(result.value),
        kind: result.kind,
        error: errorText(result),
        cautions: cautionTexts(result),
      },
    ];
  });
}

const fieldText = (field: Line[keyof Line]): string => {
  if (field === null) return '';
  if (typeof field === 'boolean') return field ? 'TRUE' : 'FALSE';
  return typeof field === 'object' ? field.join('; ') : String(field);
};

const rowsOf = (lines: readonly Line[]): string[][] => [
  [...COLUMNS],
  ...lines.map((line) => COLUMNS.map((column) => fieldText(line[column]))),
];

function asTable(lines: readonly Line[]): string {
  const rows = rowsOf(lines).map((row) => row.map((field) => field.replaceAll(/\s+/g, ' ')));
  const widths = COLUMNS.map((_, index) => Math.max(...rows.map((row) => row[index]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((field, index) => field.padEnd(widths[index] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

const quoted = (field: string): string =>
  /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;

const asCsv = (lines: readonly Line[]): string =>
  rowsOf(lines)
    .map((row) => row.map(quoted).join(','))
    .join('\r\n');

const WRITERS: Readonly<Record<Format, (lines: readonly Line[]) => string>> = {
  table: asTable,
  csv: asCsv,
  json: (lines) => JSON.stringify(lines, null, 2),
};

/** One line of JSON for a formula that stands alone; a list where it gives several values. */
function formulaLine(engine: Engine, notebook: Notebook, formula: string): { text: string; failed: boolean } {
  const { currency, worksheets } = notebook;
  const worksheet = worksheets[0]?.id ?? '';
  const typed = canonicalContent(formula, { currency });
  if (isRefusal(typed)) {
    const refused = {
      value: null,
      unit: '',
      si: null,
      kind: 'error',
      cautions: [],
      error: `#VALUE! ${typed.message}`,
    };
    return { text: JSON.stringify({ formula, ...refused }), failed: true };
  }
  // The last cell of a worksheet: it is in nobody's way, and its own content is not looked at.
  const { result, items } = engine.tryOut({ worksheet, row: 1999, column: 63 }, typed.content);
  const inUnit = (value: Scalar): Line['value'] => shownValue(value, result.unit, currency);
  const list = items?.grid.flat();
  const line = {
    formula,
    value: list ? list.map(inUnit) : inUnit(result.value),
    unit: result.unit,
    si: list ? list.map(numberOf) : numberOf(result.value),
    kind: result.kind,
    cautions: cautionTexts(result),
    error: errorText(result),
  };
  return { text: JSON.stringify(line), failed: result.error !== undefined };
}

/** Every function as data: domain functions as they are defined, built-in ones with a mark. */
function functionList(): string {
  const builtins = BUILTINS.map(({ table: _table, ...described }) => ({ ...described, builtin: true }));
  const domain = DEFINITIONS.map((definition) => ({ ...definition, builtin: false }));
  return JSON.stringify([...domain, ...builtins], null, 2);
}

function carryOut(request: Request): number {
  if (request.functions) {
    console.log(functionList());
    return 0;
  }
  if (request.file === undefined && request.formulas.length === 0)
    throw new Refused(`nothing to evaluate\n${USAGE}`);
  const file =
    request.file === undefined ? emptyNotebook({ id: 'n', currency: 'money' }) : openFile(request.file);
  const notebook = request.sets.reduce(withSet, file);
  const engine = createEngine({ functions: functionTable() });
  if (request.formulas.length > 0) {
    engine.open(notebook);
    const lines = request.formulas.map((formula) => formulaLine(engine, notebook, formula));
    console.log(lines.map(({ text }) => text).join('\n'));
    return lines.some(({ failed }) => failed) ? 1 : 0;
  }
  const lines = linesOf(notebook, engine);
  console.log(WRITERS[request.format](lines));
  return lines.some(({ error }) => error !== null) ? 1 : 0;
}

/** Exit status: 0 all computed, 1 a cell is in error, 2 the request can not be carried out. */
export function main(args: readonly string[]): number {
  try {
    return carryOut(requestOf(args));
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    console.error(error.message);
    return 2;
  }
}
