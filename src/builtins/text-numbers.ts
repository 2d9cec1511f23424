/** Text from numbers and codes: TEXT, FIXED, CHAR, CODE and their kin. */

import { failure } from '../expression/index.ts';
import type { Failure, Value } from '../expression/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { fixedText, formattedNumber } from './number-text.ts';
import { logical, optional, plain, text, whole } from './parameter.ts';
import { PLAIN_NUMBER, TEXT } from './type-rules.ts';

const codePoint = (value: number): string | Failure =>
  value >= 1 && value <= 0x10ffff && !(value >= 0xd800 && value <= 0xdfff)
    ? String.fromCodePoint(value)
    : failure('#VALUE!', `there is no character ${value}`);

const firstCode = (value: string): number | Failure =>
  value.codePointAt(0) ?? failure('#VALUE!', 'the text is empty');

/** TEXT hands texts and logicals through and formats numbers. */
function plainOrText(name: string) {
  const inner = plain(name, (unit) => ` & " ${unit}"`);
  return {
    ...inner,
    read(value: Value): number | string | boolean | Failure {
      if (typeof value === 'string' || typeof value === 'boolean') return value;
      return inner.read(value);
    },
  };
}

export const TEXT_NUMBERS: readonly BuiltinDefinition[] = [
  builtin({
    name: 'TEXT',
    group: 'text',
    section: '6.20.23',
    summary: 'A plain number as text in a format such as "0.00", "#,##0" or "0%"',
    searchWords: ['format', 'number to text', 'decimals'],
    takes: [plainOrText('value'), text('format')],
    gives: () => TEXT,
    evaluate([value, code]) {
      if (typeof value === 'string') return value;
      if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
      return (
        formattedNumber(value, code) ??
        failure('#VALUE!', `the format "${code.slice(0, 40)}" is not understood`)
      );
    },
    examples: [
      example('TEXT(12345.6789; "#,##0.00")', '"12,345.68"'),
      example('TEXT(0.5; "0%")', '"50%"', 'by hand'),
    ],
  }),
  builtin({
    name: 'FIXED',
    group: 'text',
    section: '6.20.10',
    summary: 'A plain number as text with a fixed number of decimals',
    searchWords: ['decimals', 'format', 'number to text'],
    takes: [plain('number'), optional(whole('decimals')), optional(logical('without groups'))],
    gives: () => TEXT,
    evaluate: ([value, decimals = 2, plainDigits = false]) =>
      decimals > 100 ? failure('#VALUE!', 'at most 100 decimals') : fixedText(value, decimals, !plainDigits),
    examples: [example('FIXED(12345; 3)', '"12,345.000"')],
  }),
  ...(['CHAR', 'UNICHAR'] as const).map((name) =>
    builtin({
      name,
      group: 'text',
      section: name === 'CHAR' ? '6.20.3' : '6.20.25',
      summary: 'The character with this Unicode number',
      searchWords: ['character', 'code', 'symbol'],
      takes: [whole('code')],
      gives: () => TEXT,
      evaluate: ([value]) => codePoint(value),
      examples: [name === 'CHAR' ? example('CHAR(65)', '"A"') : example('UNICHAR(8364)', '"€"')],
    }),
  ),
  ...(['CODE', 'UNICODE'] as const).map((name) =>
    builtin({
      name,
      group: 'text',
      section: name === 'CODE' ? '6.20.5' : '6.20.26',
      summary: 'The Unicode number of the first character',
      searchWords: ['character', 'code'],
      takes: [text('text')],
      gives: () => PLAIN_NUMBER,
      evaluate: ([value]) => firstCode(value),
      examples: [example(`${name}("A")`, '65', 'Unicode: U+0041')],
    }),
  ),
];
