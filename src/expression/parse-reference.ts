/** References and qualified names: B3, $B$3:C9, Feeds.B3, 'Tool trial'.fz (F6, F6a). */

import { OUTSIDE } from './problem-words.ts';
import type { SyntaxReading } from './syntax-reading.ts';
import type { Token, TokenType } from './token.ts';
import type { Corner, Node } from './tree.ts';

const ORIGIN: Corner = { column: 0, row: 0, columnFixed: false, rowFixed: false };
const IN_PLACE_OF_CORNER: ReadonlySet<TokenType> = new Set<TokenType>(['name', 'number', 'bad']);

function secondCorner(raw: string): string {
  if (/^\$?[A-Za-z]{1,3}\$?\d+$/.test(raw)) return OUTSIDE;
  if (/^[A-Za-z]{1,2}$/.test(raw))
    return `the row is missing; a column is written with its rows: ${raw.toUpperCase()}1:${raw.toUpperCase()}2000`;
  return 'a range goes from cell to cell, B3:C9; a name stands for its cells by itself';
}

/** A cell whose token was taken, or the range that it begins. */
export function parseReference(
  reading: SyntaxReading,
  first: Token,
  worksheet?: string,
  from = first.from,
): Node {
  const start = first.corner ?? ORIGIN;
  const where = worksheet === undefined ? {} : { worksheet };
  const cell: Node = { type: 'cell', ...where, ...start, from, to: first.to };
  if (!reading.is('colon')) return reading.made(cell);
  const colon = reading.next();
  const title = reading.peek();
  if (title?.type === 'worksheet') {
    if (title.value !== worksheet) {
      const words = `a range lies on one worksheet; its title stands once, before it: ${reading.raw(title)}.B3:C9`;
      reading.report(title, words);
    }
    reading.next();
    if (reading.is('dot')) reading.next();
  }
  const token = reading.peek();
  if (token?.type !== 'cell' || !token.corner) {
    if (token) reading.report(token, token.wrong ?? secondCorner(reading.raw(token)));
    else reading.report(undefined, 'the second cell of the range is missing: B3:C9');
    const parts = [reading.made(cell)];
    const last = token && IN_PLACE_OF_CORNER.has(token.type) ? reading.next() : colon;
    return reading.made({ type: 'broken', parts, from, to: last?.to ?? first.to });
  }
  reading.next();
  if (reading.is('colon')) reading.report(reading.peek(), 'a range has two corners: B3:C9');
  return reading.made({ type: 'range', ...where, start, end: token.corner, from, to: token.to });
}

/** A name whose token was taken; a range can not begin with it. */
export function parseName(reading: SyntaxReading, token: Token, worksheet?: string, from = token.from): Node {
  const where = worksheet === undefined ? {} : { worksheet };
  if (reading.is('colon')) reading.report(token, secondCorner(token.value));
  return reading.made({ type: 'name', ...where, name: token.value, from, to: token.to });
}

/** What begins with a worksheet's title. */
export function parseQualified(reading: SyntaxReading): Node {
  const title = reading.next();
  if (!title) return reading.gap();
  const raw = reading.raw(title);
  const broken = (): Node =>
    reading.made({ type: 'broken', parts: [], from: title.from, to: reading.lastEnd() });
  if (title.unfinished) {
    const words =
      "the worksheet's title is not closed: 'Tool trial'.B3; text stands in double quotation marks";
    reading.report(title, words, true);
    return broken();
  }
  if (!reading.is('dot')) {
    const words = `single quotation marks hold a worksheet's title: ${raw}.B3; text stands in double ones`;
    reading.report(title, words);
    return broken();
  }
  const dot = reading.next();
  const token = reading.peek();
  const follows = token !== undefined && token.from === dot?.to;
  if (follows && token.type === 'cell') {
    reading.next();
    return parseReference(reading, token, title.value, title.from);
  }
  if (follows && token.type === 'name') {
    reading.next();
    return parseName(reading, token, title.value, title.from);
  }
  const words = `a cell or a name is missing behind the dot: ${raw}.B3`;
  reading.report(token, follows && token.wrong !== undefined ? token.wrong : words);
  return broken();
}
