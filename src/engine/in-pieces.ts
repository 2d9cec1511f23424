/** A long answer in pieces: between two of them the page can take a key. */

import type { FromEngine } from '../calculation/index.ts';

/** Results in one piece: reading them takes the page a few milliseconds. */
const PIECE = 2_000;

/** The message itself, or pieces of it in order; all but the last say that more come. */
export function inPieces(message: FromEngine): readonly FromEngine[] {
  if (message.type !== 'results' || message.results.length <= PIECE) return [message];
  const { results } = message;
  const last = Math.floor((results.length - 1) / PIECE) * PIECE;
  const pieces: FromEngine[] = [];
  for (let from = 0; from < last; from += PIECE) {
    // Columns of its own for each: they are handed over, not copied.
    const numbers = { addresses: new Uint32Array(), values: new Float64Array() };
    pieces.push({ ...message, numbers, results: results.slice(from, from + PIECE), more: true });
  }
  pieces.push({ ...message, results: results.slice(last) });
  return pieces;
}
