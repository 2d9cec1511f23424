/** Texts of a definition as trees: read once, conditions made tolerant, dimensional constants rescaled on wish. */

import { parse, quantityValue, type BinaryNode, type Node } from '../expression/index.ts';
import { isUnknownUnit, parseUnit, type Dimension } from '../quantity/index.ts';

/** Multiplies an SI value of a dimension, as if the base units had other sizes. */
export type Rescale = (si: number, dimension: Dimension) => number;

/** Limits of lengths and the like are compared with this relative tolerance. */
export const TOLERANCE = 1e-9;

/** The tree of an equation; throws on a text that can not be read, an error of the definition. */
export function equationTree(text: string): Node {
  const { tree, problem } = parse(text);
  if (!tree || problem) throw new Error(`equation "${text}": ${problem?.message ?? 'empty'}`);
  return tree;
}

/** The same tree with every node replaced, from the leaves up. */
function mapped(node: Node, change: (node: Node) => Node): Node {
  switch (node.type) {
    case 'unary':
    case 'percent':
      return change({ ...node, operand: mapped(node.operand, change) });
    case 'group':
      return change({ ...node, inner: mapped(node.inner, change) });
    case 'binary':
      return change({ ...node, left: mapped(node.left, change), right: mapped(node.right, change) });
    case 'call':
      return change({ ...node, args: node.args.map((arg) => mapped(arg, change)) });
    default:
      return change(node);
  }
}

const span = { from: 0, to: 0 };
const numberNode = (value: number): Node => ({ type: 'number', digits: String(value), value, ...span });
const call = (name: string, ...args: Node[]): Node => ({ type: 'call', name, nameSpan: span, args, ...span });
const binary = (operator: BinaryNode['operator'], left: Node, right: Node): Node => ({
  type: 'binary',
  operator,
  left,
  right,
  ...span,
});

/** a exceeds b by more than the tolerance. */
const exceeds = (a: Node, b: Node): Node =>
  binary(
    '>',
    binary('-', a, b),
    binary('*', numberNode(TOLERANCE), call('MAX', call('ABS', a), call('ABS', b))),
  );

/** Order comparisons allow for the tolerance: equality at a limit is equality, rounding or not. */
export function tolerant(tree: Node): Node {
  return mapped(tree, (node) => {
    if (node.type !== 'binary') return node;
    const { operator, left, right } = node;
    if (operator === '>') return exceeds(left, right);
    if (operator === '<') return exceeds(right, left);
    if (operator === '>=') return call('NOT', exceeds(right, left));
    if (operator === '<=') return call('NOT', exceeds(left, right));
    return node;
  });
}

/** Quantities written in the tree become plain SI numbers, rescaled by their dimension. */
export function rescaledTree(tree: Node, rescale: Rescale): Node {
  return mapped(tree, (node) => {
    if (node.type !== 'quantity') return node;
    const unit = parseUnit(node.unit);
    const value = quantityValue(node);
    if (isUnknownUnit(unit) || typeof value !== 'number') throw new Error(`no quantity in ${node.unit}`);
    return numberNode(rescale(value, unit.kind.dimension));
  });
}
