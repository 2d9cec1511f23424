/** Logical functions. Only the branch that is chosen is computed; branches agree in their dimension, a text is neutral (F13, F13b). */

import { asLogical, failure, isFailure, isGrid } from '../expression/index.ts';
import type { ArgumentType, Failure, Scalar, Value, ValueType } from '../expression/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { anything, list, logical, optional } from './parameter.ts';
import { LOGICAL, NEUTRAL, TEXT, gridOf, refused, shared, sizeOf } from './type-rules.ts';

/** The type that a choice between these arguments has. */
export function choiceType(call: string, branches: readonly ArgumentType[]): ValueType {
  const [rows, columns] = sizeOf(branches[0]?.type ?? NEUTRAL);
  const ranges = branches.filter(({ type }) => type.type === 'grid');
  if (ranges.some(({ type }) => sizeOf(type).some((size, i) => size !== [rows, columns][i]))) {
    return refused(`${call}: the ranges to choose from differ in their size`, '#VALUE!');
  }
  const type = shared(call, branches);
  if (type?.type === 'failed') return type;
  const types = branches
    .map((branch) => branch.type.type)
    .filter((name) => name !== 'blank' && name !== 'neutral');
  const single = type ?? (types.includes('text') ? TEXT : types.includes('logical') ? LOGICAL : NEUTRAL);
  return ranges.length > 0 ? gridOf(single, rows, columns) : single;
}

const condition = (value: Value): boolean | Failure => {
  const single = !isFailure(value) && isGrid(value) ? oneOf(value.grid) : value;
  return asLogical(single);
};

const oneOf = (rows: readonly (readonly Scalar[])[]): Scalar =>
  rows.length === 1 && rows[0]?.length === 1
    ? (rows[0][0] ?? null)
    : failure('#VALUE!', 'a range stands where one condition is needed');

/** A branch that is left empty (IF(c; 7;)) or a blank cell counts as 0. */
const branchValue = (value: Value): Value => value ?? 0;

function chooseIf(args: readonly (() => Value)[]): Value {
  const holds = condition(args[0]?.() ?? null);
  if (typeof holds !== 'boolean') return holds;
  const branch = args[holds ? 1 : 2];
  return branch ? branchValue(branch()) : holds;
}

function chooseIfs(args: readonly (() => Value)[]): Value {
  if (args.length % 2 === 1) return failure('#VALUE!', 'IFS takes pairs of a condition and a value');
  for (let i = 0; i < args.length; i += 2) {
    const holds = condition(args[i]?.() ?? null);
    if (typeof holds !== 'boolean') return holds;
    if (holds) return branchValue(args[i + 1]?.() ?? null);
  }
  return failure('#N/A', 'no condition of IFS holds');
}

const otherwise =
  (caught: (value: Failure) => boolean) =>
  (args: readonly (() => Value)[]): Value => {
    const value = args[0]?.() ?? null;
    return isFailure(value) && caught(value) ? branchValue(args[1]?.() ?? null) : value;
  };

const onError = otherwise(({ failure: code }) => code !== '#UNIT!' && code !== '#CIRCLE!');
const onNotAvailable = otherwise(({ failure: code }) => code === '#N/A');

const isConditional = (value: Scalar): value is number | boolean =>
  typeof value === 'boolean' || typeof value === 'number';

/** AND, OR, XOR over all conditions; texts and blanks in ranges are passed over. */
const joined = (
  name: string,
  section: string,
  summary: string,
  join: (held: readonly boolean[]) => boolean,
  given: string,
  gives: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'logical',
    section,
    summary,
    searchWords: ['condition', 'and', 'or', 'test'],
    takes: [],
    rest: list('condition'),
    leastRest: 1,
    gives: () => LOGICAL,
    evaluate(_, lists) {
      const held: boolean[] = [];
      for (const { grid } of lists) {
        const cells = grid.flat();
        if (cells.length === 1 && typeof cells[0] === 'string') {
          return failure('#VALUE!', `${name} takes TRUE and FALSE, not the text "${cells[0].slice(0, 40)}"`);
        }
        held.push(...cells.filter(isConditional).map((value) => value !== false && value !== 0));
      }
      return held.length > 0
        ? join(held)
        : failure('#VALUE!', `${name} finds no TRUE or FALSE in its arguments`);
    },
    examples: [example(given, gives)],
  });

