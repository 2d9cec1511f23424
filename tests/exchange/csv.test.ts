import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  apply,
  defineName,
  emptyNotebook,
  enter,
  forEachCell,
  isRefusal,
  readContent,
  worksheetOf,
} from '../../src/document/index.ts';
import type { Content, Notebook, Refusal } from '../../src/document/index.ts';
import {
  LIST_HEADERS,
  isCellList,
  readCsvGrid,
  readCsvList,
  understandList,
  writeCsvGrid,
  writeCsvList,
} from '../../src/exchange/index.ts';
import type { StoredResults } from '../../src/exchange/index.ts';

function filled(rows: readonly (readonly string[])[]): Notebook {
  const start = emptyNotebook({ id: 'n', worksheetTitle: 'Feeds' });
  const answer = enter(start, { worksheet: 'w1', row: 0, column: 0, typed: rows });
  if (isRefusal(answer)) throw new Error(answer.message);
  return apply(start, answer.changes);
}

function possible<T extends object>(answer: T | Refusal): T {
  if (isRefusal(answer)) throw new Error(answer.message);
  return answer;
}

const results: StoredResults = new Map([
  ['w1', new Map([['B3', { value: 0.1, kind: 'length', unit: 'mm' }]])],
]);

test('a grid has RFC 4180 lines, a units row, full precision in the shown unit and a byte order mark when wanted', () => {
  const notebook = filled([
    ['part', 'length'],
    ['a "b", c', '12.50 mm'],
    ['-x', '=B2*8'],
    ['', '1 in'],
  ]);
  expect(writeCsvGrid(notebook, 'w1', results)).toBe(
    '\ufeff,mm\r\npart,length\r\n"a ""b"", c",12.50\r\n\'-x,100\r\n,25.4\r\n',
  );
  expect(writeCsvGrid(notebook, 'w1', results, { bom: false, units: 'columns' })).toBe(
    'part,,length,\r\n"a ""b"", c",,12.50,mm\r\n\'-x,,100,mm\r\n,,1,in\r\n',
  );
});

test('text that begins with = + - @ TAB CR gets an apostrophe, a number never', () => {
  const notebook = filled([["'=1+1", '-5', '-5 mm', '+x', '@a', "'\tb", "'\rc", "'12 mm"]]);
  const [line] = writeCsvGrid(notebook, 'w1', undefined, { bom: false, units: 'columns' }).split('\n');
  expect(line).toContain("'=1+1,,-5,,-5,mm,'+x,,'@a,,");
  expect(line).toContain("'\tb");
  expect(line).toContain("'12 mm");
});

test('a unit, symbol or error name from a hostile file can not become a formula in a table program', () => {
  const hostile: StoredResults = new Map([
    ['w1', new Map([['A1', { value: 1, kind: 'number', unit: '=cmd' }]])],
  ]);
  const failed: StoredResults = new Map([
    ['w1', new Map([['A1', { value: null, kind: 'error', unit: '', error: { code: '@x', message: '' } }]])],
  ]);
  const notebook = filled([['=B1']]);
  expect(writeCsvGrid(notebook, 'w1', hostile, { bom: false })).toBe("'=cmd\r\n1\r\n");
  expect(writeCsvList(notebook, hostile)).toContain(",1,'=cmd,");
  expect(writeCsvGrid(notebook, 'w1', failed, { bom: false, units: 'columns' })).toBe("'@x,\r\n");
});

