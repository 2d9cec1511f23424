/** Types of operator results and the words for clashes: rules F11, F11a, F13, F13a, F14, F16, F17, F21. */

import {
  describeDimension,
  describeKind,
  DIMENSIONLESS,
  divided,
  generalKind,
  kindNamed,
  kindsAgree,
  multiplied,
  PLAIN,
  raised,
} from '../quantity/index.ts';
import type { Dimension, Kind } from '../quantity/index.ts';
import type { Caution } from './function-table.ts';
import { isComparison } from './operators.ts';
import type { BinaryOperator } from './tree.ts';
import type { FailedType, LogicalType, NeutralType, NumberType, ScalarType, TextType } from './type.ts';
import { failure } from './value.ts';

export const NEUTRAL: NeutralType = Object.freeze({ type: 'neutral' });
export const LOGICAL: LogicalType = Object.freeze({ type: 'logical' });
export const TEXT: TextType = Object.freeze({ type: 'text' });
export const PLAIN_NUMBER: NumberType = Object.freeze({ type: 'number', kind: PLAIN });

/** One side of an operator as messages and rules need it. */
export interface Operand {
  readonly type: ScalarType;
  /** As written: "B3", "B3*2". */
  readonly text: string;
  /** Display unit; "" for plain numbers. */
  readonly unit: string;
  /** The number, where the formula or a cell fixes it: an exponent (F17). */
  readonly constant: number | undefined;
}

/** What an operator gives. `days` says where a date's day numbers meet times in seconds. */
export interface Outcome {
  readonly type: ScalarType;
  readonly caution?: Caution;
  readonly days?: 'difference' | 'left' | 'right';
  /** The constant exponent decided the dimension. */
  readonly usedConstant?: true;
}

export function unitClash(message: string): FailedType {
  return { type: 'failed', failure: failure('#UNIT!', message) };
}

/** A kind as a number's type. */
export const numberOf = (kind: Kind): NumberType => ({ type: 'number', kind });

/** "B3 in mm"; quantities and plain numbers as written. */
export function withUnit({ text, unit }: Operand): string {
  return unit === '' || text.endsWith(` ${unit}`) ? text : `${text} in ${unit}`;
}

/** "a length, B3 in mm" */
const described = (operand: Operand, kind: Kind): string =>
  `${describeDimension(kind.dimension)}, ${withUnit(operand)}`;

const isPlain = (kind: Kind): boolean => kind.dimension === DIMENSIONLESS;

const isHardness = (kind: Kind): boolean => ['HRC', 'HB', 'HV'].includes(kind.dimension.scale);

const isDate = (kind: Kind): boolean => kind.dimension.scale === 'date';

/** The number a side counts as: logicals are plain numbers; undefined where nothing is known. */
function countsAs(type: ScalarType): NumberType | undefined {
  if (type.type === 'number') return type;
  return type.type === 'logical' || type.type === 'blank' ? PLAIN_NUMBER : undefined;
}

const isZero = (type: NumberType): boolean => isPlain(type.kind) && type.literal === 0;

/** F11a: + - and comparison keep a kind that both share, else the general one. */
function sharedKind(a: Kind, b: Kind): Kind {
  return a === b ? a : generalKind(a.dimension);
}

type Verb = (left: string, right: string) => string;

const VERBS: ReadonlyMap<BinaryOperator, Verb> = new Map<BinaryOperator, Verb>([
  ['+', (left, right) => `adds ${left}, to ${right}`],
  ['-', (left, right) => `subtracts ${right}, from ${left}`],
]);

const compares: Verb = (left, right) => `compares ${left}, with ${right}`;

