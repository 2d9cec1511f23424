/** Syntax tree to canonical text, without the leading =: decimal point, ; between arguments, addresses in capitals. */

import { cornerText, titleText } from './address.ts';
import { PRECEDENCE } from './parse.ts';
import type { Node } from './tree.ts';

const PERCENT = 6;
const PREFIX = 7;
const VALUE = 8;

function tightness(node: Node): number {
  if (node.type === 'binary') return PRECEDENCE[node.operator];
  if (node.type === 'percent') return PERCENT;
  return node.type === 'unary' ? PREFIX : VALUE;
}

/** The node's text, in brackets where its place asks for a tighter one. */
const inPlace = (node: Node, least: number): string =>
  tightness(node) < least ? `(${print(node)})` : print(node);

const endsInUnit = (node: Node): boolean => {
  if (node.type === 'quantity') return true;
  if (node.type === 'binary') return endsInUnit(node.right);
  return node.type === 'unary' && endsInUnit(node.operand);
};

export const textConstant = (value: string): string => `"${value.replaceAll('"', '""')}"`;

const prefix = (worksheet: string | undefined): string =>
  worksheet === undefined ? '' : `${titleText(worksheet)}.`;

/** Parsing the printed text gives an equal tree (spans aside), as long as the tree came from a formula without problems. */
export function print(node: Node): string {
  switch (node.type) {
    case 'number':
      return node.digits;
    case 'quantity':
      return `${print(node.magnitude)} ${node.unit}`;
    case 'text':
      return textConstant(node.value);
    case 'logical':
      return node.value ? 'TRUE' : 'FALSE';
    case 'error':
      return node.written ?? node.code;
    case 'array':
      return `{${node.rows.map((row) => row.map(print).join(';')).join('|')}}`;
    case 'cell':
      return prefix(node.worksheet) + cornerText(node);
    case 'range':
      return `${prefix(node.worksheet)}${cornerText(node.start)}:${cornerText(node.end)}`;
    case 'name':
      return prefix(node.worksheet) + node.name;
    case 'call':
      return `${node.name}(${node.args.map(print).join('; ')})`;
    case 'missing':
      return '';
    case 'unary':
      return node.operator + inPlace(node.operand, PREFIX);
    case 'percent':
      return `${inPlace(node.operand, PERCENT)}%`;
    case 'binary': {
      const own = PRECEDENCE[node.operator];
      const left = inPlace(node.left, own);
      const space = node.operator === '^' && !endsInUnit(node.left) ? '' : ' ';
      return `${left}${space}${node.operator}${space}${inPlace(node.right, own + 1)}`;
    }
    case 'group':
      return `(${print(node.inner)})`;
    case 'broken':
      return node.parts.map(print).join(' ');
  }
}
