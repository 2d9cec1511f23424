/** The metadata beside a list against the published rules of CSVW, and the check itself against the working group's test suite. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addWorksheet,
  apply,
  emptyNotebook,
  enter,
  filledCells,
  isRefusal,
} from '../../src/document/index.ts';
import type { Notebook, Transaction, Refusal } from '../../src/document/index.ts';
import { writeCsvList, writeCsvMetadata } from '../../src/exchange/index.ts';
import { metadataOffences } from './csvw-rules.ts';
import { rowsOf, tableOffences } from './csvw-table.ts';

const BASE = 'https://example.org/shop/';

const offences = (text: string, csv: string, file: string): string[] => {
  const alone = metadataOffences(text);
  return alone.length > 0 ? alone : tableOffences(text, csv, BASE, file);
};

function after(before: Notebook, answer: Transaction | Refusal): Notebook {
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(before, answer.changes);
}

function notebook(title: string, rows: readonly (readonly string[])[], worksheetTitle = 'Feeds'): Notebook {
  const start = emptyNotebook({ id: 'n', title, worksheetTitle });
  return after(start, enter(start, { worksheet: 'w1', row: 0, column: 0, typed: rows }));
}

test('the metadata of a list keeps the rules of the recommendation and fits its table', () => {
  const made = notebook('Trial: 50 % "deep"', [
    ['feed per tooth', '0.12 mm/tooth', '=B1*2'],
    ['a "quoted", text', "'=1", '5 %'],
  ]);
  const file = 'Trial 50 deep list.csv';
  expect(offences(writeCsvMetadata(made, file), writeCsvList(made), file)).toEqual([]);
});

/** Every filled cell is on a line that a reader sees, under the title of its worksheet. */
const titlesRead = (list: string): readonly (string | undefined)[] =>
  rowsOf(list.replace(/^\ufeff/, ''), { commentPrefix: '#', trim: false, delimiter: ',', quoteChar: '"' })
    .slice(1)
    .map((row) => row[0]);

test('a worksheet whose title begins with # is no comment to a reader, and spaces around a text belong to it', () => {
  const made = notebook('Trial', [[' two spaces  ', "'#", '#2']], '#2 finishing');
  expect(titlesRead(writeCsvList(made))).toEqual(Array<string>(3).fill('#2 finishing'));
  const { dialect } = JSON.parse(writeCsvMetadata(made, 'l.csv')) as { readonly dialect: unknown };
  // V 5.9 trim: true where it is left out.
  expect(dialect).toMatchObject({ trim: false });
});

test('any notebook under any title has metadata that keeps the rules', () => {
  const text = fc
    .string({ maxLength: 6 })
    .filter((each) => !/^\s*[=+-]?\d{1,3},\d{3}/.test(each) && !each.startsWith('='));
  const title = fc
    .string({ minLength: 1, maxLength: 12, unit: fc.constantFrom(...'#,";\'a ä1-=@') })
    .map((each) => `${each.trim()}x`);
  fc.assert(
    fc.property(
      fc.string({ minLength: 1, maxLength: 20 }),
      title,
      fc.array(fc.array(text, { minLength: 2, maxLength: 3 }), { minLength: 1, maxLength: 4 }),
      (name, worksheetTitle, rows) => {
        const made = notebook(name, rows, worksheetTitle);
        const file = `${name.replaceAll(/[^\p{L}\p{N} ]/gu, '')}x: list.csv`;
        const list = writeCsvList(made);
        expect(offences(writeCsvMetadata(made, file), list, file)).toEqual([]);
        expect(titlesRead(list)).toHaveLength(
          made.worksheets.reduce((sum, each) => sum + filledCells(each), 0),
        );
      },
    ),
    { seed: 11, numRuns: 300 },
  );
});

/** The table that most of the published tests describe: tests/tree-ops.csv of https://github.com/w3c/csvw. */
const TREES = [
  'GID,On Street,Species,Trim Cycle,Inventory Date',
  '1,ADDISON AV,Celtis australis,Large Tree Routine Prune,10/18/2010',
  '2,EMERSON ST,Liquidambar styraciflua,Large Tree Routine Prune,6/2/2010',
  '',
].join('\n');

type Fields = Record<string, unknown>;
interface Description extends Fields {
  tableSchema: Fields & { columns: (Fields & { name?: unknown; titles?: unknown })[] };
}

/** Its description in those tests; each of them changes one thing. */
const trees = (): Description => ({
  '@context': 'http://www.w3.org/ns/csvw',
  url: 'tree-ops.csv',
  tableSchema: {
    columns: [
      { name: 'GID', titles: 'GID' },
      { name: 'on_street', titles: 'On Street' },
      { name: 'species', titles: 'Species' },
      { name: 'trim_cycle', titles: 'Trim Cycle' },
      { name: 'inventory_date', titles: 'Inventory Date', datatype: { base: 'date', format: 'M/d/yyyy' } },
    ],
  },
});

