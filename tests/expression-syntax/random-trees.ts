/** Random syntax trees as formulas without problems have them: brackets wherever the precedence asks for them. */

import * as fc from 'fast-check';
import { PRECEDENCE } from '../../src/expression/index.ts';
import type { ArrayNode, BinaryOperator, Corner, Node, NumberNode } from '../../src/expression/index.ts';

const SPAN = { from: 0, to: 0 };

const digits = fc.oneof(
  fc.nat(9999).map(String),
  fc.tuple(fc.nat(999), fc.nat(999)).map(([whole, part]) => `${whole}.${part}`),
  fc.nat(99).map((part) => `.${part}`),
  fc.tuple(fc.nat(99), fc.integer({ min: -30, max: 30 })).map(([whole, power]) => `${whole}e${power}`),
);

export const numbers: fc.Arbitrary<NumberNode> = digits.map((text) => ({
  type: 'number',
  digits: text,
  value: Number(text),
  ...SPAN,
}));

export const corners: fc.Arbitrary<Corner> = fc.record({
  column: fc.nat(63),
  row: fc.nat(1999),
  columnFixed: fc.boolean(),
  rowFixed: fc.boolean(),
});

export const titles = fc.constantFrom(
  'Feeds',
  'Tool trial',
  "Smith's",
  'B3',
  'v1.2',
  'Größe',
  '42',
  'a_b',
  '__proto__',
);
const names = fc.constantFrom(
  'fz',
  'kc11',
  'kc1.1',
  'κ_r',
  'Größe',
  'BM1',
  'A2001',
  'mm',
  'h',
  'a1.5b',
  'D_1',
  'constructor',
);
const units = fc.constantFrom(
  'mm',
  'mm/min',
  'm/s^2',
  'kW/(cm3/min)',
  'N·m',
  '1/min',
  '°',
  'µm',
  'EUR/h',
  'HRC',
  'm2',
  'in',
  'mmm/rev',
);
const functions = fc.constantFrom('SUM', 'MILL.CHIP_MAX', 'LOG10', 'IF', 'N');
const text = fc.string({ maxLength: 12 }).map((value): Node => ({ type: 'text', value, ...SPAN }));
const logical = fc.boolean().map((value): Node => ({ type: 'logical', value, ...SPAN }));

const element = fc.oneof(
  numbers,
  numbers.map((operand) => ({ type: 'unary' as const, operator: '-' as const, operand, ...SPAN })),
  fc.string({ maxLength: 5 }).map((value) => ({ type: 'text' as const, value, ...SPAN })),
  fc.boolean().map((value) => ({ type: 'logical' as const, value, ...SPAN })),
);

const arrays: fc.Arbitrary<ArrayNode> = fc
  .integer({ min: 1, max: 3 })
  .chain((width) =>
    fc.array(fc.array(element, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 3 }),
  )
  .map((rows) => ({ type: 'array', rows, ...SPAN }));

const quantities: fc.Arbitrary<Node> = fc
  .tuple(fc.oneof(numbers, arrays), units)
  .map(([magnitude, unit]) => ({ type: 'quantity', magnitude, unit, unitSpan: SPAN, ...SPAN }));

const qualified = <T extends object>(node: fc.Arbitrary<T>) =>
  fc.tuple(node, fc.option(titles, { nil: undefined })).map(([each, worksheet]) => {
    return worksheet === undefined ? each : { ...each, worksheet };
  });

export const references: fc.Arbitrary<Node> = fc.oneof(
  qualified(corners).map((corner): Node => ({ type: 'cell', ...corner, ...SPAN })),
  qualified(fc.record({ start: corners, end: corners })).map((both): Node => ({
    type: 'range',
    ...both,
    ...SPAN,
  })),
  qualified(names.map((name) => ({ name }))).map((name): Node => ({ type: 'name', ...name, ...SPAN })),
);

const errors = fc
  .constantFrom(
    '#N/A' as const,
    '#DIV/0!' as const,
    '#REF!' as const,
    '#UNIT!' as const,
    '#OCCUPIED!' as const,
  )
  .map((code): Node => ({ type: 'error', code, ...SPAN }));

const tightness = (node: Node): number => {
  if (node.type === 'binary') return PRECEDENCE[node.operator];
  return node.type === 'percent' ? 6 : node.type === 'unary' ? 7 : 8;
};

const atLeast = (node: Node, least: number): Node =>
  tightness(node) < least ? { type: 'group', inner: node, ...SPAN } : node;

const OPERATORS: readonly BinaryOperator[] = ['^', '*', '/', '+', '-', '&', '=', '<>', '<', '<=', '>', '>='];

/** A formula's tree with spans of 0. */
export const trees: fc.Arbitrary<Node> = fc.letrec<{ node: Node }>((tie) => ({
  node: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.oneof(numbers, quantities, arrays, text, logical, errors, references),
    fc.tuple(fc.constantFrom(...OPERATORS), tie('node'), tie('node')).map(([operator, left, right]): Node => {
      const own = PRECEDENCE[operator];
      return { type: 'binary', operator, left: atLeast(left, own), right: atLeast(right, own + 1), ...SPAN };
    }),
    fc.tuple(fc.constantFrom('-' as const, '+' as const), tie('node')).map(([operator, operand]): Node => {
      return { type: 'unary', operator, operand: atLeast(operand, 7), ...SPAN };
    }),
    tie('node').map((operand): Node => ({ type: 'percent', operand: atLeast(operand, 6), ...SPAN })),
    tie('node').map((inner): Node => ({ type: 'group', inner, ...SPAN })),
    fc
      .tuple(
        functions,
        fc.array(fc.oneof(tie('node'), fc.constant<Node>({ type: 'missing', ...SPAN })), { maxLength: 4 }),
      )
      .map(([name, args]): Node => {
        const some = args.length === 1 && args[0]?.type === 'missing' ? [] : args;
        return { type: 'call', name, nameSpan: SPAN, args: some, ...SPAN };
      }),
  ),
})).node;

/** The tree without its places. */
export function withoutSpans(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(withoutSpans);
  if (typeof node !== 'object' || node === null) return node;
  const entries = Object.entries(node).filter(
    ([key]) => !['from', 'to', 'nameSpan', 'unitSpan'].includes(key),
  );
  return Object.fromEntries(entries.map(([key, value]) => [key, withoutSpans(value)]));
}
