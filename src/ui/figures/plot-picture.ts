/** The picture of a plot: axes, ticks and marks by the plotting library, everything else ours. The only place that knows the library. */

import * as Plot from '@observablehq/plot';
import { formatNumber } from '../../quantity/index.ts';
import { captionNode, TEXT } from './caption-node.ts';
import { hatches } from './drawing-picture.ts';
import type { PlotAxis, PlotData, PlottedPoint, PlottedSeries } from './plot-data.ts';
import { node, svgElement, type SvgNode } from './svg-node.ts';

const SYMBOLS = ['circle', 'square', 'triangle', 'diamond2', 'times'] as const;
const DASHES = ['none', '7 3', '2 3', '10 3 2 3', '5 2 1 2 1 2'] as const;
const AREAS = ['work', 'chip', 'removed', 'finished'] as const;
/** The same marks for the legend, around 0, 0. */
const SIGNS: readonly string[] = [
  'M3.6 0A3.6 3.6 0 1 1 -3.6 0A3.6 3.6 0 1 1 3.6 0Z',
  'M-3.2 -3.2H3.2V3.2H-3.2Z',
  'M0 -4.2L3.9 2.9H-3.9Z',
  'M0 -4.4L4.4 0L0 4.4L-4.4 0Z',
  'M-3.4 -3.4L3.4 3.4M3.4 -3.4L-3.4 3.4',
];
/** More points than this carry no sign of their own on a line. */
const MOST_SIGNS = 15;
const LINE = 20;

/** Five inks; they help, the signs and dashes carry the meaning. */
const tone = (k: number): string => `tone${k % 5}`;
/** No two of the first 25 series have both sign and dashes in common. */
const dash = (k: number): string => of(DASHES, k + Math.floor(k / DASHES.length));

const of = <Item>(list: readonly Item[], k: number): Item => list[k % list.length] as Item;

/** On a logarithmic axis the library leaves the words of crowded ticks out. */
const LOG_TICK = '~f';
/** A tick as numbers stand everywhere in the program. */
const tick = (value: number): string => formatNumber(Number(value.toPrecision(6)));

const axisTitle = ({ label, unit }: PlotAxis): string => (unit === '' ? label : `${label} (${unit})`);

/** Half the room of a bar: a third of the least step, shared by the series of bars. */
function barRoom(data: PlotData): number {
  const xs = [
    ...new Set(data.series.flatMap(({ mark, points }) => (mark === 'bars' ? points.map(({ x }) => x) : []))),
  ].sort((a, b) => a - b);
  const steps = xs.slice(1).map((x, k) => x - (xs[k] ?? x));
  return xs.length === 0 ? 0 : Math.min(...(steps.length === 0 ? [Math.abs(xs[0] ?? 1) || 1] : steps)) * 0.38;
}

function marksOf(data: PlotData, series: PlottedSeries, k: number, id: string): Plot.Markish[] {
  const points = [...series.points];
  const at = { x: (p: PlottedPoint) => p.x, y: (p: PlottedPoint) => p.y };
  const signs = (name: string, r: number): Plot.Markish =>
    Plot.dot(points, { ...at, r, symbol: of(SYMBOLS, k), className: `${name} ${tone(k)}` });
  switch (series.mark) {
    case 'points':
      return [signs('sign full', 4.6)];
    case 'bars': {
      const bars = data.series.filter(({ mark }) => mark === 'bars');
      const room = barRoom(data);
      const width = (2 * room) / bars.length;
      const left = -room + width * bars.indexOf(series);
      return [
        Plot.rectY(points, {
          x1: (p: PlottedPoint) => p.x + left,
          x2: (p: PlottedPoint) => p.x + left + width,
          y: at.y,
          fill: `url(#${id}-${of(AREAS, k)})`,
          className: 'bar',
        }),
      ];
    }
    case 'band':
      return [
        Plot.areaY(points, {
          x: at.x,
          y1: at.y,
          y2: (p: PlottedPoint) => p.to ?? p.y,
          fill: `url(#${id}-${of(AREAS, k)})`,
          className: 'band',
        }),
      ];
    default:
      return [
        Plot.line(points, { ...at, strokeDasharray: dash(k), className: `curve ${tone(k)}` }),
        ...(points.length <= MOST_SIGNS ? [signs('sign', 3.6)] : []),
      ];
  }
}

/** The legend: a sample of each mark with its words, in rows. */
function legend(
  data: PlotData,
  width: number,
  id: string,
): { readonly nodes: SvgNode[]; readonly height: number } {
  if (data.series.length < 2) return { nodes: [], height: 0 };
  const nodes: SvgNode[] = [];
  let [x, y] = [0, 12];
  for (const [k, { label, mark, points }] of data.series.entries()) {
    const long = 40 + label.length * TEXT * 0.55 + 14;
    if (x > 0 && x + long > width) [x, y] = [0, y + LINE];
    const area = mark === 'bars' || mark === 'band';
    nodes.push(
      ...(area
        ? [
            node('rect', {
              class: 'bar',
              x: x + 2,
              y: y - 6,
              width: 26,
              height: 12,
              fill: `url(#${id}-${of(AREAS, k)})`,
            }),
          ]
        : [
            ...(mark === 'line'
              ? [
                  node('path', {
                    class: `curve ${tone(k)}`,
                    d: `M${x + 1} ${y}H${x + 31}`,
                    fill: 'none',
                    'stroke-dasharray': dash(k),
                  }),
                ]
              : []),
            ...(mark === 'points' || points.length <= MOST_SIGNS
              ? [
                  node('path', {
                    class: `sign ${mark === 'points' ? 'full ' : ''}${tone(k)}`,
                    d: of(SIGNS, k),
                    transform: `translate(${x + 16} ${y})`,
                  }),
                ]
              : []),
          ]),
      captionNode({ text: label }, x + 37, y + TEXT * 0.35, 'start'),
    );
    x += long;
  }
  return { nodes, height: y + 14 };
}

