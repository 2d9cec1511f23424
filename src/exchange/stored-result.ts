/** The last computed results, stored apart from the contents: shown until they are confirmed, and by programs that are older than the file. */

export interface StoredResult {
  /** Coherent SI for numbers; text, logical; null for a blank or an error. */
  readonly value: number | string | boolean | null;
  /** Name of the quantity kind, or "text", "logical", "blank", "error". */
  readonly kind: string;
  /** Unit in which it was shown; "" for plain numbers and texts. */
  readonly unit: string;
  readonly error?: { readonly code: string; readonly message: string };
  readonly cautions?: readonly StoredCaution[];
}

export interface StoredCaution {
  readonly key: string;
  readonly text: string;
  readonly type: 'caution' | 'assumed' | 'breach';
}

/** By worksheet id, then by address ("B3"). */
export type StoredResults = ReadonlyMap<string, ReadonlyMap<string, StoredResult>>;

/** The same, to be gone through once. */
export type PassingResults = ReadonlyMap<string, Iterable<readonly [address: string, result: StoredResult]>>;

export const NO_RESULTS: StoredResults = new Map();
