/** A drawing as plain data: shapes in metres with y upwards, and what is written on them. Knows no screen. */

export type Point = readonly [x: number, y: number];

/** Lines by their meaning, as technical drawing has them: full, thin, dashed, chain-dotted, path of a tool, cutting edge. */
export type Stroke = 'outline' | 'thin' | 'hidden' | 'centre' | 'path' | 'edge' | 'none';

/** Areas by their meaning: each has a hatch of its own. */
export type Fill = 'work' | 'tool' | 'chip' | 'removed' | 'finished' | 'blank';

/** A symbol, slanted with its index, and the words or the value behind it. */
export interface Caption {
  readonly symbol?: string;
  readonly text: string;
}

export type Shape =
  | {
      readonly type: 'line';
      readonly points: readonly Point[];
      readonly stroke: Stroke;
      readonly fill?: Fill;
      readonly closed?: boolean;
      /** A head at the last point. */
      readonly arrow?: boolean;
    }
  | {
      readonly type: 'circle';
      readonly centre: Point;
      readonly radius: number;
      readonly stroke: Stroke;
      readonly fill?: Fill;
    }
  /** A dimension line outside the drawing on one side, in levels outwards, or straight between its points. */
  | {
      readonly type: 'dimension';
      readonly from: Point;
      readonly to: Point;
      readonly side: 'above' | 'below' | 'left' | 'right' | 'between';
      readonly level?: number;
      readonly caption: Caption;
    }
  /** Counter-clockwise from `from` to `to`, radians from the x axis. */
  | {
      readonly type: 'angle';
      readonly centre: Point;
      readonly radius: number;
      readonly from: number;
      readonly to: number;
      readonly caption: Caption;
    }
  /** Words at the end of a leader; `toward` in degrees from the x axis, `reach` in lines of text. */
  | {
      readonly type: 'note';
      readonly at: Point;
      readonly toward: number;
      readonly reach?: number;
      /** Which end of the words the leader meets; default: the near one. */
      readonly anchor?: 'start' | 'end';
      readonly caption: Caption;
    }
  | {
      readonly type: 'label';
      readonly at: Point;
      readonly caption: Caption;
      readonly anchor?: 'start' | 'middle' | 'end';
    };

/** One picture to one scale. */
export interface View {
  readonly title?: string;
  readonly shapes: readonly Shape[];
  /** Heights are drawn so many times as large as lengths; default 1. */
  readonly stretch?: number;
  /** Said below the view. */
  readonly note?: string;
}

export interface Drawing {
  readonly views: readonly View[];
  /** What is shown, in sentences. */
  readonly words: string;
}

/** Points of an arc from one angle to another (radians, either way round), ends included; the chord strays less than 0.02 % of the radius. */
export function arc(centre: Point, radius: number, from: number, to: number): Point[] {
  const steps = Math.max(2, Math.ceil((Math.abs(to - from) / Math.PI) * 80));
  return Array.from({ length: steps + 1 }, (_, k): Point => {
    const angle = from + ((to - from) * k) / steps;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

/** The closed outline of a rectangle from its lower left to its upper right corner. */
export const rectangle = (left: number, bottom: number, right: number, top: number): Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

/** The largest of 1, 2, 5, 10, 20 ... that is not above `value`. */
export function roundBelow(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const lead = value / power;
  return power * (lead >= 5 - 1e-9 ? 5 : lead >= 2 - 1e-9 ? 2 : 1);
}

/** The smallest of 1, 2, 5, 10, 20 ... that is not below `value`. */
export function roundAbove(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const lead = value / power;
  return power * (lead <= 1 + 1e-9 ? 1 : lead <= 2 + 1e-9 ? 2 : lead <= 5 + 1e-9 ? 5 : 10);
}
