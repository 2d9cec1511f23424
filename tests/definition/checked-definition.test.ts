/** Faults of definitions are found before anything is computed. */

import { expect, test } from 'vitest';
import {
  checkedDefinition,
  compileDefinition,
  definitionFaults,
  tableFunction,
  type FunctionDefinition,
  type Parameter,
} from '../../src/definition/index.ts';
import { failure, type ArgumentType, type ValueType } from '../../src/expression/index.ts';
import { kindNamed } from '../../src/quantity/index.ts';

const length = (name: string, symbol: string): Parameter => ({
  name,
  symbol,
  kind: 'length',
  metric: 'mm',
  inch: 'in',
  meaning: name,
});

const SOUND: FunctionDefinition = {
  name: 'CUT.AREA',
  family: 'CUT',
  summary: 'Area of a rectangle',
  searchWords: ['area'],
  parameters: [length('width', 'b'), length('height', 'h')],
  result: { kind: 'area', symbol: 'A', meaning: 'area' },
  equation: 'b * h',
  sources: ['geometry'],
  examples: [{ given: ['2 mm', '3 mm'], gives: '6 mm2', origin: 'byHand', how: '2 times 3' }],
  since: '0.1',
};

test('a sound definition has no faults and is given back', () => {
  expect(definitionFaults(SOUND)).toEqual([]);
  expect(checkedDefinition(SOUND)).toBe(SOUND);
});

test.each([
  ['a symbol that nothing gives', { equation: 'b * h * q' }, 'the equation uses q, which nothing gives'],
  ['a parameter that does nothing', { equation: 'b * b' }, 'h is not in the equation'],
  ['a text that can not be read', { equation: 'b * * h' }, 'equation "b * * h"'],
  [
    'an unknown kind',
    { result: { kind: 'lenght', symbol: 'A', meaning: '' } },
    'no kind lenght for the result',
  ],
  [
    'an unknown unit',
    { parameters: [{ ...length('width', 'b'), metric: 'mmm' }, length('height', 'h')] },
    'no unit mmm',
  ],
  ['a family that is none', { family: 'CUTS' }, 'no family CUTS'],
  [
    'an example of its own only',
    { examples: [{ ...SOUND.examples[0]!, origin: 'self' as const }] },
    'no example from outside',
  ],
  ['a summary that is too long', { summary: 'a'.repeat(91) }, 'its summary has 91 characters'],
  [
    'an optional parameter before a required one',
    { parameters: [{ ...length('width', 'b'), default: { value: '1 mm' } }, length('height', 'h')] },
    'an optional parameter stands before a required one',
  ],
  [
    'two equal symbols',
    { parameters: [length('width', 'b'), length('height', 'b')] },
    'two of its symbols are the same',
  ],
])('%s is a fault', (_, change, words) => {
  const definition = { ...SOUND, ...change } as FunctionDefinition;
  expect(definitionFaults(definition).join('\n')).toContain(words);
  expect(() => checkedDefinition(definition)).toThrow(words);
});

test('a division by nothing is a value with a code, and nothing throws', () => {
  const quotient = { ...SOUND, equation: 'b / (h - h)' };
  expect(compileDefinition(quotient).evaluate([1, 2], {})).toEqual(failure('#DIV/0!', 'division by zero'));
  const thrower: FunctionDefinition = {
    ...SOUND,
    reading: '-',
    compute: () => {
      throw new Error('no luck');
    },
  } as FunctionDefinition;
  const { equation: _, ...computed } = thrower as FunctionDefinition & { equation: string };
  expect(compileDefinition(computed as FunctionDefinition).evaluate([1, 2], {})).toEqual(
    failure('#VALUE!', 'CUT.AREA: no luck'),
  );
});

const SPREAD: FunctionDefinition = {
  ...SOUND,
  name: 'TRIAL.GAP',
  family: 'TRIAL',
  parameters: [
    { name: 'values_a', symbol: 'a', kind: 'any number', list: true, meaning: 'values' },
    { name: 'values_b', symbol: 'b', kind: 'any number', list: true, meaning: 'values' },
  ],
  result: { kind: 'like values_a', symbol: 'gap', meaning: 'difference of the means' },
  equation: 'AVERAGE(a) - AVERAGE(b)',
};

const argument = (type: ValueType): ArgumentType => ({ type, span: { from: 0, to: 0 }, text: '' });
const column = (kind: string): ArgumentType =>
  argument({ type: 'grid', columns: [{ type: 'number', kind: kindNamed(kind) }], rows: 3 });

test('values of any sort share their dimension, and the result is of their kind', () => {
  const table = tableFunction(SPREAD);
  expect(table.infer([column('length'), column('length')], 'metric').type).toEqual({
    type: 'number',
    kind: kindNamed('length'),
  });
  expect(table.infer([column('length'), column('time')], 'metric').type).toEqual({
    type: 'failed',
    failure: failure('#UNIT!', 'values b wants a length as values a, was given a time'),
  });
});

test('a range where one value is wanted, a text where a number is wanted', () => {
  const table = tableFunction(SOUND);
  expect(table.infer([column('length'), argument({ type: 'neutral' })], 'metric').type).toMatchObject({
    failure: { failure: '#VALUE!', message: 'width wants one value, was given a range' },
  });
  expect(table.infer([argument({ type: 'text' }), column('length')], 'metric').type).toMatchObject({
    failure: { failure: '#VALUE!', message: 'width wants a length, was given a text' },
  });
});

test('a share is not read as a length, and an angle is no plain number', () => {
  const table = tableFunction(SOUND);
  const number = (kind: string): ArgumentType => argument({ type: 'number', kind: kindNamed(kind) });
  expect(table.infer([number('share'), number('length')], 'metric').type).toMatchObject({
    failure: { failure: '#UNIT!', message: 'width wants a length, was given a share' },
  });
  expect(table.infer([number('angle'), number('length')], 'metric').type).toMatchObject({
    failure: { message: 'width wants a length, was given an angle' },
  });
});
