/** Criteria of COUNTIF and its kin: a value to be equal to, or a text such as "<=0.3", "<=0.3 mm", "<>4". No wildcards, no patterns. */

import { holds, isComparison, isFailure, numberOrder, textOrder } from '../expression/index.ts';
import type { ArgumentType, FailedType, Scalar } from '../expression/index.ts';
import { DIMENSIONLESS, describeDimension, isUnknownUnit, parseUnit, toSI } from '../quantity/index.ts';
import type { Dimension } from '../quantity/index.ts';
import { parseNumberText } from './number-text.ts';
import { isPlain, refused, said, shared, singles, unitOf } from './type-rules.ts';

interface Operand {
  readonly si: number;
  readonly dimension: Dimension;
}

/** The number or quantity that a criterion's text names. */
function operandOf(text: string): Operand | undefined {
  const plain = parseNumberText(text, '.', '');
  if (plain !== undefined) return { si: plain, dimension: DIMENSIONLESS };
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?) +(\S+)$/.exec(text.trim());
  if (!match) return undefined;
  const unit = parseUnit(match[2]!);
  if (isUnknownUnit(unit)) return undefined;
  return { si: toSI(match[1]!, unit), dimension: unit.kind.dimension };
}

function split(text: string): {
  readonly operator: '=' | '<>' | '<' | '<=' | '>' | '>=';
  readonly operand: string;
} {
  const operator = /^(<=|>=|<>|<|>|=)/.exec(text)?.[0] ?? '';
  const operand = text.slice(operator.length);
  return operator !== '' && isComparison(operator as '=')
    ? { operator: operator as '=', operand }
    : { operator: '=', operand };
}

/** Whether a cell meets a criterion. Failures in cells never do. */
export function criterion(wanted: Scalar): (cell: Scalar) => boolean {
  if (typeof wanted === 'boolean') return (cell) => cell === wanted;
  if (typeof wanted !== 'string') {
    const value = typeof wanted === 'number' ? wanted : 0;
    return (cell) => typeof cell === 'number' && numberOrder(cell, value) === 0;
  }
  const { operator, operand } = split(wanted);
  const different = operator === '<>';
  if (operand.trim() === '') {
    if (wanted === '') return (cell) => cell === null || cell === '';
    return (cell) => !isFailure(cell) && (cell === null) !== different;
  }
  const quantity = operandOf(operand);
  if (quantity) {
    return (cell) =>
      typeof cell === 'number'
        ? holds(operator, numberOrder(cell, quantity.si))
        : different && !isFailure(cell);
  }
  const truth = /^(true|false)$/i.test(operand.trim()) ? operand.trim().toLowerCase() === 'true' : undefined;
  if (truth !== undefined) {
    return (cell) =>
      typeof cell === 'boolean' ? (cell === truth) !== different : different && !isFailure(cell);
  }
  return (cell) =>
    typeof cell === 'string' ? holds(operator, textOrder(cell, operand)) : different && !isFailure(cell);
}

/** The text constant an argument consists of. */
const writtenText = (arg: ArgumentType): string | undefined =>
  /^\s*"((?:[^"]|"")*)"\s*$/.exec(arg.text)?.[1]?.replaceAll('""', '"');

/** Why a criterion does not fit its range: the dimensions differ, or can not be known beforehand. */
export function criterionRefusal(
  call: string,
  range: ArgumentType,
  wanted: ArgumentType,
): FailedType | undefined {
  const kinds = shared(call, [range]);
  if (kinds?.type === 'failed') return kinds;
  const [type] = singles(wanted.type);
  if (type?.type === 'number') {
    const both = shared(call, [range, wanted]);
    return both?.type === 'failed' ? both : undefined;
  }
  if (type?.type !== 'text' || kinds === undefined) return undefined;
  const text = writtenText(wanted);
  if (text === undefined) {
    return isPlain(kinds)
      ? undefined
      : refused(
          `${call}: ${said(range, kinds.kind)}: give the criterion as a quantity or write it in the formula`,
        );
  }
  const operand = operandOf(split(text).operand);
  if (!operand || operand.dimension === kinds.kind.dimension) return undefined;
  if (operand.si === 0 && operand.dimension === DIMENSIONLESS) return undefined;
  const hint = isPlain(kinds) ? '' : `: write "${text.trim()} ${unitOf(kinds.kind, 'metric')}"`;
  return refused(
    `${call}: ${said(range, kinds.kind)}, the criterion ${wanted.text.trim()} is ${describeDimension(operand.dimension)}${hint}`,
  );
}
