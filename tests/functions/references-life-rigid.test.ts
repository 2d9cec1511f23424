/** Published cases of tool life, economics, stiffness, chatter, hardness and wear: one test a case, its source in the name. */

import { expect, test } from 'vitest';
import { numberIn } from './calculated.ts';
import { deviations, REFERENCE_CASES } from './reference-case.ts';
import { FORMULAS, NOT_EXPRESSED } from './reference-formulas-life.ts';

for (const each of REFERENCE_CASES) {
  const formulas = FORMULAS[each.id];
  if (!formulas) continue;
  test(`${each.id} ${each.title} (${each.source}; ${each.provenance})`, () => {
    expect(deviations(each, formulas)).toEqual([]);
  });
}

test('every value of the cases of life, stiffness and hardness is checked or listed with the reason', () => {
  const open = REFERENCE_CASES.filter(({ id }) => 'dghk'.includes(id.charAt(0))).flatMap(({ id, expected }) =>
    NOT_EXPRESSED[id] !== undefined
      ? []
      : Object.keys(expected)
          .filter((key) => FORMULAS[id]?.[key] === undefined && NOT_EXPRESSED[`${id}.${key}`] === undefined)
          .map((key) => `${id}.${key}`),
  );
  expect(open).toEqual([]);
});

test('Vickers from Rockwell C lies within 1 % of ASTM E140 (case k01)', () => {
  const rows = REFERENCE_CASES.find(({ id }) => id === 'k01');
  const [rockwell, vickers] = [rows?.inputs['HRC']?.value, rows?.expected['HV']?.value];
  if (!Array.isArray(rockwell) || !Array.isArray(vickers)) throw new Error('case k01 has no rows');
  for (const [index, hardness] of rockwell.entries()) {
    const given = numberIn(`=HARDNESS.HV(${hardness} HRC)`, 'HV');
    expect(Math.abs(given / Number(vickers[index]) - 1), `${hardness} HRC`).toBeLessThan(0.01);
  }
});
