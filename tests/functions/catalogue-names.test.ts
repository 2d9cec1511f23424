/** The catalogue as the design lays it down, against the definitions: names, parameters, their order, which may be left out. */

import { expect, test } from 'vitest';
import { DEFINITIONS } from '../../src/catalogue.ts';
import { CATALOGUE_NAMES } from './catalogue-names.table.ts';

/** What was added to the design since, with the reason. */
const ADDED: Readonly<Record<string, string>> = {
  // A machine in inches reads no G21.
  'THREAD.MILL_PROGRAM': ', [units]',
};

test('every function of the design is there, with its parameters in their order, and no other', () => {
  const designed = CATALOGUE_NAMES.map(([name, parameters]) => `${name}(${parameters}${ADDED[name] ?? ''})`);
  const defined = DEFINITIONS.map(
    ({ name, parameters }) =>
      `${name}(${parameters.map((each) => (each.default ? `[${each.name}]` : each.name)).join(', ')})`,
  );
  expect(defined.filter((each) => !designed.includes(each))).toEqual([]);
  expect(designed.filter((each) => !defined.includes(each))).toEqual([]);
});
