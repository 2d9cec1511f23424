import { expect, test } from 'vitest';
import { parse, print, tokenize } from '../../src/expression/index.ts';
import type { Node } from '../../src/expression/index.ts';

/** The tree of a formula that has no problem. */
function treeOf(text: string): Node {
  const { tree, problem } = parse(text);
  if (!tree || problem) throw new Error(`${text}: ${problem?.message}`);
  return tree;
}

/** The tree in brackets, so that precedence can be read. */
function bracketed(node: Node): string {
  switch (node.type) {
    case 'binary':
      return `(${bracketed(node.left)}${node.operator}${bracketed(node.right)})`;
    case 'unary':
      return `(${node.operator}${bracketed(node.operand)})`;
    case 'percent':
      return `(${bracketed(node.operand)}%)`;
    case 'group':
      return bracketed(node.inner);
    case 'quantity':
      return `[${print(node)}]`;
    case 'call':
      return `${node.name}(${node.args.map(bracketed).join(';')})`;
    default:
      return print(node);
  }
}

// OASIS OpenDocument part 4 (OpenFormula), 5.5, table of operator precedence: left-associative ^, prefix signs before percent before ^.
test.each([
  ['=-2^2', '((-2)^2)'],
  ['=2^3^2', '((2^3)^2)'],
  ['=2^-3', '(2^(-3))'],
  ['=-5%', '((-5)%)'],
  ['=50%^2', '((50%)^2)'],
  ['=1+2*3', '(1+(2*3))'],
  ['=8/4/2', '((8/4)/2)'],
  ['=1-2-3', '((1-2)-3)'],
  ['=a&b=c', '((a&b)=c)'],
  ['=a+b&c', '((a+b)&c)'],
  ['=a<>b', '(a<>b)'],
  ['=a<=b>=c', '((a<=b)>=c)'],
  ['=--2', '(-(-2))'],
  ['=(1+2)*3', '((1+2)*3)'],
  ['=a≤b', '(a<=b)'],
  ['=a≠b', '(a<>b)'],
  ['=a−b', '(a-b)'],
  ['=a×b÷c', '((a*b)/c)'],
])('F5 %s is read as %s', (text, expected) => {
  expect(bracketed(treeOf(text))).toBe(expected);
});

test.each([
  ['=B3', { column: 1, row: 2, columnFixed: false, rowFixed: false }],
  ['=b3', { column: 1, row: 2, columnFixed: false, rowFixed: false }],
  ['=$B$3', { column: 1, row: 2, columnFixed: true, rowFixed: true }],
  ['=bl2000', { column: 63, row: 1999, columnFixed: false, rowFixed: false }],
  ['=AA$10', { column: 26, row: 9, columnFixed: false, rowFixed: true }],
  ['=Feeds.B3', { column: 1, row: 2, columnFixed: false, rowFixed: false, worksheet: 'Feeds' }],
  ["='Tool trial'.$B3", { column: 1, row: 2, columnFixed: true, rowFixed: false, worksheet: 'Tool trial' }],
  ["='Smith''s'.B3", { column: 1, row: 2, columnFixed: false, rowFixed: false, worksheet: "Smith's" }],
  ['=D1.C4', { column: 2, row: 3, columnFixed: false, rowFixed: false, worksheet: 'D1' }],
])('F6 %s is a cell', (text, corner) => {
  expect(treeOf(text)).toEqual({ type: 'cell', ...corner, from: 1, to: text.length });
});

test('F6 a range keeps its corners in the order written, and a repeated title is read once', () => {
  expect(treeOf('=Feeds.$C9:B3')).toMatchObject({
    type: 'range',
    worksheet: 'Feeds',
    start: { column: 2, row: 8, columnFixed: true },
    end: { column: 1, row: 2 },
  });
  expect(print(treeOf('=SUM(Feeds.B4:Feeds.B5)'))).toBe('SUM(Feeds.B4:B5)');
});

test.each(['kc11', 'kc1.1', 'BM1', 'A2001', 'A0', 'κ_r', 'Größe', 'B3_x', 'D_1', 'x1.5', 'True1', 'ABC12'])(
  'F6a %s is a name',
  (name) => {
    expect(treeOf(`=${name}`)).toEqual({ type: 'name', name, from: 1, to: name.length + 1 });
    expect(treeOf(`='Tool trial'.${name}`)).toMatchObject({ type: 'name', name, worksheet: 'Tool trial' });
  },
);

test.each([
  ['=LOG10(3)', 'LOG10'],
  ['=mill.chip_max(1)', 'MILL.CHIP_MAX'],
  ['=Atan2(1;2)', 'ATAN2'],
  ['=N(1)', 'N'],
  ['=Ceiling.Math(3)', 'CEILING.MATH'],
])('F6a %s calls %s', (text, name) => {
  expect(treeOf(text)).toMatchObject({ type: 'call', name });
});

