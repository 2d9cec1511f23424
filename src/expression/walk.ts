/** What a formula refers to: cells and ranges, names, calls. */

import type { ArrayNode, CallNode, CellNode, NameNode, Node, QuantityNode, RangeNode } from './tree.ts';

/** The nodes directly below, in the order written. */
export function childrenOf(node: Node): readonly Node[] {
  switch (node.type) {
    case 'quantity':
      return [node.magnitude];
    case 'array':
      return node.rows.flat();
    case 'call':
      return node.args;
    case 'unary':
    case 'percent':
      return [node.operand];
    case 'binary':
      return [node.left, node.right];
    case 'group':
      return [node.inner];
    case 'broken':
      return node.parts;
    default:
      return [];
  }
}

/** The node and all below it, in the order written (a parent before its parts). */
export function* nodesOf(node: Node): Generator<Node, void, undefined> {
  const pending = [node];
  for (let next = pending.pop(); next; next = pending.pop()) {
    yield next;
    pending.push(...childrenOf(next).toReversed());
  }
}

const collect = <T extends Node>(node: Node, fits: (each: Node) => each is T): T[] =>
  [...nodesOf(node)].filter(fits);

/** Cells and ranges, each time they are written. */
export const referencesOf = (node: Node): (CellNode | RangeNode)[] =>
  collect(node, (each): each is CellNode | RangeNode => each.type === 'cell' || each.type === 'range');

export const namesOf = (node: Node): NameNode[] =>
  collect(node, (each): each is NameNode => each.type === 'name');

export const callsOf = (node: Node): CallNode[] =>
  collect(node, (each): each is CallNode => each.type === 'call');

export const quantitiesOf = (node: Node): QuantityNode[] =>
  collect(node, (each): each is QuantityNode => each.type === 'quantity');

export const arraysOf = (node: Node): ArrayNode[] =>
  collect(node, (each): each is ArrayNode => each.type === 'array');
