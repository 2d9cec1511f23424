import { expect, test } from 'vitest';
import { callAt, isName, nameRefusal } from '../../src/expression/index.ts';

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
