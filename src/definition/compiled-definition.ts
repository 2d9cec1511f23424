/** A definition made ready to run: arguments filled in and checked, steps, conditions and the result computed in coherent SI. */

import {
  compileNumber,
  failure,
  isFailure,
  isGrid,
  nodesOf,
  numberFailure,
  type CallNotes,
  type CompiledNumber,
  type Failure,
  type Grid,
  type Node,
  type Scalar,
  type UnitSystem,
  type Value,
} from '../expression/index.ts';
import { kindNamed } from '../quantity/index.ts';
import { compiledHard, compiledUsual, readied, type Compiling } from './bounds.ts';
import { equationTree, tolerant, type Rescale } from './equation.ts';
import { HARDNESS, type Condition, type FunctionDefinition, type Parameter } from './function-definition.ts';
import { spoken, unitOfParameter, valueWords } from './words.ts';

export interface CompiledDefinition {
  /** Arguments in coherent SI, null for one left out; never throws. */
  evaluate(args: readonly Value[], notes: CallNotes): Value;
}

interface CompiledCondition {
  readonly key: string;
  /** Place of the last step it needs; the number of steps where it needs the result. */
  readonly stage: number;
  readonly holds: CompiledNumber;
  readonly words: (run: Run) => string;
}

/** The values of one call. */
interface Run {
  readonly slots: Float64Array;
  readonly lists: number[][];
  readonly texts: Map<string, string>;
  /** Scales of hardness arguments by symbol. */
  readonly scales: Map<string, string>;
  /** In whose units messages tell values. */
  readonly system: UnitSystem;
}

const isScalarNumber = ({ kind, list }: Parameter): boolean => !list && kind !== 'text' && kind !== 'logical';

const NEEDS = 'value missing: ';