test('the check finds nothing in the description from which the published tests are made', () => {
  expect(offences(JSON.stringify(trees()), TREES, 'tree-ops.csv')).toEqual([]);
});

type Spoiling = (description: Description) => unknown;
const column =
  (k: number, change: Fields): Spoiling =>
  (each) =>
    Object.assign(each.tableSchema.columns[k] ?? {}, change);
const table =
  (change: Fields): Spoiling =>
  (each) =>
    Object.assign(each, change);
const schema =
  (change: Fields): Spoiling =>
  (each) =>
    Object.assign(each.tableSchema, change);

/**
 * Tests of the published suite (tests/manifest.csv of https://github.com/w3c/csvw) whose result is an error or a warning,
 * by number. Of those marked "text" the file itself was read; the others are made after what the manifest says of them.
 */
const PUBLISHED: readonly (readonly [string, string, Spoiling])[] = [
  ['060 text', 'V 5.9 delimiter', table({ dialect: { delimiter: '--' } })],
  ['061', 'V 5.9 doubleQuote', table({ dialect: { doubleQuote: 'true' } })],
  ['062 text', 'V 5.9 encoding', table({ dialect: { encoding: 'foo' } })],
  ['063', 'V 5.9 header', table({ dialect: { header: 'true' } })],
  ['065 text', 'V 5.9 headerRowCount', table({ dialect: { headerRowCount: '0' } })],
  ['066', 'V 5.9 lineTerminators', table({ dialect: { lineTerminators: 1 } })],
  ['067 text', 'V 5.9 quoteChar', table({ dialect: { quoteChar: true } })],
  ['068', 'V 5.9 skipBlankRows', table({ dialect: { skipBlankRows: 1 } })],
  ['069', 'V 5.9 skipColumns', table({ dialect: { skipColumns: -1 } })],
  ['070', 'V 5.9 skipInitialSpace', table({ dialect: { skipInitialSpace: 1 } })],
  ['071', 'V 5.9 skipRows', table({ dialect: { skipRows: '1' } })],
  ['072 text', 'V 5.9 trim', table({ dialect: { trim: 1 } })],
  [
    '073 text',
    'V 5.2',
    table({ '@context': ['http://www.w3.org/ns/csvw', { '@language': 'invalid-language' }] }),
  ],
  ['076', 'V 5.4 tableDirection', table({ tableDirection: 'upside-down' })],
  ['078', 'V 5.4 @id', table({ '@id': '_:table' })],
  ['079 text', 'V 5.5 @id', schema({ '@id': '_:foo' })],
  ['080 text', 'V 5.6 @id', column(0, { '@id': '_:foo' })],
  ['081', 'V 5.9 @id', table({ dialect: { '@id': '_:foo' } })],
  ['084', 'V 5.4 @type', table({ '@type': 'TableGroup' })],
  ['085', 'V 5.5 @type', schema({ '@type': 'Table' })],
  ['086', 'V 5.6 @type', column(0, { '@type': 'Schema' })],
  ['087 text', 'V 5.9 @type', table({ dialect: { '@type': 'Transformation' } })],
  ['090 text', 'V 5.4.1 url', (each) => delete each['url']],
  ['093 text', 'V 4 V 5.4: foo', table({ 'rdfs:comment': 'undefined property', foo: 'bar' })],
  ['096', 'V 5.5 columns', (each) => each.tableSchema.columns.splice(1, 0, true as never)],
  ['100', 'V 5.5 columns', schema({ columns: 'foo' })],
  ['101', 'V 5.5 foreignKeys', schema({ foreignKeys: true })],
  ['102', 'V 5.4 @id', table({ '@id': 1 })],
  ['103', 'V 5.4 url', table({ url: 1 })],
  [
    '104',
    'V 5.5 foreignKeys',
    schema({
      foreignKeys: [{ columnReference: 'missing', reference: { resource: 'a.csv', columnReference: 'b' } }],
    }),
  ],
  ['105', 'V 5.1.4 primaryKey', schema({ primaryKey: 'missing' })],
  ['106', 'V 5.4 dialect', table({ dialect: 1 })],
  ['107', 'V 5.4 tableSchema', table({ tableSchema: 1 })],
  ['108', 'V 5.5 foreignKeys', schema({ foreignKeys: [{ columnReference: 'GID', reference: 1 }] })],
  ['109', 'V 5.6 titles', column(0, { titles: { 'invalid-language': 'GID' } })],
  ['110', 'V 5.6 titles', column(0, { titles: { en: true } })],
  ['111', 'V 5.6 titles', column(0, { titles: true })],
  ['112', 'V 5.6 titles', column(0, { titles: ['GID', true] })],
  ['113', 'V 5.4 suppressOutput', table({ suppressOutput: 'true' })],
  ['114', 'V 5.6 name', column(0, { name: true })],
  ['115', 'V 5.6 virtual', column(4, { virtual: 'true' })],
  ['127', 'V 5.5.1', (each) => each.tableSchema.columns.pop()],
  ['128', 'V 5.5 columns: a name stands twice', column(1, { name: 'GID' })],
  ['129', 'V 5.6 name', column(0, { name: 1 })],
  ['130', 'V 5.6 name', column(1, { name: 'On Street' })],
  ['131', 'V 5.6 name', column(1, { name: '_street' })],
  ['133', 'V 5.6 virtual', (each) => each.tableSchema.columns.unshift({ virtual: true })],
  ['134', 'V 5.8.2 dc:title', table({ 'dc:title': { '@context': 'http://www.w3.org/ns/csvw' } })],
  ['135', 'V 5.8.2 dc:title', table({ 'dc:title': { '@list': ['foo'] } })],
  ['136', 'V 5.8.2 dc:title', table({ 'dc:title': { '@set': ['foo'] } })],
  ['137', 'V 5.8.2 dc:title', table({ 'dc:title': { '@value': 'foo', '@type': '_:foo' } })],
  ['138', 'V 5.8.2 dc:title', table({ 'dc:title': { '@type': '_:foo' } })],
  ['139', 'V 5.8.2 dc:title', table({ 'dc:title': { '@type': 'foo' } })],
  ['140', 'V 5.8.2 dc:title', table({ 'dc:title': { '@type': 1 } })],
  ['141', 'V 5.8.2 dc:title', table({ 'dc:title': { '@id': '_:foo' } })],
  [
    '142',
    'V 5.8.2 dc:title',
    table({ 'dc:title': { '@value': 'foo', '@type': 'string', '@language': 'en' } }),
  ],
  ['143', 'V 5.8.2 dc:title', table({ 'dc:title': { '@value': 'foo', 'dc:title': 'bar' } })],
  ['144', 'V 5.8.2 dc:title', table({ 'dc:title': { '@language': 'en' } })],
  ['145', 'V 5.8.2 dc:title', table({ 'dc:title': { '@value': 'foo', '@language': 'invalid-language' } })],
  ['146', 'V 5.8.2 dc:title', table({ 'dc:title': { '@foo': 'bar' } })],
  ['147', 'V 5.5.1', column(0, { titles: 'gid' })],
  ['150', 'V 5.6 datatype', column(0, { datatype: 'foo' })],
  ['151', 'V 5.6 datatype', column(0, { datatype: { base: 'foo' } })],
];