test('the list names worksheet, cell, name, symbol, label, value, unit, UCUM code, role and formula', () => {
  const start = filled([
    ['Feed', '0.1 mm/tooth'],
    ['Length', '12 mm'],
    ['Sum', '=B2*8'],
  ]);
  const target = { row: 0, column: 1, rows: 1, columns: 1 };
  const answer = possible(defineName(start, { worksheet: 'w1', name: 'fz', target, symbol: 'f_z' }));
  const notebook = apply(start, answer.changes);
  const lines = writeCsvList(notebook, results, { bom: false }).split('\r\n');
  expect(lines[0]).toBe(LIST_HEADERS.join(','));
  expect(lines[2]).toMatch(/^Feeds,B1,fz,f_z,Feed,0\.1,mm\/tooth,[^,]+,given,$/);
  expect(lines).toContain("Feeds,B3,,,Sum,100,mm,mm,worked,'=B2*8");
  const read = possible(readCsvList(lines.join('\r\n')));
  expect(read[1]).toEqual({
    worksheet: 'Feeds',
    row: 0,
    column: 1,
    content: '0.1 mm/tooth',
    name: 'fz',
    symbol: 'f_z',
    label: 'Feed',
    role: 'given',
  });
  expect(read.find(({ row, column }) => row === 2 && column === 1)?.content).toBe('=B2*8');
});

test('a list without a column, and a table with an open quotation mark, are refused in words', () => {
  expect(readCsvList('worksheet,cell\nFeeds,B1\n')).toHaveProperty(
    'message',
    expect.stringContaining('value'),
  );
  const bad = `${LIST_HEADERS.join(',')}\nFeeds,ZZ9,,,,1,,,,\n`;
  expect(readCsvList(bad)).toHaveProperty('message', 'Line 2 names no cell: "ZZ9".');
  expect(readCsvGrid('a,"b\n1,2')).toHaveProperty('message', expect.stringContaining('quotation mark'));
});

test('a list is known by its headers, however another program parts them', () => {
  const own = `${LIST_HEADERS.join(',')}\r\nFeeds,B1,fz,,feed,0.12,mm,mm,given,\r\n`;
  for (const delimiter of [',', ';', '\t', '|'])
    expect(isCellList(own.replaceAll(',', delimiter)), delimiter).toBe(true);
  expect(isCellList(`\ufeff"${LIST_HEADERS.join('","')}"`)).toBe(true);
  expect(isCellList('worksheet,cell,value\nFeeds,B1,1')).toBe(false);
  expect(isCellList('v_c,f\n260,0.12')).toBe(false);
});

test('a list with decimal commas is read as it was written; what has two readings is asked', () => {
  const listed = (values: readonly string[], delimiter: string): string =>
    [
      LIST_HEADERS.join(delimiter),
      ...values.map((value, k) =>
        ['Feeds', `B${k + 1}`, '', '', '', value, 'mm', '', 'given', ''].join(delimiter),
      ),
      ';;;;;;;;;'.replaceAll(';', delimiter),
    ].join('\r\n');
  const comma = possible(understandList(listed(['0,12', '1.234,5'], ';')));
  expect(comma.cells.map(({ content }) => content)).toEqual(['0.12 mm', '1234.5 mm']);
  expect(comma.asksDecimalMark).toBe(false);
  const asked = possible(understandList(listed(['1,234', '5'], ';')));
  expect(asked).toMatchObject({ asksDecimalMark: true, example: { readings: ['1.234', '1234'] } });
  const chosen = possible(understandList(listed(['1,234', '5'], ';'), { decimalMark: ',' }));
  expect(chosen.cells.map(({ content }) => content)).toEqual(['1.234 mm', '5 mm']);
  // Its own lists have a point, whatever stands behind it.
  expect(possible(understandList(listed(['1.234', '5'], ',')))).toMatchObject({
    asksDecimalMark: false,
    cells: [{ content: '1.234 mm' }, { content: '5 mm' }],
  });
});

test('a list that names a cell twice is refused in words', () => {
  const text = `${LIST_HEADERS.join(',')}\nFeeds,B1,,,,1,,,,\nFeeds,B1,,,,2,,,,\n`;
  expect(readCsvList(text)).toHaveProperty('message', 'Line 3 names B1 a second time.');
});

