/** A QR code (ISO/IEC 18004) as drawn data; loaded only where one is shown. */

import { encode } from 'uqr';

/** Most bytes that version 40 takes at level L (ISO/IEC 18004:2015, table 7). */
export const QR_CAPACITY = 2953;

/** Quiet zone about the symbol, in modules, as the standard asks. */
const QUIET = 4;

export interface QrDrawing {
  /** Modules along a side, quiet zone included. */
  readonly size: number;
  /** Path data of the dark modules, one unit a module. */
  readonly path: string;
}

/** The drawing of a text; undefined where it does not fit into a QR code. */
export function qrDrawing(text: string): QrDrawing | undefined {
  if (new TextEncoder().encode(text).length > QR_CAPACITY) return undefined;
  const { data, size } = encode(text, { ecc: 'L', boostEcc: true, border: QUIET });
  const path = data
    .flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])))
    .join('');
  return { size, path };
}
