/** F26: a formula that gives several values fills the cells below or beside it, and what stands in the way is named. */

import { expect, test } from 'vitest';
import { PLAIN } from '../../src/quantity/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import type { Engine } from '../../src/engine/index.ts';
import type { TableFunction } from '../../src/expression/index.ts';
import { functionTable } from '../../src/catalogue.ts';
import { at, notebookOf, typed, worksheet } from './notebook.ts';
import type { Cells } from './notebook.ts';

/** 1, 2, 3 ... below each other, as many as its argument says. */
const COUNT_UP: TableFunction = {
  name: 'TEST.COUNT',
  arity: [1, 1],
  spills: true,
  infer: () => ({ type: { type: 'grid', columns: [{ type: 'number', kind: PLAIN }], rows: 1 } }),
  evaluate: ([count]) => ({ grid: Array.from({ length: Number(count) }, (_, index) => [index + 1]) }),
};

function openedWith(cells: Cells): Engine {
  const engine = createEngine({ functions: new Map([...functionTable(), ['TEST.COUNT', COUNT_UP]]) });
  engine.open(notebookOf([{ title: 'Sheet', cells }]));
  return engine;
}

const column = (engine: Engine, letter: string, rows: number): unknown[] =>
  Array.from({ length: rows }, (_, row) => engine.result(at(`${letter}${row + 1}`)).value);

test('F26 values fill the cells below, formulas may read them, and their number follows the inputs', () => {
  const engine = openedWith({ A1: '3', B1: '=TEST.COUNT(A1)', C1: '=SUM(B1:B9)', C2: '=B3*10' });
  expect(column(engine, 'B', 4)).toEqual([1, 2, 3, null]);
  expect(engine.result(at('B2')).origin).toEqual(at('B1'));
  expect(engine.result(at('C1')).value).toBe(6);
  expect(engine.result(at('C2')).value).toBe(30);
  engine.apply([typed('A1', '5')]);
  expect(column(engine, 'B', 6)).toEqual([1, 2, 3, 4, 5, null]);
  expect(engine.result(at('C1')).value).toBe(15);
  const shorter = engine.apply([typed('A1', '2')]);
  expect(column(engine, 'B', 4)).toEqual([1, 2, null, null]);
  expect(engine.result(at('C1')).value).toBe(3);
  expect(shorter.results.filter(({ result }) => !result).map(({ address }) => address)).toEqual([
    at('B3'),
    at('B4'),
    at('B5'),
  ]);
});

test('F26 cells in the way are named, and freeing them heals', () => {
  const engine = openedWith({ A1: '3', B1: '=TEST.COUNT(A1)', B3: 'note', C1: '=B2' });
  const { error } = engine.result(at('B1'));
  expect(error?.code).toBe('#OCCUPIED!');
  expect(error?.message).toMatch(/B3/);
  expect(engine.result(at('B3')).value).toBe('note');
  engine.apply([typed('B3', '')]);
  expect(column(engine, 'B', 4)).toEqual([1, 2, 3, null]);
  expect(engine.result(at('C1')).value).toBe(2);
});

test('F26 typing into a filled cell blocks the values, clearing it brings them back', () => {
  const engine = openedWith({ A1: '3', B1: '=TEST.COUNT(A1)', C1: '=SUM(B1:B3)' });
  engine.apply([typed('B2', '100')]);
  expect(engine.result(at('B1')).error?.code).toBe('#OCCUPIED!');
  expect(column(engine, 'B', 3).slice(1)).toEqual([100, null]);
  expect(engine.result(at('C1')).error?.root).toEqual(at('B1'));
  engine.apply([typed('B2', '')]);
  expect(column(engine, 'B', 3)).toEqual([1, 2, 3]);
  expect(engine.result(at('C1')).value).toBe(6);
});

test('F26 removing the formula empties its cells', () => {
  const engine = openedWith({ B1: '=TEST.COUNT(3)', C1: '=B3' });
  engine.apply([typed('B1', '')]);
  expect(column(engine, 'B', 3)).toEqual([null, null, null]);
  expect(engine.result(at('B3')).kind).toBe('blank');
});

test('F26 two formulas that want the same cells do not cover each other', () => {
  const engine = openedWith({ A1: '3', B1: '=TEST.COUNT(A1)', B3: '=TEST.COUNT(2)' });
  expect(engine.result(at('B1')).error?.code).toBe('#OCCUPIED!');
  expect(column(engine, 'B', 4).slice(2)).toEqual([1, 2]);
  engine.apply([typed('A1', '2')]);
  expect(column(engine, 'B', 4)).toEqual([1, 2, 1, 2]);
});

test('F26 values that would fill what their formula reads are a circle, and the rest computes', () => {
  const engine = openedWith({ B1: '=TEST.COUNT(2+0*SUM(B2:B3))', A1: '2', A2: '=A1*2' });
  expect(engine.result(at('B1')).error?.code).toBe('#CIRCLE!');
  expect(engine.result(at('A2')).value).toBe(4);
  engine.apply([typed('B1', '=TEST.COUNT(2)')]);
  expect(column(engine, 'B', 2)).toEqual([1, 2]);
});

test('F26 a matrix keeps the dimension of its columns', () => {
  const engine = openedWith({ A1: '1 mm', B1: '2 mm', A3: '=TRANSPOSE(A1:B1)', C3: '=A4+1 mm' });
  expect(engine.result(at('A3'))).toMatchObject({ value: 0.001, kind: 'length' });
  expect(engine.result(at('A4'))).toMatchObject({ value: 0.002, kind: 'length', unit: 'mm' });
  expect(engine.result(at('C3')).value).toBe(0.003);
});

test('F26 beyond the end of the worksheet there is no room', () => {
  const cells = { A58: '=TEST.COUNT(5)' };
  const engine = openedWith({});
  const to = worksheet('w1', { title: 'Sheet', cells });
  const from = { ...to, rowCount: 60 };
  engine.open({ ...notebookOf([]), worksheets: [from] });
  expect(engine.result(at('A58')).error?.code).toBe('#OCCUPIED!');
  engine.apply([{ type: 'worksheet', index: 0, from, to }]);
  expect(engine.result(at('A62')).value).toBe(5);
});
