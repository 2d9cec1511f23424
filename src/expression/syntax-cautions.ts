/** Readings that differ from what mathematics or the trade expect: powers of signs, chained powers, fractions before a unit, chained comparisons. */

import type { Caution } from './function-table.ts';
import { print } from './print.ts';
import type { BinaryNode, Node, NumberNode, QuantityNode, Span } from './tree.ts';
import { nodesOf } from './walk.ts';

/** A caution with its place in the formula and the texts that end it. */
export interface SyntaxCaution extends Caution, Span {
  readonly from: number;
  readonly to: number;
  /** Writes the present reading so that nobody can mistake it. */
  readonly explicit?: string;
}

const grouped = (inner: Node): Node => ({ type: 'group', inner, from: inner.from, to: inner.to });

const caution = (
  key: string,
  node: Span,
  text: string,
  more: Pick<SyntaxCaution, 'replacement' | 'explicit'> = {},
): SyntaxCaution => ({ key: `${key} ${node.from}`, from: node.from, to: node.to, text, ...more });

/** An odd whole number, for which (-a)^n and -(a^n) are the same. */
const isOdd = (node: Node): boolean =>
  node.type === 'number' && Number.isInteger(node.value) && node.value % 2 === 1;

/** The operands of a ^ b ^ c in the order written. */
const chainOf = (node: Node): Node[] =>
  node.type === 'binary' && node.operator === '^' ? [...chainOf(node.left), node.right] : [node];

const raisedTo = (base: Node, exponent: Node): BinaryNode => ({
  type: 'binary',
  operator: '^',
  left: base,
  right: exponent,
  from: base.from,
  to: exponent.to,
});

/** A base with a sign before it, the sign taken off and put before the whole: what mathematics reads. */
function mathematicalPower([base, ...exponents]: readonly Node[]): Node | undefined {
  if (!base || exponents.length === 0) return base;
  const exponent = mathematicalPower(exponents);
  if (!exponent) return base;
  const upper = exponents.length > 1 ? grouped(exponent) : exponent;
  if (base.type !== 'unary') return raisedTo(base, upper);
  return { ...base, operand: grouped(raisedTo(base.operand, upper)) };
}

function power(node: BinaryNode): SyntaxCaution[] {
  const chain = chainOf(node);
  const [base = node, exponent] = chain;
  const signed = base.type === 'unary' && base.operator === '-';
  if (chain.length === 2 && (!signed || (exponent && isOdd(exponent)))) return [];
  const mathematical = mathematicalPower(chain);
  const explicit = print(
    chain.slice(1).reduce<Node>((left, right, index) => {
      return raisedTo(index > 0 || left.type === 'unary' ? grouped(left) : left, right);
    }, base),
  );
  const replacement = mathematical ? print(mathematical) : explicit;
  const how = chain.length === 2 ? 'the sign first' : 'from the left';
  const text = `${print(node)} is read as ${explicit}, ${how}; mathematics reads ${replacement}`;
  return [
    caution(chain.length === 2 ? 'sign before power' : 'chained powers', node, text, {
      explicit,
      replacement,
    }),
  ];
}

const isWhole = (node: Node): node is NumberNode => node.type === 'number' && /^\d+$/.test(node.digits);

/** The number that stands directly before the slash. */
function lastFactor(node: Node): Node {
  return node.type === 'binary' && (node.operator === '*' || node.operator === '/') ? node.right : node;
}

/** Numerator over denominator as a decimal, if it ends within ten places. */
function decimal(numerator: NumberNode, denominator: NumberNode): string | undefined {
  let rest = denominator.value;
  for (const factor of [2, 5]) while (rest > 0 && rest % factor === 0) rest /= factor;
  const value = numerator.value / denominator.value;
  const text = String(value);
  return numerator.value % rest === 0 && Number(value.toFixed(10)) === value && !text.includes('e')
    ? text
    : undefined;
}

/** 3/8 in (F7a). */
function fraction(node: BinaryNode, divisor: QuantityNode): SyntaxCaution[] {
  const numerator = lastFactor(node.left);
  const denominator = divisor.magnitude;
  if (!isWhole(numerator) || !isWhole(denominator) || denominator.value === 0) return [];
  const span = { from: numerator.from, to: node.to };
  const { unit } = divisor;
  const value = decimal(numerator, denominator);
  const replacement =
    value === undefined ? `(${numerator.digits}/${denominator.digits})*1 ${unit}` : `${value} ${unit}`;
  const explicit = `${numerator.digits}/(${denominator.digits} ${unit})`;
  const written = `${numerator.digits}/${denominator.digits} ${unit}`;
  const text = `${written} is read as ${numerator.digits} divided by ${denominator.digits} ${unit}; the fraction of the unit is ${replacement}`;
  return [caution('fraction before a unit', span, text, { explicit, replacement })];
}

const COMPARISONS: ReadonlySet<string> = new Set(['=', '<>', '<', '<=', '>', '>=']);

function comparison(node: BinaryNode): SyntaxCaution[] {
  const { left } = node;
  if (left.type !== 'binary' || !COMPARISONS.has(left.operator)) return [];
  const replacement = `AND(${print(left)}; ${print({ ...node, left: left.right })})`;
  const explicit = print({ ...node, left: grouped(left) });
  const text = `${print(node)} compares TRUE or FALSE with ${print(node.right)}; both conditions together are ${replacement}`;
  return [caution('chained comparison', node, text, { explicit, replacement })];
}

const JOINTS = /[/*](?=([\p{L}][\p{L}\p{M}\d_]*))/gu;

/** 12 N*m, and 3 mm/h where h is a name: a unit that could be a product or a quotient with a name (F7). */
function unitOrName(node: QuantityNode, isName: (name: string) => boolean): SyntaxCaution[] {
  const { unit } = node;
  if (unit.startsWith('1/')) return [];
  const joint = [...unit.matchAll(JOINTS)].find(([sign, word = '']) => sign === '*' || isName(word));
  if (!joint) return [];
  const [sign, word = ''] = joint;
  const magnitude = print(node.magnitude);
  const replacement = `${magnitude} ${unit.slice(0, joint.index)} ${sign} ${unit.slice(joint.index + 1)}`;
  const text = `${magnitude} ${unit} is read with the unit ${unit}; for the name ${word} leave spaces: ${replacement}`;
  const explicit = unit.includes('*') ? { explicit: `${magnitude} ${unit.replaceAll('*', '·')}` } : {};
  return [caution('unit or name', node, text, { replacement, ...explicit })];
}

/**
 * What a formula's writing alone asks to look at again; in the order written. `isName` tells of a word whether the notebook has it
 * as a name, so that a unit which looks like it is pointed at.
 */
export function cautionsOfSyntax(
  tree: Node,
  isName: (name: string) => boolean = () => false,
): SyntaxCaution[] {
  const found: SyntaxCaution[] = [];
  const inChain = new Set<Node>();
  for (const node of nodesOf(tree)) {
    if (node.type === 'quantity') found.push(...unitOrName(node, isName));
    if (node.type !== 'binary') continue;
    if (node.operator === '^') {
      inChain.add(node.left);
      if (!inChain.has(node)) found.push(...power(node));
    } else if (COMPARISONS.has(node.operator)) found.push(...comparison(node));
    else if (node.operator === '/' && node.right.type === 'quantity')
      found.push(...fraction(node, node.right));
  }
  return found.sort((a, b) => a.from - b.from);
}
