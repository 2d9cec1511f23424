import { expect, test } from 'vitest';
import { parse } from '../../src/expression/index.ts';

/** Wrong formulas and what is said of them: the place, what was read there, and what would be right. */
const WRONG: readonly (readonly [string, string])[] = [
  ['', 'At the end: a value such as 12.5 mm, B3 or a name is missing.'],
  ['=', 'At the end: a value such as 12.5 mm, B3 or a name is missing.'],
  ['=   ', 'At the end: a value such as 12.5 mm, B3 or a name is missing.'],
  ['=)', 'Character 2, “)”: a value such as 12.5 mm, B3 or a name is missing before it.'],
  ['=*3', 'Character 2, “*”: a value such as 12.5 mm, B3 or a name is missing before it.'],
  ['=3*', 'At the end: a value such as 12.5 mm, B3 or a name is missing.'],
  ['=3**2', 'Character 3, “**”: a power is written with ^.'],
  ['=a==b', 'Character 3, “==”: equality is written with one =.'],
  ['=a!=b', 'Character 3, “!=”: unequal is written <>.'],
  ['=a=>b', 'Character 3, “=>”: greater or equal is written >=.'],
  ['=a=<b', 'Character 3, “=<”: less or equal is written <=.'],
  ['=a&&b', 'Character 3, “&&”: & joins texts; both conditions together are AND(first; second).'],
  ['=B3 B4', 'Character 5, “B4”: an operator is missing before it, such as B3*B4.'],
  ['=2 a b', 'Character 6, “b”: an operator is missing before it, such as 2 a*b.'],
  ['=2(3)', 'Character 3, “(”: an operator is missing before it, such as 2*(…).'],
  ['=3 x 4', 'Character 6, “4”: a product is written with *: 3*4.'],
  ['=a 5', 'Character 4, “5”: an operator is missing before it, such as a*5.'],
  ['=1 1/2 in', 'Character 4, “1”: a mixed fraction is written as a decimal or a sum: 1.5 in.'],
  ['=1 1/3 in', 'Character 4, “1”: a mixed fraction is written as a decimal or a sum: (1 + 1/3)*1 in.'],
  ['=1 2', 'Character 4, “2”: two numbers stand side by side; a product is written 1*2.'],
  [
    '=1,5*2',
    'Character 3, “,”: no function is open whose arguments it could part; the decimal mark is the point: 1.5.',
  ],
  ['=MAX(1,2)', 'Character 7, “,”: arguments are parted by ;.'],
  ['=1.2.3', 'Character 5, “.3”: a number has one decimal mark: 1234.5.'],
  ['=1e999', 'Character 2, “1e999”: the number is too large; the largest is about 1.8e308.'],
  ['=.', 'Character 2, “.”: a dot stands inside a number (0.5) or between worksheet and cell (Feeds.B3).'],
  ['=(1', 'At the end: a ) is missing for the ( at character 2.'],
  ['=(1;2)', 'Character 4, “;”: no function is open whose arguments it could part.'],
  ['=1)', 'Character 3, “)”: no bracket is open for it; leave it out or open one before.'],
  ['=SUM(1', 'At the end: a ) is missing that closes SUM(.'],
  ['=SUM(B3:', 'At the end: the second cell of the range is missing: B3:C9.'],
  [
    '=SUM(B3:)',
    'Character 9, “)”: a range goes from cell to cell, B3:C9; a name stands for its cells by itself.',
  ],
  ['=SUM(B3:fz)', 'Character 9, “fz”: the row is missing; a column is written with its rows: FZ1:FZ2000.'],
  [
    '=B1:A2001',
    'Character 5, “A2001”: it is outside the worksheet: columns go from A to BL, rows from 1 to 2000.',
  ],
  [
    '=$BM$3',
    'Character 2, “$BM$3”: it is outside the worksheet: columns go from A to BL, rows from 1 to 2000.',
  ],
  [
    '=A1:BM3',
    'Character 5, “BM3”: it is outside the worksheet: columns go from A to BL, rows from 1 to 2000.',
  ],
  ['=A:A', 'Character 2, “A”: the row is missing; a column is written with its rows: A1:A2000.'],
  ['=A1:B2:C3', 'Character 7, “:”: a range has two corners: B3:C9.'],
  ['=B$', 'Character 2, “B$”: a fixed cell is written $B$3, B$3 or $B3.'],
  ['=Feeds.', 'At the end: a cell or a name is missing behind the dot: Feeds.B3.'],
  ['=Feeds.3', 'Character 7, “.3”: a cell or a name stands behind the dot: Feeds.B3.'],
  ['=Feeds!B3', 'Character 7, “!”: a dot parts worksheet and cell: Feeds.B3.'],
  ['="Tool', 'Character 2, “"Tool”: the text is not closed; a quotation mark is missing at its end.'],
  [
    "='Tool trial'",
    "Character 2, “'Tool trial'”: single quotation marks hold a worksheet's title: 'Tool trial'.B3; text stands in double ones.",
  ],
  [
    "='Tool",
    "Character 2, “'Tool”: the worksheet's title is not closed: 'Tool trial'.B3; text stands in double quotation marks.",
  ],
  [
    '=Feeds.B3:Tools.C4',
    'Character 11, “Tools”: a range lies on one worksheet; its title stands once, before it: Tools.B3:C9.',
  ],
  [
    '=[Feeds.B3]',
    'Character 2, “[”: brackets around a reference are not used here: Feeds.B3, and quantities are written 1 mm.',
  ],
  ['={1;2', 'At the end: a } is missing that closes the array.'],
  ['={1;2|3}', 'Character 2, “{”: all rows of an array are equally long; row 2 has 1 and row 1 has 2.'],
  ['={1;;2}', 'Character 5, “;”: an element of the array is missing before it: {1;2|3;4}.'],
  ['={1;B3}', 'Character 5, “B3”: an array holds numbers, texts, TRUE and FALSE, parted by ; and rows by |.'],
  ['={1 mm;2 mm}', 'Character 5, “mm”: the unit of an array stands behind its brace: {1;2} mm.'],
  ['={}', 'Character 3, “}”: an element of the array is missing before it: {1;2|3;4}.'],
  ['={1;2}}', 'Character 7, “}”: no { is open for it; an array is written {1;2|3;4}.'],
  ['=1;2', 'Character 3, “;”: no function is open whose arguments it could part.'],
  ['=a|b', 'Character 3, “|”: no { is open for it; an array is written {1;2|3;4}.'],
  [
    '=B3 mm',
    'Character 5, “mm”: mm is a unit only behind a number; a plain number in B3 takes it by B3*1 mm.',
  ],
  [
    '=fz mm',
    'Character 5, “mm”: mm is a unit only behind a number; a plain number in fz takes it by fz*1 mm.',
  ],
  ['=@B3', 'Character 2, “@”: a cell is written by its address alone: B3.'],
  ['=√2', 'Character 2, “√”: a square root is written SQRT(B3).'],
  ['=5²', 'Character 3, “²”: a square is written ^2.'],
  ['=_a', 'Character 2, “_”: a name begins with a letter.'],
  ['=B3~B4', 'Character 4, “~”: ranges can not be joined; give them as separate arguments.'],
  ['=\\', 'Character 2, “\\”: division is written with /.'],
  ['=B3:', 'At the end: the second cell of the range is missing: B3:C9.'],
  ['=5 B3', 'Character 4, “B3”: an operator is missing before it, such as 5*B3.'],
  ['=3 SIN(2)', 'Character 4, “SIN”: an operator is missing before it, such as 3*SIN(…).'],
  ['=B3(2)', 'Character 4, “(”: an operator is missing before it; B3 is a cell and no function.'],
  ['=#FOO', 'Character 2, “#”: an error is written #N/A, #REF! or #VALUE!.'],
  ['=a?', 'Character 3, “?”: this character has no meaning in a formula; text stands in quotation marks.'],
  ['=%', 'Character 2, “%”: a value such as 12.5 mm, B3 or a name is missing before it.'],
  ['=a%b', 'Character 4, “b”: an operator is missing before it, such as a%*b.'],
  [
    '=’x’',
    "Character 2, “’x’”: single quotation marks hold a worksheet's title: ’x’.B3; text stands in double ones.",
  ],
  ['=a:b', 'Character 2, “a”: the row is missing; a column is written with its rows: A1:A2000.'],
  ['=SUM(Feeds.B3:B)', 'Character 15, “B”: the row is missing; a column is written with its rows: B1:B2000.'],
  ['=1.5.', 'Character 5, “.”: a dot stands inside a number (0.5) or between worksheet and cell (Feeds.B3).'],
  ['=3 mm 4', 'Character 7, “4”: an operator is missing before it, such as 3 mm*4.'],
  ['=(', 'At the end: a value such as 12.5 mm, B3 or a name is missing.'],
  ['=f(1;(2', 'At the end: a ) is missing for the ( at character 6.'],
  ['=f(1 2)', 'Character 6, “2”: two numbers stand side by side; a product is written 1*2.'],
  ['=+', 'At the end: a value such as 12.5 mm, B3 or a name is missing.'],
  ['=-', 'At the end: a value such as 12.5 mm, B3 or a name is missing.'],
  ['=a b(', 'Character 4, “b”: an operator is missing before it, such as a*B(…).'],
];

