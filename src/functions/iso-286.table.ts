/** Standard tolerances and fundamental deviations of holes, ISO 286-1:2010, tables 1 and 2, read in stored copies: IT5 to IT16 and the deviations in two that agree. */

/** Upper ends of the ranges of nominal size in mm; a range reaches from above the end before up to and including its own. */
export const SIZE_RANGES: readonly number[] = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];

/** Grades from here on are not for nominal sizes up to 1 mm (ISO 286-1, note to table 1). */
export const COARSE_GRADE = 14;

/** Standard tolerance in um by grade, one value a range. */
export const STANDARD_TOLERANCES: ReadonlyMap<string, readonly number[]> = new Map([
  ['IT1', [0.8, 1, 1, 1.2, 1.5, 1.5, 2, 2.5, 3.5, 4.5, 6, 7, 8]],
  ['IT2', [1.2, 1.5, 1.5, 2, 2.5, 2.5, 3, 4, 5, 7, 8, 9, 10]],
  ['IT3', [2, 2.5, 2.5, 3, 4, 4, 5, 6, 8, 10, 12, 13, 15]],
  ['IT4', [3, 4, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20]],
  ['IT5', [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27]],
  ['IT6', [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40]],
  ['IT7', [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63]],
  ['IT8', [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97]],
  ['IT9', [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155]],
  ['IT10', [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250]],
  ['IT11', [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400]],
  ['IT12', [100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630]],
  ['IT13', [140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810, 890, 970]],
  ['IT14', [250, 300, 360, 430, 520, 620, 740, 870, 1000, 1150, 1300, 1400, 1550]],
  ['IT15', [400, 480, 580, 700, 840, 1000, 1200, 1400, 1600, 1850, 2100, 2300, 2500]],
  ['IT16', [600, 750, 900, 1100, 1300, 1600, 1900, 2200, 2500, 2900, 3200, 3600, 4000]],
  ['IT17', [1000, 1200, 1500, 1800, 2100, 2500, 3000, 3500, 4000, 4600, 5200, 5700, 6300]],
  ['IT18', [1400, 1800, 2200, 2700, 3300, 3900, 4600, 5400, 6300, 7200, 8100, 8900, 9700]],
]);

/** Lower deviation EI of holes in um by letter, one value a range. JS lies evenly about the nominal size. */
export const LOWER_DEVIATIONS: ReadonlyMap<string, readonly number[]> = new Map([
  ['E', [14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135]],
  ['F', [6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68]],
  ['G', [2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20]],
  ['H', SIZE_RANGES.map(() => 0)],
]);
