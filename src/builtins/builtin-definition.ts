/** The contract of a built-in function, and the one place where arguments are judged and read. */

import {
  checkedNumber,
  failure,
  isFailure,
  isGrid,
  type ArgumentType,
  type CallNotes,
  type Caution,
  type InferenceResult,
  type TableFunction,
  type UnitSystem,
  type Value,
  type ValueType,
} from '../expression/index.ts';
import type { Parameter } from './parameter.ts';
import { failedIn } from './type-rules.ts';

/** A formula, what it gives as it would be typed, and where the figure comes from. */
export interface BuiltinExample {
  readonly given: string;
  readonly gives: string;
  readonly source: string;
}

export type Group =
  | 'logical'
  | 'information'
  | 'look-up'
  | 'mathematics'
  | 'trigonometry'
  | 'rounding'
  | 'statistics'
  | 'regression'
  | 'distributions'
  | 'text'
  | 'matrices'
  | 'dates';

/** What the help and the function list show. */
interface Described {
  readonly name: string;
  readonly group: Group;
  /** At most 90 characters. */
  readonly summary: string;
  readonly searchWords: readonly string[];
  /** Section of OpenFormula (OASIS ODF 1.3 part 4). */
  readonly section: string;
  readonly examples: readonly BuiltinExample[];
}

export interface BuiltinDefinition extends Described {
  /** "ROUND(number; [digits])" */
  readonly parameters: string;
  readonly table: BuiltinFunction;
}

export interface BuiltinFunction extends TableFunction {
  /**
   * A single cell given as an argument is a reference of one cell, not its value: texts and logicals in it are passed
   * over. Whoever binds cells hands it over as a grid of one.
   */
  readonly cellsAsRanges?: boolean;
}

type Read<P extends readonly unknown[]> = { [K in keyof P]: P[K] extends Parameter<infer T> ? T : never };

export interface Recipe<P extends readonly Parameter<unknown>[], R> extends Described {
  readonly takes: P;
  /** A last parameter that may be given any number of times (at least `leastRest`, default 0). */
  readonly rest?: Parameter<R>;
  readonly leastRest?: number;
  readonly gives: (args: readonly ArgumentType[], reading: UnitSystem) => ValueType;
  /** Absent only where evaluateLazily is there. */
  readonly evaluate?: (given: Read<P>, rest: readonly R[], notes: CallNotes) => Value;
  readonly evaluateLazily?: (args: readonly (() => Value)[], notes: CallNotes) => Value;
  readonly spills?: boolean;
  readonly cellsAsRanges?: boolean;
}

function settled(value: Value): Value {
  if (typeof value === 'number') return checkedNumber(value || 0);
  if (isFailure(value) || !isGrid(value)) return value;
  if (value.grid.length === 1 && value.grid[0]?.length === 1) return settled(value.grid[0][0] ?? null);
  return {
    grid: value.grid.map((row) =>
      row.map((cell) => (typeof cell === 'number' ? checkedNumber(cell || 0) : cell)),
    ),
  };
}

function inferred<P extends readonly Parameter<unknown>[], R>(
  recipe: Recipe<P, R>,
  args: readonly ArgumentType[],
  reading: UnitSystem,
): InferenceResult {
  const failed = args.map((arg) => failedIn(arg.type)).find((type) => type !== undefined);
  if (failed) return { type: failed };
  const call = { name: recipe.name, args, reading };
  const cautions: Caution[] = [];
  const assumed: { argument: number; unit: string }[] = [];
  for (const [index, arg] of args.entries()) {
    const parameter = recipe.takes[index] ?? recipe.rest;
    const verdict = parameter?.judge(arg, index, call) ?? {};
    if (verdict.refusal) return { type: verdict.refusal };
    if (verdict.caution !== undefined)
      cautions.push({ key: `empty ${arg.text.trim()}`, text: verdict.caution });
    if (verdict.assumed !== undefined) assumed.push({ argument: index, unit: verdict.assumed });
  }
  return { type: recipe.gives(args, reading), assumed, cautions };
}

function evaluated<P extends readonly Parameter<unknown>[], R>(
  recipe: Recipe<P, R>,
  args: readonly Value[],
  notes: CallNotes,
): Value {
  if (!recipe.evaluate) {
    const lazily = args.map((arg) => () => arg);
    return settled(recipe.evaluateLazily?.(lazily, notes) ?? null);
  }
  const given: unknown[] = [];
  for (const [index, parameter] of recipe.takes.entries()) {
    const read = parameter.read(args[index] ?? null);
    if (!parameter.raw && isFailure(read as Value)) return read as Value;
    given.push(read);
  }
  const rest: R[] = [];
  if (recipe.rest) {
    for (const value of args.slice(recipe.takes.length)) {
      const read = recipe.rest.read(value);
      if (!recipe.rest.raw && isFailure(read as Value)) return read as Value;
      rest.push(read as R);
    }
  }
  return settled(recipe.evaluate(given as Read<P>, rest, notes));
}

/** Words for a wrong number of arguments, for inference and evaluation alike. */
const wrongCount = (signature: string) => failure('#VALUE!', `wrong number of arguments: ${signature}`);

/** A definition from its recipe. */
export function builtin<const P extends readonly Parameter<unknown>[], R = never>(
  recipe: Recipe<P, R>,
): BuiltinDefinition {
  const { name, group, summary, searchWords, section, examples, takes, rest, leastRest = 0 } = recipe;
  const required = takes.filter((parameter) => !parameter.optional).length + leastRest;
  const most = rest ? 255 : takes.length;
  const shown = takes.map((parameter) => (parameter.optional ? `[${parameter.name}]` : parameter.name));
  if (rest) shown.push(leastRest > 0 ? rest.name : `[${rest.name}]`, '...');
  const parameters = `${name}(${shown.join('; ')})`;
  const fits = (count: number): boolean => count >= required && count <= most;
  const { evaluateLazily, spills, cellsAsRanges } = recipe;
  const table: BuiltinFunction = {
    name,
    arity: [required, most],
    infer: (args, reading) =>
      fits(args.length)
        ? inferred(recipe, args, reading)
        : { type: { type: 'failed', failure: wrongCount(parameters) } },
    evaluate: (args, notes) => (fits(args.length) ? evaluated(recipe, args, notes) : wrongCount(parameters)),
    ...(evaluateLazily && {
      evaluateLazily: (args, notes) =>
        fits(args.length) ? settled(evaluateLazily(args, notes)) : wrongCount(parameters),
    }),
    ...(spills && { spills }),
    ...(cellsAsRanges && { cellsAsRanges }),
  };
  return { name, group, summary, searchWords, section, examples, parameters, table };
}

/** A worked example; OpenFormula's own cases by default. */
export const example = (
  given: string,
  gives: string,
  source = 'OpenFormula, test cases',
): BuiltinExample => ({
  given,
  gives,
  source,
});