class Compiler implements Compiling {
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
    return {
      key: `${this.definition.name}: ${when}`,
      stage,
      holds: this.compile(tolerant(tree)),
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
function listOf(parameter: Parameter, value: Scalar | Grid): number[] | Failure {
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
function slotValue(parameter: Parameter, value: Scalar, texts: Map<string, string>): number | Failure {
  const { name, symbol, kind, words, whole } = parameter;
  if (isFailure(value)) return value;
  if (kind === 'text') {
    if (typeof value !== 'string') return failure('#VALUE!', `${spoken(name)} wants a text`);
    if (!words) {
      texts.set(symbol, value);
      return 0;
    }
    const place = words.findIndex((word) => word.toLowerCase() === value.trim().toLowerCase());
    const word = words[place];
    if (word === undefined)
      return failure(
        '#VALUE!',
        `${spoken(name)} "${value}" is none of ${words.map((each) => `"${each}"`).join(', ')}`,
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

/** Compiles a definition. `rescale` is for tests: it changes the sizes of the base units in every constant. */
export function compileDefinition(definition: FunctionDefinition, rescale?: Rescale): CompiledDefinition {
  const compiler = new Compiler(definition, rescale);
  const { parameters, constants = [], result } = definition;
  const lists = parameters.filter(({ list }) => list);
  const hardnesses = parameters.filter(({ kind }) => kind === HARDNESS);
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

  function compileDefault(tree: Node): CompiledNumber | undefined {
    return tree.type === 'text' || tree.type === 'logical' ? undefined : compiler.compile(tree);
  }

  /** Given values into their slots; those left out stay NaN. */
  function taken(args: readonly Value[], run: Run): Failure | undefined {
    for (const [index, parameter] of parameters.entries()) {
      const value = args[index] ?? null;
      if (value === null) {
        if (!parameter.default) return failure('#VALUE!', `${NEEDS}${spoken(parameter.name)}`);
      } else if (parameter.list) {
        if (isFailure(value)) return value;
        const numbers = listOf(parameter, value);
        if (!Array.isArray(numbers)) return numbers;
        run.lists[places[index] ?? -1] = numbers;
      } else if (isGrid(value)) {
        return failure('#VALUE!', `${spoken(parameter.name)} wants one value, was given several`);
      } else {
        const number = slotValue(parameter, value, run.texts);
        if (typeof number !== 'number') return number;
        run.slots[slots[index] ?? -1] = number;
      }
    }
    for (const [index, { symbol }] of hardnesses.entries()) {
      const scale = args[parameters.length + index];
      if (typeof scale !== 'string') continue;
      run.scales.set(symbol, scale);
      run.texts.set(symbol, valueWords(run.slots[compiler.slot(symbol)] ?? Number.NaN, scale));
    }
    return undefined;
  }

  function filled(args: readonly Value[], run: Run, notes: CallNotes): Failure | undefined {
    for (const { index, tree, run: value } of defaults) {
      const parameter = parameters[index];
      if (!parameter || (args[index] ?? null) !== null) continue;
      const slot = slots[index] ?? -1;
      if (tree.type === 'text' || tree.type === 'logical') {
        const number = slotValue(parameter, tree.value, run.texts);
        if (typeof number !== 'number') return number;
        run.slots[slot] = number;
        continue;
      }
      const number = value?.(run.slots, run.lists) ?? Number.NaN;
      run.slots[slot] = number;
      if (isScalarNumber(parameter))
        notes.step?.({
          symbol: parameter.symbol,
          meaning: `${spoken(parameter.name)}, left out`,
          kind: parameter.kind,
          value: number,
        });
    }
    return undefined;
  }

  function outOfRange(run: Run): Failure | undefined {
    for (const { parameter, single, slot, place, hard } of ranges) {
      const { name, list } = parameter;
      if (list) {
        const numbers = run.lists[place] ?? [];
        for (const [index, number] of numbers.entries()) {
          const checked = hard.check(number, run.slots, run.system);
          if (typeof checked === 'string')
            return failure('#NUM!', `${spoken(name)}, item ${index + 1}: ${checked}`);
          numbers[index] = checked;
        }
      } else if (single) {
        const number = run.slots[slot] ?? Number.NaN;
        if (Number.isNaN(number)) continue;
        const checked = hard.check(number, run.slots, run.system);
        if (typeof checked === 'string') return failure('#NUM!', `${spoken(name)} ${checked}`);
        run.slots[slot] = checked;
      }
    }
    return undefined;
  }

  const refusedAt = (stage: number, run: Run): Failure | undefined => {
    for (const refusal of refuses)
      if (refusal.stage === stage && refusal.holds(run.slots, run.lists) === 1)
        return failure('#NUM!', refusal.words(run));
    return undefined;
  };

  const noNumber = (tree: Node, run: Run): Failure =>
    numberFailure(readied(tree, compiler), compiler.symbols, compiler.options, run.slots, run.lists);

  function computed(run: Run, notes: CallNotes): Value {
    if (equation && main) {
      const value = main(run.slots, run.lists);
      return Number.isFinite(value) ? value : noNumber(equation, run);
    }
    if (!('compute' in definition)) return failure('#VALUE!', `${definition.name} has no equation`);
    const slotOf = (symbol: string): number | null => {
      const value = run.slots[compiler.slot(symbol)];
      return value === undefined || Number.isNaN(value) ? null : value;
    };
    const values = parameters.map((parameter): [string, Scalar | Grid] => {
      const { symbol, kind, list } = parameter;
      if (list) {
        const numbers = run.lists[lists.indexOf(parameter)];
        return [symbol, numbers ? { grid: [numbers] } : null];
      }
      if (kind === 'text') return [symbol, run.texts.get(symbol) ?? null];
      const value = slotOf(symbol);
      return [symbol, kind === 'logical' && value !== null ? value === 1 : value];
    });
    const others = [...constants, ...steps].map(({ symbol }): [string, Scalar] => [symbol, slotOf(symbol)]);
    const scales = [...run.scales].map(([symbol, scale]): [string, Scalar] => [`${symbol}_scale`, scale]);
    const value = definition.compute(
      Object.fromEntries([...values, ...others, ...scales]),
      (symbol, noted, kind) => notes.step?.({ symbol, meaning: '', kind, value: noted }),
      (text) => notes.caution?.({ key: `${definition.name}: ${text}`, text }),
    );
    if (typeof value === 'number' && !Number.isFinite(value))
      return failure('#NUM!', 'no number results from these values');
    return value;
  }

  function cautioned(run: Run, notes: CallNotes): void {
    for (const { parameter, slot, place, usual } of ranges) {
      if (!usual) continue;
      const { name, list } = parameter;
      const values = list ? (run.lists[place] ?? []) : [run.slots[slot] ?? Number.NaN];
      const words = values
        .map((value) => (Number.isNaN(value) ? undefined : usual(value, run.slots, run.system)))
        .find(Boolean);
      if (words)
        notes.caution?.({ key: `${definition.name}: unusual ${name}`, text: `${spoken(name)} ${words}` });
    }
    for (const caution of cautions)
      if (caution.holds(run.slots, run.lists) === 1)
        notes.caution?.({ key: caution.key, text: caution.words(run) });
  }

  function evaluated(args: readonly Value[], notes: CallNotes): Value {
    const run: Run = {
      slots: new Float64Array(compiler.symbols.length).fill(Number.NaN),
      lists: lists.map(() => []),
      texts: new Map(),
      scales: new Map(),
      system: notes.reading ?? 'metric',
    };
    for (const { slot, value } of fixed) run.slots[slot] = value;
    const wrong = taken(args, run) ?? filled(args, run, notes) ?? outOfRange(run) ?? refusedAt(0, run);
    if (wrong) return wrong;
    for (const [index, { symbol, meaning, kind, tree, run: compute, slot }] of steps.entries()) {
      const value = compute(run.slots, run.lists);
      if (!Number.isFinite(value)) return noNumber(tree, run);
      run.slots[slot] = value;
      notes.step?.({ symbol, meaning, kind, value });
      const refused = refusedAt(index + 1, run);
      if (refused) return refused;
    }
    const value = computed(run, notes);
    if (isFailure(value)) return value;
    if (typeof value === 'number') run.slots[resultSlot] = value;
    const refused = refusedAt(steps.length + 1, run);
    if (refused) return refused;
    if (notes.caution) cautioned(run, notes);
    return value;
  }

  return {
    evaluate(args, notes) {
      try {
        return evaluated(args, notes);
      } catch (error) {
        return failure(
          '#VALUE!',
          `${definition.name}: ${error instanceof Error ? error.message : String(error)}`,
        );
      }
    },
  };
}
