/** Values that flow through evaluation: coherent SI doubles, texts, logicals, blanks, failures, and grids of them. */

import type { ErrorCode } from './tree.ts';

/** A result that is no value: the code, plain words, and the cell where the trouble began (as text, "Feeds.B4") if known. */
export interface Failure {
  readonly failure: ErrorCode;
  readonly message: string;
  readonly root?: string;
}

/** null is a blank. Numbers are coherent SI, never NaN or infinite. */
export type Scalar = number | string | boolean | null | Failure;

/** A range or an inline array, row by row; every row has the same length of at least one. */
export interface Grid {
  readonly grid: readonly (readonly Scalar[])[];
}

export type Value = Scalar | Grid;

export function isFailure(value: Value): value is Failure {
  return typeof value === 'object' && value !== null && 'failure' in value;
}

export function isGrid(value: Value): value is Grid {
  return typeof value === 'object' && value !== null && 'grid' in value;
}

export function failure(code: ErrorCode, message: string, root?: string): Failure {
  return root === undefined ? { failure: code, message } : { failure: code, message, root };
}
