/** Formula text to syntax tree (F5 to F10, F25); wrong or unfinished text gives a partial tree and the first problem. */

import { readAddress } from './address.ts';
import { beginsValue, junctionWords } from './junction-words.ts';
import { parseArray, parseLogical, parseNumber, parseText } from './parse-array.ts';
import { parseName, parseQualified, parseReference } from './parse-reference.ts';
import { SYNTAX_LIMITS, SyntaxReading } from './syntax-reading.ts';
import type { Problem, SyntaxOptions, Token, TokenType } from './token.ts';
import type { ArrayNode, BinaryOperator, CallNode, ErrorCode, Node, NumberNode } from './tree.ts';

export type Parsed =
  | { readonly tree: Node; readonly problem?: undefined }
  | { readonly tree?: Node; readonly problem: Problem };

/** How tightly each operator binds; all are left-associative (F5). Percent and sign bind tighter, in this order. */
export const PRECEDENCE: Readonly<Record<BinaryOperator, number>> = {
  '=': 1,
  '<>': 1,
  '<': 1,
  '<=': 1,
  '>': 1,
  '>=': 1,
  '&': 2,
  '+': 3,
  '-': 3,
  '*': 4,
  '/': 4,
  '^': 5,
};

const ERRORS: ReadonlySet<string> = new Set<ErrorCode>([
  '#DIV/0!',
  '#N/A',
  '#NAME?',
  '#NUM!',
  '#REF!',
  '#VALUE!',
  '#UNIT!',
  '#CIRCLE!',
  '#OCCUPIED!',
  '#LIMIT!',
]);
const isErrorCode = (text: string): text is ErrorCode => ERRORS.has(text);
const isOperator = (text: string): text is BinaryOperator => Object.hasOwn(PRECEDENCE, text);

const A_VALUE = 'a value such as 12.5 mm, B3 or a name';

class Parser {
  constructor(private readonly reading: SyntaxReading) {}

  /** Values that stand side by side up to one of the closers; more than one is a problem. */
  sequence(...closers: TokenType[]): Node {
    const { reading } = this;
    const first = this.binary(1);
    const parts = [first];
    let before = first;
    for (let token = reading.peek(); token && !closers.includes(token.type); token = reading.peek()) {
      reading.report(token, junctionWords(reading, token, before));
      before = beginsValue(token) ? this.binary(1) : reading.swallowed();
      parts.push(before);
    }
    return parts.length === 1
      ? first
      : reading.made({ type: 'broken', parts, from: first.from, to: reading.lastEnd() });
  }

  private binary(least: number): Node {
    const { reading } = this;
    let left = this.postfix();
    for (;;) {
      const token = reading.peek();
      if (token?.type !== 'operator' || !isOperator(token.value)) return left;
      const operator = token.value;
      if (PRECEDENCE[operator] < least) return left;
      reading.next();
      const right = this.binary(PRECEDENCE[operator] + 1);
      left = reading.made({ type: 'binary', operator, left, right, from: left.from, to: right.to });
    }
  }

  private postfix(): Node {
    const { reading } = this;
    let node = this.prefix();
    while (reading.is('percent')) {
      reading.next();
      node = reading.made({ type: 'percent', operand: node, from: node.from, to: reading.lastEnd() });
    }
    return node;
  }

  private prefix(): Node {
    const { reading } = this;
    const token = reading.peek();
    if (token?.type !== 'operator' || (token.value !== '-' && token.value !== '+')) return this.primary();
    reading.next();
    const operand = this.prefix();
    return reading.made({ type: 'unary', operator: token.value, operand, from: token.from, to: operand.to });
  }

