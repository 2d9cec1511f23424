/** How far a unit reaches in a formula: one run without spaces; units are asked for only where an operator could end it (F7). */

import { isUnknownUnit, parseUnit } from '../quantity/index.ts';
import { readAddress } from './address.ts';

const ATOM = /[\p{L}°′″][\p{L}\p{M}\d°′″_]*[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]*(?:\^(?:-?\d+(?:\.\d+)?|\(-?\d+(?:\/\d+)?\)))?/uy;
const JOINT = /[/*·⋅.]/;

const isUnit = (text: string, currency?: string): boolean => !isUnknownUnit(parseUnit(text, currency));

/** End of a word with its exponent, or of a bracket that balances; undefined where neither begins. */
function atomEnd(text: string, at: number): number | undefined {
  if (text[at] === '(') {
    let depth = 0;
    for (let end = at; end < text.length && !/\s/.test(text.charAt(end)); end++) {
      if (text[end] === '(') depth++;
      if (text[end] === ')' && --depth === 0) return end + 1;
    }
    return undefined;
  }
  ATOM.lastIndex = at;
  const found = ATOM.exec(text);
  return found && !/^\s*\(/.test(text.slice(ATOM.lastIndex)) ? ATOM.lastIndex : undefined;
}

/**
 * End of the unit that begins at `at`, or undefined where none does. It goes on over / * · . only as long as a known unit follows, so that
 * "3 mm/D1" ends before the slash while "3 mmm/rev" is one unknown unit. A word that is an address or a call and no unit is none.
 */
export function unitEnd(text: string, at: number, spaced: boolean, currency?: string): number | undefined {
  let end: number;
  if (spaced && /^1\/[\p{L}(]/u.test(text.slice(at, at + 4))) {
    const next = atomEnd(text, at + 2);
    if (next === undefined || !isUnit(text.slice(at, next), currency)) return undefined;
    end = next;
  } else if (spaced && /^%\/\p{L}/u.test(text.slice(at, at + 4))) {
    const next = atomEnd(text, at + 2);
    if (next === undefined || !isUnit(text.slice(at, next), currency)) return undefined;
    end = next;
  } else {
    if (text[at] === '(') return undefined;
    const next = atomEnd(text, at);
    if (next === undefined) return undefined;
    const word = text.slice(at, next);
    if (readAddress(word) && !isUnit(word, currency)) return undefined;
    end = next;
  }
  while (JOINT.test(text.charAt(end))) {
    const next = atomEnd(text, end + 1);
    if (next === undefined) break;
    const atom = text.slice(end + 1, next);
    if (!isUnit(atom.startsWith('(') ? atom.slice(1, -1) : atom, currency)) break;
    end = next;
  }
  return end;
}
