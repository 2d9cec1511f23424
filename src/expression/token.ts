/** Tokens of a formula: for the parser, for colouring while it is typed, and for rewriting in place. */

import type { Corner, Span } from './tree.ts';

export type TokenType =
  | 'equals'
  | 'number'
  | 'unit'
  | 'text'
  | 'logical'
  | 'error'
  | 'worksheet'
  | 'dot'
  | 'cell'
  | 'name'
  | 'function'
  | 'operator'
  | 'percent'
  | 'separator'
  | 'row'
  | 'colon'
  | 'open'
  | 'close'
  | 'openArray'
  | 'closeArray'
  | 'bad';

export interface Token extends Span {
  readonly type: TokenType;
  /** Canonical content: digits, unit, title without quotation marks, text without them, operator, function name in capitals. */
  readonly value: string;
  /** For a cell. */
  readonly corner?: Corner;
  /** What is wrong with it, in words that say what would be right. */
  readonly wrong?: string;
  /** The text ends inside it. */
  readonly unfinished?: boolean;
}

export interface SyntaxOptions {
  /** What parts arguments; saved text has ; alone, and the comma never parts them where it is the decimal mark (F9). */
  readonly separator?: ';' | 'both';
  /** Decimal mark of what is typed; saved text has the point. */
  readonly decimalMark?: '.' | ',';
  /** The notebook's currency code: needed only where it stands second in a unit (h/EUR). */
  readonly currency?: string;
}

/** Where and why a text is no formula. */
export interface Problem extends Span {
  /** Names the place, what was read, and what would be right. */
  readonly message: string;
  /** #LIMIT! too long, too deep or too many parts; #REF! a cell outside the worksheet; else #VALUE!. */
  readonly code: '#VALUE!' | '#REF!' | '#LIMIT!';
  /** The text ends too early: more of it may make it right. */
  readonly unfinished?: boolean;
}
