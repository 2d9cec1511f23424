/** A definition's texts as trees and compiled numbers, its symbols as slots: what the evaluation of one call and of whole columns share. */

import {
  compileNumber,
  failure,
  isFailure,
  isGrid,
  nodesOf,
  type CompiledNumber,
  type Failure,
  type Grid,
  type Node,
  type Scalar,
  type UnitSystem,
} from '../expression/index.ts';
import { kindNamed } from '../quantity/index.ts';
import { compiledHard, compiledUsual, readied, type Compiling } from './bounds.ts';
import { equationTree, tolerant, type Rescale } from './equation.ts';
import { HARDNESS, type Condition, type FunctionDefinition, type Parameter } from './function-definition.ts';
import { spoken, unitOfParameter, valueWords } from './words.ts';

export interface CompiledCondition {
  readonly key: string;
  /** The condition with its order comparisons made tolerant. */
  readonly tree: Node;
  /** Place of the last step it needs; the number of steps where it needs the result. */
  readonly stage: number;
  readonly holds: CompiledNumber;
  readonly words: (run: Run) => string;
}

/** The values of one call. */
export interface Run {
  readonly slots: Float64Array;
  readonly lists: number[][];
  readonly texts: Map<string, string>;
  /** Scales of hardness arguments by symbol. */
  readonly scales: Map<string, string>;
  /** In whose units messages tell values. */
  readonly system: UnitSystem;
}

export const isScalarNumber = ({ kind, list }: Parameter): boolean =>
  !list && kind !== 'text' && kind !== 'logical';

export const NEEDS = 'value missing: ';

export class Compiler implements Compiling {
  readonly symbols: string[];
  readonly options;
  readonly parameters: readonly Parameter[];
  readonly rescale?: Rescale;

  constructor(
    readonly definition: FunctionDefinition,
    rescale: Rescale | undefined,
  ) {
    const { parameters, constants = [], steps = [], result } = definition;
    this.parameters = parameters;
    if (rescale) this.rescale = rescale;
    const scalars = parameters.filter(({ list }) => !list).map(({ symbol }) => symbol);
    this.symbols = [
      ...new Set([
        ...scalars,
        ...constants.map(({ symbol }) => symbol),
        ...steps.map(({ symbol }) => symbol),
        result.symbol,
      ]),
    ];
    this.options = {
      lists: parameters.filter(({ list }) => list).map(({ symbol }) => symbol),
      words: new Map(parameters.flatMap(({ symbol, words }) => (words ? [[symbol, words] as const] : []))),
    };
  }

  slot(symbol: string): number {
    return this.symbols.indexOf(symbol);
  }

  compile(tree: Node): CompiledNumber {
    return compileNumber(readied(tree, this), this.symbols, this.options);
  }

  condition({ when, text }: Condition): CompiledCondition {
    const tree = equationTree(when);
    const { steps = [], result } = this.definition;
    const names = [...nodesOf(tree)].flatMap((node) => (node.type === 'name' ? [node.name] : []));
    const stage =
      names.includes(result.symbol) && !this.parameters.some(({ symbol }) => symbol === result.symbol)
        ? steps.length + 1
        : Math.max(0, ...names.map((name) => steps.findIndex(({ symbol }) => symbol === name) + 1));
    const tolerated = tolerant(tree);
    return {
      key: `${this.definition.name}: ${when}`,
      tree: tolerated,
      stage,
      holds: this.compile(tolerated),
      words: (run) => text.replaceAll(/\{([^}]+)\}/g, (_, symbol: string) => this.wordsOf(symbol, run)),
    };
  }

  private wordsOf(symbol: string, { slots, texts, system }: Run): string {
    const told = texts.get(symbol);
    if (told !== undefined) return told;
    const { steps = [], result } = this.definition;
    const parameter = this.parameters.find((each) => each.symbol === symbol);
    const kind = steps.find((each) => each.symbol === symbol)?.kind ?? result.kind;
    const unit = parameter
      ? unitOfParameter(parameter, system)
      : kind === 'text' || kind.startsWith('like ')
        ? ''
        : kindNamed(kind)[system];
    return valueWords(slots[this.slot(symbol)] ?? Number.NaN, unit);
  }
}

/** Parameters with a default value, each after those that its default needs. */
function defaultsInOrder(parameters: readonly Parameter[]): { index: number; tree: Node }[] {
  const waiting = new Map(
    parameters.flatMap(({ default: standard }, index) =>
      standard && 'value' in standard ? [[index, equationTree(standard.value)] as const] : [],
    ),
  );
  const ordered: { index: number; tree: Node }[] = [];
  while (waiting.size > 0) {
    const ready = [...waiting].find(([, tree]) =>
      [...nodesOf(tree)].every(
        (node) =>
          node.type !== 'name' ||
          ![...waiting.keys()].some((index) => parameters[index]?.symbol === node.name),
      ),
    );
    if (!ready) throw new Error('defaults that wait for each other');
    ordered.push({ index: ready[0], tree: ready[1] });
    waiting.delete(ready[0]);
  }
  return ordered;
}

