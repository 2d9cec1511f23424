/** Syntax tree to MathML Core text: fractions, roots, powers, symbols with indices, quantities with upright units, cases for IF. */

import { cornerText, titleText } from './address.ts';
import { PRECEDENCE } from './parse.ts';
import { escapeMarkup, typesetSymbol } from './symbol.ts';
import type { BinaryNode, CallNode, CellNode, NameNode, Node, RangeNode } from './tree.ts';
import { typesetUnit } from './typeset-unit.ts';

export interface TypesetOptions {
  /** Symbol of a name, cell or range as markup text ("a_e"); undefined shows it as written. */
  readonly symbol?: (node: NameNode | CellNode | RangeNode) => string | undefined;
  /** Decimal mark to show. */
  readonly decimalMark?: '.' | ',';
  /** Shown as a block formula of its own. */
  readonly display?: boolean;
}

const OPERATORS: Readonly<Record<string, string>> = {
  '*': '·',
  '-': '−',
  '<>': '≠',
  '<=': '≤',
  '>=': '≥',
  '&': '&',
};

const CONSTANTS: ReadonlyMap<string, string> = new Map([['PI', '<mi>π</mi>']]);
/** Function names that mathematics writes in its own way; others stay in capitals as they are called. */
const LOWER: ReadonlySet<string> = new Set(
  'SIN COS TAN ASIN ACOS ATAN SINH COSH TANH EXP LN LOG MIN MAX'.split(' '),
);
const ARCS: Readonly<Record<string, string>> = { ASIN: 'arcsin', ACOS: 'arccos', ATAN: 'arctan' };

const row = (...parts: readonly string[]): string =>
  parts.length === 1 ? parts.join('') : `<mrow>${parts.join('')}</mrow>`;
const operator = (sign: string, attributes = ''): string => `<mo${attributes}>${escapeMarkup(sign)}</mo>`;
const fenced = (open: string, inner: string, close: string): string =>
  row(operator(open, ' fence="true"'), inner, operator(close, ' fence="true"'));
const text = (words: string): string => `<mtext>${escapeMarkup(words)}</mtext>`;

/** What a bracket holds, where the way it is set makes the bracket needless (fractions, roots, exponents). */
const bare = (node: Node): Node => (node.type === 'group' ? bare(node.inner) : node);

class Typesetter {
  constructor(private readonly options: TypesetOptions) {}

  set(node: Node): string {
    switch (node.type) {
      case 'number':
        return this.number(node.digits);
      case 'quantity': {
        const unit = typesetUnit(node.unit);
        return row(this.set(node.magnitude), '<mspace width="0.17em"/>', unit);
      }
      case 'text':
        return text(`“${node.value}”`);
      case 'logical':
        return text(node.value ? 'TRUE' : 'FALSE');
      case 'error':
        return text(node.written ?? node.code);
      case 'array':
        return this.array(node.rows);
      case 'cell':
      case 'range':
      case 'name':
        return this.reference(node);
      case 'call':
        return this.call(node);
      case 'missing':
        return '<mrow></mrow>';
      case 'unary':
        return row(
          operator(OPERATORS[node.operator] ?? node.operator, ' form="prefix"'),
          this.set(node.operand),
        );
      case 'percent':
        return row(
          this.set(node.operand),
          '<mspace width="0.17em"/>',
          operator('%', ' lspace="0" rspace="0"'),
        );
      case 'binary':
        return this.binary(node);
      case 'group':
        return fenced('(', this.set(node.inner), ')');
      case 'broken':
        return `<merror>${node.parts.map((part) => this.set(part)).join('') || text('?')}</merror>`;
    }
  }

  private number(digits: string): string {
    const [mantissa = digits, exponent] = digits.toLowerCase().split('e');
    const shown = this.options.decimalMark === ',' ? mantissa.replace('.', ',') : mantissa;
    const number = `<mn>${shown}</mn>`;
    if (exponent === undefined) return number;
    const power = Number(exponent);
    const upper =
      power < 0 ? row(operator('−', ' form="prefix"'), `<mn>${-power}</mn>`) : `<mn>${power}</mn>`;
    return row(number, operator('·'), `<msup><mn>10</mn>${upper}</msup>`);
  }

  private array(rows: readonly (readonly Node[])[]): string {
    const cells = rows.map(
      (each) => `<mtr>${each.map((element) => `<mtd>${this.set(element)}</mtd>`).join('')}</mtr>`,
    );
    return fenced('[', `<mtable>${cells.join('')}</mtable>`, ']');
  }

