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
/** Tablets put typographic quotation marks in the place of straight ones; inside such a text a straight one stands for itself. */
const CURLY_TEXT = /[“”„][^“”„]*([“”]?)/uy;
const CURLY_TITLE = /[‘’‚][^‘’‚]*([‘’]?)/uy;
/** How each quotation mark goes on. */
const QUOTED: ReadonlyMap<string, RegExp> = new Map([
  ['"', TEXT],
  ["'", TITLE],
  ...['“', '”', '„'].map((mark) => [mark, CURLY_TEXT] as const),
  ...['‘', '’', '‚'].map((mark) => [mark, CURLY_TITLE] as const),
]);
const TITLE_MARKS: ReadonlySet<string> = new Set(["'", '‘', '’', '‚']);
const NOTHING = /(?!)/y;
const MORE_POINTS = /(?:\.\d+)+/y;
const MORE_MARKS = /(?:[.,]\d+)+/y;
const GROUP_SPACES = /[ \u00A0\u2009\u202F]/g;
const LOGICAL = /^(?:true|false)$/i;
const STRANGE = 'this character has no meaning in a formula; text stands in quotation marks';
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
  '!': 'a dot parts worksheet and cell: Feeds.B3',
  '@': 'a cell is written by its address alone: B3',
  '√': 'a square root is written SQRT(B3)',
  '²': 'a square is written ^2',
  '³': 'a cube is written ^3',
  '#': 'an error is written #N/A, #REF! or #VALUE!',
  $: 'a fixed cell is written $B$3, B$3 or $B3',
  '.': 'a dot stands inside a number (0.5) or between worksheet and cell (Feeds.B3)',
  '\\': 'division is written with /',
  '~': 'ranges can not be joined; give them as separate arguments',
  _: 'a name begins with a letter',
};

