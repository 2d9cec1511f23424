/** Every published case: one test a case, named by its id, with its source; what has no formula is listed with the reason. */

import { expect, test } from 'vitest';
import { deviations, type Formula, REFERENCE_CASES } from './reference-case.ts';
import { CUTTING_FORMULAS } from './reference-formulas-cutting.ts';
import { HOLE_FORMULAS } from './reference-formulas-holes.ts';
import { LIFE_FORMULAS } from './reference-formulas-life.ts';
import { PHYSICS_FORMULAS } from './reference-formulas-physics.ts';
import { NOT_EXPRESSED } from './reference-reasons.ts';

const TABLES = [CUTTING_FORMULAS, HOLE_FORMULAS, LIFE_FORMULAS, PHYSICS_FORMULAS];

/** Sets of which no double can hold every printed digit: digits that are met, as tests/numeric/nist-strd.test.ts explains. */
const DIGITS: Readonly<Record<string, number>> = { l05: 13, l15: 12, l16: 10 };

/** Other room than the case states, with the reason. */
const ROOMS: Readonly<Record<string, number>> = {
  // The case rounds 3 sqrt(3)/4 to 1.299038; the program does not.
  'f07.drill': 1e-8,
  // The grades are a table and must be met exactly; the tolerance of the case is that of the formula behind it.
  ...Object.fromEntries(['IT6', 'IT7', 'IT8', 'IT9', 'IT10'].map((grade) => [`g06.${grade}`, 1e-9])),
  ...Object.fromEntries(
    REFERENCE_CASES.flatMap(({ id, expected }) =>
      Object.entries(DIGITS[id] === undefined ? {} : expected).map(([key, { value }]) => [
        `${id}.${key}`,
        Math.abs(Number(value)) * 10 ** -(DIGITS[id] ?? 0),
      ]),
    ),
  ),
};

const tablesOf = (id: string): readonly Readonly<Record<string, Formula>>[] =>
  TABLES.flatMap((table) => {
    const formulas = table[id];
    return formulas ? [formulas] : [];
  });

for (const each of REFERENCE_CASES) {
  const { id, title, source, provenance } = each;
  const tables = tablesOf(id);
  const reason = NOT_EXPRESSED[id];
  if (tables.length === 0 && reason !== undefined) {
    test(`${id} ${title} (${source}; ${provenance}): no formula, ${reason}`, () => {
      expect(Object.keys(each.expected).length).toBeGreaterThan(0);
    });
    continue;
  }
  test(`${id} ${title} (${source}; ${provenance})`, () => {
    expect(tables.flatMap((formulas) => deviations(each, formulas, ROOMS))).toEqual([]);
  });
}

test('every value of every case is either checked or listed with the reason, never both', () => {
  const open: string[] = [];
  const twice: string[] = [];
  for (const { id, expected } of REFERENCE_CASES) {
    for (const key of Object.keys(expected)) {
      const name = `${id}.${key}`;
      const checked = tablesOf(id).some((formulas) => formulas[key] !== undefined);
      const listed = NOT_EXPRESSED[id] !== undefined || NOT_EXPRESSED[name] !== undefined;
      if (!checked && !listed) open.push(name);
      if (checked && listed) twice.push(name);
    }
  }
  expect(open).toEqual([]);
  expect(twice).toEqual([]);
  const known = new Set(
    REFERENCE_CASES.flatMap(({ id, expected }) => [
      id,
      ...Object.keys(expected).map((key) => `${id}.${key}`),
    ]),
  );
  expect(Object.keys(NOT_EXPRESSED).filter((name) => !known.has(name))).toEqual([]);
});