export const LOGICAL_FUNCTIONS: readonly BuiltinDefinition[] = [
  joined(
    'AND',
    '6.15.2',
    'TRUE if all conditions hold',
    (held) => held.every(Boolean),
    'AND(1; TRUE)',
    'TRUE',
  ),
  joined(
    'OR',
    '6.15.8',
    'TRUE if at least one condition holds',
    (held) => held.some(Boolean),
    'OR(FALSE; TRUE)',
    'TRUE',
  ),
  joined(
    'XOR',
    '6.15.10',
    'TRUE if an odd number of conditions holds',
    (held) => held.filter(Boolean).length % 2 === 1,
    'XOR(TRUE; TRUE; TRUE)',
    'TRUE',
  ),
  builtin({
    name: 'NOT',
    group: 'logical',
    section: '6.15.7',
    summary: 'TRUE becomes FALSE, FALSE becomes TRUE',
    searchWords: ['negation', 'opposite'],
    takes: [logical('condition')],
    gives: () => LOGICAL,
    evaluate: ([value]) => !value,
    examples: [example('NOT(5)', 'FALSE')],
  }),
  ...([true, false] as const).map((value) =>
    builtin({
      name: value ? 'TRUE' : 'FALSE',
      group: 'logical',
      section: value ? '6.15.9' : '6.15.3',
      summary: `The constant ${value ? 'TRUE' : 'FALSE'}`,
      searchWords: ['constant', 'logical'],
      takes: [],
      gives: () => LOGICAL,
      evaluate: () => value,
      examples: [example(value ? 'TRUE()' : 'FALSE()', value ? 'TRUE' : 'FALSE', 'by definition')],
    }),
  ),
  builtin({
    name: 'IF',
    group: 'logical',
    section: '6.15.4',
    summary: 'One value if a condition holds, else another',
    searchWords: ['condition', 'branch', 'choose', 'case'],
    takes: [logical('condition'), optional(anything('value if true')), optional(anything('value if false'))],
    gives: (args) => choiceType('IF', args.slice(1)),
    evaluateLazily: chooseIf,
    examples: [example('IF(TRUE; "HI"; 8)', '"HI"'), example('IF(FALSE; 1/0; 5)', '5')],
  }),
  builtin({
    name: 'IFS',
    group: 'logical',
    section: 'not in OpenFormula: pairs of condition and value',
    summary: 'The value of the first condition that holds',
    searchWords: ['conditions', 'cases', 'steps'],
    takes: [],
    rest: anything('condition; value'),
    leastRest: 2,
    gives: (args) =>
      args.length % 2 === 1
        ? refused('IFS takes pairs of a condition and a value', '#VALUE!')
        : choiceType(
            'IFS',
            args.filter((_, i) => i % 2 === 1),
          ),
    evaluateLazily: chooseIfs,
    examples: [example('IFS(1>2; "a"; 2>1; "b")', '"b"', 'by hand')],
  }),
  builtin({
    name: 'IFERROR',
    group: 'logical',
    section: '6.15.5',
    summary: 'The value, or another one if it is an error',
    searchWords: ['error', 'catch', 'replace'],
    takes: [anything('value'), anything('instead')],
    gives: (args) => choiceType('IFERROR', args),
    evaluateLazily: onError,
    examples: [example('IFERROR(1/0; 5)', '5')],
  }),
  builtin({
    name: 'IFNA',
    group: 'logical',
    section: '6.15.6',
    summary: 'The value, or another one if it is #N/A',
    searchWords: ['error', 'not available', 'missing', 'look-up'],
    takes: [anything('value'), anything('instead')],
    gives: (args) => choiceType('IFNA', args),
    evaluateLazily: onNotAvailable,
    examples: [example('IFNA(NA(); 5)', '5', 'by hand')],
  }),
];
