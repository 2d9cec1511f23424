/** Turns a drawing into a picture in pixels: every view to one scale on squared paper, the size of a square said below it. */

import { brokenLines, TEXT, textExtent } from './caption-node.ts';
import { roundAbove, type Drawing, type Point, type Shape, type View } from './drawing.ts';
import { dimensionNodes, shapeNodes, type Plane } from './shape-nodes.ts';
import { node, type SvgNode } from './svg-node.ts';

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly SvgNode[];
}

export interface Paper {
  /** Pixels. */
  readonly width: number;
  /** Letters and digits that tell this figure's patterns from those of others on the page. */
  readonly id: string;
  /** A length in coherent SI in words. */
  say(value: number, kind: string): string;
  /** Metres of the unit in which squares are counted: 0.001, 0.0254. */
  readonly unit: number;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

const TITLE = 24;
const FOOT = 18;
const EDGE = 10;
const LEVEL = 25;
const FIRST_LEVEL = 22;
const TALLEST = 0.8;
const HIGHEST = 420;
const GAP = 16;
const LEAST_SQUARE = 15;

function pointsOf(shape: Shape): readonly Point[] {
  switch (shape.type) {
    case 'line':
      return shape.points;
    case 'circle': {
      const { centre, radius } = shape;
      return [
        [centre[0] - radius, centre[1] - radius],
        [centre[0] + radius, centre[1] + radius],
      ];
    }
    case 'dimension':
      return [shape.from, shape.to];
    case 'angle':
      return [shape.centre];
    default:
      return [shape.at];
  }
}

function extent({ shapes, stretch = 1 }: View): Box {
  const points = shapes.flatMap(pointsOf);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y * stretch);
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

/** Room for the dimension lines of one side. */
function room(view: View, side: string): number {
  const levels = view.shapes.flatMap((shape) =>
    shape.type === 'dimension' && shape.side === side ? [shape.level ?? 0] : [],
  );
  return EDGE + (levels.length === 0 ? 0 : FIRST_LEVEL + LEVEL * Math.max(...levels) + TEXT / 2);
}

const RANK: ReadonlyMap<Shape['type'], number> = new Map([
  ['line', 0],
  ['circle', 0],
  ['dimension', 1],
  ['angle', 1],
]);

/** The shapes in the order in which they lie on each other: areas and lines, measures, words. */
const painted = (view: View, plane: Plane): SvgNode[] =>
  view.shapes
    .toSorted((a, b) => (RANK.get(a.type) ?? 2) - (RANK.get(b.type) ?? 2))
    .flatMap((shape) =>
      shape.type === 'dimension'
        ? dimensionNodes(shape, plane, FIRST_LEVEL, LEVEL)
        : shapeNodes(shape, plane),
    );

function squares(plane: Plane, frame: Box, step: number): SvgNode {
  const lines: string[] = [];
  const pixels = step * plane.scale;
  const first = (from: number, origin: number): number =>
    origin + Math.ceil((from - origin) / pixels - 1e-9) * pixels;
  for (let x = first(frame.left, plane.x(0)); x <= frame.right; x += pixels)
    lines.push(`M${x.toFixed(2)} ${frame.top}V${frame.bottom}`);
  for (let y = first(frame.top, plane.y(0)); y <= frame.bottom; y += pixels)
    lines.push(`M${frame.left} ${y.toFixed(2)}H${frame.right}`);
  return node('path', { class: 'squares', d: lines.join('') });
}

interface Margin {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * The largest scale at which all words stay on the paper. Where words stand depends on the scale and the scale on the
 * room they need: a few rounds, the best that holds; where none does, margins that only grow.
 */
function fitted(
  view: View,
  least: Margin,
  planeWith: (margin: Margin) => Plane,
): { readonly plane: Plane; readonly margin: Margin } {
  let margin = least;
  let best: { readonly plane: Plane; readonly margin: Margin } | undefined;
  for (let round = 0; round < 12; round += 1) {
    const plane = planeWith(margin);
    const words = textExtent(painted(view, plane));
    const need = {
      left: Math.max(least.left, plane.left - words.left + EDGE),
      right: Math.max(least.right, words.right - plane.right + EDGE),
      top: Math.max(least.top, plane.top - words.top + EDGE),
      bottom: Math.max(least.bottom, words.bottom - plane.bottom + EDGE),
    };
    const sides = ['left', 'right', 'top', 'bottom'] as const;
    const fits = sides.every((side) => need[side] <= margin[side] + 0.5);
    if (fits && (!best || plane.scale > best.plane.scale * 1.001)) best = { plane, margin };
    else if (fits) break;
    const growing = round > 6 && !best;
    const before = margin;
    margin = growing
      ? {
          left: Math.max(need.left, before.left),
          right: Math.max(need.right, before.right),
          top: Math.max(need.top, before.top),
          bottom: Math.max(need.bottom, before.bottom),
        }
      : need;
  }
  return best ?? { plane: planeWith(margin), margin };
}

interface Place {
  readonly left: number;
  readonly above: number;
  readonly width: number;
}

function viewNodes(
  view: View,
  paper: Paper,
  { left, above, width }: Place,
): { readonly nodes: SvgNode[]; readonly bottom: number } {
  const box = extent(view);
  const size = [Math.max(box.right - box.left, 1e-12), Math.max(box.top - box.bottom, 1e-12)] as const;
  const stretch = view.stretch ?? 1;
  const title = view.title === undefined ? [] : brokenLines(view.title, width);
  const head = above + (title.length === 0 ? 0 : TITLE + 16 * (title.length - 1));
  const least: Margin = {
    left: room(view, 'left'),
    right: room(view, 'right'),
    bottom: room(view, 'below'),
    top: room(view, 'above'),
  };
  const planeWith = (margin: Margin): Plane => {
    const wide = Math.max(0.28 * width, width - margin.left - margin.right);
    const scale = Math.min(wide / size[0], Math.min(width * TALLEST, HIGHEST) / size[1]);
    const spare = Math.max(0, width - margin.left - margin.right - size[0] * scale) / 2;
    const originX = left + margin.left + spare - box.left * scale;
    const originY = head + margin.top + box.top * scale;
    return {
      scale,
      x: (x) => originX + x * scale,
      y: (y) => originY - y * stretch * scale,
      left: originX + box.left * scale,
      right: originX + box.right * scale,
      top: originY - box.top * scale,
      bottom: originY - box.bottom * scale,
      id: paper.id,
    };
  };
  const { plane, margin } = fitted(view, least, planeWith);
  const square = roundAbove(LEAST_SQUARE / plane.scale / paper.unit) * paper.unit;
  const bottom = plane.bottom + margin.bottom;
  const frame: Box = { left: left + 0.5, right: left + width - 0.5, top: head, bottom };
  const along = paper.say(square, 'length');
  const across = stretch === 1 ? '' : ` along, ${paper.say(square / stretch, 'length')} across`;
  const note = view.note === undefined ? '' : `; ${view.note}`;
  const foot = brokenLines(`one square is ${along}${across}${note}`, width - 20);
  const nodes: SvgNode[] = [
    ...title.map((line, k) => node('text', { class: 'heading', x: left, y: above + 15 + 16 * k }, line)),
    squares(plane, frame, square),
    node('rect', {
      class: 'frame',
      x: frame.left,
      y: frame.top,
      width: frame.right - frame.left,
      height: frame.bottom - frame.top,
    }),
    ...painted(view, plane),
    node('rect', { class: 'square', x: left + 1, y: bottom + 6.5, width: 9, height: 9 }),
    ...foot.map((line, k) => node('text', { class: 'foot', x: left + 16, y: bottom + 15 + 16 * k }, line)),
  ];
  return { nodes, bottom: bottom + FOOT + 16 * (foot.length - 1) };
}

const HATCHES: readonly (readonly [string, SvgNode['attributes'], string])[] = [
  ['work', { width: 7, height: 7, patternTransform: 'rotate(45)' }, 'M0 0V7'],
  ['finished', { width: 6, height: 6 }, 'M0 0V6M0 0H6'],
  ['chip', { width: 3.5, height: 3.5, patternTransform: 'rotate(-45)' }, 'M0 0V3.5'],
  ['removed', { width: 8, height: 8 }, 'M1 1h1.4M5 5h1.4'],
];

/** The patterns of the areas under this figure's own names. */
export const hatches = (id: string): SvgNode =>
  node(
    'defs',
    {},
    ...HATCHES.map(([name, attributes, d]) =>
      node(
        'pattern',
        { id: `${id}-${name}`, patternUnits: 'userSpaceOnUse', ...attributes },
        node('rect', { class: `under ${name}`, width: 12, height: 12 }),
        node('path', { class: `hatch ${name}`, d }),
      ),
    ),
  );

/** The whole drawing: its views one below the other, on wide paper side by side. */
export function pictureOf(drawing: Drawing, paper: Paper): Picture {
  const beside = paper.width >= 640 && drawing.views.length === 2;
  const width = beside ? (paper.width - GAP) / 2 : paper.width;
  const nodes: SvgNode[] = [hatches(paper.id)];
  let above = 0;
  let height = 0;
  for (const [k, view] of drawing.views.entries()) {
    const made = viewNodes(view, paper, { left: beside ? k * (width + GAP) : 0, above, width });
    nodes.push(node('g', { class: 'view' }, ...made.nodes));
    height = Math.max(height, made.bottom);
    if (!beside) above = made.bottom + GAP;
  }
  return { width: paper.width, height: Math.ceil(height + 4), nodes };
}
