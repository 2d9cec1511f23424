/** The elements of one shape: lines by their meaning, arrow heads, dimension lines as technical drawing has them. */

import { captionNode, captionWidth, TEXT } from './caption-node.ts';
import type { Point, Shape } from './drawing.ts';
import { node, type SvgNode } from './svg-node.ts';

/** From metres to pixels, and the edges of what is drawn in pixels. */
export interface Plane {
  /** Pixels a metre along x. */
  readonly scale: number;
  x(metres: number): number;
  y(metres: number): number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly id: string;
}

type Of<Type extends Shape['type']> = Extract<Shape, { readonly type: Type }>;

const HEAD = 8;
const HALF_HEAD = 2.6;
const LINE = 17;

const path = (points: readonly Point[], closed: boolean): string =>
  `M${points.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}${closed ? 'Z' : ''}`;

/** A filled head whose tip is at `tip`, coming from `from`; pixels. */
function head(tip: Point, from: Point): SvgNode {
  const length = Math.hypot(tip[0] - from[0], tip[1] - from[1]) || 1;
  const [ux, uy] = [(tip[0] - from[0]) / length, (tip[1] - from[1]) / length];
  const back: Point = [tip[0] - HEAD * ux, tip[1] - HEAD * uy];
  return node('path', {
    class: 'head',
    d: path(
      [
        tip,
        [back[0] - HALF_HEAD * uy, back[1] + HALF_HEAD * ux],
        [back[0] + HALF_HEAD * uy, back[1] - HALF_HEAD * ux],
      ],
      true,
    ),
  });
}

const straight = (a: Point, b: Point, name = 'dimension'): SvgNode =>
  node('path', { class: name, d: path([a, b], false) });

const filled = (id: string, fill: string | undefined): Record<string, string> =>
  fill === undefined
    ? { fill: 'none' }
    : fill === 'tool' || fill === 'blank'
      ? {}
      : { fill: `url(#${id}-${fill})` };

function lineNodes(shape: Of<'line'>, plane: Plane): SvgNode[] {
  const points = shape.points.map(([x, y]): Point => [plane.x(x), plane.y(y)]);
  const { stroke, fill, closed = false, arrow = false } = shape;
  const nodes = [
    node('path', {
      class: `${stroke}${fill ? ` area ${fill}` : ''}`,
      d: path(points, closed),
      ...filled(plane.id, fill),
    }),
  ];
  const [tip, before] = [points.at(-1), points.at(-3) ?? points.at(-2)];
  if (arrow && tip && before) nodes.push(head(tip, before));
  return nodes;
}

/** Where the words of a note stand, from its point, in pixels with y upwards. */
function noteEnd({ toward, reach = 1, anchor }: Of<'note'>): {
  readonly dx: number;
  readonly dy: number;
  readonly anchor: 'start' | 'end';
} {
  const angle = (toward * Math.PI) / 180;
  const length = 12 + LINE * reach;
  const dx = length * Math.cos(angle);
  return { dx, dy: length * Math.sin(angle), anchor: anchor ?? (dx < 0 ? 'end' : 'start') };
}

function noteNodes(shape: Of<'note'>, plane: Plane): SvgNode[] {
  const [x, y] = [plane.x(shape.at[0]), plane.y(shape.at[1])];
  const { dx, dy, anchor } = noteEnd(shape);
  const [tx, ty] = [x + dx, y - dy];
  const shelf = anchor === 'start' ? 5 : -5;
  return [
    node('path', {
      class: 'leader',
      d: path(
        [
          [x, y],
          [tx, ty],
          [tx + shelf, ty],
        ],
        false,
      ),
    }),
    node('circle', { class: 'dot', cx: x, cy: y, r: 1.8 }),
    captionNode(shape.caption, tx + shelf * 1.6, ty + TEXT * 0.35, anchor),
  ];
}

function angleNodes({ centre, radius, from, to, caption }: Of<'angle'>, plane: Plane): SvgNode[] {
  const [cx, cy] = [plane.x(centre[0]), plane.y(centre[1])];
  const r = radius * plane.scale;
  const at = (angle: number, out = r): Point => [cx + out * Math.cos(angle), cy - out * Math.sin(angle)];
  const steps = 40;
  const points = Array.from({ length: steps + 1 }, (_, k) => at(from + ((to - from) * k) / steps));
  const nodes = [node('path', { class: 'dimension', d: path(points, false) })];
  const ends: readonly (readonly [Point | undefined, Point | undefined])[] = [
    [points[0], at(from + HEAD / r)],
    [points.at(-1), at(to - HEAD / r)],
  ];
  if ((to - from) * r > 3 * HEAD)
    for (const [tip, back] of ends) if (tip && back) nodes.push(head(tip, back));
  const middle = (from + to) / 2;
  const [tx, ty] = at(middle, r + 8);
  const across = Math.cos(middle);
  const anchor = across > 0.35 ? 'start' : across < -0.35 ? 'end' : 'middle';
  return [...nodes, captionNode(caption, tx, ty + TEXT * (0.35 - 0.45 * Math.sin(middle)), anchor)];
}

