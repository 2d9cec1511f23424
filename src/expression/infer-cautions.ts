/** Factors that convert a quantity a second time (F18). */

import { DIMENSIONLESS } from '../quantity/index.ts';
import type { Caution } from './function-table.ts';
import { numberText } from './operators.ts';
import { print } from './print.ts';
import type { Node } from './tree.ts';
import type { NumberType } from './type.ts';

/** A factor of a chain of * and /. */
export interface Factor {
  readonly node: Node;
  readonly type: NumberType;
  /** Display unit, "" for plain numbers. */
  readonly unit: string;
}

const always = (): boolean => true;

/** The constants of unit conversion that quantities make superfluous, and beside what (F18). */
const CONVERSIONS: readonly { readonly value: number; readonly beside: (factor: Factor) => boolean }[] = [
  { value: 60, beside: ({ type }) => type.kind.dimension.time !== 0 },
  { value: 25.4, beside: ({ type }) => type.kind.dimension.length !== 0 },
  { value: 12, beside: ({ unit }) => /\bft|foot|feet|sfm/.test(unit) },
  ...[1000, 318.3, 3.82, 9549, 9550, 63025, 5252, 33000].map((value) => ({ value, beside: always })),
];

const withoutGroups = (node: Node): Node => (node.type === 'group' ? withoutGroups(node.inner) : node);

/** Operands of a chain of products and quotients, groups opened. */
export function factorsOf(node: Node): readonly Node[] {
  const inner = withoutGroups(node);
  return inner.type === 'binary' && (inner.operator === '*' || inner.operator === '/')
    ? [...factorsOf(inner.left), ...factorsOf(inner.right)]
    : [inner];
}

/** F18 for a whole chain whose result carries a dimension. */
export function conversionCautions(factors: readonly Factor[], result: NumberType): readonly Caution[] {
  if (result.kind.dimension === DIMENSIONLESS) return [];
  const quantities = factors.filter(({ type }) => type.kind.dimension !== DIMENSIONLESS);
  const cautions: Caution[] = [];
  for (const { node } of factors) {
    if (node.type !== 'number') continue;
    const conversion = CONVERSIONS.find(({ value }) => value === node.value);
    const beside = conversion && quantities.find(conversion.beside);
    if (!beside) continue;
    const text = print(beside.node);
    const named = beside.unit === '' || text.endsWith(` ${beside.unit}`) ? text : `${text} in ${beside.unit}`;
    cautions.push({
      key: `factor ${numberText(node.value)}`,
      text: `the factor ${numberText(node.value)} may convert twice: ${named} carries its unit already, and without the factor the dimension is the same`,
    });
  }
  return cautions;
}
