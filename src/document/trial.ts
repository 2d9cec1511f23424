/** A trial at the machine: what was planned, what was cut and measured. Quantities are text as typed (F1). */

import type { Kept } from './kept.ts';

export interface TrialFactor {
  readonly name: string;
  /** At least one; a text or a quantity each. */
  readonly levels: readonly string[];
}

/** What is measured, in which unit, and the limit at which an edge is stopped. */
export interface Measurand {
  readonly name: string;
  readonly unit: string;
  readonly limit?: string;
  /** When it is measured, in plain words ("after every third pass"). */
  readonly when?: string;
}

export interface TrialRun {
  readonly id: string;
  /** Level of each factor, by its place in the list. */
  readonly levels: readonly number[];
}

export interface TrialCorrection {
  readonly at: string;
  readonly by: string;
  /** "cut", "edge", "note", "withdrawn" or the name of a measurand. */
  readonly what: string;
  readonly was: string;
}

export interface TrialPass {
  readonly id: string;
  readonly run: string;
  /** Edge or insert, as marked on it. */
  readonly edge: string;
  /** Time in cut, or length or volume cut, of this pass alone. */
  readonly cut: string;
  readonly values: readonly { readonly measurand: string; readonly content: string }[];
  readonly note?: string;
  readonly by: string;
  /** ISO 8601. */
  readonly at: string;
  /** Id in the notebook's photographs. */
  readonly photograph?: string;
  /** Oldest first: the first values are never lost. */
  readonly corrections?: readonly TrialCorrection[];
  /** Why it does not count: it stays in the record, struck through. */
  readonly withdrawn?: string;
}

export interface Trial extends Kept {
  readonly id: string;
  readonly title: string;
  readonly factors: readonly TrialFactor[];
  readonly repeats: number;
  readonly seed: number;
  /** In the random order in which they are cut. */
  readonly runs: readonly TrialRun[];
  /** What of the block is at hand and what one run takes. */
  readonly stock?: { readonly atHand: string; readonly perRun: string };
  /** Unit in which the cut of a pass is noted: of time, length or volume; "min" where absent. */
  readonly cutUnit?: string;
  readonly measurands: readonly Measurand[];
  readonly passes: readonly TrialPass[];
}
