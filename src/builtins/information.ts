/** What a value is: tests of its sort, sizes of ranges, conversions between text and number. */

import { failure, isFailure, isGrid } from '../expression/index.ts';
import type { Scalar, Value, ValueType } from '../expression/index.ts';
import { parseNumberText } from './number-text.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { anyList, anything, optional, plain, text } from './parameter.ts';
import { LOGICAL, PLAIN_NUMBER, TEXT, shared } from './type-rules.ts';

const first = (value: Value): Scalar =>
  !isFailure(value) && isGrid(value) ? (value.grid[0]?.[0] ?? null) : value;

const is = (
  name: string,
  section: string,
  words: string,
  holds: (value: Scalar) => boolean,
  given: string,
  gives: string,
  source?: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'information',
    section,
    summary: `TRUE if the value is ${words}`,
    searchWords: ['test', 'check', words],
    takes: [anything('value')],
    gives: () => LOGICAL,
    evaluate: ([value]) => holds(first(value)),
    examples: [example(given, gives, source)],
  });

const parity = (
  name: string,
  section: string,
  words: string,
  rest: number,
  given: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'information',
    section,
    summary: `TRUE if the whole part of the number is ${words}`,
    searchWords: [words, 'test', 'whole number'],
    takes: [plain('number')],
    gives: () => LOGICAL,
    evaluate: ([x]) => Math.abs(Math.trunc(x)) % 2 === rest,
    examples: [example(given, 'TRUE')],
  });

/** Numbers of the errors as ERROR.TYPE has them. */
const ERROR_NUMBERS = new Map([
  ['#DIV/0!', 2],
  ['#VALUE!', 3],
  ['#REF!', 4],
  ['#NAME?', 5],
  ['#NUM!', 6],
  ['#N/A', 7],
]);

const sortOf = (value: Value): number => {
  if (isFailure(value)) return 16;
  if (isGrid(value)) return 64;
  return typeof value === 'string' ? 2 : typeof value === 'boolean' ? 4 : 1;
};

