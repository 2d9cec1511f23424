/** A formula's tree compiled for columns of samples: every sample equals the scalar evaluation. No eval. */

import {
  addLoop,
  BINARY_LOOPS,
  cellNegateLoop,
  ColumnPool,
  compareLoop,
  divideLoop,
  maxLoop,
  minLoop,
  multiplyLoop,
  percentLoop,
  powerLoop,
  subtractLoop,
  UNARY_LOOPS,
  unaryLoopOf,
} from './column-loops.ts';
import type { BinaryLoop, UnaryLoop } from './column-loops.ts';
import {
  binaryColumn,
  choiceColumn,
  extremeColumn,
  isNumbers,
  numberAlone,
  unaryColumn,
} from './column-steps.ts';
import { doublesOf, finiteDoubles, giveBack, MISSING, packed, valueAt } from './column.ts';
import type { Column, Same } from './column.ts';
import { compileScalar, finite, unitReader } from './compile-scalar.ts';
import type { CompiledScalar } from './compile-scalar.ts';
import type { ColumnCall, FunctionTable } from './function-table.ts';
import { applyBinary, applyPercent, applyUnary, isComparison, mapPairs, mapValue } from './operators.ts';
import type { BinaryNode, CallNode, CellNode, NameNode, Node, RangeNode } from './tree.ts';
import type { Failure, Scalar, Value } from './value.ts';

/** What stands for an operand: a value for all samples, a place among the operands of a piece, or a block of both. */
export type ColumnOperand =
  | Same
  | { readonly slot: number }
  | { readonly block: readonly (readonly ({ readonly same: Scalar } | { readonly slot: number })[])[] };

export interface ColumnsScope {
  readonly functions: FunctionTable;
  readonly currency?: string;
  /** Undefined for one that leads nowhere. */
  operand(node: CellNode | RangeNode | NameNode): ColumnOperand | undefined;
}

/** One piece of samples, at most PIECE. */
export interface ColumnFrame {
  readonly samples: number;
  readonly pool: ColumnPool;
  readonly operands: readonly Column[];
  /** Why an operand has no number in a sample. */
  failureAt?(slot: number, sample: number): Failure;
}

/** The column of a piece; the caller gives it back to the pool. */
export type CompiledColumns = (frame: ColumnFrame) => Column;

interface Varying {
  readonly run: CompiledColumns;
  readonly node: Node;
}
type Part = Same | Varying;

const LOOPS: ReadonlyMap<string, BinaryLoop> = new Map([
  ['+', addLoop],
  ['-', subtractLoop],
  ['*', multiplyLoop],
  ['/', divideLoop],
  ['^', powerLoop],
]);

/** Functions of numbers whose doubles mean the same in a loop as in a cell. */
const LOOPED = new Set(['ABS', 'SQRT', 'SIN', 'COS', 'TAN', 'ATAN', 'EXP', 'LN', 'LOG10']);

/** Nothing varies: a piece of one sample without operands. */
const NOWHERE: ColumnFrame = { samples: 1, operands: [], pool: new ColumnPool() };

const isSame = (part: Part): part is Same => 'same' in part;

type Reference = CellNode | RangeNode | NameNode;

function valueOfOperand(operand: ColumnOperand | undefined, frame: ColumnFrame, sample: number): Value {
  if (!operand) return MISSING;
  if ('same' in operand) return operand.same;
  const at = (slot: number): Value => {
    const column = frame.operands[slot];
    const value = column ? valueAt(column, sample) : MISSING;
    return value === MISSING ? (frame.failureAt?.(slot, sample) ?? value) : value;
  };
  if ('slot' in operand) return at(operand.slot);
  return {
    grid: operand.block.map((row) =>
      row.map((cell) => ('same' in cell ? cell.same : (at(cell.slot) as Scalar))),
    ),
  };
}

/** The branch that a condition takes which is the same for all samples. */
function chosenBranch([condition, then, otherwise]: readonly Part[]): Part | undefined {
  if (!condition || !isSame(condition)) return undefined;
  const { same } = condition;
  if (typeof same !== 'number' && typeof same !== 'boolean') return undefined;
  const holds = Boolean(same);
  const branch = holds ? then : otherwise;
  return branch && isSame(branch) && branch.same === null ? { same: 0 } : branch;
}

/** Numbers that are the same for all samples as a column of one. */
function numberColumn(part: Part): CompiledColumns {
  if (!isSame(part)) return part.run;
  const column = typeof part.same === 'number' ? numberAlone(part.same) : part;
  return () => column;
}

const fixedOf = (part: Part): Value | undefined => (isSame(part) ? part.same : undefined);

