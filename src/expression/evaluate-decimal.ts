/** Formulas and equations with 34 digits: the oracle of tests against doubles. The only import of decimal.js in this folder. */

import { Decimal } from 'decimal.js';
import { exactSI, isUnknownUnit, parseUnit } from '../quantity/index.ts';
import { CLOSENESS, holds, isComparison, textOrder } from './operators.ts';
import type {
  BinaryNode,
  BinaryOperator,
  CallNode,
  CellNode,
  NameNode,
  Node,
  QuantityNode,
  RangeNode,
} from './tree.ts';
import { failure, isFailure, isGrid } from './value.ts';
import type { Failure, Value } from './value.ts';

const DIGITS = 34;
const D = Decimal.clone({ precision: DIGITS, rounding: Decimal.ROUND_HALF_EVEN });

/** Pi to 40 digits (OEIS A000796). */
const PI = new D('3.141592653589793238462643383279502884197');

export interface DecimalScope {
  /** Value of an operand: doubles are taken bit by bit; a decimal text under `exact` digit by digit; undefined is unknown. */
  operand(node: CellNode | RangeNode | NameNode): Value | { readonly exact: string } | undefined;
  readonly currency?: string;
}

/** A number with all its digits and the double nearest to it, or the value as it is. */
export type DecimalResult =
  | { readonly digits: string; readonly value: number }
  | string
  | boolean
  | null
  | Failure;

type Item = Decimal | string | boolean | null;
type Held = Item | readonly Item[];

/** Ends the evaluation; caught at its door. */
class Refused extends Error {
  constructor(readonly reason: Failure) {
    super(reason.message);
  }
}

function refuse(code: Failure['failure'], message: string): never {
  throw new Refused(failure(code, message));
}

const isList = (held: Held): held is readonly Item[] => Array.isArray(held);

/** The exact value of a double. */
function exactly(value: number): Decimal {
  let [mantissa, halvings] = [value, 0];
  while (!Number.isInteger(mantissa)) {
    mantissa *= 2;
    halvings += 1;
  }
  return new D(BigInt(mantissa).toString()).div(new D(2).pow(halvings));
}

function itemOf(value: Value): Item {
  if (isFailure(value)) throw new Refused(value);
  if (isGrid(value)) return refuse('#VALUE!', 'several values stand where one is needed');
  return typeof value === 'number' ? exactly(value) : value;
}

function numberOf(held: Held): Decimal {
  if (isList(held)) return refuse('#VALUE!', 'several values stand where one is needed');
  if (typeof held === 'string')
    return refuse('#VALUE!', `the text "${held}" stands where a number is needed`);
  return typeof held === 'boolean' || held === null ? new D(Number(held ?? 0)) : held;
}

function checked(value: Decimal): Decimal {
  return value.isFinite() ? value : refuse('#NUM!', 'no number results');
}

/** Sums smaller than 1e-13 of the left operand are 0, as with doubles. */
const snapped = (sum: Decimal, left: Decimal): Decimal =>
  sum.abs().lt(left.abs().times(CLOSENESS)) ? new D(0) : sum;

function order(a: Decimal, b: Decimal): number {
  const near = D.max(a.abs(), b.abs()).times(CLOSENESS);
  return a.minus(b).abs().lte(near) ? 0 : a.cmp(b);
}

const rank = (item: Item): number => (typeof item === 'string' ? 1 : typeof item === 'boolean' ? 2 : 0);

function itemOrder(left: Item, right: Item): number {
  const like = (other: Item): Item =>
    typeof other === 'string' ? '' : typeof other === 'boolean' ? false : new D(0);
  const [a, b] = [left ?? like(right), right ?? like(left)];
  if (typeof a === 'string' && typeof b === 'string') return textOrder(a, b);
  if (rank(a) !== rank(b)) return Math.sign(rank(a) - rank(b));
  return order(numberOf(a), numberOf(b));
}

const divided = (a: Decimal, b: Decimal): Decimal =>
  b.isZero() ? refuse('#DIV/0!', 'division by zero') : a.div(b);

function raised(a: Decimal, b: Decimal): Decimal {
  if (a.isZero() && b.isNegative() && !b.isZero()) refuse('#DIV/0!', 'division by zero');
  return checked(a.pow(b));
}

function withOperator(operator: BinaryOperator, left: Item, right: Item): Item {
  if (isComparison(operator)) return holds(operator, itemOrder(left, right));
  if (operator === '&') return refuse('#VALUE!', 'joining texts is no matter of decimals');
  const [a, b] = [numberOf(left), numberOf(right)];
  switch (operator) {
    case '+':
      return snapped(a.plus(b), a);
    case '-':
      return snapped(a.minus(b), a);
    case '*':
      return a.times(b);
    case '/':
      return divided(a, b);
    default:
      return raised(a, b);
  }
}

