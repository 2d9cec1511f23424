/** A formula as typed to the form that is stored: decimal point, ; between arguments, addresses and functions in capitals (F1, F2, F9). */

import { titleText } from './address.ts';
import { textConstant } from './print.ts';
import { atToken } from './problem-words.ts';
import { tokenize } from './tokenize.ts';
import type { Problem, SyntaxOptions, Token } from './token.ts';

export type CanonicalFormula =
  | { readonly text: string; readonly problem?: undefined }
  | { readonly text?: undefined; readonly problem: Problem };

/** Signs that stand for operators and spaces that are no plain ones. */
const SPACES = /[\u00A0\u2009\u202F\u3000]/g;

function canonicalToken(token: Token, raw: string): string {
  switch (token.type) {
    case 'number':
      return raw.replace(SPACES, ' ').replace(',', '.');
    case 'separator':
      return ';';
    case 'cell':
    case 'function':
      return token.value;
    case 'error':
      return token.value;
    case 'logical':
      return raw.toUpperCase();
    case 'text':
      return raw.startsWith('"') || token.unfinished ? raw : textConstant(token.value);
    case 'worksheet':
      return /^[‘’‚]/.test(raw) && !token.unfinished ? titleText(token.value) : raw;
    case 'operator':
      return token.wrong === undefined ? token.value : raw;
    default:
      return raw;
  }
}

/**
 * The stored form of what was typed under a decimal mark and a separator; digits, trailing zeros, unit spellings and spaces stay.
 * Other problems are left in for the parser to name; a number with two readings is refused here, where the decimal mark is known (F2).
 */
export function canonicalFormula(text: string, options: SyntaxOptions): CanonicalFormula {
  let canonical = '';
  let done = 0;
  for (const token of tokenize(text, options)) {
    const { from, to, wrong } = token;
    const raw = text.slice(from, to);
    if (token.type === 'number' && wrong !== undefined && Number.isFinite(Number(token.value))) {
      return { problem: { from, to, message: atToken(from, raw, wrong), code: '#VALUE!' } };
    }
    canonical += text.slice(done, from).replace(SPACES, ' ') + canonicalToken(token, raw);
    done = to;
  }
  return { text: (canonical + text.slice(done)).trim() };
}
