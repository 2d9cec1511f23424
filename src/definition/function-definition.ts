/** The contract of a domain function: data that documents, checks, typesets and computes it. */

import type { Grid, Scalar } from '../expression/index.ts';

/** A limit: a quantity ("0 mm", "80 deg", "1") or an expression in the other parameters' symbols ("Dc"). */
export type Limit = string;

export interface Bounds {
  /** value > above */
  readonly above?: Limit;
  /** value >= least */
  readonly least?: Limit;
  /** value < below */
  readonly below?: Limit;
  /** value <= most */
  readonly most?: Limit;
}

/** Kind of a parameter that takes a hardness in any scale. */
export const HARDNESS = 'any hardness';

export interface Parameter {
  /** Trade words with underscores: radial_engagement. */
  readonly name: string;
  /** Name in the equation: ae, kappa_r. */
  readonly symbol: string;
  /** Name of a quantity kind ("length"), or "text", "logical", "any hardness" (HRC, HB or HV; the scale is the argument SYMBOL_scale), or "any number" (the same kind as its neighbours of that sort). */
  readonly kind: string;
  /** Default units for plain numbers; absent for text, logicals, counts and ratios. */
  readonly metric?: string;
  readonly inch?: string;
  readonly hard?: Bounds;
  /** Outside: caution "unusual". */
  readonly usual?: { readonly from: Limit; readonly to: Limit };
  readonly whole?: boolean;
  /** A range or array of such values. */
  readonly list?: boolean;
  /** Allowed words of a text parameter. */
  readonly words?: readonly string[];
  /** Beginning of the words that a plain number stands for: with "IT", 7 and "7" are read as "IT7". */
  readonly numbered?: string;
  /** Makes the parameter optional: a value, an expression in the other symbols, or the meaning of leaving it out. */
  readonly default?: { readonly value: string } | { readonly meaning: string };
  readonly meaning: string;
}

export interface Result {
  /** Name of a quantity kind, "text", or "like NAME" for the kind of that parameter. */
  readonly kind: string;
  readonly symbol: string;
  readonly meaning: string;
  /** Several values that fill the cells below (F26). */
  readonly list?: boolean;
}

/** A condition in the formula language over the symbols; true means it applies. `{symbol}` in the text is replaced by the value with its unit. */
export interface Condition {
  readonly when: string;
  readonly text: string;
}

/** An intermediate quantity, usable in later steps, in conditions and in the equation. */
export interface EquationStep {
  readonly symbol: string;
  readonly meaning: string;
  readonly kind: string;
  readonly equation: string;
}

/** A constant that has a dimension, so that it scales with the base units. */
export interface Constant {
  readonly symbol: string;
  /** Quantity text: "1 mm". */
  readonly value: string;
  readonly meaning: string;
}

/** How an expected value was obtained; "self" (this program) may never stand alone. */
export type Origin = 'published' | 'byHand' | 'otherProgram' | 'self';

export interface Example {
  /** Arguments as they would be typed: "20 mm", "\"down\"", "{40;60;50} mm"; "" skips one. */
  readonly given: readonly string[];
  /** Expected result as it would be typed ("0.06 mm"); texts in quotation marks; several values as an array. */
  readonly gives: string | readonly string[];
  /** Relative tolerance unless it carries a unit. Default: half a unit of the last digit given. */
  readonly tolerance?: string;
  readonly origin: Origin;
  /** Where it comes from: page, case, how it was worked out. */
  readonly how: string;
}

/** Argument values in coherent SI by symbol; a parameter left out without a default value is null; lists are grids. */
export type Arguments = Readonly<Record<string, Scalar | Grid>>;

/** Records an intermediate value for the Working panel. */
export type NoteStep = (symbol: string, value: Scalar, kind: string) => void;

/** Puts a mark on the value, in words: for what a table says of its row. */
export type NoteCaution = (text: string) => void;

interface Described {
  readonly name: string;
  readonly family: string;
  /** At most 90 characters. */
  readonly summary: string;
  readonly searchWords: readonly string[];
  readonly parameters: readonly Parameter[];
  readonly result: Result;
  /** Equations of intermediate quantities, in order. */
  readonly steps?: readonly EquationStep[];
  /** Hard conditions between parameters (and steps): true is refused with the text. */
  readonly refuses?: readonly Condition[];
  /** True gives the value with a mark on the cell. May use the result's symbol. */
  readonly cautions?: readonly Condition[];
  /** Standing text, shown in Working, help and print, never a mark. */
  readonly remarks?: readonly string[];
  readonly constants?: readonly Constant[];
  /** "table" and "text": results that do not scale with the base units, checked by rows instead. Default "homogeneous". */
  readonly scaling?: 'homogeneous' | 'table' | 'text';
  /** Keys of functions/sources.ts. */
  readonly sources: readonly string[];
  readonly examples: readonly Example[];
  /** Version in which it appeared. */
  readonly since: string;
}

/** The equation text is the implementation. */
export interface EquationDefinition extends Described {
  readonly equation: string;
}

/** Iterative or tabular: code computes, and an independently obtained example is compulsory. */
export interface ComputedDefinition extends Described {
  /** Equation for reading only, in words or symbols. */
  readonly reading: string;
  readonly compute: (args: Arguments, note: NoteStep, caution: NoteCaution) => Scalar | Grid;
}

export type FunctionDefinition = EquationDefinition | ComputedDefinition;
