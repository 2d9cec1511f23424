import { expect, test } from 'vitest';
import { callAt, canonicalFormula, isName, nameRefusal } from '../../src/expression/index.ts';

test.each([
  ['=sum(b3;C4)', '=SUM(B3;C4)'],
  ['=  b3 * 1.50 mm', '=  B3 * 1.50 mm'],
  ['=a\u00A0−\u00A0b', '=a - b'],
  ['=a≤b', '=a<=b'],
  ['=max(1,b3)', '=MAX(1;B3)'],
  ['={1,2}', '={1;2}'],
  ['=feeds.b3+fz', '=feeds.B3+fz'],
  ['=“down”&"u,p"', '="down"&"u,p"'],
  ['=‘Tool trial’.b3', "='Tool trial'.B3"],
  ['=1\u202F000 mm', '=1 000 mm'],
  ['=if(true;1 µm;2 um)', '=IF(TRUE;1 µm;2 um)'],
  ['=b3 b4', '=B3 B4'],
])('F1 %s is stored as %s where the mark is a point', (typed, stored) => {
  expect(canonicalFormula(typed, { separator: 'both', decimalMark: '.' })).toEqual({ text: stored });
});

test.each([
  ['=1,5 mm*b3', '=1.5 mm*B3'],
  ['=max(1,5;2)', '=MAX(1.5;2)'],
  ['=1.5*2,25', '=1.5*2.25'],
  ['=0.125*2', '=0.125*2'],
  ['=1.2345', '=1.2345'],
  ['=1 234,5', '=1 234.5'],
])('F2 %s is stored as %s where the mark is a comma', (typed, stored) => {
  expect(canonicalFormula(typed, { separator: ';', decimalMark: ',' })).toEqual({ text: stored });
});

test('F2 1.234 where the mark is a comma is refused with both readings, never guessed', () => {
  expect(canonicalFormula('=2*1.234', { decimalMark: ',' }).problem?.message).toBe(
    'Character 4, “1.234”: it could be 1234 or 1,234; write the one that is meant.',
  );
});

test.each([
  ['=SUM(|', 'SUM', 0],
  ['=SUM(1;|2)', 'SUM', 1],
  ['=SUM(1;2|', 'SUM', 1],
  ['=SUM(MAX(1;2;|3);4)', 'MAX', 2],
  ['=SUM(MAX(1;2;3);|4)', 'SUM', 1],
  ['=SUM({1;2|3;|4};5)', 'SUM', 0],
  ['=SUM((1+|', 'SUM', 0],
  ['=MILL.FEED(;;|', 'MILL.FEED', 2],
])('the caret in %s stands in %s, argument %i', (marked, name, argument) => {
  const caret = marked.lastIndexOf('|');
  const text = marked.slice(0, caret) + marked.slice(caret + 1);
  expect(callAt(text, caret)).toMatchObject({ name, argument });
});

test.each(['=SU|M(1)', '=SUM(1)|', '=(1+|2)', '=1|'])('the caret in %s stands in no call', (marked) => {
  expect(callAt(marked.replace('|', ''), marked.indexOf('|'))).toBeUndefined();
});

test('F6a names: letters of any script, digits and _, a dot between digits, no address', () => {
  for (const name of ['fz', 'kc1.1', 'kc11', 'κ_r', 'Größe', 'D_1', 'BM1', 'a2001', '刃']) {
    expect(nameRefusal(name), name).toBeUndefined();
    expect(isName(name), name).toBe(true);
  }
  expect(nameRefusal('D1')).toBe('D1 is a cell; D_1 would be a name');
  expect(nameRefusal('h1')).toBe('h1 is a cell; h_1 would be a name');
  expect(nameRefusal('true')).toBe('true is a constant; true_ would be a name');
  expect(nameRefusal('feed rate')).toBe(
    'feed rate is no name: a letter first, then letters, digits and _, a dot only between digits; feed_rate would be one',
  );
  expect(nameRefusal('1x')).toContain('x would be one');
  expect(nameRefusal('a.b')).toContain('a_b would be one');
  expect(nameRefusal('')).toContain('an empty text is no name');
});
