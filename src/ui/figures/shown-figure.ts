/** A figure of the notebook as it is now: its picture, or why there is none, and the same in words and as a table. */

import type { Figure, FigureContent, Notebook } from '../../document/index.ts';
import { findWorksheet, labelOf } from '../../document/index.ts';
import type { KnownResult, Results } from '../results.ts';
import type { Session } from '../session.ts';
import { pictureOf } from './drawing-picture.ts';
import { isValues, knownAt, placeText, valuesOf } from './figure-values.ts';
import { axisValue, plotData, plotWords, type PlotData } from './plot-data.ts';
import { sayIn, squareUnit } from './say.ts';
import { drawSketch, isRefused, type Say, type Sketch, type SketchValues } from './sketch.ts';
import { sketchOf } from './sketches.ts';
import { node, svgElement } from './svg-node.ts';

export interface FigureTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface ShownFigure {
  /** Not yet on the page; absent where the figure can not be drawn. */
  readonly picture?: SVGElement;
  readonly words: string;
  readonly refused?: string;
  readonly troubles: readonly string[];
  readonly table?: FigureTable;
}

export interface FigurePaper {
  /** Pixels. */
  readonly width: number;
  /** Tells the patterns of this figure from those of others. */
  readonly id: string;
}

type PlotModule = typeof import('./plot-picture.ts');
let plotting: PlotModule | undefined;

/** Brings what a kind of figure needs; sketches need nothing more. */
export async function prepareFigure(type: FigureContent['type']): Promise<void> {
  if (type === 'plot') plotting ??= await import('./plot-picture.ts');
}

/** Whether a figure can be drawn at once. */
export const isPrepared = (type: FigureContent['type']): boolean =>
  type === 'sketch' || plotting !== undefined;

/** A sketch from values in coherent SI. */
export function shownSketch(
  sketch: Sketch,
  values: SketchValues,
  notebook: Pick<Notebook, 'display' | 'currency'>,
  paper: FigurePaper,
): ShownFigure {
  const say = sayIn(notebook);
  const drawing = drawSketch(sketch, values, say);
  if (isRefused(drawing)) return { refused: drawing.refused, words: drawing.refused, troubles: [] };
  const { width, height, nodes } = pictureOf(drawing, { ...paper, say, unit: squareUnit(notebook.display) });
  const picture = svgElement(
    node('svg', { class: 'figure', width, height, viewBox: `0 0 ${width} ${height}` }, ...nodes),
  );
  return { picture, words: drawing.words, troubles: [], table: sketchTable(sketch, values, say) };
}

const sketchTable = ({ parameters }: Sketch, values: SketchValues, say: Say): FigureTable => ({
  head: ['what', 'value'],
  rows: parameters.flatMap(({ key, words, kind }) => {
    const value = values.get(key);
    if (value === undefined) return [];
    const list = typeof value === 'number' ? [value] : value;
    return [[words, list.map((each) => say(each, kind)).join('; ')]];
  }),
});

function plotTable({ x, y, series, levels }: PlotData): FigureTable {
  const places = [...new Set(series.flatMap(({ points }) => points.map((point) => point.x)))].sort(
    (a, b) => a - b,
  );
  const columns = series.map(({ label, points }) => ({
    label,
    at: new Map(points.map((point) => [point.x, point])),
  }));
  const unit = y.unit === '' ? '' : ` (${y.unit})`;
  return {
    head: [
      x.unit === '' ? x.label : `${x.label} (${x.unit})`,
      ...columns.map(({ label }) => `${label}${unit}`),
    ],
    rows: [
      ...places.map((place) => [
        axisValue(place, { ...x, unit: '' }),
        ...columns.map(({ at }) => {
          const point = at.get(place);
          if (!point) return '';
          const value = axisValue(point.y, { ...y, unit: '' });
          return point.to === undefined ? value : `${value} to ${axisValue(point.to, { ...y, unit: '' })}`;
        }),
      ]),
      ...levels.map(({ words, value, axis }) => [
        words,
        axisValue(value, axis === 'y' ? y : x),
        ...columns.slice(1).map(() => ''),
      ]),
    ],
  };
}

/** The figure from the notebook's cells. A plot needs prepareFigure first. */
export function shownFigure(
  { notebook, results }: Pick<Session, 'notebook' | 'results'>,
  figure: Figure,
  paper: FigurePaper,
): ShownFigure {
  const { content } = figure;
  if (content.type === 'sketch') {
    const sketch = sketchOf(content.sketch);
    if (!sketch) {
      const refused = `this program does not know the sketch ${content.sketch}`;
      return { refused, words: refused, troubles: [] };
    }
    const values = valuesOf(notebook, results, sketch, content);
    if (!isValues(values)) return { refused: values.refused, words: values.refused, troubles: [] };
    return shownSketch(sketch, values, notebook, paper);
  }
  const data = plotData(notebook, results, content);
  const words = plotWords(data);
  if (data.series.length === 0) {
    const refused = data.troubles[0] ?? 'no numbers to plot';
    return { refused, words, troubles: data.troubles };
  }
  if (!plotting) throw new Error('a plot was drawn before its library was brought');
  return {
    picture: plotting.plotPicture(data, paper),
    words,
    troubles: data.troubles,
    table: plotTable(data),
  };
}

/** The cells a figure is drawn from. */
function sourcesOf(content: FigureContent): readonly {
  readonly worksheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}[] {
  if (content.type === 'sketch')
    return content.values.map(({ place }) => ({ ...place, rows: 1, columns: 1 }));
  const blocks = [content.x, ...content.series.flatMap(({ y, to, x }) => [y, to, x])];
  return [
    ...blocks.flatMap((each) => (each ? [{ worksheet: each.worksheet, ...each.block }] : [])),
    ...(content.levels ?? []).map(({ place }) => ({ ...place, rows: 1, columns: 1 })),
  ];
}

const textOf = (result: KnownResult | undefined): string =>
  result ? `${String(result.value)} ${result.unit} ${result.error?.code ?? ''}` : '';

/** Changes when, and only when, what the figure shows may have changed. */
export function figureKey(notebook: Notebook, results: Results, figure: Figure): string {
  const values = sourcesOf(figure.content).flatMap(({ worksheet, row, column, rows, columns }) => [
    labelsAround(notebook, worksheet, row, column),
    ...Array.from({ length: rows * columns }, (_, k) =>
      textOf(
        knownAt(notebook, results, {
          worksheet,
          row: row + Math.floor(k / columns),
          column: column + (k % columns),
        }),
      ),
    ),
  ]);
  return JSON.stringify([figure.content, notebook.display, notebook.currency, values]);
}

function labelsAround(notebook: Notebook, worksheet: string, row: number, column: number): string {
  const home = findWorksheet(notebook, worksheet);
  return home ? `${labelOf(home, row, column)} ${placeText(notebook, { worksheet, row, column })}` : 'gone';
}
