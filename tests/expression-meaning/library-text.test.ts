import * as fc from 'fast-check';
import { HyperFormula } from 'hyperformula';
import { expect, test } from 'vitest';
import { parse } from '../../src/expression/index.ts';
import { trees } from '../expression-syntax/random-trees.ts';
import { libraryNumber, libraryText } from './library-text.ts';
import type { LibraryMapping } from './library-text.ts';

const ids = new Map([
  ['Feeds', 'S1'],
  ['Tool trial', 'S2'],
]);

const MAPPING: LibraryMapping = {
  worksheet: (title) => (title === undefined ? undefined : (ids.get(title) ?? 'S9')),
  name: ({ name }) => `N_${[...name].map((letter) => letter.codePointAt(0)?.toString(36)).join('_')}`,
  call: (name) => `F_${name.replaceAll('.', '_')}`,
  operator: (operator) => (operator === '^' ? 'O_POWER' : operator === 'unary -' ? 'O_MINUS' : undefined),
  text: (value) => `F_TEXT(${[...value].map((letter) => letter.codePointAt(0)).join(',')})`,
  error: (code) => (code === '#UNIT!' || code === '#OCCUPIED!' ? 'F_ERROR()' : `(${code})`),
  currency: 'EUR',
};

const written = (text: string, mapping: LibraryMapping = MAPPING): string => {
  const { tree, problem } = parse(text);
  if (!tree || problem) throw new Error(`${text}: ${problem?.message}`);
  return libraryText(tree, mapping);
};

test.each([
  ['=12.5 mm', '0.0125'],
  ['=150 m/min', '2.5'],
  ['=3/1 in', '(3/0.0254)'],
  ['=20 degC', '293.15'],
  ['=1 lbf', '4.4482216152605'],
  ['=80 EUR/h', '0.022222222222222223'],
  ['=30 HRC', '30'],
  ['=5 %', '0.05'],
  ['=1e-9 mm', '1e-12'],
  ['=1E+25', '1e25'],
  ['=B3%', '(B3/100)'],
  ['=TRUE', 'TRUE()'],
  ['=FALSE()', 'FALSE()'],
  ['=-2^2', 'O_POWER(O_MINUS(2),2)'],
  ['=1+2*3', '(1+(2*3))'],
  ['=(a<>b)&"x"', '((N_2p<>N_2q)&"x")'],
  ['=$B$3+B$4', '($B$3+B$4)'],
  ["='Tool trial'.B3:C9", 'S2!B3:C9'],
  ['=mill.feed(Feeds.B3;;2)', 'F_MILL_FEED(S1!B3,,2)'],
  ['={1;-2|3;4} mm', '{0.001,-0.002;0.003,0.004}'],
  ['={20;-5} degC', '{293.15,268.15}'],
  ['="\\n"', '"\\n"'],
  ['="1/4"""', 'F_TEXT(49,47,52,34)'],
  ['="a\\"', 'F_TEXT(97,92)'],
  ['=#UNIT!', 'F_ERROR()'],
  ['=#N/A/2', '((#N/A)/2)'],
  ['=SUM((B3:C4))', 'F_SUM(B3:C4)'],
])('%s is written for the library as %s', (text, expected) => {
  expect(written(text)).toBe(expected);
});

test('numbers keep every bit, with a lower-case exponent', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      const text = libraryNumber(value);
      expect(text).toMatch(/^-?\d+(\.\d+)?(e-?\d+)?$/);
      expect(Number(text) === value).toBe(true);
    }),
    { seed: 20_260_309, numRuns: 3000 },
  );
  expect(() => libraryNumber(Number.NaN)).toThrow(RangeError);
});

test('what the library can not be told is a programming error', () => {
  expect(() => written('=3 blurbs')).toThrow('blurbs');
  const { tree } = parse('=1+');
  expect(() => tree && libraryText(tree, MAPPING)).toThrow(TypeError);
});

test('the library reads whatever a formula without problems is written as', () => {
  fc.assert(
    fc.property(trees, (tree) => {
      let text: string;
      try {
        text = libraryText(tree, MAPPING);
      } catch (error) {
        // Units that nobody knows, and numbers past the largest double.
        expect(String(error)).toMatch(/unknown|finite/);
        return;
      }
      expect(library.validateFormula(`=${text}`), text).toBe(true);
    }),
    { seed: 20_260_309, numRuns: 1000 },
  );
});

const library = HyperFormula.buildFromSheets(
  { S1: [], S2: [], S9: [] },
  { licenseKey: 'gpl-v3', maxRows: 2000, maxColumns: 64, useArrayArithmetic: true, precisionRounding: 12 },
);
