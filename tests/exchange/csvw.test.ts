/**
 * The metadata beside a list against the rules of the W3C Recommendation "Metadata Vocabulary for Tabular Data"
 * (17 December 2015, https://www.w3.org/TR/tabular-metadata/), section by section by its title, and of its companion
 * "Model for Tabular Data and Metadata on the Web", sections "Table compatibility" and "Parsing tabular data".
 * The wording of the sections on schemas and columns was read in the editors' draft; the rest is from memory.
 */

import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { apply, emptyNotebook, enter, isRefusal } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { writeCsvList, writeCsvMetadata } from '../../src/exchange/index.ts';

type Json = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isText = (value: unknown): value is string => typeof value === 'string';

/** "Inherited Properties": may stand at tables, schemas and columns. */
const INHERITED = [
  'aboutUrl',
  'datatype',
  'default',
  'lang',
  'null',
  'ordered',
  'propertyUrl',
  'required',
  'separator',
  'textDirection',
  'valueUrl',
];
/** "Tables". */
const TABLE = [
  '@context',
  'url',
  'dialect',
  'notes',
  'suppressOutput',
  'tableDirection',
  'tableSchema',
  'transformations',
  '@id',
  '@type',
];
/** "Schemas". */
const SCHEMA = ['columns', 'foreignKeys', 'primaryKey', 'rowTitles', '@id', '@type'];
/** "Columns". */
const COLUMN = ['name', 'titles', 'suppressOutput', 'virtual', '@id', '@type'];
/** "Dialect Descriptions". */
const DIALECT = [
  'commentPrefix',
  'delimiter',
  'doubleQuote',
  'encoding',
  'header',
  'headerRowCount',
  'lineTerminators',
  'quoteChar',
  'skipBlankRows',
  'skipColumns',
  'skipInitialSpace',
  'skipRows',
  'trim',
  '@id',
  '@type',
];
/** "Built-in Datatypes", those that a table of a workshop can have. */
const DATATYPES = ['string', 'double', 'number', 'integer', 'boolean', 'date', 'dateTime', 'decimal', 'any'];

/** "Common Properties": a prefixed name of the context, or a whole URL; their values are plain or language-tagged. */
const isCommon = (key: string): boolean =>
  /^(?:dc|dcat|schema|skos|prov|foaf):\w+$/.test(key) || /^https?:\/\//.test(key);

function strangers(what: string, object: Json, allowed: readonly string[]): string[] {
  return Object.keys(object)
    .filter((key) => !allowed.includes(key) && !isCommon(key))
    .map((key) => `${what}: ${key} is no property of it`);
}

function columnOffences(column: unknown, k: number): string[] {
  const what = `column ${k + 1}`;
  if (!isObject(column)) return [`${what} is no object`];
  const { name, titles, datatype, virtual } = column;
  const found = strangers(what, column, [...COLUMN, ...INHERITED]);
  // "Columns", name: a string that can stand in a URI template; "_" at its beginning is reserved.
  if (!isText(name) || !/^[a-zA-Z0-9][a-zA-Z0-9_.]*$/.test(name)) found.push(`${what}: name ${String(name)}`);
  // "Natural Language Properties": a string, an array of strings, or an object by language.
  if (!isText(titles) && !(Array.isArray(titles) && titles.every(isText)) && !isObject(titles))
    found.push(`${what}: titles`);
  const base = isObject(datatype) ? datatype['base'] : datatype;
  if (base !== undefined && (!isText(base) || !DATATYPES.includes(base))) found.push(`${what}: datatype`);
  if (virtual !== undefined && typeof virtual !== 'boolean') found.push(`${what}: virtual`);
  if (column['required'] !== undefined && typeof column['required'] !== 'boolean')
    found.push(`${what}: required`);
  return found;
}

function dialectOffences(dialect: unknown): string[] {
  if (dialect === undefined) return [];
  if (!isObject(dialect)) return ['the dialect is no object'];
  const found = strangers('dialect', dialect, DIALECT);
  for (const key of ['delimiter', 'quoteChar'])
    if (dialect[key] !== undefined && (!isText(dialect[key]) || dialect[key].length !== 1))
      found.push(`dialect: ${key}`);
  for (const key of ['header', 'doubleQuote', 'skipBlankRows', 'skipInitialSpace'])
    if (dialect[key] !== undefined && typeof dialect[key] !== 'boolean') found.push(`dialect: ${key}`);
  // "Dialect Descriptions", encoding: one of the names of the Encoding standard.
  if (dialect['encoding'] !== undefined && dialect['encoding'] !== 'utf-8') found.push('dialect: encoding');
  return found;
}