/** What to do about a plain number beside a quantity. */
function remedy(plain: Operand, quantity: Operand): string {
  if (quantity.unit === '') return '';
  const literal = plain.type.type === 'number' && plain.type.literal !== undefined;
  const product = /^[\p{L}\p{N}._$']+$/u.test(plain.text) ? plain.text : `(${plain.text})`;
  return `: a plain number has no unit; write ${literal ? plain.text : `${product}*1`} ${quantity.unit}`;
}

function clash(operator: BinaryOperator, left: Operand, right: Operand, a: Kind, b: Kind): FailedType {
  const verb = VERBS.get(operator) ?? compares;
  const hint = isPlain(a) ? remedy(left, right) : isPlain(b) ? remedy(right, left) : '';
  return unitClash(verb(described(left, a), described(right, b)) + hint);
}

/** F16: both kinds named, the value computed. */
function kindCaution(
  operator: BinaryOperator,
  left: Operand,
  right: Operand,
  a: Kind,
  b: Kind,
): Caution | undefined {
  if (kindsAgree(a, b)) return undefined;
  const verb = VERBS.get(operator) ?? compares;
  const text = verb(`${describeKind(a)}, ${withUnit(left)}`, `${describeKind(b)}, ${withUnit(right)}`);
  return { key: `kinds ${left.text} ${operator} ${right.text}`, text };
}

const isAbsolute = (kind: Kind): boolean => kind.name === 'temperature';

/** F21: differences of absolute temperatures are differences; absolute and difference is absolute. */
function temperatureSum(operator: BinaryOperator, left: Operand, right: Operand, a: Kind, b: Kind): Outcome {
  if (operator === '+' && isAbsolute(a) && isAbsolute(b)) {
    return {
      type: unitClash(
        `adds two absolute temperatures, ${withUnit(left)} and ${withUnit(right)}: write a difference in K or ddegF`,
      ),
    };
  }
  const absolute = isAbsolute(a) !== isAbsolute(b) && !(operator === '-' && isAbsolute(b));
  return { type: numberOf(absolute ? kindNamed('temperature') : generalKind(a.dimension)) };
}

/** A date minus a date is a time; a date and a time make a date. */
function dateSum(
  operator: BinaryOperator,
  left: Operand,
  right: Operand,
  a: NumberType,
  b: NumberType,
): Outcome {
  const time = kindNamed('time').dimension;
  const date = kindNamed('date');
  if (isDate(a.kind) && isDate(b.kind)) {
    return operator === '-'
      ? { type: numberOf(kindNamed('time')), days: 'difference' }
      : { type: unitClash(`adds two dates, ${left.text} and ${right.text}: a date minus a date is a time`) };
  }
  if (isDate(a.kind) && b.kind.dimension === time) return { type: numberOf(date), days: 'right' };
  if (isDate(b.kind) && a.kind.dimension === time && operator === '+')
    return { type: numberOf(date), days: 'left' };
  if (isZero(a) || isZero(b)) return { type: numberOf(date) };
  const [verb, other] = [VERBS.get(operator) ?? compares, isDate(a.kind) ? right : left];
  const hint =
    isPlain(a.kind) || isPlain(b.kind)
      ? `: write ${other.text}${other.constant === undefined ? '*1' : ''} day for days`
      : '';
  return { type: unitClash(verb(described(left, a.kind), described(right, b.kind)) + hint) };
}

function noArithmetic(operand: Operand, kind: Kind): FailedType {
  const reason = isDate(kind)
    ? 'a date only has differences and sums with times'
    : 'a hardness has no arithmetic, it can only be compared';
  return unitClash(`computes with ${described(operand, kind)}: ${reason}`);
}

function sumType(operator: BinaryOperator, left: Operand, right: Operand): Outcome {
  const a = countsAs(left.type);
  const b = countsAs(right.type);
  if (!a || !b) return { type: a ? numberOf(a.kind) : b ? numberOf(b.kind) : NEUTRAL };
  if (isHardness(a.kind)) return { type: noArithmetic(left, a.kind) };
  if (isHardness(b.kind)) return { type: noArithmetic(right, b.kind) };
  if (isDate(a.kind) || isDate(b.kind)) return dateSum(operator, left, right, a, b);
  if (a.kind.dimension !== b.kind.dimension) {
    if (isZero(b)) return { type: numberOf(a.kind) };
    if (isZero(a)) return { type: numberOf(b.kind) };
    // 45 deg + rake / 2: half an angle is in radians, and beside an angle it is one.
    if (isRadians(a.kind) && isRadians(b.kind)) return { type: numberOf(kindNamed('angle')) };
    return { type: clash(operator, left, right, a.kind, b.kind) };
  }
  if (isAbsolute(a.kind) || isAbsolute(b.kind)) return temperatureSum(operator, left, right, a.kind, b.kind);
  const caution = kindCaution(operator, left, right, a.kind, b.kind);
  const type = numberOf(sharedKind(a.kind, b.kind));
  return caution ? { type, caution } : { type };
}

function comparisonType(operator: BinaryOperator, left: Operand, right: Operand): Outcome {
  const a = left.type.type === 'number' ? left.type : undefined;
  const b = right.type.type === 'number' ? right.type : undefined;
  if (!a || !b || isZero(a) || isZero(b)) return { type: LOGICAL };
  if (a.kind.dimension !== b.kind.dimension)
    return isRadians(a.kind) && isRadians(b.kind)
      ? { type: LOGICAL }
      : { type: clash(operator, left, right, a.kind, b.kind) };
  const caution = kindCaution(operator, left, right, a.kind, b.kind);
  return caution ? { type: LOGICAL, caution } : { type: LOGICAL };
}

const combined = {
  '*': new Map<Dimension, Map<Dimension, Kind>>(),
  '/': new Map<Dimension, Map<Dimension, Kind>>(),
};

/** F11a: the general kind of a product or quotient; the few that a notebook meets are remembered. */
function combinedKind(operator: '*' | '/', a: Dimension, b: Dimension): Kind {
  const kinds = combined[operator].get(a) ?? new Map<Dimension, Kind>();
  combined[operator].set(a, kinds);
  const known = kinds.get(b);
  if (known) return known;
  const made = generalKind(operator === '*' ? multiplied(a, b) : divided(a, b));
  kinds.set(b, made);
  return made;
}

const isRadians = ({ name, dimension }: Kind): boolean =>
  dimension.scale === 'angle' || name === 'radian measure';

/** An angle times or over a plain number: a plain number in radians, never to be read in another unit of angle (F11, F15). */
function isRadianProduct(operator: '*' | '/', a: Kind, b: Kind): boolean {
  const factor = (kind: Kind): boolean => isPlain(kind) && !isRadians(kind);
  return (isRadians(a) && factor(b)) || (operator === '*' && isRadians(b) && factor(a));
}

function productType(operator: '*' | '/', left: Operand, right: Operand): Outcome {
  const a = countsAs(left.type);
  const b = countsAs(right.type);
  for (const [operand, type] of [
    [left, a],
    [right, b],
  ] as const) {
    if (type && (isHardness(type.kind) || isDate(type.kind)))
      return { type: noArithmetic(operand, type.kind) };
  }
  if (!a || !b) return { type: NEUTRAL };
  if (isRadianProduct(operator, a.kind, b.kind)) return { type: numberOf(kindNamed('radian measure')) };
  return { type: numberOf(combinedKind(operator, a.kind.dimension, b.kind.dimension)) };
}

function powerType(left: Operand, right: Operand): Outcome {
  const base = countsAs(left.type);
  const exponent = countsAs(right.type);
  if (base && (isHardness(base.kind) || isDate(base.kind))) return { type: noArithmetic(left, base.kind) };
  if (exponent && !isPlain(exponent.kind)) {
    return {
      type: unitClash(
        `raises ${left.text} to ${described(right, exponent.kind)}: the exponent must be a plain number`,
      ),
    };
  }
  if (!base || !exponent) return { type: NEUTRAL };
  if (isPlain(base.kind) || base.kind.dimension.scale === 'angle') return { type: PLAIN_NUMBER };
  if (right.constant === undefined) {
    return {
      type: unitClash(
        `raises ${described(left, base.kind)}, to ${right.text}, which is not constant: the exponent of a quantity must be a number or a cell with a number`,
      ),
    };
  }
  return { type: numberOf(generalKind(raised(base.kind.dimension, right.constant))), usedConstant: true };
}

function joinType(left: Operand, right: Operand): Outcome {
  for (const operand of [left, right]) {
    if (operand.type.type === 'number' && !isPlain(operand.type.kind)) {
      const { text, unit } = operand;
      const ready = unit === '' ? '' : `: write TEXT(${text}/1 ${unit}; "0.0") & " ${unit}"`;
      return { type: unitClash(`joins ${described(operand, operand.type.kind)}, as text${ready}`) };
    }
  }
  return { type: TEXT };
}

/** The type of `left operator right`. Failed sides go first and unchanged, the left one before the right one. */
export function operatorType(operator: BinaryOperator, left: Operand, right: Operand): Outcome {
  if (left.type.type === 'failed') return { type: left.type };
  if (right.type.type === 'failed') return { type: right.type };
  if (isComparison(operator)) return comparisonType(operator, left, right);
  switch (operator) {
    case '+':
    case '-':
      return sumType(operator, left, right);
    case '*':
    case '/':
      return productType(operator, left, right);
    case '&':
      return joinType(left, right);
    default:
      return powerType(left, right);
  }
}

/** Unary minus keeps the kind; % makes a plain number a share. */
export function signType(operator: '-' | '+' | '%', operand: Operand): ScalarType {
  const { type } = operand;
  if (operator === '+' || type.type === 'failed') return type;
  const number = countsAs(type);
  if (!number) return NEUTRAL;
  if (isHardness(number.kind) || isDate(number.kind)) return noArithmetic(operand, number.kind);
  const kind = operator === '%' && isPlain(number.kind) ? kindNamed('share') : number.kind;
  if (number.literal === undefined) return numberOf(kind);
  return { type: 'number', kind, literal: operator === '%' ? number.literal / 100 : -number.literal || 0 };
}
