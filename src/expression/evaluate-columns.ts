/** A formula over whole columns of doubles: recordings, sweeps and spreads. Every sample equals the scalar evaluation. */

import { arrayGrid, finite, quantityValue, singleValue, unitReader } from './compile-scalar.ts';
import type { FunctionTable } from './function-table.ts';
import { UNARY_FUNCTIONS } from './numeric-functions.ts';
import {
  applyBinary,
  applyPercent,
  applyUnary,
  checkedNumber,
  differenceOf,
  holds,
  isComparison,
  mapPairs,
  mapValue,
  numberOrder,
  sumOf,
} from './operators.ts';
import type { BinaryNode, CallNode, CellNode, NameNode, Node, RangeNode } from './tree.ts';
import { failure } from './value.ts';
import type { Failure, Scalar, Value } from './value.ts';

/** Where the columns come from. */
export interface ColumnScope {
  /** Number of samples: the length of every column. */
  readonly samples: number;
  readonly functions: FunctionTable;
  readonly currency?: string;
  /** Doubles by sample (NaN where there is none), or one value for all samples; undefined for an unknown operand. */
  operand(node: CellNode | RangeNode | NameNode): Float64Array | Value | undefined;
  /** Hears why a sample has no number. */
  failed?(sample: number, reason: Failure): void;
}

/** Doubles that are all numbers or all logicals, or boxed values where texts and failures stand among them. */
interface Doubles {
  readonly doubles: Float64Array;
  readonly logical: boolean;
}
interface Boxed {
  readonly boxed: readonly Value[];
}
type Column = Doubles | Boxed | { readonly same: Value };

const MISSING = failure('#NUM!', 'no number results');

/** Functions of one number whose doubles mean the same in a loop as in a cell. */
const LOOPED = new Set(['ABS', 'SQRT', 'SIN', 'COS', 'TAN', 'ATAN', 'EXP', 'LN', 'LOG10']);

function boxedAt(column: Column, sample: number): Value {
  if ('same' in column) return column.same;
  if ('boxed' in column) return column.boxed[sample] ?? null;
  const value = column.doubles[sample] ?? NaN;
  if (!Number.isFinite(value)) return MISSING;
  return column.logical ? value !== 0 : value;
}

/** Doubles where every value is a number, or every one a logical. */
function packed(values: readonly Value[]): Column {
  const numbers = values.every((value) => typeof value === 'number');
  if (!numbers && !values.every((value) => typeof value === 'boolean')) return { boxed: values };
  return { doubles: Float64Array.from(values, Number), logical: !numbers };
}

/** The column as numbers to loop over: constants stand for all samples; undefined where it is not purely numbers. */
function numbersOf(column: Column, samples: number): Float64Array | undefined {
  if ('doubles' in column) return column.logical ? undefined : column.doubles;
  if ('same' in column && typeof column.same === 'number') return new Float64Array(samples).fill(column.same);
  return undefined;
}

const LOOPS: ReadonlyMap<string, (a: number, b: number) => number> = new Map([
  ['+', sumOf],
  ['-', differenceOf],
  ['*', (a: number, b: number) => a * b],
  ['/', (a: number, b: number) => (b === 0 ? NaN : a / b)],
  ['^', (a: number, b: number) => (a === 0 && b < 0 ? NaN : a ** b)],
]);

function looped(
  a: Float64Array,
  b: Float64Array,
  step: (a: number, b: number) => number,
  logical: boolean,
): Column {
  const doubles = new Float64Array(a.length);
  for (let i = 0; i < doubles.length; i++) {
    const value = step(a[i] as number, b[i] as number);
    doubles[i] = Number.isFinite(value) ? value : NaN;
  }
  return { doubles, logical };
}

class Columns {
  constructor(private readonly scope: ColumnScope) {}

  private each(columns: readonly Column[], one: (sample: number) => Value): Column {
    if (columns.every((column) => 'same' in column)) return { same: finite(one(0)) };
    return packed(Array.from({ length: this.scope.samples }, (_, sample) => finite(one(sample))));
  }

  private mapped(column: Column, one: (value: Scalar) => Scalar): Column {
    return this.each([column], (sample) => mapValue(boxedAt(column, sample), one));
  }