/** The line itself with its heads, outside where there is no room between, and the words along it. */
function measured(a: Point, b: Point, shape: Of<'dimension'>): SvgNode[] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = length === 0 ? [1, 0] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const along = (p: Point, by: number): Point => [p[0] + by * ux, p[1] + by * uy];
  const width = captionWidth(shape.caption);
  const tight = length < 3.2 * HEAD;
  const nodes = tight
    ? [
        straight(along(a, -16), a),
        straight(b, along(b, 16)),
        straight(a, b),
        head(a, along(a, -10)),
        head(b, along(b, 10)),
      ]
    : [straight(a, b), head(a, along(a, 10)), head(b, along(b, -10))];
  const upright = Math.abs(uy) > Math.abs(ux);
  // Words stand along the line, also where they are a little longer than it.
  const inside = !tight && (upright ? width < 2.2 * length : true);
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  if (shape.side === 'between') {
    const beside = upright
      ? captionNode(shape.caption, middle[0] + 7, middle[1] + TEXT * 0.35, 'start')
      : captionNode(shape.caption, middle[0], middle[1] - 6);
    return [...nodes, beside];
  }
  if (upright) {
    // Words that do not fit along the line stand beyond its outer heads, or beside it.
    if (tight) {
      const beyond = shape.side === 'left' ? Math.max(a[1], b[1]) + 17 + TEXT : Math.min(a[1], b[1]) - 21;
      return [
        ...nodes,
        shape.side === 'left'
          ? captionNode(shape.caption, a[0] + 10, beyond, 'end')
          : captionNode(shape.caption, a[0] - 10, beyond, 'start'),
      ];
    }
    const outward = shape.side === 'left' ? -1 : 1;
    if (!inside)
      return [
        ...nodes,
        captionNode(
          shape.caption,
          middle[0] + outward * 7,
          middle[1] + TEXT * 0.35,
          outward < 0 ? 'end' : 'start',
        ),
      ];
    return [...nodes, captionNode(shape.caption, middle[0] - 5, middle[1], 'middle', -90)];
  }
  if (!inside) {
    const end = a[0] > b[0] ? a : b;
    return [...nodes, captionNode(shape.caption, end[0] + (tight ? 19 : 6), end[1] + TEXT * 0.35, 'start')];
  }
  return [...nodes, captionNode(shape.caption, middle[0], middle[1] - 5)];
}

/** A dimension with its witness lines. */
export function dimensionNodes(
  shape: Of<'dimension'>,
  plane: Plane,
  first: number,
  level: number,
): SvgNode[] {
  const a: Point = [plane.x(shape.from[0]), plane.y(shape.from[1])];
  const b: Point = [plane.x(shape.to[0]), plane.y(shape.to[1])];
  const out = first + level * (shape.level ?? 0);
  if (shape.side === 'between') return measured(a, b, shape);
  const vertical = shape.side === 'left' || shape.side === 'right';
  const at =
    shape.side === 'left'
      ? plane.left - out
      : shape.side === 'right'
        ? plane.right + out
        : shape.side === 'above'
          ? plane.top - out
          : plane.bottom + out;
  const foot = (p: Point): Point => (vertical ? [at, p[1]] : [p[0], at]);
  const sign = shape.side === 'left' || shape.side === 'above' ? -1 : 1;
  const witness = (p: Point): SvgNode => {
    const [gap, past] = [3 * sign, 4 * sign];
    return vertical
      ? straight([p[0] + gap, p[1]], [at + past, p[1]], 'witness')
      : straight([p[0], p[1] + gap], [p[0], at + past], 'witness');
  };
  return [witness(a), witness(b), ...measured(foot(a), foot(b), shape)];
}

/** Everything but dimensions. */
export function shapeNodes(shape: Exclude<Shape, Of<'dimension'>>, plane: Plane): SvgNode[] {
  switch (shape.type) {
    case 'line':
      return lineNodes(shape, plane);
    case 'circle':
      return [
        node('circle', {
          class: `${shape.stroke}${shape.fill ? ` area ${shape.fill}` : ''}`,
          cx: plane.x(shape.centre[0]),
          cy: plane.y(shape.centre[1]),
          r: shape.radius * plane.scale,
          ...filled(plane.id, shape.fill),
        }),
      ];
    case 'angle':
      return angleNodes(shape, plane);
    case 'note':
      return noteNodes(shape, plane);
    default:
      return [
        captionNode(
          shape.caption,
          plane.x(shape.at[0]),
          plane.y(shape.at[1]) + TEXT * 0.35,
          shape.anchor ?? 'middle',
        ),
      ];
  }
}