/** What of the rules a description of one table breaks, alone and against its table. */
function offences(text: string, csv: string, file: string): string[] {
  const metadata: unknown = JSON.parse(text);
  if (!isObject(metadata)) return ['the document is no object'];
  const found = strangers('table', metadata, [...TABLE, ...INHERITED]);
  // "Top-Level Properties": the context is this string, or an array of it and an object.
  const context = metadata['@context'];
  if ((Array.isArray(context) ? context[0] : context) !== 'http://www.w3.org/ns/csvw') found.push('@context');
  // "Tables", url: required; a link property, resolved against the place of the metadata.
  const { url } = metadata;
  const base = 'https://example.org/shop/';
  if (!isText(url) || /[\s<>"{}|\\^`]/.test(url)) found.push('url');
  else if (decodeURIComponent(new URL(url, base).href) !== base + file)
    found.push(`url leads to ${new URL(url, base).href}`);
  // "Common Properties" may not have null, and no @list, @set or @context in their values.
  for (const [key, value] of Object.entries(metadata))
    if (isCommon(key) && !isText(value)) found.push(`${key} is no text`);
  found.push(...dialectOffences(metadata['dialect']));
  const schema = metadata['tableSchema'];
  if (!isObject(schema)) return [...found, 'no schema'];
  found.push(...strangers('schema', schema, [...SCHEMA, ...INHERITED]));
  const columns: readonly unknown[] = Array.isArray(schema['columns']) ? schema['columns'] : [];
  columns.forEach((column, k) => found.push(...columnOffences(column, k)));
  const names = columns.map((column) => (isObject(column) ? String(column['name']) : ''));
  // "Schemas", columns: names are unique.
  if (new Set(names).size !== names.length) found.push('a name stands twice');
  // "Schemas", primaryKey: references to columns by their names.
  const key = schema['primaryKey'];
  const keys: readonly unknown[] = Array.isArray(key) ? key : key === undefined ? [] : [key];
  if (!keys.every((each) => isText(each) && names.includes(each))) found.push('primaryKey names no column');

  const { data } = Papa.parse<string[]>(csv.replace(/^\ufeff/, ''), { delimiter: ',', skipEmptyLines: true });
  const [headers = [], ...rows] = data;
  // "Table compatibility": as many columns as the table has, each header one of the titles at its place.
  if (headers.length !== columns.length) found.push(`${headers.length} headers, ${columns.length} columns`);
  headers.forEach((header, k) => {
    const column = columns[k];
    const titles = isObject(column) ? column['titles'] : undefined;
    if (![titles].flat().includes(header)) found.push(`header ${header} is not described`);
  });
  // "Schemas", primaryKey: every row has its own combination; "Columns", required: no empty cell.
  const places = keys.map((each) => names.indexOf(String(each)));
  const seen = new Set(rows.map((row) => JSON.stringify(places.map((at) => row[at]))));
  if (seen.size !== rows.length) found.push('two rows have the same key');
  columns.forEach((column, k) => {
    if (isObject(column) && column['required'] === true && rows.some((row) => row[k] === ''))
      found.push(`column ${k + 1} has a gap`);
  });
  return found;
}

function notebook(title: string, rows: readonly (readonly string[])[]): Notebook {
  const start = emptyNotebook({ id: 'n', title, worksheetTitle: 'Feeds' });
  const answer = enter(start, { worksheet: 'w1', row: 0, column: 0, typed: rows });
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(start, answer.changes);
}

test('the metadata of a list keeps the rules of the recommendation and fits its table', () => {
  const made = notebook('Trial: 50 % "deep"', [
    ['feed per tooth', '0.12 mm/tooth', '=B1*2'],
    ['a "quoted", text', "'=1", '5 %'],
  ]);
  const file = 'Trial 50 deep list.csv';
  expect(offences(writeCsvMetadata(made, file), writeCsvList(made), file)).toEqual([]);
});

test('any notebook under any title has metadata that keeps the rules', () => {
  const text = fc
    .string({ maxLength: 6 })
    .filter((each) => !/^\s*[=+-]?\d{1,3},\d{3}/.test(each) && !each.startsWith('='));
  fc.assert(
    fc.property(
      fc.string({ minLength: 1, maxLength: 20 }),
      fc.array(fc.array(text, { minLength: 2, maxLength: 3 }), { minLength: 1, maxLength: 4 }),
      (title, rows) => {
        const made = notebook(title, rows);
        const file = `${title.replaceAll(/[^\p{L}\p{N} ]/gu, '')}x: list.csv`;
        expect(offences(writeCsvMetadata(made, file), writeCsvList(made), file)).toEqual([]);
      },
    ),
    { seed: 11, numRuns: 200 },
  );
});

test.each([
  [
    'a name that begins with _',
    (text: string) =>
      text
        .replace('"name": "worksheet"', '"name": "_worksheet"')
        .replace(/"worksheet"(?=,\s*"cell")/, '"_worksheet"'),
  ],
  ['a name with a space', (text: string) => text.replace('"UCUM_code"', '"UCUM code"')],
  ['a name that stands twice', (text: string) => text.replace('"name": "unit"', '"name": "role"')],
  ['a title that is no header', (text: string) => text.replace('"titles": "unit"', '"titles": "units"')],
  ['a key without a column', (text: string) => text.replace(/"cell"(?=\s*\])/, '"place"')],
  ['a property that does not exist', (text: string) => text.replace('"dialect"', '"dialects"')],
  ['another context', (text: string) => text.replace('ns/csvw', 'ns/other')],
  ['a delimiter of two letters', (text: string) => text.replace('"delimiter": ","', '"delimiter": ",,"')],
  ['the place of another table', (text: string) => text.replace('list.csv', 'other.csv')],
])('the check itself finds %s', (_what, spoil) => {
  const made = notebook('Trial', [['feed', '0.12 mm']]);
  const good = writeCsvMetadata(made, 'list.csv');
  const spoilt = spoil(good);
  expect(spoilt).not.toBe(good);
  expect(offences(spoilt, writeCsvList(made), 'list.csv')).not.toEqual([]);
});
