/** Whatever is typed is stored, refused with words, or computed: typing never throws, and what is stored is stable. */

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  apply,
  canonicalContent,
  cellAt,
  emptyNotebook,
  enter,
  isRefusal,
  worksheetOf,
} from '../../src/document/index.ts';
import type { Notebook, TypingLocale } from '../../src/document/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import { readNotebook, writeNotebook } from '../../src/exchange/index.ts';
import { functionTable } from '../../src/catalogue.ts';

const FUNCTIONS = functionTable();

const piece = fc.oneof(
  fc.constantFrom(
    '=', '+', '-', '*', '/', '^', '%', '&', '(', ')', ';', ',', '.', ':', '|', '{', '}', '"', "'", '$', '<', '>', '<=', '<>', ' ', '\t',
    '\n', '\u00a0', '\u202f', '\u2212', '1', '12.5', '1,5', '1.234', '0', '1e5', '1e400', '3/8', '1 1/2', 'mm', ' mm', ' in', ' m/min',
    ' 1/min', ' kW/(cm3/min)', ' HRC', ' degC', ' EUR/h', ' xyzzy', 'A1', 'B2', '$C$3', 'A1:B3', 'BL2000', 'BM1', 'A1:BL2000', 'Sheet 1.A1',
    "'Sheet 1'.A1", 'TRUE', 'false', 'SUM(', 'IF(', 'IFERROR(', 'INDEX(', 'VLOOKUP(', 'COUNTIF(', 'SQRT(', 'ROUND(', 'TEXT(', 'REPT(', 'DATE(',
    '2026-03-09', '2026-02-30', '__proto__', 'constructor', 'toString', 'kc1.1', '#REF!', '#N/A', '😀', '\ud800', '\u0000', 'é', 'µm', 'φ',
  ), // prettier-ignore
  fc.constantFrom(...FUNCTIONS.keys()).map((name) => `${name}(`),
  fc.string({ unit: 'binary', maxLength: 4 }),
  fc.double().map(String),
);
const joined = fc.array(piece, { minLength: 1, maxLength: 14 }).map((pieces) => pieces.join(''));
const typedText = fc.oneof(
  joined,
  joined.map((text) => `=${text}`),
  joined.map((text) => `=(${text})`),
  fc.string({ unit: 'binary', maxLength: 30 }),
);
const locale: fc.Arbitrary<TypingLocale> = fc.record(
  {
    decimalMark: fc.constantFrom('.' as const, ',' as const),
    separator: fc.constantFrom(';' as const, 'both' as const),
  },
  { requiredKeys: [] },
);

test('F1 what was typed is stored in a form that stays when it is typed again', () => {
  fc.assert(
    fc.property(typedText, locale, (typed, where) => {
      const canonical = canonicalContent(typed, { ...where, currency: 'EUR' });
      if (isRefusal(canonical)) {
        expect(canonical.message).toMatch(/\.$/);
        return;
      }
      const again = canonicalContent(canonical.content, {
        decimalMark: '.',
        separator: ';',
        currency: 'EUR',
      });
      expect(again).toEqual({ content: canonical.content });
    }),
    { seed: 1961, numRuns: 6000 },
  );
});

test('anything typed into cells, one after another, is stored, computed and saved without a throw', () => {
  const entries = fc.array(
    fc.record({ row: fc.nat(3), column: fc.nat(2), typed: typedText, where: locale }),
    { minLength: 4, maxLength: 16 },
  );
  fc.assert(
    fc.property(entries, (list) => {
      const engine = createEngine({ functions: FUNCTIONS });
      let notebook: Notebook = emptyNotebook({ id: 'n1' });
      engine.open(notebook);
      const worksheet = notebook.worksheets[0]?.id ?? '';
      for (const { row, column, typed, where } of list) {
        const done = enter(notebook, { worksheet, row, column, typed, ...where });
        if (isRefusal(done)) {
          expect(done.message.length).toBeGreaterThan(10);
          continue;
        }
        notebook = apply(notebook, done.changes);
        engine.apply(done.changes);
        const { value, error } = engine.result({ worksheet, row, column });
        if (error) {
          expect(error.code).toMatch(/^#[A-Z/0]+[!?A0]?$/);
          expect(error.message.length).toBeGreaterThan(3);
          expect(value).toBeNull();
        } else if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
        if (cellAt(worksheetOf(notebook, worksheet), row, column)) engine.explain({ worksheet, row, column });
      }
      const read = readNotebook(writeNotebook(notebook));
      if (isRefusal(read)) throw new Error(read.message);
      expect(read.notebook).toEqual(notebook);
      // The rest still computes.
      const last = enter(notebook, { worksheet, row: 50, column: 50, typed: '=6*7' });
      if (isRefusal(last)) throw new Error(last.message);
      engine.apply(last.changes);
      expect(engine.result({ worksheet, row: 50, column: 50 }).value).toBe(42);
    }),
    { seed: 44, numRuns: 400 },
  );
});