export const INFORMATION: readonly BuiltinDefinition[] = [
  is('ISBLANK', '6.13.14', 'an empty cell', (value) => value === null, 'ISBLANK("")', 'FALSE'),
  is('ISNUMBER', '6.13.22', 'a number', (value) => typeof value === 'number', 'ISNUMBER("1")', 'FALSE'),
  is('ISTEXT', '6.13.25', 'a text', (value) => typeof value === 'string', 'ISTEXT(1)', 'FALSE'),
  is('ISNONTEXT', '6.13.21', 'no text', (value) => typeof value !== 'string', 'ISNONTEXT(TRUE)', 'TRUE'),
  is(
    'ISLOGICAL',
    '6.13.19',
    'TRUE or FALSE',
    (value) => typeof value === 'boolean',
    'ISLOGICAL(FALSE)',
    'TRUE',
  ),
  is('ISERROR', '6.13.16', 'an error', isFailure, 'ISERROR(1/0)', 'TRUE', 'by hand'),
  is(
    'ISERR',
    '6.13.15',
    'an error other than #N/A',
    (value) => isFailure(value) && value.failure !== '#N/A',
    'ISERR(NA())',
    'FALSE',
    'by hand',
  ),
  is(
    'ISNA',
    '6.13.20',
    'the error #N/A',
    (value) => isFailure(value) && value.failure === '#N/A',
    'ISNA(NA())',
    'TRUE',
  ),
  parity('ISEVEN', '6.13.17', 'even', 0, 'ISEVEN(2.9)'),
  parity('ISODD', '6.13.23', 'odd', 1, 'ISODD(-3.9)'),
  builtin({
    name: 'NA',
    group: 'information',
    section: '6.13.27',
    summary: 'The error #N/A: not available',
    searchWords: ['not available', 'missing', 'error'],
    takes: [],
    gives: () => ({ type: 'neutral' }),
    evaluate: () => failure('#N/A', 'not available'),
    examples: [example('ISNA(NA())', 'TRUE')],
  }),
  builtin({
    name: 'N',
    group: 'information',
    section: '6.13.26',
    summary: 'The number of a value: TRUE is 1, a text is 0',
    searchWords: ['number', 'convert'],
    takes: [anything('value')],
    gives: (args): ValueType => shared('N', args) ?? PLAIN_NUMBER,
    evaluate([value]) {
      const one = first(value);
      if (isFailure(one)) return one;
      return typeof one === 'number' ? one : Number(one === true);
    },
    examples: [example('N(FALSE)', '0')],
  }),
  builtin({
    name: 'TYPE',
    group: 'information',
    section: '6.13.33',
    summary: 'The sort of a value: 1 number, 2 text, 4 logical, 16 error, 64 range',
    searchWords: ['sort', 'kind of value'],
    takes: [anything('value')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([value]) => sortOf(value),
    examples: [example('TYPE(1+2)', '1')],
  }),
  builtin({
    name: 'ERROR.TYPE',
    group: 'information',
    section: '6.13.11',
    summary: 'The number of an error, #N/A if there is none',
    searchWords: ['error', 'code'],
    takes: [anything('value')],
    gives: () => PLAIN_NUMBER,
    evaluate([value]) {
      const one = first(value);
      const code = isFailure(one) ? ERROR_NUMBERS.get(one.failure) : undefined;
      return code ?? failure('#N/A', 'the value is no error of the standard');
    },
    examples: [example('ERROR.TYPE(NA())', '7')],
  }),
  builtin({
    name: 'ROWS',
    group: 'information',
    section: '6.13.30',
    summary: 'The number of rows of a range',
    searchWords: ['size', 'height', 'count'],
    takes: [anyList('range')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([{ grid }]) => grid.length,
    examples: [example('ROWS({1;2|3;4|5;6})', '3', 'by hand')],
  }),
  builtin({
    name: 'COLUMNS',
    group: 'information',
    section: '6.13.5',
    summary: 'The number of columns of a range',
    searchWords: ['size', 'width', 'count'],
    takes: [anyList('range')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([{ grid }]) => grid[0]?.length ?? 0,
    examples: [example('COLUMNS({1;2|3;4|5;6})', '2', 'by hand')],
  }),
  builtin({
    name: 'VALUE',
    group: 'information',
    section: '6.13.34',
    summary: 'The plain number written in a text',
    searchWords: ['convert', 'text to number', 'parse'],
    takes: [text('text')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([written]) =>
      parseNumberText(written, '.', ',') ??
      failure('#VALUE!', `"${written.slice(0, 40)}" is no plain number`),
    examples: [example('VALUE("7 1/4")', '7.25'), example('VALUE("12.5%")', '0.125')],
  }),
  builtin({
    name: 'NUMBERVALUE',
    group: 'information',
    section: '6.13.28',
    summary: 'The plain number in a text with a stated decimal mark',
    searchWords: ['decimal mark', 'comma', 'text to number'],
    takes: [text('text'), text('decimal mark'), optional(text('group mark'))],
    gives: () => PLAIN_NUMBER,
    evaluate: ([written, decimal, group = decimal === ',' ? '.' : ',']) =>
      parseNumberText(written, decimal, group) ??
      failure('#VALUE!', `"${written.slice(0, 40)}" is no plain number`),
    examples: [example('NUMBERVALUE("6.000,5"; ",")', '6000.5')],
  }),
  builtin({
    name: 'T',
    group: 'text',
    section: '6.20.22',
    summary: 'The text of a value, empty if it is no text',
    searchWords: ['text', 'convert'],
    takes: [anything('value')],
    gives: () => TEXT,
    evaluate([value]) {
      const one = first(value);
      if (isFailure(one)) return one;
      return typeof one === 'string' ? one : '';
    },
    examples: [example('T("HI")', '"HI"')],
  }),
];
