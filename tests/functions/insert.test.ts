/** Insert designations: sizes of the standard by shape (from memory, printed alike in every table), and what can not be read. */

import { expect, test } from 'vitest';
import { isFailure } from '../../src/expression/index.ts';
import { calculated, numberIn } from './calculated.ts';

const message = (formula: string): string => {
  const { value } = calculated(formula);
  return isFailure(value) ? value.message : `gives ${JSON.stringify(value)}`;
};

// ISO 1832, cutting edge length symbols for an inscribed circle, from memory.
const SIZES: readonly (readonly [circle: string, symbols: string])[] = [
  ['6.35', 'C06 D07 S06 T11 V11 W04'],
  ['9.525', 'C09 D11 S09 T16 V16 W06'],
  ['12.7', 'C12 D15 S12 T22 V22 W08'],
  ['15.875', 'C16 D19 S15 T27 W10'],
  ['19.05', 'C19 D23 S19 T33 W13'],
  ['25.4', 'C25 S25 T44'],
];

for (const [circle, symbols] of SIZES)
  test(`an inscribed circle of ${circle} mm has the size symbols ${symbols}`, () => {
    for (const symbol of symbols.split(' ')) {
      const designation = `${symbol.charAt(0)}NMG ${symbol.slice(1)} 04 08`;
      expect(numberIn(`=INSERT.INSCRIBED_CIRCLE("${designation}")`, 'mm'), designation).toBeCloseTo(
        Number(circle),
        9,
      );
    }
  });

test('spaces, case and what follows the corner do not matter', () => {
  for (const text of ['CNMG120408', 'cnmg 12 04 08', 'CNMG 12 04 08 E N', 'CNMG 12 04 08-XY'])
    expect(numberIn(`=INSERT.CORNER_RADIUS("${text}")`, 'mm')).toBeCloseTo(0.8, 12);
});

test('the inch form and the metric form of one insert agree', () => {
  for (const [inch, metric] of [
    ['CNMG 432', 'CNMG 12 04 08'],
    ['TNMG 332', 'TNMG 16 04 08'],
    ['CCMT 32.51', 'CCMT 09 T3 04'],
    ['SNMG 644', 'SNMG 19 06 16'],
  ]) {
    for (const name of ['INSCRIBED_CIRCLE', 'THICKNESS'])
      expect(numberIn(`=INSERT.${name}("${inch}")`, 'mm')).toBeCloseTo(
        numberIn(`=INSERT.${name}("${metric}")`, 'mm'),
        9,
      );
    expect(numberIn(`=INSERT.CORNER_RADIUS("${inch}")`, 'mm')).toBeCloseTo(
      numberIn(`=INSERT.CORNER_RADIUS("${metric}")`, 'mm'),
      1,
    );
  }
});

test('a position that can not be read is named with what is allowed there', () => {
  expect(message('=INSERT.SHAPE("XNMG 12 04 08")')).toContain('position 1 (shape) "X": allowed are H O P');
  expect(message('=INSERT.SHAPE("COMG 12 04 08")')).toContain('position 2 (clearance)');
  expect(message('=INSERT.SHAPE("CNZG 12 04 08")')).toContain('position 3 (tolerance)');
  expect(message('=INSERT.SHAPE("CNMZ 12 04 08")')).toContain('position 4 (type)');
  expect(message('=INSERT.INSCRIBED_CIRCLE("CNMG 13 04 08")')).toContain('position 5 (size) "13"');
  expect(message('=INSERT.THICKNESS("CNMG 12 08 08")')).toContain('position 6 (thickness) "08"');
  expect(message('=INSERT.CORNER_RADIUS("SPKN 12 03 ED")')).toContain('position 7 (corner) "ED"');
  expect(message('=INSERT.SHAPE("CNMG 1")')).toContain('positions 5 to 7');
});

test('a round insert has no corner and no counted edges', () => {
  expect(message('=INSERT.CORNER_RADIUS("RCMT 12 04 M0")')).toContain('has no corner');
  expect(message('=INSERT.EDGES("RCMT 12 04 M0")')).toContain('no counted edges');
});
