/** The tree that is evaluated in place of the one written: assumed units (F15) and the days of dates. */

import type { AssumedUnit } from './function-table.ts';
import type { Outcome } from './infer-operators.ts';
import type { AssumedNote } from './inference-context.ts';
import { print } from './print.ts';
import type { BinaryNode, Node, QuantityNode, Span } from './tree.ts';

const SECONDS_A_DAY = 86_400;

export const spanOf = ({ from, to }: Span): Span => ({ from, to });

const numberNode = (value: number, span: Span): Node => ({
  type: 'number',
  digits: String(value),
  value,
  ...spanOf(span),
});

const grouped = (node: Node): Node => ({ type: 'group', inner: node, ...spanOf(node) });

/** Dates count days, times seconds: the tree carries the factor. */
export function inSeconds(node: BinaryNode, days: Outcome['days']): Node {
  const day = numberNode(SECONDS_A_DAY, node);
  const scaled = (operator: '*' | '/', operand: Node): Node => ({
    type: 'binary',
    operator,
    left: grouped(operand),
    right: day,
    ...spanOf(operand),
  });
  if (days === 'difference') return scaled('*', node);
  if (days === 'left') return { ...node, left: scaled('/', node.left) };
  return days === 'right' ? { ...node, right: scaled('/', node.right) } : node;
}

/** F15: a plain number with its unit; what is no literal is multiplied by it, blanks and texts staying as they are. */
export function withUnitRead(node: Node, { unit }: AssumedUnit): Node {
  const unitSpan = { from: node.to, to: node.to };
  if (node.type === 'number' || node.type === 'array') {
    return { type: 'quantity', magnitude: node, unit, unitSpan, ...spanOf(node) };
  }
  if (node.type === 'group' && node.inner.type === 'number') {
    return { ...node, inner: withUnitRead(node.inner, { argument: 0, unit }) };
  }
  const magnitude = { type: 'number', digits: '1', value: 1, ...unitSpan } as const;
  const one: QuantityNode = { type: 'quantity', magnitude, unit, unitSpan, ...unitSpan };
  return { type: 'binary', operator: '*', left: grouped(node), right: one, reads: true, ...spanOf(node) };
}

const isWritten = (node: Node): boolean =>
  node.type === 'number' ||
  node.type === 'array' ||
  (node.type === 'unary' && isWritten(node.operand)) ||
  (node.type === 'percent' && isWritten(node.operand)) ||
  (node.type === 'group' && isWritten(node.inner));

export function assumedNote(written: Node, unit: string): AssumedNote {
  const text = print(written);
  return {
    text: isWritten(written) ? `${text} read as ${text} ${unit}` : `${text} read in ${unit}`,
    unit,
    span: spanOf(written),
  };
}

/** Arguments of a call with what its inference has to tell the computation, after all that it may take. */
export function toldArguments(
  args: readonly Node[],
  most: number,
  texts: readonly string[] | undefined,
  { to }: Span,
): readonly Node[] {
  if (!texts || texts.length === 0) return args;
  const span = { from: to, to };
  const left: Node[] = Array.from({ length: most - args.length }, () => ({ type: 'missing', ...span }));
  return [...args, ...left, ...texts.map((value): Node => ({ type: 'text', value, ...span }))];
}
