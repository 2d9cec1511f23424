/** A formula over whole columns of doubles: recordings, sweeps and spreads. Every sample equals the scalar evaluation. */

import { doublesOf, giveBack, valueAt } from './column.ts';
import { ColumnPool, PIECE } from './column-loops.ts';
import { compileColumns, compileSample } from './compile-columns.ts';
import type { ColumnFrame, ColumnOperand, ColumnsScope } from './compile-columns.ts';
import { singleValue } from './compile-scalar.ts';
import type { FunctionTable } from './function-table.ts';
import { checkedNumber } from './operators.ts';
import type { CellNode, NameNode, Node, RangeNode } from './tree.ts';
import { failure } from './value.ts';
import type { Failure, Value } from './value.ts';

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

/** A number of the value: logicals 1 and 0, a blank 0, or why there is none. */
export function numberIn(value: Value): number | Failure {
  const single = singleValue(value);
  if (typeof single === 'boolean') return Number(single);
  if (single === null) return 0;
  if (typeof single === 'string') return failure('#VALUE!', 'a text is no number');
  return typeof single === 'number' ? checkedNumber(single) : single;
}

/**
 * Evaluates a tree (as inference gives it) for every sample. Numbers in coherent SI, logicals 1 and 0; NaN where a
 * sample gives a failure, a text or several values, with the reason told to the scope.
 */
export function evaluateColumns(node: Node, scope: ColumnScope): Float64Array {
  const { samples } = scope;
  const known = new Map<Node, ColumnOperand | undefined>();
  const sources: Float64Array[] = [];
  const operandOf = (reference: CellNode | RangeNode | NameNode): ColumnOperand | undefined => {
    const given = scope.operand(reference);
    if (given === undefined) return { same: failure('#NAME?', 'no such column') };
    return given instanceof Float64Array ? { slot: sources.push(given) - 1 } : { same: given };
  };
  const columnsScope: ColumnsScope = {
    functions: scope.functions,
    ...(scope.currency !== undefined && { currency: scope.currency }),
    operand(reference) {
      if (!known.has(reference)) known.set(reference, operandOf(reference));
      return known.get(reference);
    },
  };
  const compiled = compileColumns(node, columnsScope);
  const explained = compileSample(node, columnsScope);
  const pool = new ColumnPool();
  const out = new Float64Array(samples);
  const pieces = sources.map(() => pool.take());
  for (let from = 0; from < samples; from += PIECE) {
    const count = Math.min(PIECE, samples - from);
    sources.forEach((source, slot) => pieces[slot]?.set(source.subarray(from, from + count)));
    const operands = pieces.map((doubles) => doublesOf(doubles, { isTemporary: false }));
    const frame: ColumnFrame = { samples: count, pool, operands };
    const column = typeof compiled === 'function' ? compiled(frame) : compiled;
    for (let i = 0; i < count; i++) {
      const value = numberIn(valueAt(column, i));
      out[from + i] = typeof value === 'number' ? value : NaN;
      if (typeof value === 'number' || !scope.failed) continue;
      const reason = numberIn(explained(frame, i));
      scope.failed(from + i, typeof reason === 'number' ? value : reason);
    }
    giveBack(column, pool);
  }
  return out;
}
