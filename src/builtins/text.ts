/** Text functions. Numbers become text with up to 15 digits, a quantity is refused with the replacement (F13a). Positions count characters. */

import { asText, failure } from '../expression/index.ts';
import type { Failure, Scalar } from '../expression/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { list, logical, optional, plain, text, whole } from './parameter.ts';
import {
  LOGICAL,
  PLAIN_NUMBER,
  TEXT,
  isPlain,
  perUnit,
  refused,
  said,
  singles,
  unitOf,
} from './type-rules.ts';
import type { ArgumentType, UnitSystem, ValueType } from '../expression/index.ts';

/** Longest text a function makes. */
const LONGEST = 32767;

const limited = (result: string): string | Failure =>
  result.length > LONGEST
    ? failure('#LIMIT!', `the text would be longer than ${LONGEST} characters`)
    : result;

const characters = (value: string): string[] => [...value];
const negative = (name: string): Failure => failure('#VALUE!', `${name} must not be negative`);

/** Quantities in lists of texts are refused as everywhere. */
function textListType(call: string) {
  return (args: readonly ArgumentType[], reading: UnitSystem): ValueType => {
    for (const arg of args) {
      for (const type of singles(arg.type)) {
        if (type.type !== 'number' || isPlain(type)) continue;
        const unit = unitOf(type.kind, reading);
        return refused(
          `${call} takes text; ${said(arg, type.kind)}: write TEXT(${perUnit(arg, type.kind, reading)}; "0.0") & " ${unit}" in its place`,
        );
      }
    }
    return TEXT;
  };
}

function allTexts(grids: readonly { readonly grid: readonly (readonly Scalar[])[] }[]): string[] | Failure {
  const found: string[] = [];
  for (const cell of grids.flatMap(({ grid }) => grid.flat())) {
    const written = asText(cell);
    if (typeof written !== 'string') return written;
    found.push(written);
  }
  return found;
}

const changed = (
  name: string,
  section: string,
  summary: string,
  words: readonly string[],
  f: (value: string) => string,
  given: string,
  gives: string,
  source?: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'text',
    section,
    summary,
    searchWords: words,
    takes: [text('text')],
    gives: () => TEXT,
    evaluate: ([value]) => f(value),
    examples: [example(given, gives, source)],
  });

const search = (
  name: 'FIND' | 'SEARCH',
  section: string,
  words: string,
  fold: (value: string) => string,
  given: string,
  gives: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'text',
    section,
    summary: `The place of a text within another, ${words}; no wildcards`,
    searchWords: ['find', 'position', 'contains', 'search'],
    takes: [text('wanted'), text('text'), optional(plain('from'))],
    gives: () => PLAIN_NUMBER,
    evaluate([wanted, within, from = 1]) {
      const start = Math.trunc(from);
      const all = characters(fold(within));
      if (start < 1 || start > all.length + 1) return failure('#VALUE!', 'the start lies outside the text');
      const at = all
        .slice(start - 1)
        .join('')
        .indexOf(fold(wanted));
      if (at < 0) return failure('#VALUE!', `"${wanted.slice(0, 40)}" is not in the text`);
      return (
        start +
        characters(
          all
            .slice(start - 1)
            .join('')
            .slice(0, at),
        ).length
      );
    },
    examples: [example(given, gives)],
  });

/** Every word with a capital; anything but a letter starts a new word. */
const proper = (value: string): string =>
  value
    .toLowerCase()
    .replaceAll(
      /(^|[^\p{L}])(\p{L})/gu,
      (_, before: string, letter: string) => before + letter.toUpperCase(),
    );

