/** More content that is made to break a program: names, titles, cycles and sizes; each a clear error or the right value, while the rest computes. */

import { expect, test } from 'vitest';
import type { CellResult } from '../../src/calculation/index.ts';
import type { Engine } from '../../src/engine/index.ts';
import { addressText } from '../../src/expression/index.ts';
import { at, opened, openedPages, typed } from './notebook.ts';
import type { Cells, Page } from './notebook.ts';

const BESIDE = { J1: '3', J2: '=J1*2' };

/** The rest of the notebook answers an edit. */
function expectAlive(engine: Engine, worksheet = 'w1'): void {
  engine.apply([typed('J1', '3', worksheet)]);
  expect(engine.result(at('J2', worksheet)).value).toBe(6);
  engine.apply([typed('J1', '5', worksheet)]);
  expect(engine.result(at('J2', worksheet)).value).toBe(10);
}

function computed(content: string, cells: Cells = {}, names: Page['names'] = {}): CellResult {
  const engine = opened({ ...cells, ...BESIDE, A1: content }, {}, names);
  expectAlive(engine);
  return engine.result(at('A1'));
}

const expectError = ({ value, error }: CellResult, code: string): string => {
  expect(value).toBeNull();
  expect(error?.code).toBe(code);
  expect(error?.message.length).toBeGreaterThan(10);
  return error?.message ?? '';
};

/** A formula of exactly so many characters that is 1 and blanks. */
const formulaOf = (length: number): string => `=1${' '.repeat(length - 3)}%`;

test('a formula of 2 048 characters computes, one of 2 049 is refused with the limit', () => {
  expect(computed(formulaOf(2048)).value).toBe(0.01);
  expect(expectError(computed(formulaOf(2049)), '#LIMIT!')).toMatch(/2.?048/);
});

test('a range of 20 000 cells computes, one of 20 001 or more is refused with the limit', () => {
  const cells = { M2: '2', V2000: '40' };
  expect(computed('=SUM(M1:V2000)', cells).value).toBe(42);
  expect(expectError(computed('=SUM(M1:W2000)', cells), '#LIMIT!')).toMatch(/20.?000/);
  expect(expectError(computed('=SUM(M1:AG953)', cells), '#LIMIT!')).toMatch(/20.?000/);
});

test('brackets nested 64 deep compute, 65 deep are refused', () => {
  const nested = (depth: number): string => `=${'('.repeat(depth)}1${')'.repeat(depth)}`;
  expect(computed(nested(63)).value).toBe(1);
  expectError(computed(nested(65)), '#LIMIT!');
});

const STARS = `${'a*'.repeat(14)}b`;

