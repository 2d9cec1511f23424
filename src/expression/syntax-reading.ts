/** Where a parser stands in the tokens of a formula: it looks, takes, counts parts and depth, and keeps the first problem. */

import { atEnd, atToken, OUTSIDE } from './problem-words.ts';
import { tokenize } from './tokenize.ts';
import type { Problem, SyntaxOptions, Token, TokenType } from './token.ts';
import type { BrokenNode, Node } from './tree.ts';

export const SYNTAX_LIMITS = Object.freeze({ length: 2048, depth: 64, nodes: 1000 });

export class SyntaxReading {
  private readonly tokens: readonly Token[];
  /** End of the text without the spaces behind it. */
  readonly end: number;
  private place: number;
  private depth = 0;
  private nodes = 0;
  private found: Problem | undefined;

  constructor(
    private readonly text: string,
    options: SyntaxOptions,
  ) {
    this.tokens = tokenize(text, options);
    this.end = text.trimEnd().length;
    this.place = this.tokens[0]?.type === 'equals' ? 1 : 0;
  }

  /** The first thing that is wrong. */
  get problem(): Problem | undefined {
    return this.found;
  }

  peek(ahead = 0): Token | undefined {
    return this.tokens[this.place + ahead];
  }

  is(type: TokenType, ahead = 0): boolean {
    return this.peek(ahead)?.type === type;
  }

  /** The token as typed. */
  raw(span: { readonly from: number; readonly to: number }): string {
    return this.text.slice(span.from, span.to);
  }

  /** Keeps the problem if it is the first; without a token it lies at the end, where more text may help. */
  report(token: Token | undefined, words: string, unfinished = !token): void {
    if (this.found) return;
    const code = words.startsWith(OUTSIDE) ? '#REF!' : '#VALUE!';
    const { from, to } = token ?? { from: this.end, to: this.end };
    const message = token ? atToken(from, this.raw(token), words) : atEnd(words);
    this.found = { from, to, message, code, ...(unfinished && { unfinished }) };
  }

  /** Takes the next token, reporting what is wrong with it. */
  next(): Token | undefined {
    const token = this.peek();
    if (!token) return undefined;
    this.place++;
    if (token.wrong !== undefined) this.report(token, token.wrong);
    return token;
  }

  /** Counts a node; one too many ends the reading. */
  made<T extends Node>(node: T): T {
    if (++this.nodes > SYNTAX_LIMITS.nodes && this.found?.code !== '#LIMIT!') {
      const message = `The formula has more than ${SYNTAX_LIMITS.nodes} parts: split it over several cells.`;
      this.found = { from: node.from, to: node.to, message, code: '#LIMIT!' };
      this.place = this.tokens.length;
    }
    return node;
  }

  /** Reads what an opening bracket or a call holds; one too deep ends the reading. */
  nested<T extends Node>(opening: Token, inner: () => T): T {
    if (++this.depth > SYNTAX_LIMITS.depth) {
      const words = `brackets and calls are nested more than ${SYNTAX_LIMITS.depth} deep; put a part of it into a cell of its own`;
      const message = atToken(opening.from, this.raw(opening), words);
      this.found ??= { from: opening.from, to: opening.to, message, code: '#LIMIT!' };
      this.place = this.tokens.length;
    }
    const node = inner();
    this.depth--;
    return node;
  }

  /** Where the last token ended. */
  lastEnd(): number {
    return this.tokens[this.place - 1]?.to ?? 0;
  }

  /** A place where a value is missing. */
  gap(): BrokenNode {
    const at = this.peek()?.from ?? this.end;
    return this.made({ type: 'broken', parts: [], from: at, to: at });
  }

  /** A token that fits nowhere. */
  swallowed(): BrokenNode {
    const { from, to } = this.next() ?? { from: this.end, to: this.end };
    return this.made({ type: 'broken', parts: [], from, to });
  }
}
