/** Reads the tables of ISO 286-1 by nominal size. */

import { COARSE_GRADE, LOWER_DEVIATIONS, SIZE_RANGES, STANDARD_TOLERANCES } from './iso-286.table.ts';

const PER_METRE = 1e3;
const MICROMETRE = 1e-6;

/** Grades of the table: "IT1" to "IT18". */
export const GRADES: readonly string[] = [...STANDARD_TOLERANCES.keys()];

const numberOf = (grade: string): number => Number(grade.slice('IT'.length));

/** Letters that go with every grade; the others go with 5 to 12. */
const ANY_GRADE: ReadonlySet<string> = new Set(['H', 'JS']);

/** Tolerance classes of holes in the table: "E5" to "G12", "H1" to "JS18". */
export const HOLE_CLASSES: readonly string[] = [...LOWER_DEVIATIONS.keys(), 'JS'].flatMap((letter) =>
  GRADES.map(numberOf)
    .filter((grade) => ANY_GRADE.has(letter) || (grade >= 5 && grade <= 12))
    .map((grade) => `${letter}${grade}`),
);

/** Whether a grade is too coarse for a diameter in metres to be in the table. */
export const tooCoarse = (diameter: number, grade: string): boolean =>
  numberOf(grade) >= COARSE_GRADE && diameter * PER_METRE <= 1 + 1e-9;

/** Place of a nominal size in the table; undefined above 500 mm. */
function rangeOf(diameter: number): number | undefined {
  const place = SIZE_RANGES.findIndex((end) => diameter * PER_METRE <= end * (1 + 1e-9));
  return place < 0 ? undefined : place;
}

/** Standard tolerance in metres; undefined outside the table. */
export function standardTolerance(diameter: number, grade: string): number | undefined {
  const place = rangeOf(diameter);
  const value = place === undefined ? undefined : STANDARD_TOLERANCES.get(grade)?.[place];
  return value === undefined ? undefined : value * MICROMETRE;
}

/** Lower and upper deviation of a hole in metres, from a class such as "H7"; undefined outside the table. */
export function holeDeviations(
  diameter: number,
  holeClass: string,
): { readonly lower: number; readonly upper: number } | undefined {
  const [, letter = '', grade = ''] = /^([A-Z]+)(\d+)$/.exec(holeClass) ?? [];
  const tolerance = standardTolerance(diameter, `IT${grade}`);
  const place = rangeOf(diameter);
  if (tolerance === undefined || place === undefined) return undefined;
  if (letter === 'JS') return { lower: -tolerance / 2, upper: tolerance / 2 };
  const lower = LOWER_DEVIATIONS.get(letter)?.[place];
  return lower === undefined
    ? undefined
    : { lower: lower * MICROMETRE, upper: lower * MICROMETRE + tolerance };
}
