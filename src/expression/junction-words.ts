/** What is wrong where one value ended and the next token fits nowhere. */

import { isUnknownUnit, parseUnit } from '../quantity/index.ts';
import type { SyntaxReading } from './syntax-reading.ts';
import type { Token, TokenType } from './token.ts';
import type { Node } from './tree.ts';

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

export const beginsValue = (token: Token | undefined): boolean =>
  token !== undefined && BEGINS_VALUE.has(token.type);

/** The end of a long text. */
const tail = (text: string): string => (text.length > 20 ? `…${text.slice(-19)}` : text);

/** Words for a token that follows a value directly. */
export function junctionWords(reading: SyntaxReading, token: Token, before: Node): string {
  if (token.wrong !== undefined && token.type !== 'separator') return token.wrong;
  const raw = reading.raw(token);
  const left = tail(reading.raw(before));
  switch (token.type) {
    case 'close':
      return 'no bracket is open for it; leave it out or open one before';
    case 'separator':
      return raw === ','
        ? 'no function is open whose arguments it could part; the decimal mark is the point: 1.5'
        : 'no function is open whose arguments it could part';
    case 'row':
    case 'closeArray':
      return 'no { is open for it; an array is written {1;2|3;4}';
    case 'colon':
      return 'a range goes from cell to cell: B3:C9';
    case 'unit':
      return 'a unit stands behind a number: 12.5 mm';
    case 'number':
      if (before.type === 'number') return twoNumbers(reading, left, raw);
      if (before.type === 'quantity' && /^x$/i.test(before.unit))
        return `a product is written with *: ${left.replace(/\s*x$/i, '')}*${raw}`;
      if (before.type === 'name' && raw.startsWith('.') && token.from === before.to)
        return `a cell or a name stands behind the dot: ${left}.B3`;
      break;
    case 'name':
      if (!isUnknownUnit(parseUnit(raw)))
        return `${raw} is a unit only behind a number; a plain number in ${left} takes it by ${left}*1 ${raw}`;
  }
  if (!beginsValue(token)) return 'it fits nothing before it; an operator such as + or * should stand here';
  const right = token.type === 'open' ? '(…)' : token.type === 'function' ? `${token.value}(…)` : raw;
  return `an operator is missing before it, such as ${left}*${right}`;
}

/** 1 1/2 in is a mixed fraction outside of formulas; here it is a sum. */
function twoNumbers(reading: SyntaxReading, left: string, raw: string): string {
  const [slash, divisor, unit] = [1, 2, 3].map((ahead) => reading.peek(ahead));
  if (slash?.value !== '/' || divisor?.type !== 'number' || !Number.isInteger(Number(left)))
    return `two numbers stand side by side; a product is written ${left}*${raw}`;
  const value = Number(left) + Number(raw) / Number(divisor.value);
  const decimal = Number(value.toFixed(10)) === value ? `${value}` : `(${left} + ${raw}/${divisor.value})`;
  if (unit?.type !== 'unit') return `a mixed fraction is written as a decimal or a sum: ${decimal}`;
  return `a mixed fraction is written as a decimal or a sum: ${decimal}${decimal.startsWith('(') ? '*1' : ''} ${unit.value}`;
}
