import { expect, test } from 'vitest';
import { functionTable } from '../../src/catalogue.ts';
import { emptyNotebook } from '../../src/document/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import { inferType, parse } from '../../src/expression/index.ts';

const engine = createEngine({ functions: functionTable() });
engine.open(emptyNotebook({ id: 'angles' }));
const assumedIn = (formula: string): readonly unknown[] => {
  const { tree } = parse(formula);
  if (!tree) throw new Error(formula);
  return inferType(tree, {
    cellType: () => ({ type: 'blank' }),
    rangeType: () => ({ type: 'blank' }),
    nameType: () => undefined,
    functions: functionTable(),
    reading: 'metric',
    currency: 'money',
  }).assumed;
};
const computed = (formula: string) => engine.preview({ worksheet: 'w1', row: 0, column: 0 }, formula);

test('F11 F15 twice an angle is read in radians by an angle parameter, never in degrees', () => {
  // Half the diameter over the tangent of half the point angle: 10 mm / tan(59 deg), worked by hand.
  const expected = 0.01 / Math.tan((59 * Math.PI) / 180);
  for (const angle of ['118 deg', '2 * 59 deg', '59 deg * 2', '236 deg / 2', '(2 * 2 * 59 deg) / 2']) {
    const { value, error } = computed(`=DRILL.POINT_LENGTH(20 mm; ${angle})`);
    expect(error, angle).toBeUndefined();
    expect(value, angle).toBeCloseTo(expected, 15);
  }
});

test('F17 a product of an angle is taken by tangent and drill point without a note that it was read in radians', () => {
  for (const formula of ['TAN(118 deg / 2)', 'DRILL.POINT_LENGTH(20 mm; 2 * 59 deg)'])
    expect(assumedIn(formula)).toEqual([]);
  expect(assumedIn('TAN(0.5)')).toHaveLength(1);
});

test('F14 half an angle beside an angle is one, in radians: 45 deg + rake / 2 is what it says', () => {
  const sum = computed('=45 deg + 15 deg / 2 - 2 * 10 deg');
  expect(sum.kind).toBe('angle');
  expect(sum.value).toBeCloseTo((32.5 * Math.PI) / 180, 14);
  expect(computed('=118 deg / 2 < 60 deg').value).toBe(true);
  // A number that no angle went into stays a plain number.
  expect(computed('=45 deg + 0.5').error?.code).toBe('#UNIT!');
});

test('F11 an angle over an angle, and any product in a sum, stays a plain number', () => {
  expect(computed('=90 deg / 1 deg').kind).toBe('number');
  expect(computed('=2 * 90 deg + 1').value).toBeCloseTo(Math.PI + 1, 15);
  expect(computed('=50 mm * 90 deg').kind).toBe('length');
});
