/** A formula's tree as a compiled closure over its operands: values of every sort, failures with words. No eval. */

import { isUnknownUnit, parseUnit, toSI } from '../quantity/index.ts';
import type { CallNotes, FunctionTable, TableFunction } from './function-table.ts';
import {
  applyBinary,
  applyPercent,
  applyUnary,
  checkedNumber,
  mapPairs,
  mapValue,
  numberOperation,
} from './operators.ts';
import type {
  ArrayNode,
  BinaryNode,
  CallNode,
  CellNode,
  NameNode,
  Node,
  QuantityNode,
  RangeNode,
} from './tree.ts';
import { failure, isFailure, isGrid } from './value.ts';
import type { Grid, Scalar, Value } from './value.ts';

/** Where the operands of a formula come from. */
export interface ScalarScope {
  readonly functions: FunctionTable;
  /** Currency code of the notebook; "money" without one. */
  readonly currency?: string;
  /** Place of an operand's value in the inputs; -1 where there is none (#NAME? or #REF!). */
  slot(node: CellNode | RangeNode | NameNode): number;
}

/** Values of the operands by slot; a slot beyond the end is a blank. */
export type CompiledScalar = (inputs: readonly Value[], notes?: CallNotes) => Value;

const SILENT: CallNotes = Object.freeze({});

/** Numbers, texts and logicals of an inline array; `si` converts its numbers. */
export function arrayGrid(node: ArrayNode, si: (digits: string) => number = Number): Grid {
  const element = (item: ArrayNode['rows'][number][number]): Scalar => {
    if (item.type === 'text' || item.type === 'logical') return item.value;
    if (item.type === 'number') return si(item.digits);
    const inner = item.operand;
    if (inner.type !== 'number')
      return failure('#VALUE!', 'an inline array holds numbers, texts and logicals');
    return si(item.operator === '-' ? `-${inner.digits}` : inner.digits);
  };
  return { grid: node.rows.map((row) => row.map(element)) };
}

/** The value of a quantity in coherent SI; #UNIT! for a unit that is not known. */
export function quantityValue(node: QuantityNode, currency?: string): Value {
  const unit = parseUnit(node.unit, currency);
  if (isUnknownUnit(unit)) return failure('#UNIT!', `unknown unit ${node.unit}`);
  const { magnitude } = node;
  if (magnitude.type === 'number') return checkedNumber(toSI(magnitude.digits, unit));
  if (magnitude.type === 'array') return arrayGrid(magnitude, (digits) => toSI(digits, unit));
  const inner = magnitude.operand;
  return inner.type === 'number'
    ? checkedNumber(toSI(inner.digits, unit) / 100)
    : failure('#VALUE!', 'a unit follows a number');
}

/** Plain numbers read in the unit of the node on the right; blanks, texts and logicals keep their meaning for the function (F15). */
export function unitReader(node: BinaryNode, currency?: string): (value: Scalar) => Scalar {
  const unit = parseUnit(node.right.type === 'quantity' ? node.right.unit : '1', currency);
  if (isUnknownUnit(unit)) return () => failure('#UNIT!', `unknown unit ${unit.unknown}`);
  const { scale, shift } = unit;
  return (value) => (typeof value === 'number' ? checkedNumber(value * scale + shift) : value);
}

/** A result as a formula may show it: a range of one cell is that cell, no number escapes that is none. */
function settled(value: Value): Value {
  if (isGrid(value) && value.grid.length === 1 && value.grid[0]?.length === 1)
    return value.grid[0][0] ?? null;
  return finite(value);
}

function compileCall(node: CallNode, scope: ScalarScope): CompiledScalar {
  const called: TableFunction | undefined = scope.functions.get(node.name);
  if (!called) {
    const missing = failure('#NAME?', `no function ${node.name}`);
    return () => missing;
  }
  const args = node.args.map((arg) => compiled(arg, scope));
  if (called.evaluateLazily) {
    const lazy = called.evaluateLazily.bind(called);
    return (inputs, notes = SILENT) =>
      finite(
        lazy(
          args.map((arg) => () => arg(inputs, notes)),
          notes,
        ),
      );
  }
  return (inputs, notes = SILENT) =>
    finite(
      called.evaluate(
        args.map((arg) => arg(inputs, notes)),
        notes,
      ),
    );
}

/** No number that is none leaves a function. */
export function finite(value: Value): Value {
  return typeof value === 'number' ? checkedNumber(value) : value;
}

function constantly(value: Value): CompiledScalar {
  return () => value;
}

function compiled(node: Node, scope: ScalarScope): CompiledScalar {
  switch (node.type) {
    case 'number':
    case 'text':
    case 'logical':
      return constantly(node.value);
    case 'quantity':
      return constantly(quantityValue(node, scope.currency));
    case 'array':
      return constantly(arrayGrid(node));
    case 'error':
      return constantly(failure(node.code, node.message ?? `${node.code} is written in the formula`));
    case 'missing':
      return constantly(null);
    case 'group':
      return compiled(node.inner, scope);
    case 'broken':
      return constantly(failure('#VALUE!', 'the formula is unfinished'));
    case 'cell':
    case 'range':
    case 'name': {
      const slot = scope.slot(node);
      if (slot < 0) {
        return constantly(
          node.type === 'name' ? failure('#NAME?', `no name ${node.name}`) : failure('#REF!', 'no such cell'),
        );
      }
      return (inputs) => inputs[slot] ?? null;
    }
    case 'unary': {
      const operand = compiled(node.operand, scope);
      const { operator } = node;
      return (inputs, notes) => mapValue(operand(inputs, notes), (value) => applyUnary(operator, value));
    }
    case 'percent': {
      const operand = compiled(node.operand, scope);
      return (inputs, notes) => mapValue(operand(inputs, notes), applyPercent);
    }
    case 'binary': {
      const left = compiled(node.left, scope);
      if (node.reads) {
        const read = unitReader(node, scope.currency);
        return (inputs, notes) => mapValue(left(inputs, notes), read);
      }
      const right = compiled(node.right, scope);
      const { operator } = node;
      const onNumbers = numberOperation(operator);
      return (inputs, notes) => {
        const a = left(inputs, notes);
        const b = right(inputs, notes);
        if (typeof a === 'number' && typeof b === 'number') return onNumbers(a, b);
        return mapPairs(a, b, (x, y) => applyBinary(operator, x, y));
      };
    }
    case 'call':
      return compileCall(node, scope);
  }
}

/**
 * Compiles a tree (as inference gives it) into a function of its operands' values. Failures in arguments are handed
 * to the functions, which pass them on or catch them; the result is never NaN or infinite.
 */
export function compileScalar(node: Node, scope: ScalarScope): CompiledScalar {
  const whole = compiled(node, scope);
  return (inputs, notes) => settled(whole(inputs, notes));
}

/** The one value of a result, for a cell that shows one; a grid is #VALUE!. */
export function singleValue(value: Value): Scalar {
  const one = settled(value);
  if (isFailure(one) || !isGrid(one)) return one;
  return failure('#VALUE!', 'several values stand where one is needed');
}
