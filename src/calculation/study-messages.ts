/** What-if: what the page asks of the study worker and what comes back. Plain data; values are coherent SI beside the unit in which they are shown. */

import type { Block, Notebook } from '../document/index.ts';
import type { CellAddress, ResultError } from './messages.ts';

/** A quantity as typed ("12 kW"); one without a unit is read in the unit that its cell shows. */
export type TypedQuantity = string;

/** A given cell that may be moved between two bounds, both included. */
export interface MovedGiven {
  readonly cell: CellAddress;
  readonly low: TypedQuantity;
  readonly high: TypedQuantity;
}

/** Limits that a result has to keep. */
export interface Constraint {
  readonly cell: CellAddress;
  readonly atLeast?: TypedQuantity;
  readonly atMost?: TypedQuantity;
}

/** Own contents of a variant, where it differs from the notebook. Given values only: a formula is refused. */
export interface AskedVariant {
  readonly name: string;
  readonly contents: readonly { readonly cell: CellAddress; readonly content: string }[];
}

/** The values that a given takes in a sweep. */
export type SweepAxis =
  | {
      readonly cell: CellAddress;
      readonly spacing: 'linear' | 'logarithmic';
      readonly from: TypedQuantity;
      readonly to: TypedQuantity;
      /** At least 2. */
      readonly points: number;
    }
  | { readonly cell: CellAddress; readonly spacing: 'list'; readonly values: readonly TypedQuantity[] };

/** How a given spreads. What is not said stands around the value in the cell. */
export type Distribution =
  | {
      readonly shape: 'normal';
      /** Standard uncertainty (one standard deviation). */
      readonly uncertainty: TypedQuantity;
      /** Degrees of freedom of the uncertainty: then draws follow the scaled t distribution (JCGM 101, 6.4.9). */
      readonly freedom?: number;
    }
  | {
      readonly shape: 'uniform' | 'triangular' | 'arcsine';
      /** Largest deviation to either side: the tolerance is ± this much. */
      readonly half: TypedQuantity;
      /** Uniform alone: the limits themselves are known to ± this much (curvilinear trapezoid; JCGM 101, 6.4.3). */
      readonly inexact?: TypedQuantity;
      /** Degrees of freedom for the first-order propagation. */
      readonly freedom?: number;
    }
  | {
      readonly shape: 'uniform' | 'triangular';
      readonly low: TypedQuantity;
      readonly high: TypedQuantity;
      /** Triangular alone; the middle where left out. */
      readonly peak?: TypedQuantity;
    }
  | {
      /** One of the measured values of a block, each as likely as the others. */
      readonly shape: 'measured';
      readonly worksheet: string;
      readonly block: Block;
      /** True: the mean of as many values drawn from them, for a given that is their mean. */
      readonly mean?: boolean;
    };

export interface SpreadGiven {
  readonly cell: CellAddress;
  readonly distribution: Distribution;
}

/** Correlation of two normal givens. */
export interface Correlation {
  readonly first: CellAddress;
  readonly second: CellAddress;
  /** From -1 to 1. */
  readonly coefficient: number;
}

export type StudyQuestion =
  /** Which given numbers decide the results. */
  | { readonly type: 'influences'; readonly results: readonly CellAddress[] }
  | {
      readonly type: 'variants';
      readonly variants: readonly AskedVariant[];
      /** Givens and results whose values are wanted. */
      readonly watched: readonly CellAddress[];
    }
  | {
      readonly type: 'solve';
      readonly result: CellAddress;
      readonly wanted: TypedQuantity;
      readonly given: MovedGiven;
    }
  | {
      readonly type: 'search';
      readonly result: CellAddress;
      readonly aim: 'largest' | 'smallest';
      /** One to four. */
      readonly givens: readonly MovedGiven[];
      readonly constraints: readonly Constraint[];
    }
  | {
      readonly type: 'sweep';
      /** One or two; of two the first is the slower. */
      readonly axes: readonly SweepAxis[];
      readonly results: readonly CellAddress[];
    }
  | {
      readonly type: 'spread';
      readonly givens: readonly SpreadGiven[];
      readonly correlations?: readonly Correlation[];
      readonly results: readonly CellAddress[];
      /** 1 000 to 1 000 000; 10 000 where left out. */
      readonly samples?: number;
      /** A whole number; the same seed gives the same draws. 1 where left out. */
      readonly seed?: number;
    };

export type ToStudy =
  | {
      readonly type: 'ask';
      readonly request: number;
      readonly notebook: Notebook;
      readonly question: StudyQuestion;
    }
  /** Heard between two pieces of work; the answer is 'cancelled', or what was finished before. */
  | { readonly type: 'cancel'; readonly request: number };

/** What a cell is in all answers. */
export interface StudyCell {
  readonly cell: CellAddress;
  /** Name of the quantity kind, or "text", "logical", "blank", "error". */
  readonly kind: string;
  /** Unit in which it is shown; "" for plain numbers and texts. */
  readonly unit: string;
}

export interface Influence extends StudyCell {
  readonly value: number;
  /** Only whole numbers make sense: a count. */
  readonly whole: boolean;
  /** The results it reaches, as places in the question's list. */
  readonly reaches: readonly number[];
}

export interface VariantValue {
  /** Coherent SI for numbers; null for a blank or an error. */
  readonly value: number | string | boolean | null;
  readonly kind: string;
  readonly unit: string;
  readonly error?: ResultError;
  /** Words of the cell's own limits that are passed: "above 12 kW (spindle)". */
  readonly breaches: readonly string[];
  /** Against the base, where both are numbers of one dimension. */
  readonly difference?: number;
  /** The same as a share of the base (0.05 is +5 %); absent where the base is 0. */
  readonly relative?: number;
}

