/** JSON from outside: read only within limits, and refused where a key could reach an object's nature. */

import { PART_LIMITS } from '../document/index.ts';
import type { Refusal } from '../document/index.ts';

export const FILE_LIMITS = Object.freeze({
  /** Bytes in UTF-8. */
  file: 40 * 1024 * 1024,
  string: 100 * 1024,
  /** Bytes of a table. */
  table: 10 * 1024 * 1024,
  /** A photograph's text. */
  photograph: PART_LIMITS.photographText,
  depth: 20,
});

const FORBIDDEN: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/** Length in UTF-8. */
function byteLength(text: string): number {
  let bytes = text.length;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code > 0x7f) bytes += code > 0x7ff && (code < 0xd800 || code > 0xdfff) ? 2 : 1;
  }
  return bytes;
}

const isTooLong = (text: string, limit: number): boolean =>
  text.length > limit || (text.length * 3 > limit && byteLength(text) > limit);

/** The last line of a text that ends before its brackets are closed; undefined where they are. */
function cutAfterLine(text: string): number | undefined {
  let depth = 0;
  let inString = false;
  let lines = 1;
  for (let at = 0; at < text.length; at++) {
    const char = text[at];
    if (char === '\n') lines++;
    if (inString) {
      if (char === '\\') at++;
      else if (char === '"') inString = false;
    } else if (char === '"') inString = true;
    else if (char === '{' || char === '[') depth++;
    else if (char === '}' || char === ']') depth--;
  }
  return inString || depth > 0 ? lines : undefined;
}

/** Key of a photograph's text. */
const PHOTOGRAPH = 'data';

/** What in a parsed value passes a limit or must not be there. */
function objection(value: unknown, depth: number, longest: number = FILE_LIMITS.string): string | undefined {
  if (typeof value === 'string') {
    return isTooLong(value, longest)
      ? `a text in it is longer than ${longest < 110_000 ? 100 : 170} kB`
      : undefined;
  }
  if (typeof value === 'number') {
    return Number.isFinite(value) ? undefined : 'a number in it is larger than 1.7e308';
  }
  if (typeof value !== 'object' || value === null) return undefined;
  if (depth >= FILE_LIMITS.depth) return `it is nested more than ${FILE_LIMITS.depth} deep`;
  if (Array.isArray(value)) {
    for (const each of value) {
      const inner = objection(each, depth + 1);
      if (inner !== undefined) return inner;
    }
    return undefined;
  }
  for (const [key, each] of Object.entries(value)) {
    if (FORBIDDEN.has(key)) return `it holds the key ${key}`;
    const inner = isTooLong(key, FILE_LIMITS.string)
      ? 'a text in it is longer than 100 kB'
      : objection(each, depth + 1, key === PHOTOGRAPH ? FILE_LIMITS.photograph : FILE_LIMITS.string);
    if (inner !== undefined) return inner;
  }
  return undefined;
}

/** The parsed value, or one sentence that says why it can not be opened. What the program kept itself may be longer than a file. */
export function guardedJson(text: string, own = false): { readonly value: unknown } | Refusal {
  if (!own && isTooLong(text, FILE_LIMITS.file))
    return { message: 'The file is larger than 40 MB, the most that is read.' };
  const plain = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (!/^\s*\{/.test(plain)) return { message: 'The file is not a notebook.' };
  let value: unknown;
  try {
    value = JSON.parse(plain);
  } catch {
    const line = cutAfterLine(plain);
    return line === undefined
      ? { message: 'The file is damaged and can not be read; open another copy of it.' }
      : { message: `The file ends too early, in line ${line}: a part is missing; open another copy of it.` };
  }
  const wrong = objection(value, 0);
  return wrong === undefined ? { value } : { message: `The file is not opened: ${wrong}.` };
}