/** What has to survive: the value in SI, the text, the date; the digits as typed. */
function essence(content: Content): unknown {
  switch (content.type) {
    case 'quantity':
      return ['quantity', content.unit.symbol, content.digits];
    case 'number':
      return ['number', content.digits];
    case 'text':
      return ['text', content.text];
    case 'unknownUnit':
      return ['unknown', content.digits, content.unknown];
    default:
      return content;
  }
}

const entry = fc.oneof(
  fc.constantFrom(
    "'=1",
    "'+x",
    "'12",
    "''",
    "'TRUE",
    "'2026-03-09",
    '5 %',
    '2026-03-09',
    'TRUE',
    '12 mmm',
    ' a ',
  ),
  fc.constantFrom("'1.5 mm", 'a,b', 'a;b', 'say "x"', "'\t1", 'M8x1.25', '1/4-20', '3/8 in', '1 1/2 in'),
  fc
    .tuple(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.constantFrom('', ' mm', ' in', ' um', ' degC', ' degF', ' N·m', ' kW/(cm3/min)', ' EUR/h', ' deg'),
    )
    .map(([value, unit]) => `${value}${unit}`),
  fc.string({ maxLength: 8 }).filter((text) => !text.startsWith('=')),
);

for (const units of ['columns', 'row'] as const) {
  test(`values and texts come back exactly through a grid with units in ${units}`, () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(entry, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 6 }),
        (rows) => {
          // Both decimal marks are read, so a text such as "1,234" has two readings: not part of this test.
          if (rows.flat().some((text) => /^\s*[+-]?\d{1,3},\d{3}\b/.test(text))) return;
          const notebook = filled(rows);
          const text = writeCsvGrid(notebook, 'w1', undefined, { units });
          const back = possible(readCsvGrid(text, { units, delimiter: ',' }));
          const sheet = worksheetOf(notebook, 'w1');
          for (const [row, line] of sheet.rows.entries()) {
            for (const [column, cell] of (line ?? []).entries()) {
              const was = readContent(cell?.content ?? '', 'EUR');
              const is = readContent(back[row]?.[column] ?? '', 'EUR');
              if (units === 'columns') expect(essence(is)).toEqual(essence(was));
              else
                expect(sameValue(is, was), `${cell?.content} came back as ${back[row]?.[column]}`).toBe(true);
            }
          }
        },
      ),
      { seed: 99, numRuns: 1000 },
    );
  });
}

/** In the row form a column has one unit: a quantity may come back in that one, and then with exactly the same value in SI. */
function sameValue(is: Content, was: Content): boolean {
  if (JSON.stringify(essence(is)) === JSON.stringify(essence(was))) return true;
  return is.type === 'quantity' && was.type === 'quantity' && is.si === was.si;
}

test('a list comes back exactly: every content at its place, with formula, name, symbol and role', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(entry, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 8 }),
      (rows) => {
        if (rows.flat().some((text) => /^\s*[+-]?\d{1,3},\d{3}\b/.test(text))) return;
        const start = filled([...rows, ['=A1', '="x;y" & 1', '=SUM({1;2.5}) + 3 mm/1 mm']]);
        const target = { row: rows.length, column: 2, rows: 1, columns: 1 };
        const named = defineName(start, { worksheet: 'w1', name: 'total', target, symbol: 't_o' });
        const notebook = apply(start, possible(named).changes);
        const back = possible(readCsvList(writeCsvList(notebook), { delimiter: ',' }));
        const seen = new Map(back.map((cell) => [`${cell.row} ${cell.column}`, cell]));
        forEachCell(worksheetOf(notebook, 'w1'), (cell, row, column) => {
          const found = seen.get(`${row} ${column}`);
          const is = essence(readContent(found?.content ?? '', 'EUR'));
          expect(is).toEqual(essence(readContent(cell.content, 'EUR')));
          seen.delete(`${row} ${column}`);
        });
        expect(seen.size).toBe(0);
        expect(back.find(({ name }) => name === 'total')).toMatchObject({ symbol: 't_o', role: 'worked' });
      },
    ),
    { seed: 7, numRuns: 500 },
  );
});