/** Rule E2. */
const floor = (x: Decimal): Decimal => x.times('1.000000000001').plus('1e-9').floor();
const ceiling = (x: Decimal): Decimal => x.times('0.999999999999').minus('1e-9').ceil();
const truncated = (x: Decimal): Decimal => (x.isNegative() ? floor(x.neg()).neg() : floor(x));
const outwards = (x: Decimal): Decimal => (x.isNegative() ? ceiling(x.neg()).neg() : ceiling(x));
const nearest = (x: Decimal): Decimal => x.toDecimalPlaces(0, Decimal.ROUND_HALF_UP);

const withinOne = (x: Decimal): Decimal =>
  x.abs().gt(1) && x.abs().minus(1).lte(CLOSENESS) ? new D(x.isNegative() ? -1 : 1) : x;

const UNARY: ReadonlyMap<string, (x: Decimal) => Decimal> = new Map<string, (x: Decimal) => Decimal>([
  ['ABS', (x) => x.abs()],
  ['SQRT', (x) => x.sqrt()],
  ['SIN', (x) => x.sin()],
  ['COS', (x) => x.cos()],
  ['TAN', (x) => x.tan()],
  ['ASIN', (x) => withinOne(x).asin()],
  ['ACOS', (x) => withinOne(x).acos()],
  ['ATAN', (x) => x.atan()],
  ['SINH', (x) => x.sinh()],
  ['COSH', (x) => x.cosh()],
  ['TANH', (x) => x.tanh()],
  ['EXP', (x) => x.exp()],
  ['LN', (x) => x.ln()],
  ['LOG10', (x) => x.log(10)],
  ['LOG', (x) => x.log(10)],
  ['SIGN', (x) => new D(x.isZero() ? 0 : x.isNegative() ? -1 : 1)],
  ['INT', floor],
  ['FLOOR', floor],
  ['CEILING', ceiling],
  ['ROUND', nearest],
  ['ROUNDUP', outwards],
  ['ROUNDDOWN', truncated],
  ['TRUNC', truncated],
  ['RADIANS', (x) => x.times(PI).div(180)],
  ['DEGREES', (x) => x.times(180).div(PI)],
]);

const atDigits =
  (round: (x: Decimal) => Decimal) =>
  (x: Decimal, digits: Decimal): Decimal => {
    const scale = new D(10).pow(digits.trunc());
    return round(x.times(scale)).div(scale);
  };

const BINARY: ReadonlyMap<string, (x: Decimal, y: Decimal) => Decimal> = new Map<
  string,
  (x: Decimal, y: Decimal) => Decimal
>([
  ['ATAN2', (x, y) => (x.isZero() && y.isZero() ? refuse('#DIV/0!', 'no direction') : D.atan2(y, x))],
  ['POWER', raised],
  ['LOG', (x, base) => x.log(base)],
  ['MOD', (x, divisor) => x.minus(divisor.times(floor(divided(x, divisor))))],
  ['FLOOR', (x, step) => floor(divided(x, step)).times(step)],
  ['CEILING', (x, step) => ceiling(divided(x, step)).times(step)],
  ['ROUND', atDigits(nearest)],
  ['ROUNDUP', atDigits(outwards)],
  ['ROUNDDOWN', atDigits(truncated)],
  ['TRUNC', atDigits(truncated)],
]);

const total = (numbers: readonly Decimal[]): Decimal => numbers.reduce((sum, x) => sum.plus(x), new D(0));

/** Functions of numbers, lists opened. */
const FOLDED: ReadonlyMap<string, (numbers: readonly Decimal[]) => Decimal> = new Map<
  string,
  (numbers: readonly Decimal[]) => Decimal
>([
  ['SUM', total],
  ['SUMPRODUCT', total],
  ['SUMSQ', (numbers) => total(numbers.map((x) => x.times(x)))],
  ['PRODUCT', (numbers) => numbers.reduce((product, x) => product.times(x), new D(1))],
  ['MIN', (numbers) => D.min(...numbers)],
  ['MAX', (numbers) => D.max(...numbers)],
  ['AVERAGE', (numbers) => divided(total(numbers), new D(numbers.length))],
  ['COUNT', (numbers) => new D(numbers.length)],
]);

class Evaluation {
  constructor(private readonly scope: DecimalScope) {}

  private quantity(node: QuantityNode): Held {
    const unit = parseUnit(node.unit, this.scope.currency);
    if (isUnknownUnit(unit)) return refuse('#UNIT!', `unknown unit ${node.unit}`);
    const inUnit = (digits: string): Decimal => {
      const { numerator, denominator } = exactSI(digits, unit);
      return new D(numerator.toString()).div(denominator.toString());
    };
    const { magnitude } = node;
    if (magnitude.type === 'number') return inUnit(magnitude.digits);
    const held = this.held(magnitude);
    const scaled = (item: Item): Item => (item instanceof Decimal ? inUnit(item.toFixed()) : item);
    return isList(held) ? held.map(scaled) : scaled(held);
  }

