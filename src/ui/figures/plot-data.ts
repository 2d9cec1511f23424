/** A plot's numbers, read from its ranges: columns in display units, levels, what could not be drawn, and all of it in words. Knows no screen. */

import { cellAt, findWorksheet, labelOf } from '../../document/index.ts';
import type { BlockPlace, CellPlace, FigureContent, Notebook, PlotSeries } from '../../document/index.ts';
import {
  formatNumber,
  fromSI,
  isKindName,
  isUnknownUnit,
  kindNamed,
  ONE_UNIT,
  parseUnit,
  unitLabel,
  type Unit,
} from '../../quantity/index.ts';
import { knownAt } from './figure-values.ts';
import type { KnownResult, Results } from '../results.ts';
import { contentOf } from '../value-text.ts';

export type PlotContent = Extract<FigureContent, { readonly type: 'plot' }>;

export interface PlotAxis {
  readonly label: string;
  /** As printed; "" for plain numbers. */
  readonly unit: string;
  readonly logarithmic: boolean;
}

export interface PlottedPoint {
  readonly x: number;
  readonly y: number;
  /** Upper edge of a band. */
  readonly to?: number;
}

export interface PlottedSeries {
  readonly label: string;
  readonly mark: PlotSeries['mark'];
  readonly points: readonly PlottedPoint[];
}

export interface PlottedLevel {
  readonly words: string;
  readonly value: number;
  /** Across at a y, or upright at an x. */
  readonly axis: 'x' | 'y';
}

export interface PlotData {
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  readonly series: readonly PlottedSeries[];
  readonly levels: readonly PlottedLevel[];
  /** What was left out and why. */
  readonly troubles: readonly string[];
}

interface Column {
  readonly label: string;
  readonly results: readonly (KnownResult | undefined)[];
  /** First number's. */
  readonly kind: string | undefined;
  readonly unit: Unit;
}

interface Reader {
  readonly notebook: Notebook;
  readonly results: Results;
}

function cellsOf(
  { notebook, results }: Reader,
  { worksheet, block }: BlockPlace,
): (KnownResult | undefined)[] {
  return Array.from({ length: block.rows * block.columns }, (_, k) =>
    knownAt(notebook, results, {
      worksheet,
      row: block.row + Math.floor(k / block.columns),
      column: block.column + (k % block.columns),
    }),
  );
}

function unitOf(result: Pick<KnownResult, 'unit'> | undefined, { currency }: Notebook): Unit {
  const unit = result?.unit ? parseUnit(result.unit, currency) : ONE_UNIT;
  return isUnknownUnit(unit) ? ONE_UNIT : unit;
}

/** The text in or above the first cell of a block, else its label. */
export function headingOf(notebook: Notebook, { worksheet, block }: BlockPlace): string {
  const home = findWorksheet(notebook, worksheet);
  if (!home) return '';
  for (const row of [block.row, block.row - 1]) {
    const cell = row < 0 ? undefined : cellAt(home, row, block.column);
    const content = cell && contentOf(cell, notebook);
    if (content?.type === 'text') return content.text;
  }
  const name = home.names.find(
    ({ target }) => target.row === block.row && target.column === block.column && target.rows === block.rows,
  );
  return name?.name ?? labelOf(home, block.row, block.column);
}

function columnOf(reader: Reader, place: BlockPlace, label?: string): Column {
  const results = cellsOf(reader, place);
  const first = results.find((each) => typeof each?.value === 'number');
  return {
    label: label ?? headingOf(reader.notebook, place),
    results,
    kind: first?.kind,
    unit: unitOf(first, reader.notebook),
  };
}

const dimension = (kind: string | undefined): unknown =>
  kind !== undefined && isKindName(kind) ? kindNamed(kind).dimension : undefined;

const sameDimension = (a: string | undefined, b: string | undefined): boolean =>
  a !== undefined &&
  b !== undefined &&
  (a === b || (dimension(a) !== undefined && dimension(a) === dimension(b)));

const shown = (result: KnownResult | undefined, unit: Unit): number | undefined =>
  typeof result?.value === 'number' ? fromSI(result.value, unit) : undefined;

const axisOf = (column: Column | undefined, fallback: string, logarithmic: boolean): PlotAxis => ({
  label: column?.label || fallback,
  unit: column ? unitLabel(column.unit) : '',
  logarithmic,
});

