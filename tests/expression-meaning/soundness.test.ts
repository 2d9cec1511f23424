import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { builtinTable } from '../../src/builtins/index.ts';
import { compileScalar, inferType, isFailure, singleValue } from '../../src/expression/index.ts';
import type { Scalar } from '../../src/expression/index.ts';
import type { Dimension } from '../../src/quantity/index.ts';
import { CELLS, CONTEXT, treeOf } from './sample-notebook.ts';

const functions = builtinTable();
const context = { ...CONTEXT, functions };

/** Rows of the sample worksheet: two lengths, a time, a force times length, a mass-free speed, plain numbers. */
const ROWS = [3, 9, 4, 11, 18, 2, 20] as const;

const { formula } = fc.letrec<{ formula: string }>((tie) => {
  const part = tie('formula');
  return {
    formula: fc.oneof(
      { maxDepth: 4, withCrossShrink: true },
      fc.constantFrom(...ROWS.map((row) => `B${row}`), '2', '0'),
      fc.tuple(part, fc.constantFrom('+', '-', '*', '/'), part).map(([a, op, b]) => `(${a}${op}${b})`),
      fc.tuple(part, fc.constantFrom('2', '(1/2)', '-1', '3')).map(([a, n]) => `(${a})^${n}`),
      fc.tuple(fc.constantFrom('SQRT', 'ABS'), part).map(([f, a]) => `${f}(${a})`),
      fc
        .tuple(fc.constantFrom('MAX', 'MIN', 'SUM', 'AVERAGE'), part, part)
        .map(([f, a, b]) => `${f}(${a};${b})`),
      fc
        .tuple(part, fc.constantFrom('<', '>='), part, part, part)
        .map(([a, op, b, c, d]) => `IF(${a}${op}${b};${c};${d})`),
    ),
  };
});

/** Sizes of other base units; powers of 4, so that doubles scale without rounding. */
const SCALES = { length: 4, time: 16, mass: 1 / 4, temperature: 64, money: 4 };

const scaleOf = (dimension: Dimension): number =>
  (['length', 'time', 'mass', 'temperature', 'money'] as const).reduce(
    (product, base) => product * SCALES[base] ** dimension[base],
    1,
  );

function valueAt(text: string, values: readonly number[], scaled: boolean): Scalar {
  const { tree } = inferType(treeOf(`=${text}`), context);
  const inputs = ROWS.map((row, index) => {
    const type = CELLS.get(row);
    const value = values[index] ?? 1;
    return scaled && type?.type === 'number' ? value * scaleOf(type.kind.dimension) : value;
  });
  const slot = (row: number): number => ROWS.findIndex((each) => each === row + 1);
  return singleValue(
    compileScalar(tree, { functions, slot: (node) => ('row' in node ? slot(node.row) : -1) })(inputs),
  );
}

test('F11 F12 F17 a result scales with the base units as its inferred dimension says', () => {
  let checked = 0;
  fc.assert(
    fc.property(
      formula,
      fc.array(fc.double({ min: 0.5, max: 8, noNaN: true }), {
        minLength: ROWS.length,
        maxLength: ROWS.length,
      }),
      (text, values) => {
        const { type } = inferType(treeOf(`=${text}`), context);
        fc.pre(type.type === 'number');
        if (type.type !== 'number') return;
        const [plain, scaled] = [valueAt(text, values, false), valueAt(text, values, true)];
        if (isFailure(plain)) {
          expect(isFailure(scaled) && scaled.failure).toBe(plain.failure);
          return;
        }
        checked += 1;
        const expected = Number(plain) * scaleOf(type.kind.dimension);
        expect(Math.abs(Number(scaled) - expected), `${text}: ${type.kind.name}`).toBeLessThanOrEqual(
          1e-9 * Math.abs(expected),
        );
      },
    ),
    { seed: 20260311, numRuns: 3000, maxSkipsPerRun: 1000 },
  );
  expect(checked).toBeGreaterThan(2000);
});

test('F13 a clash in a part makes the whole formula a clash, whatever stands around it', () => {
  const around = [
    'IFERROR(#;1)',
    'IF(TRUE;1;#)',
    '1+#',
    'SUM(1;#)',
    'ISERROR(#)',
    '-(#)',
    '(#)&"x"',
    'IF(#>0;1;2)',
    'MAX(#;B3)',
  ];
  for (const frame of around) {
    const { failure } = inferType(treeOf(`=${frame.replace('#', '(B3+B4)')}`), context);
    expect(failure?.message, frame).toBe('adds a length, B3 in mm, to a time, B4 in min');
  }
});