const CALLED = /\s*\(/y;
const NO_ARGUMENTS = /\s*\(\s*\)/y;

class Lexer {
  readonly tokens: Token[] = [];
  private at = 0;

  constructor(
    private readonly text: string,
    private readonly options: SyntaxOptions,
  ) {}

  run(): Token[] {
    this.skipSpace();
    if (this.text[this.at] === '=') this.push('equals', 1, '=');
    for (this.skipSpace(); this.at < this.text.length; this.skipSpace()) {
      if (!this.dot() && !this.number() && !this.quoted() && !this.word()) this.sign();
    }
    return this.tokens;
  }

  private match(pattern: RegExp, at = this.at): RegExpExecArray | undefined {
    pattern.lastIndex = at;
    const found = pattern.exec(this.text);
    return found && found[0] !== '' ? found : undefined;
  }

  private push(type: TokenType, length: number, value: string, more: Partial<Token> = {}): true {
    this.tokens.push({ type, from: this.at, to: this.at + length, value, ...more });
    this.at += length;
    return true;
  }

  private skipSpace(): void {
    this.at += this.match(SPACE)?.[0].length ?? 0;
  }

  /** The dot straight behind a worksheet's title. */
  private dot(): boolean {
    const last = this.tokens.at(-1);
    if (this.text[this.at] !== '.' || last?.type !== 'worksheet' || last.to !== this.at) return false;
    return this.push('dot', 1, '.');
  }

  private number(): boolean {
    const comma = this.options.decimalMark === ',';
    const found = this.match(comma ? EITHER_NUMBER : POINT_NUMBER)?.[0];
    if (found === undefined) return false;
    const digits = found.replaceAll(GROUP_SPACES, '').replace(',', '.');
    const wrong = this.wrongNumber(found, digits);
    this.push('number', found.length, digits, wrong === undefined ? {} : { wrong });
    const rest = this.match(comma ? MORE_MARKS : MORE_POINTS)?.[0];
    if (rest) return this.push('bad', rest.length, rest, { wrong: 'a number has one decimal mark: 1234.5' });
    this.unit();
    return true;
  }

  private wrongNumber(written: string, digits: string): string | undefined {
    if (this.options.decimalMark === ',' && /^[1-9]\d{0,2}\.\d{3}$/.test(written)) {
      const readings = `${digits.replace('.', '')} or ${written.replace('.', ',')}`;
      return `it could be ${readings}; write the one that is meant`;
    }
    return Number.isFinite(Number(digits))
      ? undefined
      : 'the number is too large; the largest is about 1.8e308';
  }

  /** The unit behind a number, a percent sign or an array, if there is one (F7). */
  private unit(): void {
    const space = this.match(SPACE)?.[0].length ?? 0;
    const from = this.at + space;
    const end = unitEnd(this.text, from, space > 0, this.options.currency);
    if (end === undefined) return;
    this.at = from;
    this.push('unit', end - from, this.text.slice(from, end));
  }

  /** Text, or the title of a worksheet. */
  private quoted(): boolean {
    const mark = this.text.charAt(this.at);
    const [raw, close] = this.match(QUOTED.get(mark) ?? NOTHING) ?? [];
    if (raw === undefined) return false;
    const inner = raw.slice(1, close ? -1 : undefined);
    const value = mark === '"' || mark === "'" ? inner.replaceAll(mark + mark, mark) : inner;
    const type = TITLE_MARKS.has(mark) ? 'worksheet' : 'text';
    return this.push(type, raw.length, value, close ? {} : { unfinished: true });
  }

  /** What begins with a letter, $ or #: cells, functions, titles, names, constants. */
  private word(): boolean {
    const error = this.match(ERROR)?.[0];
    if (error) return this.push('error', error.length, error.toUpperCase());
    const address = this.match(ADDRESS)?.[0] ?? '';
    const corner = readAddress(address);
    if (corner && !this.match(CALLED, this.at + address.length)) {
      return this.push('cell', address.length, address.toUpperCase(), { corner });
    }
    const called = this.match(FUNCTION)?.[0];
    if (called) {
      const name = called.toUpperCase();
      const brackets = LOGICAL.test(name) && this.match(NO_ARGUMENTS, this.at + called.length);
      if (brackets) return this.push('logical', called.length + brackets[0].length, name);
      return this.push('function', called.length, name);
    }
    const title = this.match(QUALIFIER)?.[0];
    if (title) return this.push('worksheet', title.length, title);
    const fixed = this.match(DOLLARS)?.[0];
    if (fixed?.includes('$')) {
      const isAddress = /^\$?[A-Za-z]+\$?\d+$/.test(fixed);
      const wrong = isAddress ? OUTSIDE : 'a fixed cell is written $B$3, B$3 or $B3';
      return this.push('bad', fixed.length, fixed, { wrong });
    }
    const word = this.match(WORD)?.[0];
    if (word === undefined) return false;
    return LOGICAL.test(word)
      ? this.push('logical', word.length, word.toUpperCase())
      : this.push('name', word.length, word);
  }

  /** Operators, brackets, separators, and whatever else stands there. */
  private sign(): void {
    const { text, at } = this;
    const char = text.charAt(at);
    if (char === ',') {
      const { separator, decimalMark } = this.options;
      const isSeparator = separator === 'both' && decimalMark !== ',';
      const wrong = isSeparator ? {} : { wrong: 'arguments are parted by ;' };
      this.push('separator', 1, ',', wrong);
      return;
    }
    const [written, value = '', wrong] = OPERATORS.find(([each]) => text.startsWith(each, at)) ?? [];
    if (written !== undefined) {
      this.push('operator', written.length, value, wrong === undefined ? {} : { wrong });
      return;
    }
    const mark = MARKS[char];
    if (mark) {
      const before = this.tokens.at(-1)?.type;
      this.push(mark, 1, char);
      if (mark === 'closeArray' || (mark === 'percent' && before === 'number')) this.unit();
      return;
    }
    const whole = String.fromCodePoint(text.codePointAt(at) ?? 0);
    this.push('bad', whole.length, whole, { wrong: STRANGERS[whole] ?? STRANGE });
  }
}

/** All tokens of the text in order, the leading = as `equals`; spaces are left out. */
export const tokenize = (text: string, options: SyntaxOptions = {}): Token[] =>
  new Lexer(text, options).run();
