import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { nodesOf, parse, print, tokenize, writtenReferences } from '../../src/expression/index.ts';
import { referencesOf, namesOf } from '../../src/expression/index.ts';
import { trees, withoutSpans } from './random-trees.ts';

const RUNS = { seed: 20_260_309, numRuns: 3000 };

test('F5 to F7 parsing the printed tree gives the tree', () => {
  fc.assert(
    fc.property(trees, (tree) => {
      const printed = print(tree);
      fc.pre(printed.length <= 2048);
      const { tree: again, problem } = parse(`=${printed}`);
      expect(problem, printed).toBeUndefined();
      expect(withoutSpans(again), printed).toEqual(withoutSpans(tree));
    }),
    RUNS,
  );
});

test('every node lies inside its parent, and a printed leaf stands where its span says', () => {
  fc.assert(
    fc.property(trees, (tree) => {
      const text = `=${print(tree)}`;
      fc.pre(text.length <= 2048);
      const parsed = parse(text).tree;
      if (!parsed) throw new Error(text);
      expect([parsed.from, parsed.to]).toEqual([1, text.length]);
      for (const node of nodesOf(parsed)) expect(text.slice(node.from, node.to)).toBe(print(node));
    }),
    RUNS,
  );
});

test('references found in tokens are those of the tree, with the same places', () => {
  fc.assert(
    fc.property(trees, (tree) => {
      const text = `=${print(tree)}`;
      fc.pre(text.length <= 2048);
      const parsed = parse(text).tree;
      if (!parsed) throw new Error(text);
      const ofTree = [...referencesOf(parsed), ...namesOf(parsed)].sort((a, b) => a.from - b.from);
      expect(writtenReferences(text)).toEqual(ofTree);
    }),
    RUNS,
  );
});

test('no text makes the reader throw, tokens come in order, and problems lie inside the text', () => {
  const piece = fc.constantFrom(
    ...'=;,()[]{}|:.%&^*/+-<>!?@#$_"\'“” \u00A0¹°'.split(''),
    '1',
    '2.5',
    '1e',
    'B3',
    '$B$',
    'Feeds',
    'mm',
    'mm/',
    'SUM(',
    'TRUE',
    '#N/A',
    '1/',
    'κ',
    '😀',
    'A2001',
    '__proto__',
  );
  fc.assert(
    fc.property(
      fc.array(piece, { maxLength: 25 }),
      fc.constantFrom('.' as const, ',' as const),
      (pieces, decimalMark) => {
        const text = pieces.join('');
        let last = 0;
        for (const { from, to } of tokenize(text, { decimalMark })) {
          expect(from).toBeGreaterThanOrEqual(last);
          expect(to).toBeGreaterThan(from);
          expect(text.slice(last, from).trim()).toBe('');
          last = to;
        }
        expect(text.slice(last).trim()).toBe('');
        const { tree, problem } = parse(text, { decimalMark });
        if (problem) {
          expect(problem.from).toBeGreaterThanOrEqual(0);
          expect(problem.to).toBeLessThanOrEqual(text.length);
        } else expect(parse(print(tree ?? { type: 'missing', from: 0, to: 0 })).problem).toBeUndefined();
      },
    ),
    { ...RUNS, numRuns: 6000 },
  );
});
