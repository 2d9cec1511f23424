import { expect, test } from 'vitest';
import { cautionsOfSyntax, parse } from '../../src/expression/index.ts';

const cautionsOf = (text: string) => {
  const { tree, problem } = parse(text);
  if (!tree || problem) throw new Error(`${text}: ${problem?.message}`);
  return cautionsOfSyntax(tree);
};

// OpenFormula (OASIS OpenDocument part 4), 5.5: the sign binds tighter than ^, and ^ goes from the left.
test.each([
  ['=-2^2', '(-2)^2', '-(2^2)', '-2^2 is read as (-2)^2, the sign first; mathematics reads -(2^2)'],
  ['=1-3*-B3^2', '(-B3)^2', '-(B3^2)', '-B3^2 is read as (-B3)^2, the sign first; mathematics reads -(B3^2)'],
  ['=2^3^2', '(2^3)^2', '2^(3^2)', '2^3^2 is read as (2^3)^2, from the left; mathematics reads 2^(3^2)'],
  [
    '=a^b^c^d',
    '((a^b)^c)^d',
    'a^(b^(c^d))',
    'a^b^c^d is read as ((a^b)^c)^d, from the left; mathematics reads a^(b^(c^d))',
  ],
  [
    '=a^-b^c',
    '(a^-b)^c',
    'a^(-(b^c))',
    'a^-b^c is read as (a^-b)^c, from the left; mathematics reads a^(-(b^c))',
  ],
  [
    '=-a^b^c',
    '((-a)^b)^c',
    '-(a^(b^c))',
    '-a^b^c is read as ((-a)^b)^c, from the left; mathematics reads -(a^(b^c))',
  ],
])('F5 %s gets both readings, %s and %s', (text, explicit, replacement, words) => {
  expect(cautionsOf(text)).toMatchObject([{ text: words, explicit, replacement }]);
});

test.each(['=-2^3', '=2^3', '=(-2)^2', '=-(2^2)', '=(2^3)^2', '=2^(3^2)', '=+2^2', '=2-2^2', '=2^-2'])(
  'F5 %s has one reading and no caution',
  (text) => {
    expect(cautionsOf(text)).toEqual([]);
  },
);

test('F7a 3/8 in gets both readings, and the press that writes 0.375 in covers exactly the fraction', () => {
  const text = '=B3*3/8 in + 1 mm';
  const [found] = cautionsOf(text);
  expect(found).toMatchObject({
    text: '3/8 in is read as 3 divided by 8 in; the fraction of the unit is 0.375 in',
    replacement: '0.375 in',
    explicit: '3/(8 in)',
  });
  expect(text.slice(found?.from, found?.to)).toBe('3/8 in');
});

test.each([
  ['=3/8 in', '0.375 in'],
  ['=1/3 in', '(1/3)*1 in'],
  ['=5/64 in', '0.078125 in'],
  ['=6/3 mm', '2 mm'],
  ['=3/6 mm', '0.5 mm'],
])('F7a %s may mean %s', (text, replacement) => {
  expect(cautionsOf(text)).toMatchObject([{ replacement }]);
});

test.each(['=B3/8 in', '=3/8', '=3.0/8 in', '=3/(8 in)', '=0.375 in', '=3/0 in', '=2820 1/min'])(
  'F7a %s is no fraction before a unit',
  (text) => {
    expect(cautionsOf(text)).toEqual([]);
  },
);

test('every way out that a caution offers is a formula without that caution', () => {
  for (const text of ['=-2^2', '=2^3^2', '=3/8 in', '=1/3 in', '=1<a<3', '=-a^b^c', '=a^-b^c']) {
    const [found] = cautionsOf(text);
    for (const way of [found?.replacement, found?.explicit]) {
      expect(way, text).toBeDefined();
      const written = text.slice(0, found?.from) + way + text.slice(found?.to);
      expect(cautionsOf(written), written).toEqual([]);
    }
  }
});

test('a chained comparison says what it compares and what is meant', () => {
  expect(cautionsOf('=1<a<3')).toMatchObject([
    {
      text: '1 < a < 3 compares TRUE or FALSE with 3; both conditions together are AND(1 < a; a < 3)',
      replacement: 'AND(1 < a; a < 3)',
      explicit: '(1 < a) < 3',
    },
  ]);
});

test('a key stays the same for the same place, so that an acknowledgement holds', () => {
  expect(cautionsOf('=-2^2')[0]?.key).toBe(cautionsOf('=-2^2')[0]?.key);
  expect(new Set(cautionsOf('=-2^2 + -3^2').map(({ key }) => key)).size).toBe(2);
});

test('F7 a unit with * and a unit that ends like a name of the notebook are pointed at', () => {
  expect(cautionsOf('=12 N*m')).toMatchObject([
    {
      text: '12 N*m is read with the unit N*m; for the name m leave spaces: 12 N * m',
      replacement: '12 N * m',
      explicit: '12 N·m',
    },
  ]);
  const { tree } = parse('=3 mm/h + 2 mm/min + 2820 1/h');
  if (!tree) throw new Error('no tree');
  expect(cautionsOfSyntax(tree)).toEqual([]);
  expect(cautionsOfSyntax(tree, (name) => name === 'h')).toMatchObject([
    { text: '3 mm/h is read with the unit mm/h; for the name h leave spaces: 3 mm / h', from: 1, to: 7 },
  ]);
});
