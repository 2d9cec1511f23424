/** Symbols of ISO 1832:2017 for indexable inserts, from memory; the inch form as in ANSI B212.4. */

export interface InsertShape {
  readonly words: string;
  /** Included angle in deg; none for a round insert. */
  readonly angle?: number;
  /** Corners of one side. */
  readonly corners: number;
  /** Edge length over inscribed circle; none where the sides differ. */
  readonly edge?: number;
}

const sine = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);
const tangent = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
const rhombus = (angle: number): InsertShape => ({
  words: 'rhombus',
  angle,
  corners: 2,
  edge: 1 / sine(angle),
});
const parallelogram = (angle: number): InsertShape => ({ words: 'parallelogram', angle, corners: 2 });

export const INSERT_SHAPES: ReadonlyMap<string, InsertShape> = new Map<string, InsertShape>([
  ['H', { words: 'hexagon', angle: 120, corners: 6, edge: tangent(30) }],
  ['O', { words: 'octagon', angle: 135, corners: 8, edge: tangent(22.5) }],
  ['P', { words: 'pentagon', angle: 108, corners: 5, edge: tangent(36) }],
  ['S', { words: 'square', angle: 90, corners: 4, edge: 1 }],
  ['T', { words: 'triangle', angle: 60, corners: 3, edge: Math.sqrt(3) }],
  ['C', rhombus(80)],
  ['D', rhombus(55)],
  ['E', rhombus(75)],
  ['M', rhombus(86)],
  ['V', rhombus(35)],
  ['W', { words: 'trigon', angle: 80, corners: 3, edge: 0.6843 }],
  ['L', { words: 'rectangle', angle: 90, corners: 2 }],
  ['A', parallelogram(85)],
  ['B', parallelogram(82)],
  ['K', parallelogram(55)],
  ['R', { words: 'round', corners: 0, edge: 1 }],
]);

/** Clearance in deg. O is a special clearance and can not be read. */
export const INSERT_CLEARANCES: ReadonlyMap<string, number> = new Map([
  ['A', 3],
  ['B', 5],
  ['C', 7],
  ['D', 15],
  ['E', 20],
  ['F', 25],
  ['G', 30],
  ['N', 0],
  ['P', 11],
]);

export const INSERT_TOLERANCES = 'AFCHEGJKLMNU';

/** Whether both faces can cut, given a clearance of 0: no chip groove, or one on both faces. X is special and says nothing. */
export const INSERT_TYPES: ReadonlyMap<string, boolean | undefined> = new Map([
  ['N', true],
  ['F', true],
  ['R', false],
  ['A', true],
  ['G', true],
  ['M', false],
  ['Q', true],
  ['U', true],
  ['W', false],
  ['T', false],
  ['C', true],
  ['J', true],
  ['B', false],
  ['H', false],
  ['X', undefined],
]);

const INCH = 25.4;

/** Inscribed circles in mm: parts of an inch, which the standard prints rounded. */
export const INSCRIBED_CIRCLES: readonly number[] = [
  5 / 32,
  3 / 16,
  7 / 32,
  1 / 4,
  5 / 16,
  3 / 8,
  1 / 2,
  5 / 8,
  3 / 4,
  1,
  5 / 4,
].map((inches) => inches * INCH);

/** Thickness in mm by its symbol; parts of an inch, which the standard prints rounded (4.7625 as 4.76). */
export const INSERT_THICKNESSES: ReadonlyMap<string, number> = new Map(
  (
    [
      ['01', 1 / 16],
      ['T1', 5 / 64],
      ['02', 3 / 32],
      ['T2', 7 / 64],
      ['03', 1 / 8],
      ['T3', 5 / 32],
      ['04', 3 / 16],
      ['05', 7 / 32],
      ['06', 1 / 4],
      ['07', 5 / 16],
      ['09', 3 / 8],
      ['12', 1 / 2],
    ] as const
  ).map(([symbol, inches]) => [symbol, inches * INCH]),
);