export const TEXT_FUNCTIONS: readonly BuiltinDefinition[] = [
  changed(
    'LOWER',
    '6.20.14',
    'The text in small letters',
    ['small', 'case'],
    (x) => x.toLowerCase(),
    'LOWER("HELLObc7")',
    '"hellobc7"',
  ),
  changed(
    'UPPER',
    '6.20.27',
    'The text in capitals',
    ['capital', 'case'],
    (x) => x.toUpperCase(),
    'UPPER("Habc7")',
    '"HABC7"',
  ),
  changed(
    'PROPER',
    '6.20.16',
    'The text with a capital at each word',
    ['capital', 'title'],
    proper,
    'PROPER("HELLO.THERE")',
    '"Hello.There"',
  ),
  changed(
    'TRIM',
    '6.20.24',
    'The text without blanks at its ends, and single ones within',
    ['blanks', 'spaces'],
    (x) => x.replaceAll(/ +/g, ' ').replaceAll(/^ | $/g, ''),
    'TRIM(" HI ")',
    '"HI"',
  ),
  changed(
    'CLEAN',
    '6.20.4',
    'The text without control characters',
    ['control characters', 'unprintable'],
    (x) => x.replaceAll(/\p{Cc}/gu, ''),
    'CLEAN("Hi there")',
    '"Hi there"',
  ),
  builtin({
    name: 'LEN',
    group: 'text',
    section: '6.20.13',
    summary: 'The number of characters',
    searchWords: ['length', 'characters'],
    takes: [text('text')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([value]) => characters(value).length,
    examples: [example('LEN("Hi")', '2')],
  }),
  builtin({
    name: 'LEFT',
    group: 'text',
    section: '6.20.12',
    summary: 'The first characters of a text',
    searchWords: ['start', 'part', 'characters'],
    takes: [text('text'), optional(plain('length'))],
    gives: () => TEXT,
    evaluate: ([value, length = 1]) =>
      length < 0 ? negative('the length') : characters(value).slice(0, Math.trunc(length)).join(''),
    examples: [example('LEFT("Hello"; 2)', '"He"')],
  }),
  builtin({
    name: 'RIGHT',
    group: 'text',
    section: '6.20.19',
    summary: 'The last characters of a text',
    searchWords: ['end', 'part', 'characters'],
    takes: [text('text'), optional(plain('length'))],
    gives: () => TEXT,
    evaluate([value, length = 1]) {
      if (length < 0) return negative('the length');
      const all = characters(value);
      return all.slice(Math.max(0, all.length - Math.trunc(length))).join('');
    },
    examples: [example('RIGHT("Hello"; 2)', '"lo"')],
  }),
  builtin({
    name: 'MID',
    group: 'text',
    section: '6.20.15',
    summary: 'Characters from the middle of a text',
    searchWords: ['middle', 'part', 'substring'],
    takes: [text('text'), plain('from'), plain('length')],
    gives: () => TEXT,
    evaluate([value, from, length]) {
      if (from < 1) return failure('#VALUE!', 'the start counts from 1');
      if (length < 0) return negative('the length');
      const start = Math.trunc(from) - 1;
      return characters(value)
        .slice(start, start + Math.trunc(length))
        .join('');
    },
    examples: [example('MID("123456789"; 5; 3)', '"567"', 'by hand')],
  }),
  search('FIND', '6.20.9', 'capitals and small letters differing', (x) => x, 'FIND("B"; "abAB")', '4'),
  search('SEARCH', '6.20.20', 'in any case of letters', (x) => x.toLowerCase(), 'SEARCH("b"; "abcabc")', '2'),
  builtin({
    name: 'REPLACE',
    group: 'text',
    section: '6.20.17',
    summary: 'Puts a text in the place of some characters',
    searchWords: ['exchange', 'characters', 'position'],
    takes: [text('text'), plain('from'), plain('length'), text('new text')],
    gives: () => TEXT,
    evaluate([value, from, length, put]) {
      if (from < 1) return failure('#VALUE!', 'the start counts from 1');
      if (length < 0) return negative('the length');
      const all = characters(value);
      const start = Math.trunc(from) - 1;
      return limited(all.slice(0, start).join('') + put + all.slice(start + Math.trunc(length)).join(''));
    },
    examples: [example('REPLACE("123456789"; 5; 3; "Q")', '"1234Q89"')],
  }),
  builtin({
    name: 'SUBSTITUTE',
    group: 'text',
    section: '6.20.21',
    summary: 'Puts one text in the place of another, everywhere or at one occurrence',
    searchWords: ['exchange', 'replace'],
    takes: [text('text'), text('old text'), text('new text'), optional(whole('which'))],
    gives: () => TEXT,
    evaluate([value, old, put, which]) {
      if (which !== undefined && which < 1) return failure('#VALUE!', 'the occurrence counts from 1');
      if (old === '') return value;
      const parts = value.split(old);
      if (which === undefined) {
        const length = value.length + (parts.length - 1) * (put.length - old.length);
        return length > LONGEST ? limited(' '.repeat(LONGEST + 1)) : parts.join(put);
      }
      if (which >= parts.length) return value;
      return limited(parts.slice(0, which).join(old) + put + parts.slice(which).join(old));
    },
    examples: [example('SUBSTITUTE("121212"; "2"; "ab")', '"1ab1ab1ab"')],
  }),
  builtin({
    name: 'REPT',
    group: 'text',
    section: '6.20.18',
    summary: 'A text several times over',
    searchWords: ['repeat', 'times'],
    takes: [text('text'), plain('times')],
    gives: () => TEXT,
    evaluate([value, times]) {
      if (times < 0) return negative('the number of times');
      const count = Math.trunc(times);
      return value.length * count > LONGEST ? limited(' '.repeat(LONGEST + 1)) : value.repeat(count);
    },
    examples: [example('REPT("X"; 3)', '"XXX"')],
  }),
  builtin({
    name: 'CONCATENATE',
    group: 'text',
    section: '6.20.6',
    summary: 'Joins texts; the same as &',
    searchWords: ['join', 'append', 'combine'],
    takes: [],
    rest: list('text'),
    leastRest: 1,
    gives: textListType('CONCATENATE'),
    evaluate(_, grids) {
      const texts = allTexts(grids);
      return Array.isArray(texts) ? limited(texts.join('')) : texts;
    },
    examples: [example('CONCATENATE(2; 3)', '"23"', 'by hand')],
  }),
  builtin({
    name: 'TEXTJOIN',
    group: 'text',
    section: 'not in OpenFormula: as CONCATENATE with a separator',
    summary: 'Joins texts with a separator between them',
    searchWords: ['join', 'list', 'separator'],
    takes: [text('separator'), logical('skip empty')],
    rest: list('text'),
    leastRest: 1,
    gives: (args, reading) => textListType('TEXTJOIN')(args.slice(2), reading),
    evaluate([separator, skip], grids) {
      const texts = allTexts(grids);
      if (!Array.isArray(texts)) return texts;
      return limited(texts.filter((one) => !skip || one !== '').join(separator));
    },
    examples: [example('TEXTJOIN(", "; TRUE; "a"; ""; "b")', '"a, b"', 'by hand')],
  }),
  builtin({
    name: 'EXACT',
    group: 'text',
    section: '6.20.8',
    summary: 'TRUE if two texts are the same, case included',
    searchWords: ['compare', 'equal', 'same'],
    takes: [text('a'), text('b')],
    gives: () => LOGICAL,
    evaluate: ([a, b]) => a === b,
    examples: [example('EXACT("A"; "a")', 'FALSE')],
  }),
];