  private binary(node: BinaryNode): Column {
    const left = this.column(node.left);
    if (node.reads) return this.mapped(left, unitReader(node, this.scope.currency));
    const right = this.column(node.right);
    const { operator } = node;
    if (!('same' in left) || !('same' in right)) {
      const a = numbersOf(left, this.scope.samples);
      const b = a && numbersOf(right, this.scope.samples);
      const loop = LOOPS.get(operator);
      if (a && b && loop) return looped(a, b, loop, false);
      if (a && b && isComparison(operator)) {
        const compare = (x: number, y: number): number => {
          const order = numberOrder(x, y);
          return Number.isNaN(order) ? NaN : Number(holds(operator, order));
        };
        return looped(a, b, compare, true);
      }
    }
    return this.each([left, right], (sample) =>
      mapPairs(boxedAt(left, sample), boxedAt(right, sample), (a, b) => applyBinary(operator, a, b)),
    );
  }

  private call(node: CallNode): Column {
    const called = this.scope.functions.get(node.name);
    if (!called) return { same: failure('#NAME?', `no function ${node.name}`) };
    const args = node.args.map((arg) => this.column(arg));
    const [first, second, third] = args;
    const alone =
      args.length === 1 && first && 'doubles' in first && !first.logical ? first.doubles : undefined;
    const loop = alone && LOOPED.has(node.name) ? UNARY_FUNCTIONS.get(node.name) : undefined;
    if (alone && loop) return looped(alone, alone, loop, false);
    if (
      node.name === 'IF' &&
      first &&
      'doubles' in first &&
      second &&
      node.args[1]?.type !== 'missing' &&
      third
    ) {
      return this.chosen(first.doubles, second, third);
    }
    if (called.evaluateLazily) {
      const lazy = called.evaluateLazily.bind(called);
      return this.each(args, (sample) =>
        lazy(
          args.map((arg) => () => boxedAt(arg, sample)),
          {},
        ),
      );
    }
    return this.each(args, (sample) =>
      called.evaluate(
        args.map((arg) => boxedAt(arg, sample)),
        {},
      ),
    );
  }

  /** IF over samples: of each one only the branch that its condition takes. */
  private chosen(condition: Float64Array, then: Column, otherwise: Column): Column {
    const { samples } = this.scope;
    const a = numbersOf(then, samples);
    const b = a && numbersOf(otherwise, samples);
    if (a && b) {
      const doubles = condition.map((x, i) => (Number.isNaN(x) ? NaN : ((x === 0 ? b : a)[i] as number)));
      return { doubles, logical: false };
    }
    const pick = (sample: number): Value => {
      const x = condition[sample] ?? NaN;
      return Number.isNaN(x) ? MISSING : boxedAt(x === 0 ? otherwise : then, sample);
    };
    return packed(Array.from({ length: samples }, (_, sample) => pick(sample)));
  }

  column(node: Node): Column {
    switch (node.type) {
      case 'number':
      case 'text':
      case 'logical':
        return { same: node.value };
      case 'quantity':
        return { same: quantityValue(node, this.scope.currency) };
      case 'array':
        return { same: arrayGrid(node) };
      case 'missing':
        return { same: null };
      case 'error':
        return { same: failure(node.code, node.message ?? `${node.code} is written in the formula`) };
      case 'broken':
        return { same: failure('#VALUE!', 'the formula is unfinished') };
      case 'group':
        return this.column(node.inner);
      case 'cell':
      case 'range':
      case 'name': {
        const operand = this.scope.operand(node);
        if (operand instanceof Float64Array) return { doubles: operand, logical: false };
        return { same: operand === undefined ? failure('#NAME?', 'no such column') : operand };
      }
      case 'unary': {
        const { operator } = node;
        const operand = this.column(node.operand);
        if (operator === '-' && 'doubles' in operand)
          return { doubles: operand.doubles.map((x) => -x || 0), logical: false };
        return this.mapped(operand, (value) => applyUnary(operator, value));
      }
      case 'percent':
        return this.mapped(this.column(node.operand), applyPercent);
      case 'binary':
        return this.binary(node);
      case 'call':
        return this.call(node);
    }
  }
}

/**
 * Evaluates a tree (as inference gives it) for every sample. Numbers in coherent SI, logicals 1 and 0; NaN where a
 * sample gives a failure, a text or several values, with the reason told to the scope.
 */
export function evaluateColumns(node: Node, scope: ColumnScope): Float64Array {
  const column = new Columns(scope).column(node);
  return Float64Array.from({ length: scope.samples }, (_, sample) => {
    const value = singleValue(boxedAt(column, sample));
    if (typeof value === 'boolean') return Number(value);
    const number =
      value === null ? 0 : typeof value === 'string' ? failure('#VALUE!', 'a text is no number') : value;
    const checked = typeof number === 'number' ? checkedNumber(number) : number;
    if (typeof checked === 'number') return checked;
    scope.failed?.(sample, checked);
    return NaN;
  });
}
