import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addressText,
  DELETED_REFERENCE,
  print,
  readAddress,
  rewriteReferences,
  writtenReferences,
} from '../../src/expression/index.ts';
import type { Reference } from '../../src/expression/index.ts';
import { trees } from './random-trees.ts';

const RUNS = { seed: 20_260_309, numRuns: 2000 };

const rewritten = (
  text: string,
  map: (reference: Reference) => Reference | typeof DELETED_REFERENCE | undefined,
): string => rewriteReferences(text, writtenReferences(text), map);

test('what is not a reference stays as it was typed: spaces, case, units, texts, unfinished text', () => {
  const text = '= sum( b3 ;2.50 mm ; "B9" ) *kc1.1 + B9 + h(';
  const down = rewritten(text, (node) => (node.type === 'cell' ? { ...node, row: node.row + 1 } : undefined));
  expect(down).toBe('= sum( B4 ;2.50 mm ; "B9" ) *kc1.1 + B10 + h(');
});

test('a title is written in quotation marks where it needs them, before a range once', () => {
  const text = '=Feeds.B3+Feeds.fz+SUM(Feeds.B3:Feeds.C9)+Tools.B3';
  const renamed = rewritten(text, (node) =>
    node.worksheet === 'Feeds' ? { ...node, worksheet: "Smith's feeds" } : undefined,
  );
  expect(renamed).toBe("='Smith''s feeds'.B3+'Smith''s feeds'.fz+SUM('Smith''s feeds'.B3:C9)+Tools.B3");
});

test('a deleted reference leaves #REF! with its title gone', () => {
  const gone = rewritten('=Feeds.B3*2+B3', (node) =>
    node.worksheet === undefined ? undefined : DELETED_REFERENCE,
  );
  expect(gone).toBe('=#REF!*2+B3');
});

test('references written as they are leave the text as it is', () => {
  fc.assert(
    fc.property(trees, (tree) => {
      const text = `=${print(tree)}`;
      expect(rewritten(text, (node) => node)).toBe(text);
      expect(rewritten(text, () => undefined)).toBe(text);
    }),
    RUNS,
  );
});

test('F6 addresses are exactly A1 to BL2000, and reading gives back what was written', () => {
  for (let column = 0; column < 64; column++) {
    for (const row of [0, 1, 9, 99, 999, 1999]) {
      expect(readAddress(addressText(column, row))).toEqual({
        column,
        row,
        columnFixed: false,
        rowFixed: false,
      });
    }
  }
  expect(addressText(63, 1999)).toBe('BL2000');
  for (const text of ['BM1', 'A0', 'A01', 'A2001', 'kc11', 'AAA1', '1A', 'A', '', 'A1 ', '$A$$1', 'Ä1']) {
    expect(readAddress(text), text).toBeUndefined();
  }
});
