/**
 * The formulas of the published OpenFormula cases, read by the parser. Source: OASIS OpenDocument v1.2 part 2 (OpenFormula),
 * working draft 19 January 2010, tables of test cases, checked against OpenDocument v1.4 part 4; seen in references/openformula.json.
 */

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse, print } from '../../src/expression/index.ts';

interface Published {
  readonly cases: readonly { readonly id: string; readonly expression: string; readonly value: unknown }[];
}

const published: Published = JSON.parse(
  readFileSync(new URL('../references/openformula.json', import.meta.url), 'utf8'),
);

/** Written in a way that the language leaves out on purpose, with the reason. */
const LEFT_OUT = new Map([
  ...['of2010-4.8-07', 'of2010-4.8-08', 'of2010-4.8-09', 'of2010-5.13.3-03'].map(
    (id) => [id, 'F6: the interchange form with brackets around references is rewritten by hand'] as const,
  ),
  ...['of2010-4.11.3-01', 'of2010-4.11.4-02'].map((id) => [id, 'names in other files are not read'] as const),
  ...['of2010-5.4.11-03'].map((id) => [id, 'F6: a range has two corners'] as const),
  ...['of2010-5.4.13-01', 'of2010-5.4.13-03', 'of2010-5.4.13-04', 'of2010-5.14.6-02'].map(
    (id) => [id, 'F5: the union operator is not among the operators'] as const,
  ),
  ['of2010-5.13.29-03', 'F26: there are no matrix formulas in braces'],
  ...['of2010-5.18.46-08', 'of2010-5.18.49-06'].map(
    (id) => [id, 'the closing bracket is missing in print'] as const,
  ),
]);

const readable = published.cases.filter(({ id }) => !LEFT_OUT.has(id));

test('F5 to F10 every published formula but the listed ones is read, and prints to a formula that is read alike', () => {
  const offenders = readable.flatMap(({ id, expression }) => {
    const first = parse(expression, { separator: 'both' });
    if (!first.tree || first.problem) return [`${id} ${expression}: ${first.problem?.message}`];
    const second = parse(print(first.tree));
    if (!second.tree || second.problem) return [`${id} ${print(first.tree)}: ${second.problem?.message}`];
    return print(second.tree) === print(first.tree) ? [] : [`${id} prints differently the second time`];
  });
  expect(offenders).toEqual([]);
});

test.each([...LEFT_OUT])('%s is refused: %s', (id) => {
  const found = published.cases.find((each) => each.id === id);
  expect(found).toBeDefined();
  expect(parse(found?.expression ?? '').problem).toBeDefined();
});

// The rewritten form of the four bracketed cases.
test.each(["='Sheet1'.B4", '=SUM(Sheet1.B4:Sheet1.B5)', '=CELL("ADDRESS"; Sheet2.B7)'])(
  'F6 %s stands for its bracketed form',
  (text) => {
    expect(parse(text).problem).toBeUndefined();
  },
);

test('a range over two worksheets is refused with the reason', () => {
  expect(parse('=SUM(Sheet1.B4:Sheet2.C5)').problem?.message).toBe(
    'Character 16, “Sheet2”: a range lies on one worksheet; its title stands once, before it: Sheet2.B3:C9.',
  );
});

test.each([
  ['of2010-4.3-04', 5500],
  ['std14-5.3-s01', 0.001],
  ['std14-5.3-s03', 0.001],
  ['std14-5.3-s04', 5],
  ['of2010-4.3-01', 56.5],
])('%s: the number reads as %s', (id, value) => {
  const found = published.cases.find((each) => each.id === id);
  expect(found?.value).toBe(value);
  expect(parse(found?.expression ?? '').tree).toMatchObject({ type: 'number', value });
});
