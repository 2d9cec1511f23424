/** Syntax tree to the text that a calculating library reads, so that it can check our values: ids for names, worksheets and functions, coherent SI numbers. */

import { isUnknownUnit, parseUnit, toSI } from '../../src/quantity/index.ts';
import { addressText, columnLetters } from '../../src/expression/index.ts';
import type {
  ArrayNode,
  BinaryOperator,
  CellNode,
  Corner,
  ErrorCode,
  NameNode,
  Node,
  NumberNode,
  PercentNode,
  QuantityNode,
  RangeNode,
  UnaryOperator,
} from '../../src/expression/index.ts';

/** An operator that may be carried by a function: the binary ones, the signs and the percent sign. */
export type CarriedOperator = BinaryOperator | `unary ${UnaryOperator}` | '%';

export interface LibraryMapping {
  /** Id of a worksheet by its title; undefined title is the formula's own, for which undefined writes no prefix. */
  worksheet(title: string | undefined): string | undefined;
  /** Text that stands for a name. */
  name(node: NameNode): string;
  /** Id of a function; every call goes to one of ours. */
  call(name: string): string;
  /** Id of the function that carries an operator; undefined leaves it to the library. */
  operator?(operator: CarriedOperator): string | undefined;
  /** Text that stands for a text constant that the library can not write: one with a quotation mark or ending in a backslash. */
  text?(value: string): string;
  /** Text that stands for an error constant; by default its name. */
  error?(code: ErrorCode): string;
  readonly currency?: string;
  /** Between arguments and elements; by default a comma. */
  readonly separator?: string;
  /** Between rows of an array; by default a semicolon. */
  readonly rowSeparator?: string;
}

/** Shortest decimal text that reads back to the same double, with a lower-case exponent and no plus sign. */
export function libraryNumber(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number for the library must be finite, not ${value}`);
  return String(value).replace('e+', 'e');
}

const SIMPLE_TEXT = /^(?:[^"\\]|\\[^"])*$/s;

const cornerOf = ({ column, row, columnFixed, rowFixed }: Corner): string =>
  columnFixed || rowFixed
    ? `${columnFixed ? '$' : ''}${columnLetters(column)}${rowFixed ? '$' : ''}${row + 1}`
    : addressText(column, row);

class Writer {
  private readonly separator: string;
  private readonly rowSeparator: string;
  constructor(private readonly mapping: LibraryMapping) {
    this.separator = mapping.separator ?? ',';
    this.rowSeparator = mapping.rowSeparator ?? ';';
  }

  write(node: Node): string {
    const { mapping } = this;
    switch (node.type) {
      case 'number':
        return libraryNumber(node.value);
      case 'quantity':
        return this.quantity(node);
      case 'text':
        return this.text(node.value);
      case 'logical':
        return node.value ? 'TRUE()' : 'FALSE()';
      case 'error':
        // In brackets, since the library would take a slash behind #N/A for a part of it.
        return mapping.error?.(node.code) ?? `(${node.code})`;
      case 'array':
        return this.array(node, (digits) => Number(digits));
      case 'cell':
      case 'range':
        return this.reference(node);
      case 'name':
        return mapping.name(node);
      case 'call':
        return `${mapping.call(node.name)}(${node.args.map((each) => this.write(each)).join(this.separator)})`;
      case 'missing':
        return '';
      case 'unary': {
        const operand = this.write(node.operand);
        const carrier = mapping.operator?.(`unary ${node.operator}`);
        return carrier === undefined ? `(${node.operator}${operand})` : `${carrier}(${operand})`;
      }
      case 'percent':
        return this.percent(node);
      case 'binary': {
        const left = this.write(node.left);
        const right = this.write(node.right);
        const carrier = mapping.operator?.(node.operator);
        return carrier === undefined
          ? `(${left}${node.operator}${right})`
          : `${carrier}(${left}${this.separator}${right})`;
      }
      case 'group':
        return this.write(node.inner);
      case 'broken':
        throw new TypeError('a formula with a problem has no text for the library');
    }
  }

  /** A literal percentage is divided here, in decimals; anything else by the operator or its carrier. */
  private percent({ operand }: PercentNode): string {
    if (operand.type === 'number') return libraryNumber(hundredth(operand));
    const inner = this.write(operand);
    const carrier = this.mapping.operator?.('%');
    return carrier === undefined ? `(${inner}/100)` : `${carrier}(${inner})`;
  }

  private quantity({ magnitude, unit: text }: QuantityNode): string {
    const unit = parseUnit(text, this.mapping.currency);
    if (isUnknownUnit(unit))
      throw new TypeError(`the unit ${text} is unknown, so its quantity has no text for the library`);
    if (magnitude.type === 'number') return libraryNumber(toSI(magnitude.digits, unit));
    if (magnitude.type === 'array') return this.array(magnitude, (digits) => toSI(digits, unit));
    const { operand } = magnitude;
    if (operand.type === 'number') return libraryNumber(toSI(String(hundredth(operand)), unit));
    throw new TypeError(`a ${operand.type} with a percent sign carries no unit`);
  }

  private array({ rows }: ArrayNode, read: (digits: string) => number): string {
    const element = (each: ArrayNode['rows'][number][number]): string => {
      if (each.type === 'number') return libraryNumber(read(each.digits));
      if (each.type !== 'unary') return this.write(each);
      const digits = each.operand.type === 'number' ? each.operand.digits : '0';
      return libraryNumber(read(each.operator === '-' ? `-${digits}` : digits));
    };
    const lines = rows.map((row) => row.map(element).join(this.separator));
    return `{${lines.join(this.rowSeparator)}}`;
  }

  private text(value: string): string {
    if (SIMPLE_TEXT.test(value)) return `"${value}"`;
    if (!this.mapping.text) throw new TypeError(`the mapping gives no text constant for ${value}`);
    return this.mapping.text(value);
  }

  private reference(node: CellNode | RangeNode): string {
    const worksheet = this.mapping.worksheet(node.worksheet);
    const prefix = worksheet === undefined ? '' : `${worksheet}!`;
    return prefix + (node.type === 'cell' ? cornerOf(node) : `${cornerOf(node.start)}:${cornerOf(node.end)}`);
  }
}

/** The nearest double to a hundredth of the digits. */
function hundredth({ digits }: NumberNode): number {
  const [mantissa = digits, exponent = '0'] = digits.toLowerCase().split('e');
  return Number(`${mantissa}e${Number(exponent) - 2}`);
}

/** Text without the leading =; every operation stands in brackets of its own, so that no precedence but ours counts. */
export const libraryText = (node: Node, mapping: LibraryMapping): string => new Writer(mapping).write(node);
