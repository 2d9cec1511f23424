/** References and names of a formula replaced in place, by the positions of their tokens; all else stays as typed, unfinished text too. */

import { print } from './print.ts';
import { tokenize } from './tokenize.ts';
import type { Token } from './token.ts';
import type { CellNode, NameNode, RangeNode } from './tree.ts';

export type Reference = CellNode | RangeNode | NameNode;

export const DELETED_REFERENCE = '#REF!';

/** References and names as they are written, in order, each with its span; works on text with problems as well. */
export function writtenReferences(text: string): Reference[] {
  const tokens = tokenize(text);
  const found: Reference[] = [];
  let place = 0;
  const cornerAt = (at: number): Token | undefined => (tokens[at]?.type === 'cell' ? tokens[at] : undefined);
  while (place < tokens.length) {
    const first = tokens[place++];
    if (!first) break;
    let token = first;
    let worksheet: string | undefined;
    if (first.type === 'worksheet' && tokens[place]?.type === 'dot') {
      const behind = tokens[place + 1];
      if (behind?.type !== 'cell' && behind?.type !== 'name') continue;
      worksheet = first.value;
      token = behind;
      place += 2;
    }
    const where = worksheet === undefined ? {} : { worksheet };
    if (token.type === 'name') {
      found.push({ type: 'name', ...where, name: token.value, from: first.from, to: token.to });
    }
    if (token.type !== 'cell' || !token.corner) continue;
    const sameTitle = tokens[place + 1]?.type === 'worksheet' && tokens[place + 1]?.value === worksheet;
    const at = sameTitle && tokens[place + 2]?.type === 'dot' ? place + 3 : place + 1;
    const second = tokens[place]?.type === 'colon' ? cornerAt(at) : undefined;
    if (second?.corner) {
      const corners = { start: token.corner, end: second.corner };
      found.push({ type: 'range', ...where, ...corners, from: first.from, to: second.to });
      place = at + 1;
    } else found.push({ type: 'cell', ...where, ...token.corner, from: first.from, to: token.to });
  }
  return found;
}

/**
 * The text with each of its references replaced by what `map` gives: a reference to write, #REF!, or undefined to leave it as typed.
 * `references` are the text's own, from left to right.
 */
export function rewriteReferences(
  text: string,
  references: readonly Reference[],
  map: (reference: Reference) => Reference | typeof DELETED_REFERENCE | undefined,
): string {
  let rewritten = '';
  let done = 0;
  for (const reference of references) {
    const by = map(reference);
    if (by === undefined) continue;
    rewritten += text.slice(done, reference.from) + (typeof by === 'string' ? by : print(by));
    done = reference.to;
  }
  return rewritten + text.slice(done);
}