test.each(WRONG)('%s is no formula, and the message says where and what would be right', (text, message) => {
  expect(parse(text).problem?.message).toBe(message);
});

test('at least 40 wrong formulas are in the table, each once', () => {
  expect(new Set(WRONG.map(([text]) => text)).size).toBe(WRONG.length);
  expect(WRONG.length).toBeGreaterThanOrEqual(40);
});

test.each(WRONG)('%s still has a partial tree, and the place lies inside the text', (text) => {
  const { tree, problem } = parse(text);
  expect(tree).toBeDefined();
  expect(problem?.from).toBeGreaterThanOrEqual(0);
  expect(problem?.to).toBeLessThanOrEqual(text.length);
  expect(problem?.from).toBeLessThanOrEqual(problem?.to ?? -1);
});

test('a text that ends too early is told apart from a wrong one', () => {
  for (const text of ['=', '=3*', '=(1', '=SUM(1;', '=SUM(B3:', '="down', "='Tool", '={1;2', '=Feeds.']) {
    expect(parse(text).problem?.unfinished, text).toBe(true);
  }
  for (const text of ['=)', '=B3 B4', '=3**2', '=$BM$3'])
    expect(parse(text).problem?.unfinished, text).toBeUndefined();
});

test('a cell outside of the worksheet is #REF!, other wrong text #VALUE!', () => {
  expect(parse('=$BM$3').problem?.code).toBe('#REF!');
  expect(parse('=B1:A2001').problem?.code).toBe('#REF!');
  expect(parse('=B3 B4').problem?.code).toBe('#VALUE!');
});