test.each(PUBLISHED)('the check finds what is wrong in published test %s: %s', (_number, section, spoil) => {
  const description = trees();
  spoil(description);
  const found = offences(JSON.stringify(description), TREES, 'tree-ops.csv');
  expect(found.filter((each) => each.startsWith(section))).not.toEqual([]);
});

test.each([
  // 125 and 126: no null where a value is required; a gap is null where nothing else is said.
  ['125', 'M 6.4', column(2, { required: true }), TREES.replace('Celtis australis', '')],
  ['126', 'M 6.4', column(2, { required: true, null: 'Celtis australis' }), TREES],
  ['091', 'M 4.4', () => undefined, TREES.replace('2,EMERSON ST', '2')],
  // No number of the suite: M 6.6, the same key twice.
  ['of a key', 'M 6.6', schema({ primaryKey: ['trim_cycle'] }), TREES],
] as const)(
  'the check finds what is wrong in the table of published test %s: %s',
  (_number, section, spoil, csv) => {
    const description = trees();
    spoil(description);
    expect(
      offences(JSON.stringify(description), csv, 'tree-ops.csv').map((each) => each.slice(0, 5)),
    ).toContain(section);
  },
);

test.each([
  ['092, no JSON', 'V 4', (text: string) => text.slice(1)],
  ['a byte order mark', 'V C', (text: string) => `\ufeff${text}`],
  ['another context', 'V 5.2', (text: string) => text.replace('ns/csvw', 'ns/other')],
  ['the place of another table', 'V 5.4.1', (text: string) => text.replace('list.csv', 'other.csv')],
  ['a key of one column', 'M 6.6', (text: string) => text.replace(/"worksheet",(?=\s*"cell"\s*\])/, '')],
  [
    'a title that is no header',
    'V 5.5.1',
    (text: string) => text.replace('"titles": "unit"', '"titles": "units"'),
  ],
])('the check finds %s in a list of this program', (_what, section, spoil) => {
  const made = notebook('Trial', [
    ['feed', '0.12 mm'],
    [' a', '5'],
  ]);
  const second = after(made, addWorksheet(made, { title: 'Speeds' }));
  const id = second.worksheets[1]?.id ?? '';
  const two = after(
    second,
    enter(second, { worksheet: id, row: 0, column: 0, typed: [['speed', '90 m/min']] }),
  );
  const good = writeCsvMetadata(two, 'list.csv');
  const spoilt = spoil(good);
  expect(spoilt).not.toBe(good);
  expect(offences(good, writeCsvList(two), 'list.csv')).toEqual([]);
  expect(offences(spoilt, writeCsvList(two), 'list.csv').join()).toContain(section);
});