  private primary(): Node {
    const { reading } = this;
    const token = reading.peek();
    if (!token) {
      reading.report(undefined, `${A_VALUE} is missing`);
      return reading.gap();
    }
    switch (token.type) {
      case 'number':
        return this.measured(parseNumber(reading));
      case 'openArray':
        return this.measured(parseArray(reading));
      case 'text':
        return parseText(reading);
      case 'logical':
        return parseLogical(reading);
      case 'error':
        return this.errorConstant(token);
      case 'open':
        return this.group(token);
      case 'function':
        return this.call(token);
      case 'worksheet':
        return parseQualified(reading);
      case 'cell':
        reading.next();
        return parseReference(reading, token);
      case 'name':
        reading.next();
        return parseName(reading, token);
      case 'operator':
      case 'close':
      case 'separator':
      case 'row':
      case 'closeArray':
      case 'percent':
        reading.report(token, token.wrong ?? `${A_VALUE} is missing before it`);
        return reading.gap();
      default:
        reading.report(token, token.wrong ?? `${A_VALUE} should stand here`);
        return reading.swallowed();
    }
  }

  private errorConstant({ value, from, to }: Token): Node {
    this.reading.next();
    return this.reading.made(
      isErrorCode(value)
        ? { type: 'error', code: value, from, to }
        : { type: 'error', code: '#VALUE!', written: value, from, to },
    );
  }

  /** A magnitude with the unit behind it, if there is one; a percent sign may stand between. */
  private measured(bare: NumberNode | ArrayNode | undefined): Node {
    const { reading } = this;
    if (!bare) return reading.gap();
    const percent = reading.is('percent') && reading.is('unit', 1) ? reading.next() : undefined;
    const magnitude = percent
      ? reading.made({ type: 'percent' as const, operand: bare, from: bare.from, to: percent.to })
      : bare;
    if (!reading.is('unit')) return magnitude;
    const unit = reading.next();
    if (!unit) return magnitude;
    const { from, to, value } = unit;
    return reading.made({
      type: 'quantity',
      magnitude,
      unit: value,
      unitSpan: { from, to },
      from: magnitude.from,
      to,
    });
  }

  private group(opening: Token): Node {
    const { reading } = this;
    reading.next();
    return reading.nested(opening, () => {
      const inner = this.sequence('close');
      if (reading.is('close')) reading.next();
      else reading.report(undefined, `a ) is missing for the ( at character ${opening.from + 1}`);
      return reading.made({ type: 'group', inner, from: opening.from, to: reading.lastEnd() });
    });
  }

  private call(name: Token): Node {
    const { reading } = this;
    reading.next();
    const opening = reading.next();
    if (readAddress(name.value)) {
      const words = `an operator is missing before it; ${name.value} is a cell and no function`;
      reading.report(opening, words);
    }
    return reading.nested(name, (): CallNode => {
      const args: Node[] = [];
      if (reading.peek() && !reading.is('close')) {
        args.push(this.argument());
        while (reading.is('separator')) {
          reading.next();
          args.push(this.argument());
        }
      }
      if (reading.is('close')) reading.next();
      else reading.report(undefined, `a ) is missing that closes ${name.value}(`);
      const nameSpan = { from: name.from, to: name.to };
      return reading.made({
        type: 'call',
        name: name.value,
        nameSpan,
        args,
        from: name.from,
        to: reading.lastEnd(),
      });
    });
  }

  /** One argument; a skipped one is a missing node. */
  private argument(): Node {
    const { reading } = this;
    const token = reading.peek();
    if (token && token.type !== 'close' && token.type !== 'separator')
      return this.sequence('separator', 'close');
    const at = token?.from ?? reading.end;
    return reading.made({ type: 'missing', from: at, to: at });
  }
}

/** Reads a formula, with or without its leading =. Never throws. */
export function parse(text: string, options: SyntaxOptions = {}): Parsed {
  if (text.length > SYNTAX_LIMITS.length) {
    const message = `The formula has ${text.length} characters; at most ${SYNTAX_LIMITS.length} are allowed: split it over several cells.`;
    return { problem: { from: SYNTAX_LIMITS.length, to: text.length, message, code: '#LIMIT!' } };
  }
  const reading = new SyntaxReading(text, options);
  const tree = new Parser(reading).sequence();
  const { problem } = reading;
  return problem ? { tree, problem } : { tree };
}
