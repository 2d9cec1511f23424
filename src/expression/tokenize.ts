/** Formula text to tokens; never fails: what fits nowhere is a token of type `bad` with its reason. */

import { readAddress } from './address.ts';
import { OUTSIDE } from './problem-words.ts';
import type { SyntaxOptions, Token, TokenType } from './token.ts';
import { unitEnd } from './unit-extent.ts';

const SPACE = /\s+/uy;
const POINT_NUMBER =
  /(?:\d{1,3}(?:[ \u00A0\u2009\u202F]\d{3})+(?!\d)|\d+)?(?:\.\d+)?(?:(?<=\d)[eE][+-]?\d+)?/uy;
const EITHER_NUMBER =
  /(?:\d{1,3}(?:[ \u00A0\u2009\u202F]\d{3})+(?!\d)|\d+)?(?:[.,]\d+)?(?:(?<=\d)[eE][+-]?\d+)?/uy;
const TEXT = /"(?:[^"]|"")*("?)/uy;
const TITLE = /'(?:[^']|'')*('?)/uy;
const ERROR = /#(?:N\/A|DIV\/0!|[A-Z_]+[!?])/iuy;
const FUNCTION = /\p{L}[\p{L}\p{M}\d_]*(?:\.[\p{L}\d][\p{L}\p{M}\d_]*)*(?=\s*\()/uy;
const ADDRESS = /\$?[A-Za-z]{1,2}\$?\d+(?![\p{L}\p{M}\d_$]|\.\d|\.[\p{L}$])/uy;
const DOLLARS = /[$\p{L}][\p{L}\p{M}\d_$]*/uy;
const WORD = /\p{L}[\p{L}\p{M}\d_]*(?:(?<=\d)\.(?=\d)[\p{L}\p{M}\d_]*)*/uy;
const QUALIFIER = /\p{L}[\p{L}\p{M}\d_]*(?=\.(?!\d))/uy;

/** Written so elsewhere, and what it is here. */
const OPERATORS: readonly (readonly [string, string, string?])[] = [
  ['<>', '<>'],
  ['<=', '<='],
  ['>=', '>='],
  ['=>', '>=', 'greater or equal is written >='],
  ['=<', '<=', 'less or equal is written <='],
  ['==', '=', 'equality is written with one ='],
  ['!=', '<>', 'unequal is written <>'],
  ['**', '^', 'a power is written with ^'],
  ['&&', '&', '& joins texts; both conditions together are AND(first; second)'],
  ['≤', '<='],
  ['≥', '>='],
  ['≠', '<>'],
  ['−', '-'],
  ['×', '*'],
  ['·', '*'],
  ['⋅', '*'],
  ['÷', '/'],
  ['^', '^'],
  ['*', '*'],
  ['/', '/'],
  ['+', '+'],
  ['-', '-'],
  ['&', '&'],
  ['=', '='],
  ['<', '<'],
  ['>', '>'],
];

const MARKS: Readonly<Partial<Record<string, TokenType>>> = {
  '%': 'percent',
  ';': 'separator',
  '|': 'row',
  ':': 'colon',
  '(': 'open',
  ')': 'close',
  '{': 'openArray',
  '}': 'closeArray',
};

const STRANGERS: Readonly<Partial<Record<string, string>>> = {
  '[': 'brackets around a reference are not used here: Feeds.B3, and quantities are written 1 mm',
  ']': 'brackets around a reference are not used here: Feeds.B3, and quantities are written 1 mm',
  '“': 'text stands in straight quotation marks: "down"',
  '”': 'text stands in straight quotation marks: "down"',
  '„': 'text stands in straight quotation marks: "down"',
  '!': 'a dot parts worksheet and cell: Feeds.B3',
  '@': 'a cell is written by its address alone: B3',
  '√': 'a square root is written SQRT(B3)',
  '²': 'a square is written ^2',
  '³': 'a cube is written ^3',
  $: 'a fixed cell is written $B$3, B$3 or $B3',
  '.': 'a dot stands inside a number (0.5) or between worksheet and cell (Feeds.B3)',
  '\\': 'division is written with /',
  '~': 'ranges can not be joined; give them as separate arguments',
  _: 'a name begins with a letter',
};

/** All tokens of the text in order, the leading = as `equals`; spaces are left out. */
export function tokenize(text: string, options: SyntaxOptions = {}): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  const match = (pattern: RegExp): RegExpExecArray | undefined => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    return found && found[0] !== '' ? found : undefined;
  };
  const push = (type: TokenType, length: number, value: string, more: Partial<Token> = {}): void => {
    tokens.push({ type, from: at, to: at + length, value, ...more });
    at += length;
  };
  const pushUnit = (): void => {
    const space = match(SPACE)?.[0].length ?? 0;
    const from = at + space;
    const end = unitEnd(text, from, space > 0, options.currency);
    if (end === undefined) return;
    at = from;
    push('unit', end - at, text.slice(at, end));
  };
  const pushNumber = (found: string): void => {
    const digits = found.replaceAll(/[ \u00A0\u2009\u202F]/g, '').replace(',', '.');
    const twoWays = options.decimalMark === ',' && /^[1-9]\d{0,2}\.\d{3}$/.test(found);
    const value = Number(digits);
    if (twoWays) {
      const words = `it could be ${digits.replace('.', '')} or ${found.replace('.', ',')}; write the one that is meant`;
      push('number', found.length, digits, { wrong: words });
    } else if (!Number.isFinite(value)) {
      push('number', found.length, digits, {
        wrong: 'the number is too large; the largest is about 1.8e308',
      });
    } else push('number', found.length, digits);
    if (
      /[.,]/.test(text.charAt(at)) &&
      /\d/.test(text.charAt(at + 1)) &&
      (text[at] === '.' || options.decimalMark === ',')
    ) {
      const rest = /^(?:[.,]\d+)+/.exec(text.slice(at))?.[0] ?? '';
      push('bad', rest.length, rest, { wrong: 'a number has one decimal mark: 1234.5' });
    } else pushUnit();
  };

  if (match(SPACE)) at = SPACE.lastIndex;
  if (text[at] === '=') push('equals', 1, '=');
  while (at < text.length) {
    const space = match(SPACE);
    if (space) {
      at += space[0].length;
      continue;
    }
    const char = text.charAt(at);
    const last = tokens.at(-1);
    if (char === '.' && last?.type === 'worksheet' && last.to === at) {
      push('dot', 1, '.');
      continue;
    }
    const number = match(options.decimalMark === ',' ? EITHER_NUMBER : POINT_NUMBER);
    if (number) {
      pushNumber(number[0]);
      continue;
    }
    if (char === '"') {
      const [raw = '', close] = match(TEXT) ?? [];
      const value = raw.slice(1, close ? -1 : undefined).replaceAll('""', '"');
      push('text', raw.length, value, close ? {} : { unfinished: true });
      continue;
    }
    if (char === "'") {
      const [raw = '', close] = match(TITLE) ?? [];
      const value = raw.slice(1, close ? -1 : undefined).replaceAll("''", "'");
      if (close) push('worksheet', raw.length, value);
      else push('worksheet', raw.length, value, { unfinished: true });
      continue;
    }
    const error = match(ERROR);
    if (error) {
      push('error', error[0].length, error[0].toUpperCase());
      continue;
    }
    const address = match(ADDRESS);
    const corner = address && readAddress(address[0]);
    if (address && corner && !/^\s*\(/.test(text.slice(at + address[0].length))) {
      push('cell', address[0].length, address[0].toUpperCase(), { corner });
      continue;
    }
    const called = match(FUNCTION);
    if (called) {
      const name = called[0].toUpperCase();
      const empty = /^(?:TRUE|FALSE)$/.test(name) && /^\s*\(\s*\)/.exec(text.slice(at + name.length));
      if (empty) push('logical', name.length + empty[0].length, name);
      else push('function', called[0].length, name);
      continue;
    }
    const qualifier = match(QUALIFIER);
    if (qualifier) {
      push('worksheet', qualifier[0].length, qualifier[0]);
      continue;
    }
    const dollars = match(DOLLARS);
    if (dollars?.[0].includes('$')) {
      const wrong = /^\$?[A-Za-z]+\$?\d+$/.test(dollars[0])
        ? OUTSIDE
        : 'a fixed cell is written $B$3, B$3 or $B3';
      push('bad', dollars[0].length, dollars[0], { wrong });
      continue;
    }
    const word = match(WORD);
    if (word) {
      const logical = /^(?:true|false)$/i.test(word[0]);
      push(logical ? 'logical' : 'name', word[0].length, logical ? word[0].toUpperCase() : word[0]);
      continue;
    }
    if (char === ',') {
      const wrong = options.separator === 'both' ? {} : { wrong: 'arguments are parted by ;' };
      push('separator', 1, ',', wrong);
      continue;
    }
    const operator = OPERATORS.find(([written]) => text.startsWith(written, at));
    if (operator) {
      const [written, value, wrong] = operator;
      push('operator', written.length, value, wrong === undefined ? {} : { wrong });
      continue;
    }
    const mark = MARKS[char];
    if (mark) {
      const before = tokens.at(-1)?.type;
      push(mark, 1, char);
      if (mark === 'closeArray' || (mark === 'percent' && before === 'number')) pushUnit();
      continue;
    }
    const whole = String.fromCodePoint(text.codePointAt(at) ?? 0);
    push('bad', whole.length, whole, {
      wrong: STRANGERS[whole] ?? 'this character has no meaning in a formula; text stands in quotation marks',
    });
  }
  return tokens;
}