test.each([
  ['=0.1 mm', '[0.1 mm]'],
  ['=300 mm/min', '[300 mm/min]'],
  ['=12 N·m', '[12 N·m]'],
  ['=12 N.m*2', '([12 N.m]*2)'],
  ['=80 EUR/h', '[80 EUR/h]'],
  ['=3 kW/(cm3/min)', '[3 kW/(cm3/min)]'],
  ['=2820 1/min', '[2820 1/min]'],
  ['=B3/1 in', '(B3/[1 in])'],
  ['=3 mm/D1', '([3 mm]/D1)'],
  ['=3 mm / m', '([3 mm]/m)'],
  ['=3 mm/min(a;b)', '([3 mm]/MIN(a;b))'],
  ['=2 mm*SIN(a)', '([2 mm]*SIN(a))'],
  ['=3 mmm/rev', '[3 mmm/rev]'],
  ['=3 mmm*z', '([3 mmm]*z)'],
  ['=45°', '[45 °]'],
  ['=12mm', '[12 mm]'],
  ['=5 µm', '[5 µm]'],
  ['=5 m/s^2', '[5 m/s^2]'],
  ['=5 m/s²', '[5 m/s²]'],
  ['=(3 mm)^2', '([3 mm]^2)'],
  ['=3 mm^2', '[3 mm^2]'],
  ['=-3 mm', '(-[3 mm])'],
  ['=30 HRC', '[30 HRC]'],
  ['={60;240;120} mm/min', '[{60;240;120} mm/min]'],
  ['=3 m3', '[3 m3]'],
  ['=1 000 mm', '[1000 mm]'],
  ['=1E3 mm', '[1E3 mm]'],
  ['=0.5*B3%', '(0.5*(B3%))'],
])('F7 %s is read as %s', (text, expected) => {
  expect(bracketed(treeOf(text))).toBe(expected);
});

test('F7 a quantity carries the span of its unit', () => {
  expect(treeOf('=B3/1.50 mm')).toMatchObject({
    right: {
      type: 'quantity',
      unit: 'mm',
      unitSpan: { from: 9, to: 11 },
      from: 4,
      to: 11,
      magnitude: { type: 'number', digits: '1.50', value: 1.5, from: 4, to: 8 },
    },
  });
});

test('F9 the comma parts arguments only where it is allowed', () => {
  expect(parse('=MAX(1,2)').problem?.message).toBe('Character 7, “,”: arguments are parted by ;.');
  expect(parse('=MAX(1,2)', { separator: 'both' }).tree).toEqual(treeOf('=MAX(1;2)'));
  expect(print(parse('=MAX(1,5;2)', { decimalMark: ',' }).tree ?? treeOf('=0'))).toBe('MAX(1.5; 2)');
});

test('F9 skipped arguments are missing nodes at their place', () => {
  expect(treeOf('=F(;1;;)')).toMatchObject({
    args: [
      { type: 'missing', from: 3, to: 3 },
      { type: 'number' },
      { type: 'missing', from: 6, to: 6 },
      { type: 'missing', from: 7, to: 7 },
    ],
  });
  expect(treeOf('=F()')).toMatchObject({ args: [] });
});

test('F25 an inline array is rows of signed numbers, texts and logicals', () => {
  expect(treeOf('={1;-2|"a";TRUE}')).toMatchObject({
    type: 'array',
    rows: [
      [
        { type: 'number', value: 1 },
        { type: 'unary', operator: '-', operand: { value: 2 } },
      ],
      [
        { type: 'text', value: 'a' },
        { type: 'logical', value: true },
      ],
    ],
  });
});

test('constants: texts with doubled and typographic quotation marks, logicals with brackets, errors of other programs', () => {
  expect(treeOf('="Hi""t"')).toMatchObject({ type: 'text', value: 'Hi"t' });
  expect(treeOf('=“down”')).toMatchObject({ type: 'text', value: 'down' });
  expect(treeOf('=true()')).toEqual({ type: 'logical', value: true, from: 1, to: 7 });
  expect(treeOf('=#N/A')).toMatchObject({ type: 'error', code: '#N/A' });
  expect(treeOf('=#NULL!')).toMatchObject({ type: 'error', code: '#VALUE!', written: '#NULL!' });
});

test('a formula may come without its =, as the equations of functions do', () => {
  expect(print(treeOf('kc11 * (h / h0)^(-mc)'))).toBe('kc11 * (h / h0)^(-mc)');
});

test('tokens cover unfinished text for colouring, each with its place', () => {
  const text = '=Feeds.B3*SUM(1.5 mm; "dow';
  const tokens = tokenize(text).map(({ type, from, to }) => `${type} ${text.slice(from, to)}`);
  expect(tokens).toEqual([
    'equals =',
    'worksheet Feeds',
    'dot .',
    'cell B3',
    'operator *',
    'function SUM',
    'open (',
    'number 1.5',
    'unit mm',
    'separator ;',
    'text "dow',
  ]);
});

test('unfinished text has a partial tree with all that could be read', () => {
  const { tree, problem } = parse('=MAX(B3; 2*');
  expect(problem).toMatchObject({ unfinished: true, from: 11, to: 11 });
  expect(tree).toMatchObject({
    type: 'call',
    name: 'MAX',
    args: [{ type: 'cell' }, { type: 'binary', right: { type: 'broken', from: 11, to: 11 } }],
  });
});

test('F2 where the mark is a comma both marks are read, and 1.234 is refused with both readings', () => {
  const options = { decimalMark: ',' } as const;
  expect(parse('=1,5*2', options).tree).toMatchObject({ left: { digits: '1.5', value: 1.5 } });
  expect(parse('=1.5*2', options).tree).toMatchObject({ left: { digits: '1.5' } });
  expect(parse('=1 234,5 mm', options).tree).toMatchObject({ magnitude: { digits: '1234.5' } });
  expect(parse('=0.125', options).problem).toBeUndefined();
  expect(parse('=MAX(B3,C4)', { ...options, separator: 'both' }).problem?.message).toBe(
    'Character 8, “,”: arguments are parted by ;.',
  );
  expect(parse('=2*1.234', options).problem?.message).toBe(
    'Character 4, “1.234”: it could be 1234 or 1,234; write the one that is meant.',
  );
});