  private reference(node: CellNode | RangeNode | NameNode): string {
    const symbol = this.options.symbol?.(node);
    if (symbol !== undefined) return typesetSymbol(symbol);
    const home = node.worksheet === undefined ? '' : `${titleText(node.worksheet)}.`;
    if (node.type === 'name')
      return home === '' ? typesetSymbol(node.name) : row(text(home), typesetSymbol(node.name));
    return text(
      home + (node.type === 'cell' ? cornerText(node) : `${cornerText(node.start)}:${cornerText(node.end)}`),
    );
  }

  private binary(node: BinaryNode): string {
    const { left, right } = node;
    if (node.operator === '/') return `<mfrac>${this.set(bare(left))}${this.set(bare(right))}</mfrac>`;
    if (node.operator === '^') return this.power(this.base(left), right);
    const own = PRECEDENCE[node.operator];
    const side = (each: Node, least: number): string => {
      const inner = bare(each);
      if (inner.type === 'binary' && inner.operator === '/') return this.set(inner);
      const isLoose = each.type === 'binary' && PRECEDENCE[each.operator] < least;
      return isLoose ? fenced('(', this.set(each), ')') : this.set(each);
    };
    const sign = operator(OPERATORS[node.operator] ?? node.operator);
    return row(side(left, own), sign, side(right, own + 1));
  }

  /** A base in brackets where its form would mislead: signs, quotients, powers, products, quantities. */
  private base(node: Node): string {
    return isSimple(node) ? this.set(node) : fenced('(', this.set(node), ')');
  }

  private power(base: string, exponent: Node): string {
    const upper = bare(exponent);
    const isSmallFraction =
      upper.type === 'binary' && upper.operator === '/' && isSimple(upper.left) && isSimple(upper.right);
    const set = isSmallFraction
      ? row(this.set(upper.left), operator('/'), this.set(upper.right))
      : this.set(upper);
    return `<msup>${base}${set}</msup>`;
  }

  private call(node: CallNode): string {
    const { name, args } = node;
    const [first, second, third] = args;
    const constant = args.length === 0 ? CONSTANTS.get(name) : undefined;
    if (constant !== undefined) return constant;
    if (name === 'SQRT' && args.length === 1 && first) return `<msqrt>${this.set(bare(first))}</msqrt>`;
    if (name === 'ABS' && args.length === 1 && first) return fenced('|', this.set(bare(first)), '|');
    if (name === 'POWER' && args.length === 2 && first && second) return this.power(this.base(first), second);
    if (name === 'LOG' && args.length === 2 && first && second) {
      return this.applied(`<msub><mi mathvariant="normal">log</mi>${this.set(bare(second))}</msub>`, [first]);
    }
    if (name === 'LOG10') return this.applied('<mi mathvariant="normal">lg</mi>', args);
    if (name === 'IF' && args.length >= 2 && first && second) return this.cases(first, second, third);
    const shown = ARCS[name] ?? (LOWER.has(name) ? name.toLowerCase() : name);
    return this.applied(`<mi mathvariant="normal">${escapeMarkup(shown)}</mi>`, args);
  }

  private applied(name: string, args: readonly Node[]): string {
    const list = args.map((each) => this.set(each)).join(operator(';', ' separator="true"'));
    return row(name, operator('\u2061'), fenced('(', row(list), ')'));
  }

  private cases(condition: Node, then: Node, otherwise: Node | undefined): string {
    const lines: [string, string][] = [[this.set(bare(then)), row(text('if\u00A0'), this.set(condition))]];
    let rest = otherwise && bare(otherwise);
    while (rest?.type === 'call' && rest.name === 'IF') {
      const [next, value, last] = rest.args;
      if (!next || !value) break;
      lines.push([this.set(bare(value)), row(text('if\u00A0'), this.set(next))]);
      rest = last && bare(last);
    }
    if (rest) lines.push([this.set(rest), text('otherwise')]);
    const cells = lines.map(([value, when]) => `<mtr><mtd>${value}</mtd><mtd>${when}</mtd></mtr>`);
    return row(operator('{', ' fence="true"'), `<mtable class="cases">${cells.join('')}</mtable>`);
  }
}

/** Stands by itself: no bracket is needed around it under an exponent. */
function isSimple(node: Node): boolean {
  if (node.type === 'number') return !/e/i.test(node.digits);
  if (node.type === 'call') return node.name !== 'IF' && node.name !== 'POWER';
  return ['name', 'cell', 'range', 'group', 'text', 'logical', 'error', 'missing', 'array'].includes(
    node.type,
  );
}

/** A formula as a MathML element; every text in it is escaped. */
export function typeset(node: Node, options: TypesetOptions = {}): string {
  const display = options.display ? ' display="block"' : '';
  return `<math xmlns="http://www.w3.org/1998/Math/MathML"${display}>${new Typesetter(options).set(node)}</math>`;
}
