/** What the readers of the tree ask of a function, whoever supplies it: built-in or domain function. */

import type { ColumnPool } from './column-loops.ts';
import type { Span } from './tree.ts';
import type { ValueType } from './type.ts';
import type { Scalar, Value } from './value.ts';

/** A mark that goes with a valid value. `key` stays the same while the condition is the same, so that it can be acknowledged. */
export interface Caution {
  readonly key: string;
  readonly text: string;
  /** Writes the reading that may be meant instead: one press puts it in the place of the formula's text from `from` to `to` (F7a). */
  readonly replacement?: string;
  /** Where in the formula it is about, the leading = counted; set where there is a replacement. */
  readonly from?: number;
  readonly to?: number;
}

/** An intermediate value for the Working panel. */
export interface Step {
  readonly symbol: string;
  readonly meaning: string;
  readonly kind: string;
  readonly value: Scalar;
}

/** Where a call leaves what it has to say besides its value. Both may be absent: then nothing is recorded. */
export interface CallNotes {
  caution?(caution: Caution): void;
  step?(step: Step): void;
  /** The system in whose units messages tell values; metric where nothing is said. */
  readonly reading?: UnitSystem;
}

/** One argument as the inference sees it; `literalUnit` is absent for a plain number. */
export interface ArgumentType {
  readonly type: ValueType;
  readonly span: Span;
  /** The argument's own text as written, for messages. */
  readonly text: string;
}

/** The unit system in which a notebook reads plain numbers (F15). */
export type UnitSystem = 'metric' | 'inch';

/** A plain number that is read in a unit: which argument, and the unit (F15). */
export interface AssumedUnit {
  readonly argument: number;
  readonly unit: string;
}

export interface InferenceResult {
  readonly type: ValueType;
  /** Arguments that are read in a unit: the reader multiplies them by it before the call. */
  readonly assumed?: readonly AssumedUnit[];
  /** Texts that `evaluate` gets after all its declared arguments: what only the inference can see, such as a hardness scale. */
  readonly told?: readonly string[];
  readonly cautions?: readonly Caution[];
}

/**
 * A call over a piece of samples: `args` holds a column for each argument that varies, numbers all (NaN is a failure).
 * Gives a column of the pool, NaN where there is no number.
 */
export type ColumnCall = (
  args: readonly (Float64Array | undefined)[],
  samples: number,
  pool: ColumnPool,
) => Float64Array;

export interface TableFunction {
  /** In capitals, "MILL.CHIP_MAX". */
  readonly name: string;
  /** Fewest and most arguments. */
  readonly arity: readonly [number, number];
  /** Result type, or a failed type whose words name the argument. */
  infer(args: readonly ArgumentType[], reading: UnitSystem): InferenceResult;
  /** Arguments in coherent SI; a skipped one is null. Never throws; gives a failure instead. */
  evaluate(args: readonly Value[], notes: CallNotes): Value;
  /** Only where not every argument may be evaluated: IF, IFERROR, CHOOSE and their kin. Preferred over evaluate where present. */
  evaluateLazily?(args: readonly (() => Value)[], notes: CallNotes): Value;
  /**
   * The same over columns of numbers. `fixed` holds the arguments that are the same for all samples, undefined for one
   * that varies. Undefined where it does not work on columns: then it is evaluated sample by sample.
   */
  overColumns?(fixed: readonly (Value | undefined)[]): ColumnCall | undefined;
  /** True where the function gives several values that fill cells below (F26). */
  readonly spills?: boolean;
}

export type FunctionTable = ReadonlyMap<string, TableFunction>;
