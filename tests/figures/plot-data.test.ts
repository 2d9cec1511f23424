/** Plots read from cells: units, headings, what is left out, words, and figures being edited. */

import { expect, test } from 'vitest';
import { computedSheet } from '../sheets/computed-sheet.ts';
import {
  apply,
  emptyNotebook,
  enter,
  isRefusal,
  partsOf,
  type Figure,
  type Notebook,
} from '../../src/document/index.ts';
import { readAddress } from '../../src/expression/index.ts';
import { draftOf, figureOf, isDraftRefused } from '../../src/ui/figures/figure-draft.ts';
import { crossing, plotData, plotWords, type PlotContent } from '../../src/ui/figures/plot-data.ts';
import { likeness } from '../../src/ui/figures/propose.ts';
import { figureKey, shownFigure } from '../../src/ui/figures/shown-figure.ts';
import { Results } from '../../src/ui/results.ts';

/** A shipped notebook with the results the calculator gives. */
function opened(file: string): { readonly notebook: Notebook; readonly results: Results } {
  const { notebook, engine } = computedSheet(file);
  const results = new Results();
  const found = notebook.worksheets.flatMap(({ id, rows }) =>
    rows.flatMap((row, r) =>
      (row ?? []).flatMap((cell, column) => {
        const address = { worksheet: id, row: r, column };
        return cell ? [{ address, result: engine.result(address) }] : [];
      }),
    ),
  );
  results.take({
    type: 'results',
    revision: 1,
    complete: true,
    worksheets: notebook.worksheets.map(({ id }) => id),
    numbers: { addresses: new Uint32Array(), values: new Float64Array() },
    results: found,
  });
  return { notebook, results };
}

const block = (text: string, worksheet = 'w1') => {
  const [a, b] = text.split(':').map((each) => readAddress(each));
  if (!a) throw new Error(text);
  const end = b ?? a;
  return {
    worksheet,
    block: { row: a.row, column: a.column, rows: end.row - a.row + 1, columns: end.column - a.column + 1 },
  };
};

const plotOf = (figure: Figure | undefined): PlotContent => {
  if (figure?.content.type !== 'plot') throw new Error('no plot');
  return figure.content;
};

const wear = opened('bearing-bore-wear-test.json');
const wearPlot = plotOf(partsOf(wear.notebook, 'figures')[0]);

test('columns are shown in the unit of their cells, under the words above them', () => {
  const { x, y, series, levels } = plotData(wear.notebook, wear.results, wearPlot);
  expect(x).toMatchObject({ label: 'time in the cut', unit: 'min' });
  expect(y.unit).toBe('mm');
  expect(series).toHaveLength(8);
  // As typed on the worksheet: 3 min, 0.05 mm.
  expect(series[0]).toMatchObject({ label: 'tool A, edge 1' });
  expect(series[0]?.points[0]).toEqual({ x: 3, y: 0.05 });
  expect(levels).toEqual([{ words: 'edge is changed', value: 0.2, axis: 'y' }]);
});

test('the words of a plot tell where a series passes a level', () => {
  // Edge 1 of tool A: 0.18 mm at 15 min, 0.23 mm at 18 min; by a straight line 0.2 mm at 16.2 min.
  const words = plotWords(plotData(wear.notebook, wear.results, wearPlot));
  expect(words).toContain('tool A, edge 1');
  expect(words).toContain('passes edge is changed (0.2 mm) at about 16.2 min');
});

test('a crossing is found by straight lines, none where there is none', () => {
  const points = [
    { x: 0, y: 0 },
    { x: 10, y: 4 },
  ];
  expect(crossing(points, 1)).toBeCloseTo(2.5, 12);
  expect(crossing(points, 5)).toBeUndefined();
});

test('a series of another dimension is left out and said so', () => {
  const { notebook, results } = opened('pump-cover-boss.json');
  const { series, troubles } = plotData(notebook, results, {
    type: 'plot',
    x: block('A8:A11', 'w2'),
    series: [
      { mark: 'line', y: block('B8:B11', 'w2') },
      { mark: 'line', y: block('B6:B9', 'w1'), label: 'lengths' },
    ],
  });
  expect(series.map(({ label }) => label)).toEqual(['power']);
  expect(troubles.join()).toMatch(/lengths is left out/);
});