/** A call of a function that works on columns; undefined where a piece is no matter of numbers. */
function overColumns(
  called: ColumnCall | undefined,
  parts: readonly Part[],
): ((frame: ColumnFrame) => Column | undefined) | undefined {
  if (!called) return undefined;
  return (frame) => {
    const columns = parts.map((part) => (isSame(part) ? undefined : part.run(frame)));
    const fits = columns.every((column) => !column || isNumbers(column));
    const args = columns.map((column) =>
      column && isNumbers(column) ? finiteDoubles(column, frame.samples) : undefined,
    );
    const out = fits ? called(args, frame.samples, frame.pool) : undefined;
    for (const column of columns) if (column) giveBack(column, frame.pool);
    return out && doublesOf(out);
  };
}

const readLoop = (read: (value: Scalar) => Scalar): UnaryLoop =>
  unaryLoopOf((x) => {
    const value = read(x);
    return typeof value === 'number' ? value : NaN;
  });

const borrowed = (column: Column | undefined): Column => column ?? { same: MISSING };

class Columns {
  readonly scope: ColumnsScope;

  constructor(scope: ColumnsScope) {
    this.scope = scope;
  }

  /** The scalar evaluation of a node in one sample, which knows the words of a failure. */
  scalar(node: Node): (frame: ColumnFrame, sample: number) => Value {
    const { functions, currency } = this.scope;
    const nodes: Reference[] = [];
    let run: CompiledScalar | undefined;
    return (frame, sample) => {
      run ??= compileScalar(node, {
        functions,
        ...(currency !== undefined && { currency }),
        slot: (reference) => (this.scope.operand(reference) ? nodes.push(reference) - 1 : -1),
      });
      return run(nodes.map((each) => valueOfOperand(this.scope.operand(each), frame, sample)));
    };
  }

  /** Values of one sample after another, where no loop is known. */
  private each(
    node: Node,
    parts: readonly Part[],
    one: (values: readonly (() => Value)[], sample: number) => Value,
  ): Varying {
    const scalars = parts.map((part) => (isSame(part) ? undefined : this.scalar(part.node)));
    return {
      node,
      run(frame) {
        const columns = parts.map((part) => (isSame(part) ? part : part.run(frame)));
        const values = columns.map((column, index) => () => {
          const value = valueAt(column, at);
          return value === MISSING ? (scalars[index]?.(frame, at) ?? value) : value;
        });
        let at = 0;
        const found: Value[] = [];
        for (; at < frame.samples; at++) found.push(finite(one(values, at)));
        for (const column of columns) giveBack(column, frame.pool);
        return packed(found, frame.pool);
      },
    };
  }

  private mapped(
    node: Node,
    operand: Part,
    loop: UnaryLoop | undefined,
    one: (value: Scalar) => Scalar,
  ): Part {
    if (isSame(operand)) return { same: mapValue(operand.same, one) };
    const boxed = this.each(node, [operand], ([value]) => mapValue(value?.() ?? null, one));
    if (!loop) return boxed;
    return {
      node,
      run: (frame) => {
        const column = operand.run(frame);
        if (!('doubles' in column) || column.logical) return boxed.run(frame);
        return unaryColumn(column, loop, frame);
      },
    };
  }

  private binary(node: BinaryNode): Part {
    const left = this.part(node.left);
    const { operator } = node;
    if (node.reads) {
      const read = unitReader(node, this.scope.currency);
      const [shift, scaled] = [read(0), read(1)];
      const known = typeof shift === 'number' && typeof scaled === 'number';
      return this.mapped(node, left, known ? readLoop(read) : undefined, read);
    }
    const right = this.part(node.right);
    if (isSame(left) && isSame(right)) {
      return { same: mapPairs(left.same, right.same, (a, b) => applyBinary(operator, a, b)) };
    }
    const boxed = this.each(node, [left, right], ([a, b]) =>
      mapPairs(a?.() ?? null, b?.() ?? null, (x, y) => applyBinary(operator, x, y)),
    );
    const comparing = isComparison(operator);
    const loop = comparing ? compareLoop(operator) : LOOPS.get(operator);
    if (!loop) return boxed;
    const [a, b] = [numberColumn(left), numberColumn(right)];
    return {
      node,
      run(frame) {
        const x = a(frame);
        const y = b(frame);
        if (!isNumbers(x) || !isNumbers(y)) {
          giveBack(x, frame.pool);
          giveBack(y, frame.pool);
          return boxed.run(frame);
        }
        if (comparing || operator === '^') finiteDoubles(x, frame.samples);
        if (comparing || operator === '^' || operator === '/') finiteDoubles(y, frame.samples);
        return binaryColumn(x, y, loop, frame, comparing);
      },
    };
  }