export interface VariantRow {
  readonly cell: CellAddress;
  /** The base first, then the variants in their order. */
  readonly values: readonly VariantValue[];
}

/** A value of a moved given, ready to be entered. */
export interface FoundGiven {
  readonly cell: CellAddress;
  readonly value: number;
  /** Text for the cell: "0.1832 mm". */
  readonly content: string;
  readonly unit: string;
  /** The bound it stands at. */
  readonly at?: 'low' | 'high';
}

export interface SolveAnswer {
  readonly given: FoundGiven;
  readonly result: number;
  /** The result only touches the wanted value there, without passing through it. */
  readonly touching?: boolean;
}

export interface ConstraintMet {
  readonly cell: CellAddress;
  readonly side: 'atLeast' | 'atMost';
  readonly limit: number;
  readonly value: number;
  readonly unit: string;
  /** The result could be better if it were not for this limit. */
  readonly binding: boolean;
  /** By how much the limit is passed; 0 where it is kept. */
  readonly violation: number;
}

export interface SweepColumn extends StudyCell {
  readonly role: 'given' | 'result';
  /** One value a row, coherent SI; null where there is an error. */
  readonly values: readonly (number | string | boolean | null)[];
  /** Words of the errors, by row. */
  readonly errors: readonly { readonly row: number; readonly message: string }[];
}

export interface Contribution {
  readonly cell: CellAddress;
  /** Change of the result by change of the given, coherent SI; NaN where it can not be told. */
  readonly sensitivity: number;
  /** Standard uncertainty of the given. */
  readonly uncertainty: number;
  /** Share of the variance to the first order, 0 to 1. */
  readonly share: number;
  /** Share of the variance that goes when the given stands still, by simulation. */
  readonly simulated: number;
}

/** The chance that a limit of the cell is passed, among the samples that gave a number. */
export interface BreachChance {
  readonly side: 'low' | 'high';
  readonly limit: number;
  readonly words: string;
  readonly probability: number;
}

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** First-order propagation of uncertainty as in JCGM 100. */
export interface FirstOrder {
  readonly value: number;
  /** Combined standard uncertainty. */
  readonly uncertainty: number;
  /** Effective degrees of freedom (Welch-Satterthwaite); absent where infinite. */
  readonly freedom?: number;
  /** For 95 %, from the t distribution. */
  readonly coverageFactor: number;
  /** Expanded uncertainty: half the width of the 95 % interval. */
  readonly expanded: number;
}

export interface SpreadResult extends StudyCell {
  /** As the notebook stands. */
  readonly base: number | null;
  readonly samples: number;
  /** Samples in which the cell has no number, and the words of the first of them. */
  readonly failures: number;
  readonly failureWords?: string;
  /** Absent where no two samples gave a number. */
  readonly simulated?: {
    readonly mean: number;
    /** Standard uncertainty: the standard deviation of the samples. */
    readonly uncertainty: number;
    /** The shortest interval that holds 95 % of the samples. */
    readonly shortest: Interval;
    /** The interval that leaves 2.5 % at either side. */
    readonly symmetric: Interval;
    readonly histogram: { readonly from: number; readonly width: number; readonly counts: readonly number[] };
  };
  readonly firstOrder?: FirstOrder;
  /** Largest share first. */
  readonly contributions: readonly Contribution[];
  readonly breaches: readonly BreachChance[];
}

export type StudyAnswer =
  | { readonly type: 'influences'; readonly givens: readonly Influence[] }
  | { readonly type: 'variants'; readonly rows: readonly VariantRow[] }
  | {
      readonly type: 'solve';
      /** 'several': more may exist between the points looked at. */
      readonly outcome: 'reached' | 'several' | 'notReached';
      readonly answers: readonly SolveAnswer[];
      /** Set where it is not reached and any sample gave a number. */
      readonly nearest?: SolveAnswer;
      /** Kind and unit of the result, and what was wanted. */
      readonly result: StudyCell;
      readonly wanted: number;
      /** Points looked at, and those among them without a number. */
      readonly points: number;
      readonly failures: number;
      readonly failureWords?: string;
    }
  | {
      readonly type: 'search';
      /** 'noPoint': no point keeps all limits; the one that violates least is told. 'noNumber': the result has none anywhere. */
      readonly outcome: 'found' | 'noPoint' | 'noNumber';
      readonly givens: readonly FoundGiven[];
      readonly result: StudyCell & { readonly value: number | null };
      readonly constraints: readonly ConstraintMet[];
      readonly points: number;
    }
  | { readonly type: 'sweep'; readonly rows: number; readonly columns: readonly SweepColumn[] }
  | {
      readonly type: 'spread';
      readonly samples: number;
      readonly seed: number;
      readonly results: readonly SpreadResult[];
    };

export type FromStudy =
  | { readonly type: 'ready'; readonly build: string }
  /** `done` goes from 0 to 1. */
  | { readonly type: 'progress'; readonly request: number; readonly done: number }
  | { readonly type: 'answered'; readonly request: number; readonly answer: StudyAnswer }
  /** The question can not be worked on, in the user's words; `cell` is the one it is about. */
  | {
      readonly type: 'refused';
      readonly request: number;
      readonly message: string;
      readonly cell?: CellAddress;
    }
  | { readonly type: 'cancelled'; readonly request: number };
