/** Proposals for new figures: a plot of the selection, cells for the parameters of a sketch. */

import { cellAt, findWorksheet, labelOf, resolveName } from '../../document/index.ts';
import type { BlockPlace, CellPlace, FigureContent, PlotSeries } from '../../document/index.ts';
import { readSymbol } from '../../expression/index.ts';
import type { Session } from '../session.ts';
import { callSketch, type CallSketch } from './call-sketch.ts';
import { fits, knownAt, placeText } from './figure-values.ts';
import { headingOf, type PlotContent } from './plot-data.ts';
import type { Sketch, SketchParameter } from './sketch.ts';

/** The selected block without empty rows at its end; undefined where a single cell is selected. */
function selectedBlock({ selection, worksheet }: Session): BlockPlace | undefined {
  const [top, left] = [
    Math.min(selection.row, selection.toRow),
    Math.min(selection.column, selection.toColumn),
  ];
  const right = Math.max(selection.column, selection.toColumn);
  let bottom = Math.max(selection.row, selection.toRow);
  const filled = (row: number): boolean =>
    Array.from({ length: right - left + 1 }, (_, k) => cellAt(worksheet, row, left + k)).some(
      (cell) => (cell?.content ?? '') !== '',
    );
  while (bottom > top && !filled(bottom)) bottom -= 1;
  return bottom === top
    ? undefined
    : {
        worksheet: worksheet.id,
        block: { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 },
      };
}

const hasNumbers = ({ notebook, results }: Session, { worksheet, block }: BlockPlace): boolean =>
  Array.from({ length: block.rows }, (_, k) =>
    knownAt(notebook, results, { worksheet, row: block.row + k, column: block.column }),
  ).some((result) => typeof result?.value === 'number');

/** First column along x, the others as lines with points; a single column is counted. Undefined where nothing can be plotted. */
export function proposedPlot(
  session: Session,
): { readonly title: string; readonly content: PlotContent } | undefined {
  const selected = selectedBlock(session);
  if (!selected) return undefined;
  const { worksheet, block } = selected;
  const columns = Array.from({ length: block.columns }, (_, k): BlockPlace => ({
    worksheet,
    block: { ...block, column: block.column + k, columns: 1 },
  })).filter((column) => hasNumbers(session, column));
  const [first, ...others] = columns;
  if (!first) return undefined;
  const [x, ys] = others.length === 0 ? [undefined, [first]] : [first, others];
  const series = ys.map((y): PlotSeries => ({ mark: 'line', y }));
  const title = `${ys.map((y) => headingOf(session.notebook, y)).join(', ')}${x ? ` over ${headingOf(session.notebook, x)}` : ''}`;
  return { title: title.slice(0, 90), content: { type: 'plot', ...(x && { x }), series } };
}

const words = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((each) => each.length > 2);

/** How well a named cell answers to a parameter: its symbol first, then its words. */
export function likeness(
  parameter: SketchParameter,
  name: string,
  symbol: string | undefined,
  label: string,
): number {
  const wanted = readSymbol(parameter.symbol);
  const given = readSymbol(symbol ?? name);
  const sameSymbol = [name, symbol].includes(parameter.symbol) || [name, symbol].includes(parameter.key);
  const letters = given.base === wanted.base && (given.index ?? '') === (wanted.index ?? '');
  const asked = words(parameter.words);
  const said = words(label);
  const shared = asked.filter((each) => said.includes(each)).length / Math.max(1, asked.length);
  return (sameSymbol ? 50 : letters ? 40 : 0) + 45 * shared;
}

const ENOUGH = 30;

/** For each parameter the named cell that answers to it best, each cell once; cells of a call go first. */
export function proposedCells(
  session: Session,
  sketch: Sketch,
  call?: CallSketch,
): ReadonlyMap<string, readonly CellPlace[]> {
  const { notebook, results } = session;
  const here = session.worksheet.id;
  const proposed = new Map<string, readonly CellPlace[]>(call?.sketch.key === sketch.key ? call.places : []);
  const taken = new Set([...proposed.values()].flat().map((place) => placeText(notebook, place)));
  const named = notebook.worksheets
    .filter(({ id, common }) => id === here || common)
    .flatMap(({ id, names }) =>
      names.filter(({ target }) => target.rows * target.columns === 1).map((defined) => ({ id, defined })),
    )
    .filter(({ id, defined }) => resolveName(notebook, here, defined.name)?.worksheet.id === id);
  const pairs = sketch.parameters
    .filter(({ key }) => !proposed.has(key))
    .flatMap((parameter) =>
      named.flatMap(({ id, defined: { name, symbol, target } }) => {
        const result = knownAt(notebook, results, { worksheet: id, row: target.row, column: target.column });
        const home = findWorksheet(notebook, id);
        if (!home || !fits(result, parameter)) return [];
        const near = likeness(parameter, name, symbol, labelOf(home, target.row, target.column));
        const score = near + (result?.kind === parameter.kind ? 5 : 0);
        return near < ENOUGH
          ? []
          : [{ key: parameter.key, score, place: { worksheet: id, row: target.row, column: target.column } }];
      }),
    )
    .sort((a, b) => b.score - a.score);
  for (const { key, place } of pairs) {
    const text = placeText(notebook, place);
    if (proposed.has(key) || taken.has(text)) continue;
    proposed.set(key, [place]);
    taken.add(text);
  }
  return proposed;
}

/** The sketch that the selected cell's own call asks for. */
export const selectedCall = (session: Session): CallSketch | undefined =>
  callSketch(session, session.address);

/** The content of a sketch from the cells of its parameters, in their order. */
export const sketchContent = (
  sketch: Sketch,
  cells: ReadonlyMap<string, readonly CellPlace[]>,
): FigureContent => ({
  type: 'sketch',
  sketch: sketch.key,
  values: sketch.parameters.flatMap(({ key }) =>
    (cells.get(key) ?? []).map((place) => ({ parameter: key, place })),
  ),
});
