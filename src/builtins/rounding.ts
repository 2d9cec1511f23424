/** Rounding: ROUND and its kin take plain numbers, CEILING, FLOOR and MROUND a quantity with a step of its dimension (F13a). */

import { failure } from '../expression/index.ts';
import { floored, multipleOf, rounded, roundedUp, truncated } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { number, optional, plain, timesUnit, whole } from './parameter.ts';
import { PLAIN_NUMBER, isPlain, refused, said, sharedOrPlain, singles, unitOf } from './type-rules.ts';
import type { ArgumentType, UnitSystem, ValueType } from '../expression/index.ts';

const PLAIN_RESULT = (): ValueType => PLAIN_NUMBER;

const byDigits = (
  name: string,
  section: string,
  summary: string,
  searchWords: readonly string[],
  given: string,
  gives: string,
  round: (value: number, digits: number) => number,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'rounding',
    section,
    summary,
    searchWords: ['decimals', 'digits', ...searchWords],
    takes: [plain('number', timesUnit), optional(whole('digits'))],
    gives: PLAIN_RESULT,
    evaluate: ([value, digits = 0]) => round(value, digits),
    examples: [example(given, gives)],
  });

/** The step decides the unit: without one only a plain number makes sense. */
const stepped =
  (name: string) =>
  (args: readonly ArgumentType[], reading: UnitSystem): ValueType => {
    const [value] = args;
    const [type] = value ? singles(value.type) : [];
    if (value && args.length < 2 && type?.type === 'number' && !isPlain(type)) {
      const unit = unitOf(type.kind, reading);
      return refused(
        `${name} of a quantity needs a step of its dimension; ${said(value, type.kind)}: ${name}(${value.text.trim()}; 1 ${unit})`,
      );
    }
    return sharedOrPlain(name, args.slice(0, 2));
  };

export const ROUNDING: readonly BuiltinDefinition[] = [
  builtin({
    name: 'CEILING',
    group: 'rounding',
    section: '6.17.1',
    summary: 'Rounds up to the next multiple of a step',
    searchWords: ['round up', 'multiple', 'step', 'next size'],
    takes: [number('number'), optional(number('step')), optional(whole('mode'))],
    gives: stepped('CEILING'),
    evaluate([value, step, mode = 0]) {
      const size = step ?? (Math.sign(value) || 1);
      if (value * size < 0) return failure('#NUM!', 'number and step have different signs');
      if (mode !== 0 || value >= 0) {
        return Math.sign(value) * multipleOf(Math.abs(size), Math.abs(value), Math.ceil);
      }
      return -multipleOf(Math.abs(size), -value, Math.floor);
    },
    examples: [
      example('CEILING(2.5; 2)', '4'),
      example('CEILING(7.2 mm; 0.5 mm)', '7.5 mm', 'by hand: 15 steps of 0.5 mm'),
    ],
  }),
  builtin({
    name: 'INT',
    group: 'rounding',
    section: '6.17.2',
    summary: 'The largest whole number that is not above the number',
    searchWords: ['integer', 'whole', 'floor'],
    takes: [plain('number', timesUnit)],
    gives: PLAIN_RESULT,
    evaluate: ([value]) => floored(value),
    examples: [example('INT(-7/2)', '-4')],
  }),
  builtin({
    name: 'FLOOR',
    group: 'rounding',
    section: '6.17.3',
    summary: 'Rounds down to a multiple of a step',
    searchWords: ['round down', 'multiple', 'step', 'speed step'],
    takes: [number('number'), optional(number('step')), optional(whole('mode'))],
    gives: stepped('FLOOR'),
    evaluate([value, step, mode = 0]) {
      const size = step ?? (Math.sign(value) || 1);
      if (value * size < 0) return failure('#NUM!', 'number and step have different signs');
      if (mode !== 0 || value >= 0) {
        return Math.sign(value) * multipleOf(Math.abs(size), Math.abs(value), Math.floor);
      }
      return -multipleOf(Math.abs(size), -value, Math.ceil);
    },
    examples: [
      example('FLOOR(5; 2.2)', '4.4'),
      example('FLOOR(-2.5; -1)', '-3'),
      example('FLOOR(1655 1/min; 50 1/min)', '1650 1/min', 'by hand: 33 steps of 50 1/min'),
    ],
  }),
  builtin({
    name: 'MROUND',
    group: 'rounding',
    section: '6.17.4',
    summary: 'Rounds to the nearest multiple of a step',
    searchWords: ['round', 'nearest', 'multiple', 'step'],
    takes: [number('number'), number('step')],
    gives: stepped('MROUND'),
    evaluate([value, step]) {
      // Half goes up: -7 to a step of 2 is -6 in the published cases.
      return multipleOf(Math.abs(step), value, (ratio) => Math.floor(ratio + 0.5));
    },
    examples: [example('MROUND(1550; 100)', '1600'), example('MROUND(-3.2; 0.5)', '-3')],
  }),
  byDigits(
    'ROUND',
    '6.17.5',
    'Rounds to a number of decimals, half away from zero',
    ['round off'],
    'ROUND(1/3; 2)',
    '0.33',
    rounded,
  ),
  byDigits(
    'ROUNDDOWN',
    '6.17.6',
    'Rounds towards zero to a number of decimals',
    ['cut off'],
    'ROUNDDOWN(1234.5; -2)',
    '1200',
    truncated,
  ),
  byDigits(
    'ROUNDUP',
    '6.17.7',
    'Rounds away from zero to a number of decimals',
    ['round up'],
    'ROUNDUP(-1.1)',
    '-2',
    roundedUp,
  ),
  byDigits(
    'TRUNC',
    '6.17.8',
    'Cuts off after a number of decimals',
    ['truncate', 'cut off'],
    'TRUNC(-2.567; 2)',
    '-2.56',
    truncated,
  ),
  ...(['EVEN', 'ODD'] as const).map((name) =>
    builtin({
      name,
      group: 'rounding',
      section: name === 'EVEN' ? '6.16.30' : '6.16.44',
      summary: `Rounds away from zero to the next ${name === 'EVEN' ? 'even' : 'odd'} whole number`,
      searchWords: [name === 'EVEN' ? 'even number' : 'odd number', 'round'],
      takes: [plain('number', timesUnit)],
      gives: PLAIN_RESULT,
      evaluate([value]) {
        const size = Math.abs(value);
        const next = name === 'EVEN' ? 2 * Math.ceil(size / 2) : 2 * Math.ceil((size - 1) / 2) + 1;
        return (value < 0 ? -1 : 1) * (name === 'ODD' ? Math.max(1, next) : next);
      },
      examples: [name === 'EVEN' ? example('EVEN(-1)', '-2') : example('ODD(2)', '3')],
    }),
  ),
];
