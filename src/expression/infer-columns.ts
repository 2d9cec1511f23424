/** Types of ranges and inline arrays, column by column (F13b, F25). */

import type { Kind } from '../quantity/index.ts';
import { LOGICAL, NEUTRAL, numberOf, TEXT } from './infer-operators.ts';
import type { ArrayNode } from './tree.ts';
import type { FailedType, GridType, ScalarType, ValueType } from './type.ts';

export const columnsOf = (type: ValueType): readonly ScalarType[] =>
  type.type === 'grid' ? type.columns : [type];

export const firstFailure = (type: ValueType): FailedType | undefined =>
  columnsOf(type).find((column) => column.type === 'failed');

/** One type a column: numbers of the kind where any stand, else texts, else logicals. */
export function arrayType(node: ArrayNode, kind: Kind): GridType {
  const width = node.rows[0]?.length ?? 0;
  const columns = Array.from({ length: width }, (_, column): ScalarType => {
    const types = node.rows.map((row) => row[column]?.type);
    if (types.some((type) => type === 'number' || type === 'unary')) return numberOf(kind);
    return types.includes('text') ? TEXT : LOGICAL;
  });
  return { type: 'grid', columns, rows: node.rows.length };
}

export function mapColumns(type: ValueType, one: (column: ScalarType) => ScalarType): ValueType {
  if (type.type !== 'grid') return one(type);
  const columns = type.columns.map(one);
  return columns.find((column) => column.type === 'failed') ?? { type: 'grid', columns, rows: type.rows };
}

/** Operators between ranges work cell by cell; a single column serves for all. */
export function pairColumns(
  left: ValueType,
  right: ValueType,
  pair: (a: ScalarType, b: ScalarType) => ScalarType,
): ValueType {
  if (left.type !== 'grid' && right.type !== 'grid') return pair(left, right);
  const [a, b] = [columnsOf(left), columnsOf(right)];
  const width = Math.max(a.length, b.length);
  const rows = Math.max(left.type === 'grid' ? left.rows : 1, right.type === 'grid' ? right.rows : 1);
  const columns = Array.from({ length: width }, (_, column) =>
    pair(a[a.length === 1 ? 0 : column] ?? NEUTRAL, b[b.length === 1 ? 0 : column] ?? NEUTRAL),
  );
  return columns.find((column) => column.type === 'failed') ?? { type: 'grid', columns, rows };
}