test('a logarithmic axis leaves out what is not above 0 and says so; typed values need no calculator', () => {
  let notebook = emptyNotebook({ id: 'n1', title: 'Invented', reading: 'metric' });
  const worksheet = notebook.worksheets[0]?.id ?? '';
  for (const [row, typed] of ['0 mm', '0.1 mm', '1 mm'].entries()) {
    const done = enter(notebook, { worksheet, row, column: 0, typed });
    if (isRefusal(done)) throw new Error(done.message);
    notebook = apply(notebook, done.changes);
  }
  const content: PlotContent = {
    type: 'plot',
    series: [{ mark: 'points', y: block('A1:A3', worksheet), label: 'wear' }],
    logarithmicY: true,
  };
  const { series, troubles } = plotData(notebook, new Results(), content);
  expect(series[0]?.points).toEqual([
    { x: 2, y: 0.1 },
    { x: 3, y: 1 },
  ]);
  expect(troubles).toEqual(['wear: 1 values that are not above 0 can not stand on a logarithmic axis']);
});

test('without a range along x the values are counted', () => {
  const { x: _, ...counted } = wearPlot;
  expect(plotData(wear.notebook, wear.results, counted).series[0]?.points[2]?.x).toBe(3);
});

test('an operating point has its own place along x, and a level that fits x stands upright', () => {
  const { notebook, results } = opened('pump-cover-boss.json');
  const figure = partsOf(notebook, 'figures').find(({ content }) => content.type === 'plot');
  const data = plotData(notebook, results, {
    ...plotOf(figure),
    levels: [{ place: { worksheet: 'w2', row: 2, column: 1 }, words: 'highest' }],
  });
  // 260 m/min on 50 mm are 1655.2 1/min.
  expect(data.series[1]?.points[0]?.x).toBeCloseTo(1655.2, 1);
  expect(data.levels).toEqual([{ words: 'highest', value: 12000, axis: 'x' }]);
});

test('every sketch of the shipped notebooks reads its cells, and a change of one of them changes its key', () => {
  for (const file of [
    'pump-cover-boss.json',
    'deep-holes-manifold.json',
    'chain-drilled-slot.json',
    'thread-three-ways.json',
    'crank-line-cutters.json',
    'hinge-fitting-stock.json',
  ]) {
    const { notebook, results } = opened(file);
    for (const figure of partsOf(notebook, 'figures')) {
      if (figure.content.type !== 'sketch') continue;
      const wrong = {
        ...figure,
        content: {
          ...figure.content,
          values: figure.content.values.map((value) => ({ ...value, place: { ...value.place, column: 0 } })),
        },
      };
      expect(shownFigure({ notebook, results }, wrong, { width: 300, id: 'f' }).refused).toMatch(
        /no number stands there|a value is missing/,
      );
      const [first] = figure.content.values;
      const changed = new Results();
      const result = { value: 0.001, kind: 'length', unit: 'mm', cautions: [] };
      changed.take({
        type: 'results',
        revision: 1,
        complete: true,
        worksheets: [],
        numbers: { addresses: new Uint32Array(), values: new Float64Array() },
        results: first ? [{ address: first.place, result }] : [],
      });
      const keys = [results, results, changed].map((each) => figureKey(notebook, each, figure));
      expect(keys[0]).toBe(keys[1]);
      expect(keys[0]).not.toBe(keys[2]);
    }
  }
});

test('a figure comes back from its texts as it was, from any worksheet', () => {
  for (const file of ['bearing-bore-wear-test.json', 'pump-cover-boss.json', 'long-cutter-chatter.json']) {
    const { notebook } = opened(file);
    for (const here of notebook.worksheets)
      for (const figure of partsOf(notebook, 'figures'))
        expect(figureOf(notebook, here.id, draftOf(notebook, here.id, figure))).toEqual(figure);
  }
});

test('a text that is no cell is refused by the field it stands in', () => {
  const { notebook } = opened('pump-cover-boss.json');
  const [figure] = partsOf(notebook, 'figures');
  if (!figure) throw new Error('no figure');
  const draft = draftOf(notebook, 'w1', figure);
  if (draft.type !== 'sketch') throw new Error('no sketch');
  const answer = figureOf(notebook, 'w1', { ...draft, cells: new Map([['Dc', 'nonsense']]) });
  expect(isDraftRefused(answer) && answer.refused).toMatch(/cutter diameter: “nonsense”/);
});

test('a symbol answers to its parameter before words do', () => {
  const parameter = { key: 'Dc', symbol: 'Dc', words: 'cutter diameter', kind: 'length' };
  const [bySymbol, byWords, neither] = [
    likeness(parameter, 'Dc', 'D_c', 'tool'),
    likeness(parameter, 'x', undefined, 'cutter diameter'),
    likeness(parameter, 'h', undefined, 'height'),
  ];
  expect(bySymbol).toBeGreaterThan(byWords);
  expect(byWords).toBeGreaterThan(30);
  expect(neither).toBeLessThan(30);
});
