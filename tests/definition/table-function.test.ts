/** The checks of arguments, on real functions of the library. */

import { expect, test } from 'vitest';
import { tableFunction } from '../../src/definition/index.ts';
import { failure, type ArgumentType, type Caution, type Value } from '../../src/expression/index.ts';
import { isUnknownUnit, parseUnit, PLAIN, type Kind } from '../../src/quantity/index.ts';
import chipMax from '../../src/functions/mill/chip-max.ts';
import feedRate from '../../src/functions/cut/feed-rate.ts';
import roundAngle from '../../src/functions/cut/round-angle.ts';
import stagedTime from '../../src/functions/cut/staged-time.ts';

const CHIP_MAX = tableFunction(chipMax);
const FEED_RATE = tableFunction(feedRate);

function called(table: typeof CHIP_MAX, args: readonly Value[]): { value: Value; cautions: string[] } {
  const cautions: Caution[] = [];
  const value = table.evaluate(args, { caution: (caution) => cautions.push(caution) });
  return { value, cautions: cautions.map(({ text }) => text) };
}

function kindOf(unit: string): Kind {
  const found = unit === '' ? undefined : parseUnit(unit);
  if (found && isUnknownUnit(found)) throw new Error(unit);
  return found?.kind ?? PLAIN;
}

const typed = (unit: string): ArgumentType => ({
  type: { type: 'number', kind: kindOf(unit) },
  span: { from: 0, to: 0 },
  text: unit,
});

test('a value inside all ranges comes without caution', () => {
  expect(called(CHIP_MAX, [0.02, 0.0001, 0.002])).toEqual({
    value: expect.closeTo(0.00006, 15),
    cautions: [],
  });
});

test('D2 a value past its limit is refused: the parameter, the value and the limit are named', () => {
  expect(called(CHIP_MAX, [0.02, 0.0001, 0.03]).value).toEqual(
    failure('#NUM!', 'radial engagement 30 mm is above the largest allowed, the cutter diameter 20 mm'),
  );
  expect(called(CHIP_MAX, [-0.02, 0.0001, 0.03]).value).toEqual(
    failure('#NUM!', 'cutter diameter -20 mm must be more than 0 mm'),
  );
  expect(called(FEED_RATE, [0, 0.0001, 16]).value).toMatchObject({
    failure: '#NUM!',
    message: expect.stringContaining('teeth 0 is below the least allowed, 1'),
  });
});

test('D1 whole numbers are asked for, and reached by rounding', () => {
  expect(called(FEED_RATE, [3.5, 0.0001, 16]).value).toEqual(
    failure('#NUM!', 'teeth 3.5 must be a whole number'),
  );
  expect(called(FEED_RATE, [4 + 1e-12, 0.0001, 10]).value).toBeCloseTo(0.004, 15);
});

test('a blank is a missing value; a skipped optional one is not', () => {
  expect(called(CHIP_MAX, [0.02, 0.0001, null]).value).toEqual(
    failure('#VALUE!', 'value missing: radial engagement'),
  );
  expect(called(CHIP_MAX, [0.02, 0.0001, 0.002, null, null]).value).toBeCloseTo(0.00006, 15);
  expect(called(CHIP_MAX, [0.02, 0.0001, 0.002, Math.PI / 6]).value).toBeCloseTo(0.00003, 15);
});

test('a failure that comes in goes out', () => {
  const root = failure('#DIV/0!', 'division by zero', 'B4');
  expect(called(CHIP_MAX, [0.02, root, 0.002]).value).toBe(root);
});

test('D3 a length that passes its limit by rounding alone is the limit', () => {
  expect(called(CHIP_MAX, [0.02, 0.0001, 0.02 * (1 + 1e-12)]).value).toBeCloseTo(0.0001, 15);
});

test('outside the usual range the value comes with a caution', () => {
  const { value, cautions } = called(FEED_RATE, [4, 0.005, 10]);
  expect(value).toBeCloseTo(0.2, 15);
  expect(cautions).toEqual(['feed per tooth 5 mm is unusual: usually 0.002 mm to 3 mm']);
});

test('texts are taken in either case; a word that is not one of them is refused with all of them', () => {
  const table = tableFunction(roundAngle);
  expect(table.evaluate([0.012, 0.003, 'Largest'], {})).toBeCloseTo(Math.PI / 3, 12);
  expect(table.evaluate([0.012, 0.003, 'least'], {})).toEqual(
    failure('#VALUE!', 'which "least" is none of "mean", "largest"'),
  );
});

test('lists are checked item by item', () => {
  const table = tableFunction(stagedTime);
  expect(table.evaluate([{ grid: [[0.001, 0.002]] }, { grid: [[0.01], [0.01]] }], {})).toBeCloseTo(15, 12);
  expect(table.evaluate([{ grid: [[0.001, null]] }, { grid: [[0.01, 0.02]] }], {})).toEqual(
    failure('#VALUE!', 'value missing: feed rates, item 2'),
  );
});

test('F13 an argument of another dimension names the parameter and both dimensions', () => {
  expect(CHIP_MAX.infer([typed('s'), typed('mm'), typed('mm')], 'metric').type).toEqual({
    type: 'failed',
    failure: failure('#UNIT!', 'cutter diameter wants a length, was given a time'),
  });
});

test('F15 a plain number is read in the unit of the reading system', () => {
  const args = [typed('mm'), typed(''), typed('mm')];
  expect(CHIP_MAX.infer(args, 'metric').assumed).toEqual([{ argument: 1, unit: 'mm' }]);
  expect(CHIP_MAX.infer(args, 'inch').assumed).toEqual([{ argument: 1, unit: 'in' }]);
});

test('F16 two different special kinds give a caution that names both; the general kind fits in silence', () => {
  const { type, cautions } = FEED_RATE.infer([typed(''), typed('mm/rev'), typed('1/min')], 'metric');
  expect(type).toMatchObject({ type: 'number', kind: { name: 'feed rate' } });
  expect(cautions?.map(({ text }) => text)).toEqual([
    'feed per tooth wants a feed per tooth, was given a feed per revolution',
  ]);
  expect(FEED_RATE.infer([typed(''), typed('mm'), typed('1/min')], 'metric').cautions).toBeUndefined();
});

test('a blank cell is named as the root of what is missing', () => {
  const blank: ArgumentType = { type: { type: 'blank', cell: 'B4' }, span: { from: 0, to: 0 }, text: 'B4' };
  expect(CHIP_MAX.infer([typed('mm'), typed('mm'), blank], 'metric').type).toEqual({
    type: 'failed',
    failure: failure('#VALUE!', 'value missing: radial engagement', 'B4'),
  });
});

test('too few and too many values are told', () => {
  expect(FEED_RATE.arity).toEqual([3, 3]);
  expect(CHIP_MAX.arity).toEqual([3, 5]);
  expect(FEED_RATE.infer([typed('')], 'metric').type).toMatchObject({
    failure: { message: 'value missing: feed per tooth' },
  });
});
