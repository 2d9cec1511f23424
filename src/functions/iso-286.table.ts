/** Standard tolerances and fundamental deviations of holes, ISO 286-1: IT6 to IT10 read in a copy, the rest from memory. */

/** Upper ends of the ranges of nominal size in mm; a range reaches from above the end before up to and including its own. */
export const SIZE_RANGES: readonly number[] = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];

/** Standard tolerance in um by grade, one value a range. */
export const STANDARD_TOLERANCES: ReadonlyMap<string, readonly number[]> = new Map([
  ['IT5', [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27]],
  ['IT6', [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40]],
  ['IT7', [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63]],
  ['IT8', [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97]],
  ['IT9', [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155]],
  ['IT10', [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250]],
  ['IT11', [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400]],
  ['IT12', [100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630]],
]);

/** Lower deviation EI of holes in um by letter, one value a range; from memory. JS lies evenly about the nominal size. */
export const LOWER_DEVIATIONS: ReadonlyMap<string, readonly number[]> = new Map([
  ['E', [14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135]],
  ['F', [6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68]],
  ['G', [2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20]],
  ['H', SIZE_RANGES.map(() => 0)],
]);