const nested = (depth: number) => `=${'('.repeat(depth)}1${')'.repeat(depth)}`;

const calls = (depth: number) => `=${'N('.repeat(depth)}1${')'.repeat(depth)}`;

const sum = (terms: number) => `=${Array.from({ length: terms }, () => '1').join('+')}`;

test('the limits hold exactly: 2048 characters, 64 levels, 1000 parts', () => {
  expect(parse(nested(64)).problem).toBeUndefined();
  expect(parse(nested(65)).problem).toMatchObject({
    code: '#LIMIT!',
    from: 65,
    message:
      'Character 66, “(”: brackets and calls are nested more than 64 deep; put a part of it into a cell of its own.',
  });
  expect(parse(calls(64)).problem).toBeUndefined();
  expect(parse(calls(65)).problem?.code).toBe('#LIMIT!');

  expect(parse(`${sum(500)}`).problem).toBeUndefined();
  expect(parse(`-${sum(500).slice(1)}`).problem).toBeUndefined();
  expect(parse(`--${sum(500).slice(1)}`).problem?.message).toBe(
    'The formula has more than 1000 parts: split it over several cells.',
  );

  expect(parse(`=${'1'.repeat(300)}${' '.repeat(1747)}`).problem).toBeUndefined();
  expect(parse(`=${'1'.repeat(300)}${' '.repeat(1748)}`).problem?.message).toBe(
    'The formula has 2049 characters; at most 2048 are allowed: split it over several cells.',
  );
});

test('a thousand signs and hostile repetitions are read in no time', () => {
  const started = performance.now();
  for (const piece of [
    '-',
    '+-',
    '((',
    '{',
    '"',
    "'",
    'a.',
    '1 ',
    '1/',
    '1 mm/',
    '1e',
    '%',
    'Ω(',
    '$',
    ':',
    '1 (mm/(',
  ]) {
    const text = `=${piece.repeat(2047 / piece.length)}`;
    expect(() => parse(text), piece).not.toThrow();
  }
  expect(performance.now() - started).toBeLessThan(3000);
});