/** A list argument as numbers, or what is wrong with it. */
export function listOf(parameter: Parameter, value: Scalar | Grid): number[] | Failure {
  const items = isGrid(value) ? value.grid.flat() : [value];
  const numbers: number[] = [];
  for (const [index, item] of items.entries()) {
    const where = `${spoken(parameter.name)}, item ${index + 1}`;
    if (isFailure(item)) return item;
    if (item === null) return failure('#VALUE!', `${NEEDS}${where}`);
    if (typeof item !== 'number') return failure('#VALUE!', `${where} is no number`);
    numbers.push(item);
  }
  return numbers;
}

/** Text, logical or number of a single argument as the slot holds it. */
export function slotValue(parameter: Parameter, value: Scalar, texts: Map<string, string>): number | Failure {
  const { name, symbol, kind, words, numbered, whole } = parameter;
  if (isFailure(value)) return value;
  if (kind === 'text') {
    const text = typeof value === 'number' && numbered !== undefined ? String(value) : value;
    if (typeof text !== 'string') return failure('#VALUE!', `${spoken(name)} wants a text`);
    if (!words) {
      texts.set(symbol, text);
      return 0;
    }
    const typed = text.trim().toLowerCase();
    const long = `${numbered ?? ''}${typed}`.toLowerCase();
    const place = words.findIndex((word) => [typed, long].includes(word.toLowerCase()));
    const word = words[place];
    if (word === undefined)
      return failure(
        '#VALUE!',
        `${spoken(name)} "${text}" is none of ${words.map((each) => `"${each}"`).join(', ')}`,
      );
    texts.set(symbol, word);
    return place;
  }
  if (kind === 'logical')
    return typeof value === 'boolean'
      ? Number(value)
      : failure('#VALUE!', `${spoken(name)} wants TRUE or FALSE`);
  if (typeof value !== 'number') return failure('#VALUE!', `${spoken(name)} is no number`);
  if (!whole) return value;
  const nearest = Math.round(value);
  return Math.abs(value - nearest) <= 1e-9 * Math.max(1, Math.abs(value))
    ? nearest
    : failure('#NUM!', `${spoken(name)} ${valueWords(value, '')} must be a whole number`);
}

/** `rescale` is for tests: it changes the sizes of the base units in every constant. */
export function prepareDefinition(definition: FunctionDefinition, rescale?: Rescale) {
  const compiler = new Compiler(definition, rescale);
  const { parameters, constants = [], result } = definition;
  const lists = parameters.filter(({ list }) => list);
  const hardnesses = parameters.filter(({ kind }) => kind === HARDNESS);
  const compileDefault = (tree: Node): CompiledNumber | undefined =>
    tree.type === 'text' || tree.type === 'logical' ? undefined : compiler.compile(tree);
  const defaults = defaultsInOrder(parameters).map(({ index, tree }) => ({
    index,
    tree,
    run: compileDefault(tree),
  }));
  const slots = parameters.map(({ symbol }) => compiler.slot(symbol));
  const places = parameters.map((parameter) => lists.indexOf(parameter));
  const ranges = parameters.map((parameter, index) => ({
    parameter,
    single: isScalarNumber(parameter),
    slot: slots[index] ?? -1,
    place: places[index] ?? -1,
    hard: compiledHard(parameter, compiler),
    usual: compiledUsual(parameter, compiler),
  }));
  const steps = (definition.steps ?? []).map((step) => {
    const tree = equationTree(step.equation);
    return { ...step, tree, run: compiler.compile(tree), slot: compiler.slot(step.symbol) };
  });
  const refuses = (definition.refuses ?? []).map((each) => compiler.condition(each));
  const cautions = (definition.cautions ?? []).map((each) => compiler.condition(each));
  const fixed = constants.map(({ symbol, value }) => ({
    slot: compiler.slot(symbol),
    value: compiler.compile(equationTree(value))([]),
  }));
  const equation = 'equation' in definition ? equationTree(definition.equation) : undefined;
  const main = equation && compiler.compile(equation);
  const resultSlot = compiler.slot(result.symbol);
  return {
    definition,
    compiler,
    parameters,
    lists,
    hardnesses,
    defaults,
    slots,
    places,
    ranges,
    steps,
    refuses,
    cautions,
    fixed,
    equation,
    main,
    resultSlot,
  };
}

export type PreparedDefinition = ReturnType<typeof prepareDefinition>;