  private call(node: CallNode): Part {
    const { functions } = this.scope;
    const called = functions.get(node.name);
    const parts = node.args.map((arg) => this.part(arg));
    if (!called || parts.every(isSame)) return { same: this.scalar(node)(NOWHERE, 0) };
    const chosen = node.name === 'IF' ? chosenBranch(parts) : undefined;
    if (chosen) return chosen;
    const lazy = called.evaluateLazily?.bind(called);
    const boxed = this.each(node, parts, (values) =>
      lazy
        ? lazy(values, {})
        : called.evaluate(
            values.map((value) => value()),
            {},
          ),
    );
    const fast = this.looped(node, parts) ?? overColumns(called.overColumns?.(parts.map(fixedOf)), parts);
    if (!fast) return boxed;
    return { node, run: (frame) => fast(frame) ?? boxed.run(frame) };
  }

  /** Built-in functions as loops; what they give is undefined where a piece is no matter of numbers. */
  private looped(
    node: CallNode,
    parts: readonly Part[],
  ): ((frame: ColumnFrame) => Column | undefined) | undefined {
    const { name } = node;
    const columns = parts.map(numberColumn);
    const [first, second, third] = columns;
    if (name === 'IF' && first && second && third && !node.args.some(({ type }) => type === 'missing')) {
      return (frame) => choiceColumn(first(frame), second(frame), third(frame), frame);
    }
    if ((name === 'MIN' || name === 'MAX') && parts.length > 0) {
      return (frame) =>
        extremeColumn(
          columns.map((column) => column(frame)),
          name === 'MIN' ? minLoop : maxLoop,
          frame,
        );
    }
    const unaryLoop = parts.length === 1 && LOOPED.has(name) ? UNARY_LOOPS.get(name) : undefined;
    if (unaryLoop && first) {
      return (frame) => {
        const x = first(frame);
        if (isNumbers(x)) {
          finiteDoubles(x, frame.samples);
          return unaryColumn(x, unaryLoop, frame);
        }
        giveBack(x, frame.pool);
        return undefined;
      };
    }
    const binaryLoop = parts.length === 2 && name === 'ATAN2' ? BINARY_LOOPS.get(name) : undefined;
    if (!binaryLoop || !first || !second) return undefined;
    return (frame) => {
      const [x, y] = [first(frame), second(frame)];
      if (isNumbers(x) && isNumbers(y)) {
        finiteDoubles(x, frame.samples);
        finiteDoubles(y, frame.samples);
        return binaryColumn(x, y, binaryLoop, frame, false);
      }
      return undefined;
    };
  }

  part(node: Node): Part {
    switch (node.type) {
      case 'group':
        return this.part(node.inner);
      case 'cell':
      case 'range':
      case 'name': {
        const operand = this.scope.operand(node);
        if (!operand) return { same: this.scalar(node)(NOWHERE, 0) };
        if ('same' in operand) return operand;
        if ('slot' in operand) {
          const { slot } = operand;
          return { node, run: ({ operands }) => borrowed(operands[slot]) };
        }
        const { block } = operand;
        return {
          node,
          run: ({ operands }) => ({
            cells: block.map((row) =>
              row.map((cell) => ('same' in cell ? cell : borrowed(operands[cell.slot]))),
            ),
          }),
        };
      }
      case 'unary': {
        const { operator } = node;
        const operand = this.part(node.operand);
        return operator === '+'
          ? operand
          : this.mapped(node, operand, cellNegateLoop, (value) => applyUnary(operator, value));
      }
      case 'percent':
        return this.mapped(node, this.part(node.operand), percentLoop, applyPercent);
      case 'binary':
        return this.binary(node);
      case 'call':
        return this.call(node);
      default:
        return { same: this.scalar(node)(NOWHERE, 0) };
    }
  }
}

/**
 * Compiles a tree (as inference gives it) for pieces of samples. Numbers in coherent SI; a column holds NaN where a
 * sample gives a failure, or boxed values where texts, failures with words or several values stand among them.
 */
export function compileColumns(node: Node, scope: ColumnsScope): Same | CompiledColumns {
  const part = new Columns(scope).part(node);
  return isSame(part) ? part : part.run;
}

/** The scalar evaluation of the tree in one sample: the words of a failure. */
export function compileSample(
  node: Node,
  scope: ColumnsScope,
): (frame: ColumnFrame, sample: number) => Value {
  return new Columns(scope).scalar(node);
}
