/** Every built-in function runs its own worked examples, and none of them can be made to throw or to give NaN. */

import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { BUILTINS, builtinTable } from '../../src/builtins/index.ts';
import { failure, isFailure, isGrid } from '../../src/expression/index.ts';
import type { Value } from '../../src/expression/index.ts';
import { SmallGrid } from './small-grid.ts';

const sheet = new SmallGrid(new Map());

/** Half a unit of the last digit printed. */
const tolerance = (gives: string, value: number): number => {
  const digits = /^-?\d*\.?(\d*)(?:[eE]([+-]?\d+))?/.exec(gives);
  const places = (digits?.[1]?.length ?? 0) - Number(digits?.[2] ?? 0);
  return gives.includes('.') && places >= 4 ? 0.6 * 10 ** -places : 1e-11 * Math.max(1, Math.abs(value));
};

test.each(BUILTINS.flatMap(({ name, examples }) => examples.map((one) => ({ name, ...one }))))(
  '$name: $given gives $gives ($source)',
  ({ given, gives }) => {
    const { value } = sheet.compute(`=${given}`);
    const { value: wanted } = sheet.compute(`=${gives}`);
    const unitless = /^[-\d.eE]+$/.test(gives);
    if (typeof wanted === 'number' && typeof value === 'number') {
      const scale = unitless ? tolerance(gives, wanted) : 1e-11 * Math.abs(wanted);
      expect(Math.abs(value - wanted)).toBeLessThanOrEqual(scale);
    } else {
      expect(value).toEqual(wanted);
    }
    // Figures in a unit say the dimension too.
    if (!unitless) {
      const a = sheet.compute(`=${given}`).inference?.type;
      const b = sheet.compute(`=${gives}`).inference?.type;
      if (a?.type === 'number' && b?.type === 'number') expect(a.kind.dimension).toBe(b.kind.dimension);
    }
  },
);

/** Expressions of the published cases in one spelling: no blanks, TRUE for TRUE(), exponents small. */
const spelled = (text: string): string =>
  text
    .replaceAll(/[“”]/g, '"')
    .replaceAll(/\b(TRUE|FALSE)\(\)/g, '$1')
    .replaceAll(/\s/g, '')
    .replace(/^=/, '');

test('an example that names the published cases as its source is one of them', () => {
  const { cases } = JSON.parse(
    readFileSync(new URL('../references/openformula.json', import.meta.url), 'utf8'),
  ) as {
    cases: { expression: string }[];
  };
  const published = new Set(cases.map(({ expression }) => spelled(expression)));
  const offenders = BUILTINS.flatMap(({ examples }) => examples)
    .filter(({ given, source }) => source === 'OpenFormula, test cases' && !published.has(spelled(given)))
    .map(({ given }) => given);
  expect(offenders).toEqual([]);
});

test('sections are those of the standard: the published cases carry them, the 2010 draft counting chapter 5 and rounding one further', () => {
  const { cases } = JSON.parse(
    readFileSync(new URL('../references/openformula.json', import.meta.url), 'utf8'),
  ) as {
    cases: { function: string; section: string }[];
  };
  const wanted = new Map<string, string>();
  for (const one of cases) {
    const draft = /2010 draft 5\.(\d+)\.(\d+)/.exec(one.section);
    const final = /(6\.\d+\.\d+)$/.exec(one.section)?.[1];
    if (draft) wanted.set(one.function, `6.${draft[1]}.${Number(draft[2]) - (draft[1] === '17' ? 1 : 0)}`);
    else if (final && !wanted.has(one.function)) wanted.set(one.function, final);
  }
  // Named beside another function in the cases' own headings.
  wanted.delete('ISERR');
  const offenders = BUILTINS.filter(({ name, section }) => wanted.has(name) && wanted.get(name) !== section);
  expect(offenders.map(({ name, section }) => `${name} ${section}, is ${wanted.get(name)}`)).toEqual([]);
});

test('every definition has a short summary, search words, a section, a readable signature and an example, and no name twice', () => {
  const offenders = BUILTINS.filter(
    ({ name, summary, searchWords, section, parameters, examples }) =>
      summary.length > 90 ||
      searchWords.length === 0 ||
      section === '' ||
      !parameters.startsWith(`${name}(`) ||
      examples.length === 0,
  ).map(({ name }) => name);
  expect(offenders).toEqual([]);
  expect(builtinTable().size).toBe(BUILTINS.length);
});

test('no clock, no chance, no reference made while computing is on the list', () => {
  for (const name of [
    'NOW',
    'TODAY',
    'RAND',
    'RANDBETWEEN',
    'INDIRECT',
    'OFFSET',
    'CELL',
    'HYPERLINK',
    'PMT',
    'DSUM',
  ]) {
    expect(builtinTable().has(name)).toBe(false);
  }
});

test('no function throws, gives NaN or an infinite number, whatever it is given', () => {
  const scalar = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }),
    fc.constantFrom(0, 1, 2, 3, -1, 0.5, 1e308, -1e308, 1e-300),
    fc.constantFrom('', 'a', '12', '<=3', '0.00', '🙂'),
    fc.boolean(),
    fc.constant(null),
    fc.constantFrom(failure('#N/A', 'none'), failure('#DIV/0!', 'zero')),
  );
  const grid = fc
    .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 4 }))
    .chain(([width, height]) =>
      fc.array(fc.array(scalar, { minLength: width, maxLength: width }), {
        minLength: height,
        maxLength: height,
      }),
    )
    .map((rows): Value => ({ grid: rows }));
  const value: fc.Arbitrary<Value> = fc.oneof(
    { weight: 3, arbitrary: scalar },
    { weight: 1, arbitrary: grid },
  );
  const sound = (cell: Value): boolean =>
    typeof cell === 'number'
      ? Number.isFinite(cell) && !Object.is(cell, -0)
      : cell !== undefined && (isFailure(cell) || !isGrid(cell) || cell.grid.flat().every(sound));
  for (const { name, table } of BUILTINS) {
    if (name === 'REPT') continue;
    const most = Math.min(table.arity[1], table.arity[0] + 3);
    fc.assert(
      fc.property(fc.array(value, { minLength: table.arity[0], maxLength: most }), (args) => {
        const result = table.evaluateLazily
          ? table.evaluateLazily(
              args.map((arg) => () => arg),
              {},
            )
          : table.evaluate(args, {});
        if (!sound(result))
          throw new Error(`${name}(${JSON.stringify(args)}) gives ${JSON.stringify(result)}`);
      }),
      { seed: 20260309, numRuns: 150 },
    );
  }
});

test('texts end at 32 767 characters', () => {
  for (const formula of [
    '=REPT("ab"; 20000)',
    '=CONCATENATE(REPT("a"; 20000); REPT("b"; 20000))',
    '=TEXTJOIN("-"; FALSE; REPT("a"; 32767); "b")',
    '=SUBSTITUTE(REPT("a"; 9999); "a"; "long text")',
  ]) {
    const { value } = sheet.compute(formula);
    expect(isFailure(value) && value.failure).toBe('#LIMIT!');
  }
  expect(sheet.compute('=LEN(REPT("a"; 32767))').value).toBe(32767);
});