test('a pattern with 14 stars is plain text for MATCH and SEARCH as well', () => {
  const cells = { C1: 'a'.repeat(2000), C2: STARS, C3: `x${STARS}` };
  expect(computed(`=MATCH("${STARS}";C1:C3;0)`, cells).value).toBe(2);
  expect(computed(`=SEARCH("${STARS}";C3)`, cells).value).toBe(2);
  expect(computed(`=COUNTIF(C1:C3;"${STARS}")`, cells).value).toBe(1);
  expect(computed(`=SEARCH("${STARS}";C1)`, cells).error?.code).toMatch(/^#(?:VALUE|N\/A)/);
  expectError(computed(`=MATCH("${'?'.repeat(14)}*";C1:C3;0)`, cells), '#N/A');
});

test('F6a names f and F stand side by side, as do names in other scripts', () => {
  const engine = openedPages([
    {
      title: 'Sheet',
      cells: {
        A1: '2',
        A2: '30',
        A3: '=F-f',
        A4: '=Vorschub_größe+φ',
        A5: '400',
        A6: '0.5',
        A7: '=送り*2',
        A8: '7',
        ...BESIDE,
      },
      names: { f: 'A1', F: 'A2', Vorschub_größe: 'A5', φ: 'A6', 送り: 'A8' },
    },
  ]);
  expect(engine.result(at('A3')).value).toBe(28);
  expect(engine.result(at('A4')).value).toBe(400.5);
  expect(engine.result(at('A7')).value).toBe(14);
  expectAlive(engine);
});

test.each(['constructor', 'toString', 'valueOf', 'hasOwnProperty', 'prototype', 'then', 'SUMX', 'N1x'])(
  'a name may be %s, and without the name it is an error',
  (name) => {
    expect(computed(`=${name}*2`, { B1: '21' }, { [name]: 'B1' }).value).toBe(42);
    expectError(computed(`=${name}*2`), '#NAME?');
    expectError(computed(`=${name}(1)`), '#NAME?');
  },
);

test('a name __proto__ can not be written, and is an error', () => {
  expect(computed('=__proto__').error?.code).toMatch(/^#(?:NAME|VALUE|ERR)/);
  expect(computed('=__proto__(1)').error?.code).toMatch(/^#(?:NAME|VALUE|ERR)/);
  expect(Reflect.get({}, 'polluted')).toBeUndefined();
});

test.each([
  "O'Brien's",
  '"quoted"',
  "''",
  'Füße & Größe',
  '試し切り',
  'a.b',
  'A1',
  '1/4-20',
  '#REF!',
  '=1+1',
  'x!y',
  '😀',
  '$A$1',
])('a worksheet titled %s is referred to in quotes', (title) => {
  const engine = openedPages([
    { title, cells: { A1: '21', ...BESIDE }, names: { D: 'A1' } },
    {
      title: 'Other',
      cells: {
        A1: `='${title.replaceAll("'", "''")}'.A1*2`,
        A2: `='${title.replaceAll("'", "''")}'.D+1`,
        A3: `=SUM('${title.replaceAll("'", "''")}'.A1:A2)`,
      },
    },
  ]);
  expect(engine.result(at('A1', 'w2')).value).toBe(42);
  expect(engine.result(at('A2', 'w2')).value).toBe(22);
  expect(engine.result(at('A3', 'w2')).value).toBe(21);
  expectAlive(engine);
});

test('a circle through a name is an error with its path, and heals', () => {
  const engine = opened({ A1: '=x+1', A2: '=A1*2', ...BESIDE }, {}, { x: 'A2' });
  expect(expectError(engine.result(at('A1')), '#CIRCLE!')).toMatch(/A2|x/);
  expectError(engine.result(at('A2')), '#CIRCLE!');
  expectAlive(engine);
  engine.apply([typed('A2', '4')]);
  expect(engine.result(at('A1')).value).toBe(5);
});

test('a circle through a range is an error, and heals', () => {
  const engine = opened({ A1: '1', A2: '2', A3: '=SUM(A1:A4)', A4: '=A3', ...BESIDE });
  expectError(engine.result(at('A3')), '#CIRCLE!');
  expectError(engine.result(at('A4')), '#CIRCLE!');
  expectAlive(engine);
  engine.apply([typed('A4', '3')]);
  expectError(engine.result(at('A3')), '#CIRCLE!');
  engine.apply([typed('A3', '=SUM(A1:A2;A4)')]);
  expect(engine.result(at('A3')).value).toBe(6);
});

test('a circle across three worksheets, one by a name of a common one, is an error, and heals', () => {
  const engine = openedPages([
    { title: 'One', cells: { A1: "='Two 2'.A1+1", ...BESIDE } },
    { title: 'Two 2', cells: { A1: '=link' } },
    { title: 'Three', cells: { A1: '=One.A1' }, names: { link: 'A1' }, common: true },
  ]);
  for (const worksheet of ['w1', 'w2', 'w3']) expectError(engine.result(at('A1', worksheet)), '#CIRCLE!');
  expectAlive(engine);
  engine.apply([typed('A1', '8', 'w3')]);
  expect(engine.result(at('A1')).value).toBe(9);
});

test.each([
  '=IFERROR(A1;5)',
  '=IF(FALSE;A1;5)',
  '=ISERROR(A1)',
  '=IFERROR(SUM(A1:B2);0)',
  '=COUNT(A1)',
  '=A1',
  '=ROW(A1)+A1',
])('a cell that refers to itself in %s is a circle, which no function sees through', (content) => {
  expectError(computed(content), '#CIRCLE!');
});

test('what hangs on a circle says so and does not compute on', () => {
  const engine = opened({ A1: '=A2', A2: '=A1', A3: '=IFERROR(A1;7)', A4: '=A1+1', ...BESIDE });
  expect(engine.result(at('A4')).error?.code).toBe('#CIRCLE!');
  expect(engine.result(at('A3')).value ?? engine.result(at('A3')).error?.code).toSatisfy(
    (answer) => answer === 7 || answer === '#CIRCLE!',
  );
  expectAlive(engine);
});

test('50 000 filled cells open, compute and follow an edit', () => {
  const cells: Record<string, string> = { A1: '1', B1: '=A1*2' };
  for (let row = 1; row < 1000; row++) {
    for (let column = 0; column < 50; column++) {
      cells[addressText(column, row)] =
        column % 5 === 4 ? `=$A$1+${addressText(column - 1, row)}` : String(row + column);
    }
  }
  const engine = opened({ ...cells, BA1: '=SUM(E2:E1000)' });
  // In column E stands A1 + (row + 3) for the rows 1 to 999.
  expect(engine.result(at('BA1')).value).toBe((999 * 1000) / 2 + 999 * 4);
  engine.apply([typed('A1', '2')]);
  expect(engine.result(at('BA1')).value).toBe((999 * 1000) / 2 + 999 * 5);
  expect(engine.result(at('B1')).value).toBe(4);
});

test('F1 1e5 is a number; with an apostrophe it is a text, as TRUE is, and no arithmetic takes it', () => {
  const engine = opened({
    A1: '1e5', A2: "'1e5", A3: "'TRUE", A4: 'TRUE', A5: '1E-3 mm',
    B1: '=A1+1', B2: '=A2+1', B3: '=ISTEXT(A3)', B4: '=ISLOGICAL(A4)', B5: '=A5/1 mm', B6: '=A3&"!"', B7: '="1e5"+1', B8: '=ISTEXT(A2)',
    B9: '=IF(A3;1;2)', ...BESIDE,
  }); // prettier-ignore
  expect(engine.result(at('A1')).value).toBe(100_000);
  expect(engine.result(at('A2')).value).toBe('1e5');
  expect(engine.result(at('A3')).value).toBe('TRUE');
  expect(engine.result(at('A4')).value).toBe(true);
  expect(engine.result(at('B1')).value).toBe(100_001);
  expectError(engine.result(at('B2')), '#VALUE!');
  expect(engine.result(at('B3')).value).toBe(true);
  expect(engine.result(at('B4')).value).toBe(true);
  expect(engine.result(at('B5')).value).toBe(0.001);
  expect(engine.result(at('B6')).value).toBe('TRUE!');
  expectError(engine.result(at('B7')), '#VALUE!');
  expect(engine.result(at('B8')).value).toBe(true);
  expectError(engine.result(at('B9')), '#VALUE!');
  expectAlive(engine);
});

test.each([
  ['lone surrogates', '="\ud800"&"\udc00x"'],
  ['a control character', '="a\u0000b"'],
  ['a line break', '="a\nb"'],
  ['a character beyond the basic plane', '="😀"&"𝒇"'],
])('a text with %s is joined as it stands', (_what, content) => {
  const text = content.slice(1).replaceAll(/"&"|"/g, '');
  expect(computed(content).value).toBe(text);
});

test.each([
  '=', '==', '=+', '=(', '=)', '=;', '=SUM(;;;', '="', "='", "='x", '={', '={1;2|3}', '=1 2', '=A1:', '=:A1', '=A1:B2:C3', '=@A1', '=A1#', '=%',
  '=1..2', '=.', '=1e', '=1e400', '=SUM(SUM', '=\ud800', '=\u0000', '=A1.B1.C1', '=x.y.z', '=1 mm mm', '=BM1', '=A2001', '=A0', '=$$A1',
  '=IF(;;)', '=INDEX(B1:C2;1e9;1)', '=INDEX(B1:C2;-1;1)', '=CHOOSE(1e9;1)', '=MID("a";1e9;1e9)', '=LEFT("a";-1)', '=ROUND(1;1e9)', '=2^1e9', '=1/0',
  '=0^-1', '=SQRT(-1)', '=LN(0)', '=MOD(1;0)', '=VLOOKUP(1;B1:B2;9)', '=TEXT(1;"[")', '=REPLACE("a";0;0;"b")', '=CODE("")', '=CHAR(-1)',
  '=MMULT(B1:C2;B1:B3)', '=MINVERSE({0;0|0;0})', '=BASE(1;1)', '=COMBIN(-1;2)', '=1 mm+1 s',
])('the broken formula %j has words, or a plain value where the rules give one', (content) => {
  const { value, error } = computed(content);
  if (error) {
    expect(error.code).toMatch(/^#[A-Z/0]+[!?A0]?$/);
    expect(error.message.length).toBeGreaterThan(5);
  } else expect(value === null || ['number', 'string', 'boolean'].includes(typeof value)).toBe(true);
}); // prettier-ignore
