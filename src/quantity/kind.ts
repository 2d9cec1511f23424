/** Quantity kinds: what a number is about, finer than its dimension (F11a). */

import type { Dimension } from './dimension.ts';

/** Interned: compare kinds with ===. */
export interface Kind {
  /** "length", "feed per tooth", "rotational speed"; for a general kind without a name of its own, its dimension in words. */
  readonly name: string;
  readonly dimension: Dimension;
  /** The general kind of its dimension fits all special ones in silence (F16). */
  readonly general: boolean;
  /** Default display units (F19); "" shows the plain number. */
  readonly metric: string;
  readonly inch: string;
}
