/** What is known of a value before it is computed: the static types of rules F11 to F18. */

import type { Kind } from '../quantity/index.ts';
import type { Failure } from './value.ts';

/** A number of a kind. `literal` is set where the number is written in the formula (0 may meet a quantity, a constant may be an exponent). */
export interface NumberType {
  readonly type: 'number';
  readonly kind: Kind;
  readonly literal?: number;
}
export interface TextType {
  readonly type: 'text';
}
export interface LogicalType {
  readonly type: 'logical';
}
/** An empty cell; `cell` is its address as the reader knows it. */
export interface BlankType {
  readonly type: 'blank';
  readonly cell?: string;
}
/** Nothing is known and nothing clashes: an error constant, a text branch against a number, a skipped argument. */
export interface NeutralType {
  readonly type: 'neutral';
}
/** A range or array: one type a column (F13b), blanks and texts in a column of numbers being neutral. */
export interface GridType {
  readonly type: 'grid';
  readonly columns: readonly ScalarType[];
  readonly rows: number;
  /** Addresses of empty cells, for "value missing". */
  readonly blanks?: readonly string[];
}
/** A clash or an unknown name here or at a root further up: never computed through. */
export interface FailedType {
  readonly type: 'failed';
  readonly failure: Failure;
}

export type ScalarType = NumberType | TextType | LogicalType | BlankType | NeutralType | FailedType;
export type ValueType = ScalarType | GridType;