/** Whether the series begin further from a level than they end. */
function isFreeLeft({ series }: PlotData, level: number): boolean {
  const apart = (pick: (points: readonly PlottedPoint[]) => PlottedPoint | undefined): number =>
    Math.min(
      ...series.flatMap(({ mark, points }) => {
        const point = mark === 'points' ? undefined : pick(points);
        return point ? [Math.abs(point.y - level)] : [];
      }),
    );
  return apart((points) => points[0]) >= apart((points) => points.at(-1));
}

/** Whether a level lies at the foot of all series: its words then stand below it. */
function isUnderAll({ series }: PlotData, level: number): boolean {
  const ys = series.flatMap(({ points }) => points.map(({ y }) => y));
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  return level <= low + 0.04 * (high - low);
}

/** Words of a level stand at the end where the curves leave most room. */
function levelMarks(data: PlotData): Plot.Markish[] {
  const { levels } = data;
  const across = levels.filter(({ axis }) => axis === 'y');
  const upright = levels.filter(({ axis }) => axis === 'x');
  return [
    Plot.ruleY(across, { y: 'value', className: 'level' }),
    ...(['left', 'right'] as const).flatMap((side) =>
      [false, true].map((below) =>
        Plot.text(
          across.filter(
            ({ value }) =>
              isUnderAll(data, value) === below && (isFreeLeft(data, value) ? 'left' : 'right') === side,
          ),
          {
            y: 'value',
            text: 'words',
            frameAnchor: side,
            textAnchor: side === 'left' ? 'start' : 'end',
            dy: below ? 10 : -8,
            dx: side === 'left' ? 4 : -4,
            className: 'words',
          },
        ),
      ),
    ),
    Plot.ruleX(upright, { x: 'value', className: 'level' }),
    Plot.text(upright, {
      x: 'value',
      text: 'words',
      frameAnchor: 'top',
      textAnchor: 'start',
      dy: 6,
      dx: 5,
      className: 'words',
    }),
  ];
}

export interface PlotPaper {
  readonly width: number;
  readonly id: string;
}

/** The finished element, not yet on the page: the library's own style element is taken out, the rules stand in our style sheet. */
export function plotPicture(data: PlotData, { width, id }: PlotPaper): SVGElement {
  const height = Math.round(Math.min(420, Math.max(220, width * 0.62)));
  const along = Math.max(3, Math.round(width / 95));
  const up = Math.max(3, Math.round(height / 45));
  const key = legend(data, width, id);
  const areas = data.series.some(({ mark }) => mark === 'bars' || mark === 'band');
  const atZero = areas && !data.y.logarithmic;
  const svg = Plot.plot({
    width,
    height,
    marginLeft: 56,
    marginBottom: 44,
    marginTop: 26,
    marginRight: 26,
    className: 'plot',
    x: {
      type: data.x.logarithmic ? 'log' : 'linear',
      nice: !data.x.logarithmic,
      label: axisTitle(data.x),
      inset: 4,
    },
    y: {
      type: data.y.logarithmic ? 'log' : 'linear',
      nice: !data.y.logarithmic,
      label: axisTitle(data.y),
      insetTop: 6,
      insetBottom: data.levels.some(({ axis, value }) => axis === 'y' && isUnderAll(data, value)) ? 20 : 0,
      ...(atZero && { zero: true }),
    },
    marks: [
      Plot.gridX({ className: 'squares', ticks: along }),
      Plot.gridY({ className: 'squares', ticks: up }),
      Plot.axisX({
        className: 'axis',
        tickSize: 5,
        ticks: along,
        labelAnchor: 'center',
        labelArrow: 'none',
        tickFormat: data.x.logarithmic ? LOG_TICK : tick,
      }),
      Plot.axisY({
        className: 'axis',
        tickSize: 5,
        ticks: up,
        labelArrow: 'none',
        tickFormat: data.y.logarithmic ? LOG_TICK : tick,
      }),
      Plot.frame({ className: 'frame' }),
      ...data.series.flatMap((series, k) => marksOf(data, series, k, id)),
      ...levelMarks(data),
    ],
  });
  svg.querySelector('style')?.remove();
  // The figure says in one sentence what it shows; the library's labels of groups would only repeat its parts.
  for (const each of svg.querySelectorAll('[aria-label]')) each.removeAttribute('aria-label');
  svg.setAttribute('y', String(key.height));
  const whole = svgElement(
    node(
      'svg',
      { class: 'figure', width, height: height + key.height, viewBox: `0 0 ${width} ${height + key.height}` },
      hatches(id),
      node('g', {}, ...key.nodes),
    ),
  );
  whole.append(svg);
  return whole;
}
