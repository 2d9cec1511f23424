import { expect, test } from 'vitest';
import { apply, emptyNotebook, enter, isRefusal, type Notebook } from '../../src/document/index.ts';
import { functionTable } from '../../src/catalogue.ts';
import { createEngine } from '../../src/engine/index.ts';

/** A notebook with these texts typed below each other into column A, and a plain sum in B1. */
function engineWith(texts: readonly string[]) {
  const places = [
    ...texts.map((typed, row) => ({ row, column: 0, typed })),
    { row: 0, column: 1, typed: '=1+1' },
  ];
  let notebook: Notebook = emptyNotebook({ id: 'contained' });
  for (const place of places) {
    const done = enter(notebook, { worksheet: 'w1', ...place });
    if (isRefusal(done)) throw new Error(done.message);
    notebook = apply(notebook, done.changes);
  }
  const engine = createEngine({ functions: functionTable() });
  engine.open(notebook);
  return engine;
}

const CASES: readonly (readonly [string, readonly string[], string, RegExp])[] = [
  ['a power beyond reason', ['=(2 mm)^100'], '#UNIT!', /power above 99/],
  ['a power by a function', ['=POWER(100 m/min;170)'], '#UNIT!', /power above 99/],
  [
    'squares of squares',
    ['2 m', ...Array.from({ length: 8 }, (_, i) => `=A${i + 1}*A${i + 1}`)],
    '#UNIT!',
    /power above 99/,
  ],
  ['a unit matrix without end', ['=SUM(MUNIT(1e308))'], '#VALUE!', /from 1 to 64/],
  ['a multiple beyond whole numbers', ['=LCM(7;10;1e300;2)'], '#NUM!', /above 2\^53/],
];

test.each(CASES)('%s is an error in its own cell and the rest computes', (_, texts, code, words) => {
  const engine = engineWith(texts);
  const { error } = engine.result({ worksheet: 'w1', row: texts.length - 1, column: 0 });
  expect(error?.code).toBe(code);
  expect(error?.message).toMatch(words);
  expect(engine.result({ worksheet: 'w1', row: 0, column: 1 }).value).toBe(2);
});