/** Reads a plot. Cells without a number are passed over; on a logarithmic axis numbers that are not above 0 too. */
export function plotData(notebook: Notebook, results: Results, content: PlotContent): PlotData {
  const reader: Reader = { notebook, results };
  const { logarithmicX = false, logarithmicY = false } = content;
  const troubles: string[] = [];
  const x = content.x && columnOf(reader, content.x);
  if (x && x.kind === undefined) troubles.push('the range along x holds no number');
  const columns = content.series.map((series) => ({ series, y: columnOf(reader, series.y, series.label) }));
  const lead = columns.find(({ y }) => y.kind !== undefined)?.y;
  const series = columns.flatMap(({ series: each, y }): PlottedSeries[] => {
    const name = y.label || 'series';
    if (y.kind === undefined) {
      troubles.push(`${name}: no number stands there`);
      return [];
    }
    if (!lead || !sameDimension(y.kind, lead.kind)) {
      troubles.push(`${name} is left out: ${y.kind}, the axis shows ${lead?.kind}`);
      return [];
    }
    const own = each.x ? columnOf(reader, each.x) : x;
    const xUnit = x?.unit ?? own?.unit ?? ONE_UNIT;
    if (own && x && !sameDimension(own.kind, x.kind)) {
      troubles.push(`${name} is left out: its x is ${own.kind}, the axis shows ${x.kind}`);
      return [];
    }
    const upper = each.to && columnOf(reader, each.to);
    let low = 0;
    const points = y.results.flatMap((result, k): PlottedPoint[] => {
      const at = own ? shown(own.results[k], xUnit) : k + 1;
      const value = shown(result, lead.unit);
      const to = upper && shown(upper.results[k], lead.unit);
      if (at === undefined || value === undefined || (upper && to === undefined)) return [];
      if ((logarithmicX && at <= 0) || (logarithmicY && Math.min(value, to ?? value) <= 0)) {
        low += 1;
        return [];
      }
      return [{ x: at, y: value, ...(to !== undefined && { to }) }];
    });
    if (low > 0)
      troubles.push(`${name}: ${low} values that are not above 0 can not stand on a logarithmic axis`);
    if (points.length === 0) return [];
    return [{ label: name, mark: each.mark, points }];
  });
  const levels = (content.levels ?? []).flatMap(({ place, words }): PlottedLevel[] => {
    const result = knownAt(notebook, results, place);
    const name = words ?? labelAt(notebook, place);
    for (const [axis, column] of [
      ['y', lead],
      ['x', x],
    ] as const) {
      const value =
        column && sameDimension(result?.kind, column.kind) ? shown(result, column.unit) : undefined;
      if (value !== undefined) return [{ words: name, value, axis }];
    }
    troubles.push(`level ${name}: it fits neither axis`);
    return [];
  });
  const [only] = series;
  return {
    x: axisOf(x, 'number', logarithmicX),
    y: {
      ...axisOf(lead, '', logarithmicY),
      label: series.length === 1 && only ? only.label : commonLabel(lead),
    },
    series,
    levels,
    troubles,
  };
}

function labelAt(notebook: Notebook, { worksheet, row, column }: CellPlace): string {
  const home = findWorksheet(notebook, worksheet);
  return home ? labelOf(home, row, column) : '';
}

/** What several series share: the kind of the first. */
const commonLabel = (lead: Column | undefined): string =>
  lead?.kind === undefined || lead.kind === 'number' ? '' : lead.kind;

/** "0.2 mm": a number of an axis with its unit. */
export function axisValue(value: number, { unit }: PlotAxis): string {
  const number = formatNumber(Number(value.toPrecision(4)));
  return unit === '' ? number : `${number} ${unit}`;
}

/** Where a line first passes a level, by straight lines between its points; undefined where it does not. */
export function crossing(points: readonly PlottedPoint[], level: number): number | undefined {
  for (let k = 1; k < points.length; k += 1) {
    const [a, b] = [points[k - 1], points[k]];
    if (!a || !b || a.y === b.y || (a.y - level) * (b.y - level) > 0) continue;
    return a.x + ((level - a.y) / (b.y - a.y)) * (b.x - a.x);
  }
  return undefined;
}

/** The plot in sentences, for those who do not see it. */
export function plotWords({ x, y, series, levels }: PlotData): string {
  if (series.length === 0) return 'A plot without numbers.';
  const across = levels.filter(({ axis }) => axis === 'y');
  const sentences = series.map(({ label, points, mark }) => {
    const [first, last] = [points[0], points.at(-1)];
    if (!first || !last) return '';
    if (points.length === 1)
      return `${label}: one point, ${axisValue(first.y, y)} at ${axisValue(first.x, x)}.`;
    const least = points.reduce((a, b) => (b.y < a.y ? b : a));
    const most = points.reduce((a, b) => ((b.to ?? b.y) > (a.to ?? a.y) ? b : a));
    const passes =
      mark === 'bars' || mark === 'band'
        ? []
        : across.flatMap(({ words, value }) => {
            const at = crossing(points, value);
            return at === undefined
              ? []
              : [`passes ${words} (${axisValue(value, y)}) at about ${axisValue(at, x)}`];
          });
    const range = `${points.length} points from ${axisValue(first.x, x)} to ${axisValue(last.x, x)}, least ${axisValue(least.y, y)} at ${axisValue(least.x, x)}, most ${axisValue(most.to ?? most.y, y)} at ${axisValue(most.x, x)}`;
    return `${label}: ${[range, ...passes].join(', ')}.`;
  });
  const named = levels.map(
    ({ words, value, axis }) => `${words} is drawn at ${axisValue(value, axis === 'y' ? y : x)}.`,
  );
  return [`Plot over ${x.label}${x.unit === '' ? '' : ` in ${x.unit}`}.`, ...sentences, ...named].join(' ');
}
