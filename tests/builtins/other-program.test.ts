/** A general-purpose statistics library as second opinion: distributions, their inverses, tests, fits, intervals and sample sizes. */

import { expect, test } from 'vitest';
import { numberIn } from '../functions/calculated.ts';
import { sharedDigits } from '../numeric/digits.ts';
import { OTHER_PROGRAM } from './other-program.table.ts';

const byFunction = new Map<string, (readonly [string, number])[]>();
for (const row of OTHER_PROGRAM) {
  const name = row[0].slice(0, row[0].indexOf('('));
  byFunction.set(name, [...(byFunction.get(name) ?? []), row]);
}

const DIGITS = 11;

for (const [name, rows] of byFunction)
  test(`${name} agrees with another program to ${DIGITS} digits in ${rows.length} places`, () => {
    const off = rows.flatMap(([formula, wanted]) => {
      const given = numberIn(`=${formula}`);
      return sharedDigits(given, wanted) >= DIGITS || Math.abs(given - wanted) < 1e-15
        ? []
        : [`${formula}: ${given}, the other gives ${wanted}`];
    });
    expect(off.join('\n')).toBe('');
  });
