/**
 * Bulk ratio, loose over solid volume, by chip form: lower bounds, from memory of the chip volume ratio in
 * F. Klocke, Manufacturing Processes 1: Cutting, Springer 2011; confidence low.
 */
export const CHIP_FORMS: ReadonlyMap<string, number> = new Map([
  ['ribbon', 90],
  ['tangled', 90],
  ['long helical', 60],
  ['short helical', 25],
  ['spiral', 8],
  ['broken', 3],
]);
