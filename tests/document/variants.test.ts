import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addVariant,
  BASE,
  baseNotebook,
  deleteLines,
  insertLines,
  makeBase,
  ownValues,
  removeVariant,
  setVariantValue,
  shownVariant,
  showVariant,
  variantsOf,
} from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { contentAt, done, placeOf, refusalOf, sample, typed } from './sample.ts';

const at = (address: string): { worksheet: string; row: number; column: number } => ({
  worksheet: 'w1',
  ...placeOf(address),
});

/** Base with three givens and a formula; v1 has eight teeth, v2 six teeth and a wider engagement. */
function crank(): Notebook {
  let notebook = sample({ A1: '5', A2: '12 mm', A3: '0.1 mm', A4: '=A1*A3' });
  notebook = done(notebook, addVariant(notebook, { title: 'eight teeth' }));
  notebook = done(notebook, addVariant(notebook, { title: 'six, wide' }));
  notebook = done(notebook, setVariantValue(notebook, { id: 'v1', place: at('A1'), typed: '8' }));
  notebook = done(notebook, setVariantValue(notebook, { id: 'v2', place: at('A1'), typed: '6' }));
  return done(notebook, setVariantValue(notebook, { id: 'v2', place: at('A2'), typed: '20 mm' }));
}

const givens = (notebook: Notebook): readonly string[] =>
  ['A1', 'A2', 'A3'].map((address) => contentAt(notebook, address));

/** What each variant means: all givens as they would stand if it were shown. */
const meanings = (notebook: Notebook): Readonly<Record<string, readonly string[]>> =>
  Object.fromEntries(
    ['', ...variantsOf(notebook).map(({ id }) => id)].map((id) => [
      id === '' ? 'base' : (variantsOf(notebook).find((each) => each.id === id)?.title ?? ''),
      givens(done(notebook, showVariant(notebook, { id: id === '' ? BASE : id }))),
    ]),
  );

test('a variant is shown with its own values and the rest of the base, and the base comes back', () => {
  const before = crank();
  const shown = done(before, showVariant(before, { id: 'v2' }));
  expect(givens(shown)).toEqual(['6', '20 mm', '0.1 mm']);
  expect(shownVariant(shown)?.title).toBe('six, wide');
  expect(givens(baseNotebook(shown))).toEqual(['5', '12 mm', '0.1 mm']);
  expect(done(shown, showVariant(shown, { id: BASE }))).toEqual(before);
});

test('what is typed into an own cell of the shown variant stays with the variant', () => {
  const before = crank();
  let shown = done(before, showVariant(before, { id: 'v1' }));
  shown = typed(shown, { A1: '9' });
  const [first] = variantsOf(shown);
  expect(first && ownValues(shown, first).map(({ content }) => content)).toEqual(['9']);
  const other = done(shown, showVariant(shown, { id: 'v2' }));
  expect(givens(other)).toEqual(['6', '20 mm', '0.1 mm']);
  const again = done(other, showVariant(other, { id: 'v1' }));
  expect(givens(again)).toEqual(['9', '12 mm', '0.1 mm']);
  expect(givens(baseNotebook(again))).toEqual(['5', '12 mm', '0.1 mm']);
});

test('a row put in above moves the variants along; a deleted cell leaves them', () => {
  let notebook = crank();
  notebook = done(notebook, insertLines(notebook, { worksheet: 'w1', axis: 'row', at: 0, count: 2 }));
  const shown = done(notebook, showVariant(notebook, { id: 'v2' }));
  expect(['A3', 'A4', 'A5'].map((address) => contentAt(shown, address))).toEqual(['6', '20 mm', '0.1 mm']);
  const less = done(shown, deleteLines(shown, { worksheet: 'w1', axis: 'row', at: 3, count: 1 }));
  expect(variantsOf(less).map(({ values }) => values.length)).toEqual([1, 1]);
  expect(['A3', 'A4'].map((address) => contentAt(baseNotebook(less), address))).toEqual(['5', '0.1 mm']);
});

test('making a variant the base keeps what every variant means, the old base among them', () => {
  const before = crank();
  const was = meanings(before);
  const after = done(before, makeBase(before, { id: 'v2' }));
  const is = meanings(after);
  expect(is['base']).toEqual(was['six, wide']);
  expect(is['Former base']).toEqual(was['base']);
  expect(is['eight teeth']).toEqual(was['eight teeth']);
});

test('taking the shown variant away brings the base back', () => {
  const before = crank();
  const shown = done(before, showVariant(before, { id: 'v1' }));
  const after = done(shown, removeVariant(shown, { id: 'v1' }));
  expect(givens(after)).toEqual(['5', '12 mm', '0.1 mm']);
  expect(variantsOf(after).map(({ title }) => title)).toEqual(['six, wide']);
});

test('a variant changes given values only, and says so', () => {
  const notebook = crank();
  const set = (address: string, text: string): string =>
    refusalOf(setVariantValue(notebook, { id: 'v1', place: at(address), typed: text }));
  expect(set('A4', '3')).toBe('A4 is worked out: a variant changes given values.');
  expect(set('A1', '=A2')).toBe('A1: a variant has values, not formulas.');
  expect(set('B9', '3')).toBe('B9 is empty: a variant changes given values.');
  expect(refusalOf(addVariant(notebook, { title: 'eight teeth' }))).toBe(
    'There is a variant eight teeth already.',
  );
});

test('showing variants in any order, with values set between, never changes what the others mean', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.constantFrom(BASE, 'v1', 'v2'), fc.nat(2), fc.nat(99)), { maxLength: 12 }),
      (steps) => {
        let notebook = crank();
        for (const [id, row, number] of steps) {
          const was = meanings(notebook);
          notebook = done(notebook, showVariant(notebook, { id }));
          expect(meanings(notebook)).toEqual(was);
          const place = { worksheet: 'w1', row, column: 0 };
          const text = row === 0 ? String(number + 1) : `${number + 1} mm`;
          notebook = done(notebook, setVariantValue(notebook, { id: 'v1', place, typed: text }));
          const is = meanings(notebook);
          expect(is['six, wide']).toEqual(was['six, wide']);
          expect(is['base']).toEqual(was['base']);
          expect(is['eight teeth']?.[row]).toBe(text);
        }
      },
    ),
    { seed: 20_261_125, numRuns: 200 },
  );
});