  private operand(node: CellNode | RangeNode | NameNode): Held {
    const value = this.scope.operand(node);
    if (value === undefined) return refuse('#NAME?', 'an operand is unknown');
    if (typeof value === 'object' && value !== null && 'exact' in value) return new D(value.exact);
    return isGrid(value) ? value.grid.flatMap((row) => row.map(itemOf)) : itemOf(value);
  }

  private binary(node: BinaryNode): Held {
    const left = this.held(node.left);
    const right = this.held(node.right);
    if (!isList(left) && !isList(right)) return withOperator(node.operator, left, right);
    const length = isList(left) ? left.length : isList(right) ? right.length : 1;
    if (isList(left) && isList(right) && right.length !== length)
      refuse('#VALUE!', 'the lists differ in length');
    const at = (held: Held, index: number): Item => (isList(held) ? (held[index] ?? null) : held);
    return Array.from({ length }, (_, i) => withOperator(node.operator, at(left, i), at(right, i)));
  }

  private truth(node: Node): boolean {
    const held = this.held(node);
    return typeof held === 'boolean' ? held : !numberOf(held).isZero();
  }

  private logic(node: CallNode): Held | undefined {
    const { name, args } = node;
    switch (name) {
      case 'IF': {
        const [condition, then, otherwise] = args;
        if (!condition || !then) return refuse('#VALUE!', 'IF needs a condition and a value');
        if (this.truth(condition)) return this.held(then);
        return otherwise ? this.held(otherwise) : false;
      }
      case 'AND':
        return args.map((arg) => this.truth(arg)).every(Boolean);
      case 'OR':
        return args.map((arg) => this.truth(arg)).some(Boolean);
      case 'XOR':
        return args.filter((arg) => this.truth(arg)).length % 2 === 1;
      case 'NOT':
        return args[0] ? !this.truth(args[0]) : undefined;
      case 'TRUE':
      case 'FALSE':
        return name === 'TRUE';
      case 'ISBLANK':
        return args[0] ? this.held(args[0]) === null : undefined;
      default:
        return undefined;
    }
  }

  private call(node: CallNode): Held {
    if (node.name === 'PI') return PI;
    const logical = this.logic(node);
    if (logical !== undefined) return logical;
    const args = node.args.map((arg) => this.held(arg));
    const [first = null, second = null] = args;
    if (node.name === 'INDEX' && isList(first))
      return first[numberOf(second).toNumber() - 1] ?? refuse('#NUM!', 'no such item');
    const unary = args.length === 1 ? UNARY.get(node.name) : undefined;
    if (unary) return checked(unary(numberOf(first)));
    const binary = args.length === 2 ? BINARY.get(node.name) : undefined;
    if (binary) return checked(binary(numberOf(first), numberOf(second)));
    const folded = FOLDED.get(node.name);
    if (!folded) return refuse('#NAME?', `${node.name} has no decimal form`);
    if (node.name === 'SUMPRODUCT') {
      const lists = args.map((held) => (isList(held) ? held : [held]));
      const products = (lists[0] ?? []).map((_, i) => lists.map((list) => numberOf(list[i] ?? null)));
      return total(products.map((factors) => factors.reduce((product, x) => product.times(x), new D(1))));
    }
    return checked(folded(args.flatMap((held) => (isList(held) ? held.map(numberOf) : [numberOf(held)]))));
  }

  held(node: Node): Held {
    switch (node.type) {
      case 'number':
        return new D(node.digits);
      case 'quantity':
        return this.quantity(node);
      case 'text':
      case 'logical':
        return node.value;
      case 'missing':
        return null;
      case 'error':
        return refuse(node.code, node.message ?? `${node.code} is written in the formula`);
      case 'broken':
        return refuse('#VALUE!', 'the formula is unfinished');
      case 'array':
        return node.rows.flatMap((row) => row.map((item) => this.held(item) as Item));
      case 'cell':
      case 'range':
      case 'name':
        return this.operand(node);
      case 'group':
        return this.held(node.inner);
      case 'unary': {
        const held = this.held(node.operand);
        if (node.operator === '+') return held;
        return isList(held) ? held.map((item) => numberOf(item).neg()) : numberOf(held).neg();
      }
      case 'percent':
        return numberOf(this.held(node.operand)).div(100);
      case 'binary':
        return this.binary(node);
      case 'call':
        return this.call(node);
    }
  }
}

/** Evaluates a tree with 34 significant digits by the same rules of operators and of whole numbers (E2) as doubles follow. */
export function evaluateDecimal(node: Node, scope: DecimalScope): DecimalResult {
  try {
    const held = new Evaluation(scope).held(node);
    if (isList(held)) return failure('#VALUE!', 'several values stand where one is needed');
    return held instanceof Decimal ? { digits: held.toString(), value: held.toNumber() } : held;
  } catch (error) {
    if (error instanceof Refused) return error.reason;
    throw error;
  }
}
