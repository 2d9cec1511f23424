/** Formula text to syntax tree (F5 to F10, F25); wrong or unfinished text gives a partial tree and the first problem. */

import { readAddress } from './address.ts';
import { atEnd, atToken, OUTSIDE } from './problem-words.ts';
import { tokenize } from './tokenize.ts';
import type { Problem, SyntaxOptions, Token, TokenType } from './token.ts';
import type {
  ArrayNode,
  BinaryOperator,
  CallNode,
  Corner,
  ErrorCode,
  LogicalNode,
  Node,
  NumberNode,
  TextNode,
  UnaryNode,
} from './tree.ts';

export type Parsed =
  | { readonly tree: Node; readonly problem?: undefined }
  | { readonly tree?: Node; readonly problem: Problem };

export const SYNTAX_LIMITS = Object.freeze({ length: 2048, depth: 64, nodes: 1000 });

const PRECEDENCE: Readonly<Record<BinaryOperator, number>> = {
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

const BEGINS_VALUE: ReadonlySet<TokenType> = new Set<TokenType>([
  'number',
  'text',
  'logical',
  'error',
  'worksheet',
  'cell',
  'name',
  'function',
  'open',
  'openArray',
]);

const A_VALUE = 'a value such as 12.5 mm, B3 or a name';

/** Reads a formula, with or without its leading =. Never throws. */
export function parse(text: string, options: SyntaxOptions = {}): Parsed {
  if (text.length > SYNTAX_LIMITS.length) {
    const message = `The formula has ${text.length} characters; at most ${SYNTAX_LIMITS.length} are allowed: split it over several cells.`;
    return { problem: { from: SYNTAX_LIMITS.length, to: text.length, message, code: '#LIMIT!' } };
  }
  const tokens = tokenize(text, options);
  const end = text.trimEnd().length;
  let place = tokens[0]?.type === 'equals' ? 1 : 0;
  let problem: Problem | undefined;
  let depth = 0;
  let nodes = 0;

  const peek = (): Token | undefined => tokens[place];
  const is = (type: TokenType): boolean => tokens[place]?.type === type;
  const rawOf = (token: Token): string => text.slice(token.from, token.to);
  const report = (token: Token | undefined, words: string, unfinished = !token): void => {
    if (problem) return;
    const code = words.startsWith(OUTSIDE) ? '#REF!' : '#VALUE!';
    const { from, to } = token ?? { from: end, to: end };
    const message = token ? atToken(from, rawOf(token), words) : atEnd(words);
    problem = { from, to, message, code, ...(unfinished && { unfinished }) };
  };
  const next = (): Token | undefined => {
    const token = tokens[place];
    if (!token) return undefined;
    place++;
    if (token.wrong !== undefined) report(token, token.wrong);
    return token;
  };
  const made = <T extends Node>(node: T): T => {
    if (++nodes > SYNTAX_LIMITS.nodes) {
      const message = `The formula has more than ${SYNTAX_LIMITS.nodes} parts: split it over several cells.`;
      if (problem?.code !== '#LIMIT!') problem = { from: node.from, to: node.to, message, code: '#LIMIT!' };
      place = tokens.length;
    }
    return node;
  };
  const lastEnd = (): number => tokens[place - 1]?.to ?? 0;
  const gap = (): Node =>
    made({ type: 'broken', parts: [], from: peek()?.from ?? end, to: peek()?.from ?? end });
  const swallowed = (): Node => {
    const token = next();
    return made({ type: 'broken', parts: [], from: token?.from ?? end, to: token?.to ?? end });
  };
  const nested = <T extends Node>(opening: Token, inner: () => T): T => {
    if (++depth > SYNTAX_LIMITS.depth) {
      const message = atToken(
        opening.from,
        rawOf(opening),
        `brackets and calls are nested more than ${SYNTAX_LIMITS.depth} deep; put a part of it into a cell of its own`,
      );
      problem ??= { from: opening.from, to: opening.to, message, code: '#LIMIT!' };
      place = tokens.length;
    }
    const node = inner();
    depth--;
    return node;
  };

  /** Values that stand side by side up to one of the closers; more than one is a problem. */
  function sequence(...closers: TokenType[]): Node {
    const first = binary(1);
    const parts = [first];
    while (peek() && !closers.some(is)) {
      junction(parts.at(-1));
      parts.push(BEGINS_VALUE.has(peek()?.type ?? 'bad') ? binary(1) : swallowed());
    }
    return parts.length === 1 ? first : made({ type: 'broken', parts, from: first.from, to: lastEnd() });
  }

  /** Says what is wrong where one value ended and the next token fits nowhere. */
  function junction(before: Node | undefined): void {
    const token = peek();
    if (!token) return;
    const raw = rawOf(token);
    const left = before ? text.slice(before.from, before.to).slice(-20) : '';
    if (token.wrong !== undefined) report(token, token.wrong);
    else if (token.type === 'close')
      report(token, 'no bracket is open for it; leave it out or open one before');
    else if (token.type === 'separator' && raw === ',')
      report(token, 'no call is open, so it parts no arguments; the decimal mark is the point: 1.5');
    else if (token.type === 'separator')
      report(token, 'it parts the arguments of a function, and none is open here');
    else if (token.type === 'row' || token.type === 'closeArray')
      report(token, 'no { is open for it; an array is written {1;2|3;4}');
    else if (token.type === 'colon') report(token, 'a range goes from cell to cell: B3:C9');
    else if (token.type === 'unit') report(token, 'a unit stands behind a number: 12.5 mm');
    else if (token.type === 'number' && before?.type === 'number')
      report(token, `two numbers stand side by side; one and a half is 1.5, a product is ${left}*${raw}`);
    else if (BEGINS_VALUE.has(token.type))
      report(token, `an operator or ; is missing between ${left} and ${raw}`);
    else report(token, `it fits nothing before it; an operator such as + or * should stand here`);
  }

  function binary(least: number): Node {
    let left = postfix();
    for (;;) {
      const token = peek();
      if (token?.type !== 'operator' || !isOperator(token.value) || PRECEDENCE[token.value] < least)
        return left;
      next();
      const operator = token.value;
      const right = PRECEDENCE[operator] === PRECEDENCE['^'] ? postfix() : binary(PRECEDENCE[operator] + 1);
      left = made({ type: 'binary', operator, left, right, from: left.from, to: right.to });
    }
  }

  function postfix(): Node {
    let node = prefix();
    while (is('percent')) {
      const token = next();
      node = made({ type: 'percent', operand: node, from: node.from, to: token?.to ?? node.to });
    }
    return node;
  }

  function prefix(): Node {
    const token = peek();
    if (token?.type !== 'operator' || (token.value !== '-' && token.value !== '+')) return primary();
    next();
    const operand = prefix();
    return made({ type: 'unary', operator: token.value, operand, from: token.from, to: operand.to });
  }

  function primary(): Node {
    const token = peek();
    if (!token) {
      report(undefined, `${A_VALUE} is missing`);
      return gap();
    }
    switch (token.type) {
      case 'number':
        return measured(number());
      case 'text':
        return textConstant();
      case 'logical':
        return logical();
      case 'error': {
        next();
        const span = { from: token.from, to: token.to };
        return isErrorCode(token.value)
          ? made({ type: 'error', code: token.value, ...span })
          : made({ type: 'error', code: '#VALUE!', written: token.value, ...span });
      }
      case 'openArray':
        return array();
      case 'open':
        return group();
      case 'function':
        return call();
      case 'worksheet':
        return qualified();
      case 'cell':
        next();
        return reference(token, undefined, token.from);
      case 'name':
        next();
        if (is('colon')) rangeOfNames(token);
        return made({ type: 'name', name: token.value, from: token.from, to: token.to });
      case 'operator':
        report(token, token.wrong ?? `${A_VALUE} is missing before it`);
        return gap();
      case 'close':
      case 'separator':
      case 'row':
      case 'closeArray':
      case 'percent':
        report(token, token.wrong ?? `${A_VALUE} is missing before it`);
        return gap();
      default:
        report(token, token.wrong ?? `${A_VALUE} should stand here`);
        return swallowed();
    }
  }

  function number(): NumberNode {
    const token = next();
    const digits = token?.value ?? '0';
    return made({
      type: 'number',
      digits,
      value: Number(digits),
      from: token?.from ?? end,
      to: token?.to ?? end,
    });
  }

  /** A magnitude with the unit behind it, if there is one; a percent sign may stand between. */
  function measured(magnitude: NumberNode | ArrayNode): Node {
    const percent = is('percent') && tokens[place + 1]?.type === 'unit' ? next() : undefined;
    const whole = percent
      ? made({ type: 'percent' as const, operand: magnitude, from: magnitude.from, to: percent.to })
      : magnitude;
    if (!is('unit')) return whole;
    const unit = next();
    if (!unit) return whole;
    const unitSpan = { from: unit.from, to: unit.to };
    return made({
      type: 'quantity',
      magnitude: whole,
      unit: unit.value,
      unitSpan,
      from: whole.from,
      to: unit.to,
    });
  }

  function textConstant(): TextNode {
    const token = next();
    if (token?.unfinished)
      report(token, 'the text is not closed; a quotation mark is missing at its end', true);
    return made({ type: 'text', value: token?.value ?? '', from: token?.from ?? end, to: token?.to ?? end });
  }

  function logical(): LogicalNode {
    const token = next();
    return made({
      type: 'logical',
      value: token?.value === 'TRUE',
      from: token?.from ?? end,
      to: token?.to ?? end,
    });
  }

  function group(): Node {
    const opening = next();
    if (!opening) return gap();
    return nested(opening, () => {
      const inner = sequence('close');
      if (is('close')) next();
      else report(undefined, `a ) is missing for the ( at character ${opening.from + 1}`);
      return made({ type: 'group', inner, from: opening.from, to: lastEnd() });
    });
  }

  function call(): Node {
    const name = next();
    const opening = peek();
    if (!name || !opening) return gap();
    if (readAddress(name.value))
      report(opening, `an operator is missing between ${name.value} and (; ${name.value} is a cell`);
    next();
    return nested(name, (): CallNode => {
      const args: Node[] = [];
      const argument = (): void => {
        const empty = !peek() || is('close') || is('separator');
        args.push(
          empty
            ? made({ type: 'missing', from: peek()?.from ?? end, to: peek()?.from ?? end })
            : sequence('separator', 'close'),
        );
      };
      if (peek() && !is('close')) {
        argument();
        while (is('separator')) {
          next();
          argument();
        }
      }
      if (is('close')) next();
      else report(undefined, `a ) is missing that closes ${name.value}(`);
      const nameSpan = { from: name.from, to: name.to };
      return made({ type: 'call', name: name.value, nameSpan, args, from: name.from, to: lastEnd() });
    });
  }

  function qualified(): Node {
    const title = next();
    if (!title) return gap();
    const broken = (): Node => made({ type: 'broken', parts: [], from: title.from, to: lastEnd() });
    if (title.unfinished) {
      report(
        title,
        "the worksheet's title is not closed; write 'Tool trial'.B3, and text in double quotation marks",
        true,
      );
      return broken();
    }
    if (!is('dot')) {
      report(
        title,
        `single quotation marks hold a worksheet's title: ${rawOf(title)}.B3; text stands in double ones`,
      );
      return broken();
    }
    const dot = next();
    const token = peek();
    if (token && token.from === dot?.to && token.type === 'cell') {
      next();
      return reference(token, title.value, title.from);
    }
    if (token && token.from === dot?.to && token.type === 'name') {
      next();
      return made({
        type: 'name',
        worksheet: title.value,
        name: token.value,
        from: title.from,
        to: token.to,
      });
    }
    const words = `a cell or a name is missing after ${rawOf(title)}.`;
    if (token?.wrong !== undefined && token.from === dot?.to) report(token, token.wrong);
    else report(token, words);
    return broken();
  }

  /** A cell, or the range that it begins. */
  function reference(first: Token, worksheet: string | undefined, from: number): Node {
    const start = first.corner ?? ORIGIN;
    const where = worksheet === undefined ? {} : { worksheet };
    if (!is('colon')) return made({ type: 'cell', ...where, ...start, from, to: first.to });
    const colon = next();
    let token = peek();
    if (token?.type === 'worksheet') {
      if (token.value !== (worksheet ?? token.value) || worksheet === undefined)
        report(
          token,
          `a range lies on one worksheet; the title stands once, before it: ${rawOf(token)}.B3:C9`,
        );
      next();
      if (is('dot')) next();
      token = peek();
    }
    if (token?.type !== 'cell' || !token.corner) {
      if (!token) report(undefined, 'the second cell of the range is missing: B3:C9');
      else report(token, token.wrong ?? secondCorner(rawOf(token)));
      const parts = [made({ type: 'cell' as const, ...where, ...start, from, to: first.to })];
      const to = token && BEGINS_CORNER.has(token.type) ? next()?.to : colon?.to;
      return made({ type: 'broken', parts, from, to: to ?? first.to });
    }
    next();
    const node: Node = made({ type: 'range', ...where, start, end: token.corner, from, to: token.to });
    if (is('colon')) report(peek(), 'a range has two corners: B3:C9');
    return node;
  }

  /** A range can not begin with a name; says which of the reasons it is. */
  function rangeOfNames(token: Token): void {
    const raw = rawOf(token);
    if (/^[A-Za-z]{1,2}$/.test(raw))
      report(
        token,
        `whole columns are written with their rows: ${raw.toUpperCase()}1:${raw.toUpperCase()}2000`,
      );
    else report(token, secondCorner(raw));
  }

  /** Inline array: signed numbers, texts and logicals; rows of the same length (F25). */
  function array(): Node {
    const opening = next();
    if (!opening) return gap();
    type Element = ArrayNode['rows'][number][number];
    const node = nested(opening, (): ArrayNode => {
      const rows: Element[][] = [[]];
      for (;;) {
        const element = elementOf();
        if (element) rows.at(-1)?.push(element);
        if (is('separator')) next();
        else if (is('row')) {
          next();
          rows.push([]);
        } else break;
      }
      const width = rows[0]?.length ?? 0;
      const uneven = rows.findIndex((row) => row.length !== width);
      if (is('closeArray')) next();
      else report(peek(), 'a } is missing that closes the array');
      if (uneven > 0) {
        const words = `row ${uneven + 1} of the array has ${rows[uneven]?.length} elements and row 1 has ${width}; all rows need the same`;
        report(opening, words);
      }
      return made({ type: 'array', rows, from: opening.from, to: lastEnd() });
    });
    return measured(node);

    function elementOf(): Element | undefined {
      const token = peek();
      switch (token?.type) {
        case 'number':
          return number();
        case 'text':
          return textConstant();
        case 'logical':
          return logical();
        case 'operator':
          if ((token.value === '-' || token.value === '+') && tokens[place + 1]?.type === 'number') {
            next();
            const operand = number();
            const signed: UnaryNode = {
              type: 'unary',
              operator: token.value,
              operand,
              from: token.from,
              to: operand.to,
            };
            return made(signed);
          }
      }
      const words = 'an array holds numbers, texts, TRUE and FALSE, parted by ; and rows by |';
      if (!token) report(undefined, 'the array is not closed; a } is missing');
      else if (token.type === 'closeArray' || token.type === 'separator' || token.type === 'row')
        report(token, 'an element of the array is missing before it: {1;2|3;4}');
      else {
        report(
          token,
          token.type === 'unit'
            ? 'the unit of an array stands behind its brace: {1;2} mm'
            : (token.wrong ?? words),
        );
        while (peek() && !is('separator') && !is('row') && !is('closeArray') && !is('close')) next();
      }
      return undefined;
    }
  }

  if (!peek()) {
    report(undefined, `${A_VALUE} is missing`);
    return problem ? { problem } : { tree: gap() };
  }
  const tree = sequence();
  return problem ? { tree, problem } : { tree };
}

const ORIGIN: Corner = { column: 0, row: 0, columnFixed: false, rowFixed: false };
const BEGINS_CORNER: ReadonlySet<TokenType> = new Set<TokenType>(['name', 'number', 'bad']);

function secondCorner(raw: string): string {
  const outside = /^\$?[A-Za-z]{1,3}\$?\d+$/.test(raw);
  return outside ? OUTSIDE : 'a range goes from cell to cell, B3:C9; a name stands for its cells by itself';
}
