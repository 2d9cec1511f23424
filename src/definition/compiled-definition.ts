/** A definition made ready to run: arguments filled in and checked, steps, conditions and the result computed in coherent SI. */

import {
  failure,
  isFailure,
  isGrid,
  numberFailure,
  type CallNotes,
  type ColumnCall,
  type Failure,
  type Grid,
  type Node,
  type Scalar,
  type Value,
} from '../expression/index.ts';
import { readied } from './bounds.ts';
import { definitionColumns } from './definition-columns.ts';
import { type Rescale } from './equation.ts';
import { type FunctionDefinition } from './function-definition.ts';
import {
  isScalarNumber,
  listOf,
  NEEDS,
  prepareDefinition,
  slotValue,
  type Run,
} from './prepared-definition.ts';
import { spoken, valueWords } from './words.ts';

export interface CompiledDefinition {
  /** Arguments in coherent SI, null for one left out; never throws. */
  evaluate(args: readonly Value[], notes: CallNotes): Value;
  /** See TableFunction. */
  overColumns(fixed: readonly (Value | undefined)[]): ColumnCall | undefined;
}

/** Compiles a definition. `rescale` is for tests: it changes the sizes of the base units in every constant. */
export function compileDefinition(definition: FunctionDefinition, rescale?: Rescale): CompiledDefinition {
  const prepared = prepareDefinition(definition, rescale);
  const { compiler, parameters, lists, hardnesses, defaults, slots, places, ranges } = prepared;
  const { steps, refuses, cautions, fixed, equation, main, resultSlot } = prepared;
  const { constants = [] } = definition;

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
      // By family: what a table says of its row is said once in a cell that reads two columns of it.
      (text) => notes.caution?.({ key: `${definition.family}: ${text}`, text }),
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

  let columns: ReturnType<typeof definitionColumns> | undefined;
  return {
    overColumns(args) {
      columns ??= definitionColumns(prepared);
      return columns(args);
    },
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
