import { expect, test } from 'vitest';
import {
  describeDimension,
  describeKind,
  dimension,
  DIMENSIONLESS,
  divided,
  generalKind,
  isKindName,
  kindNamed,
  KINDS,
  kindsAgree,
  multiplied,
  PLAIN,
  raised,
} from '../../src/quantity/index.ts';

const length = dimension({ length: 1 });
const time = dimension({ time: 1 });

test('F11 dimensions are interned: roads to the same exponents meet', () => {
  expect(divided(length, time)).toBe(dimension({ length: 1, time: -1 }));
  expect(raised(raised(length, 1 / 3), 3)).toBe(length);
  expect(divided(length, length)).toBe(DIMENSIONLESS);
});

test('F11 an angle is its radian value in products, and a dimension of its own elsewhere', () => {
  const angle = kindNamed('angle').dimension;
  expect(angle).not.toBe(DIMENSIONLESS);
  expect(multiplied(angle, length)).toBe(length);
});

test('F11a each dimension has one general kind, and products give it', () => {
  expect(generalKind(length)).toBe(kindNamed('length'));
  expect(generalKind(divided(length, time))).toBe(kindNamed('speed'));
  expect(generalKind(dimension({ time: -1 })).name).toBe('1/time');
  expect(generalKind(DIMENSIONLESS)).toBe(PLAIN);
  for (const kind of KINDS) expect(generalKind(kind.dimension).general).toBe(true);
});

test('F11a a dimension without a row gets a general kind that is found by its name', () => {
  const kind = generalKind(dimension({ mass: 1, length: 2 }));
  expect(kind.name).toBe('mass·length2');
  expect(kindNamed('mass·length2')).toBe(kind);
  expect(generalKind(dimension({ length: 2, mass: 1 }))).toBe(kind);
});

test('F16 two different special kinds disagree; a general kind fits all', () => {
  expect(kindsAgree(kindNamed('feed per tooth'), kindNamed('feed per revolution'))).toBe(false);
  expect(kindsAgree(kindNamed('feed per tooth'), kindNamed('length'))).toBe(true);
  expect(kindsAgree(kindNamed('torque'), kindNamed('energy'))).toBe(false);
  expect(kindsAgree(kindNamed('share'), kindNamed('ratio'))).toBe(true);
  expect(kindsAgree(kindNamed('count'), PLAIN)).toBe(true);
});

test('Dimensions are said with their article', () => {
  expect(describeDimension(length)).toBe('a length');
  expect(describeDimension(dimension({ scale: 'angle' }))).toBe('an angle');
  expect(describeDimension(DIMENSIONLESS)).toBe('a plain number');
  expect(describeDimension(dimension({ money: 1 }))).toBe('an amount of money');
  expect(describeKind(kindNamed('feed per tooth'))).toBe('a feed per tooth');
  expect(describeDimension(dimension({ mass: 1, length: 2 }))).toBe('a mass·length2');
});

test('An unknown kind name throws and says what is known', () => {
  expect(isKindName('feed per tooth')).toBe(true);
  expect(isKindName('feed per mile')).toBe(false);
  expect(() => kindNamed('feed per mile')).toThrow(/feed per mile.*known: number/);
});
