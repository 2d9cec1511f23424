/** A definition over columns of numbers: the same checks, steps and equation as one call, for a piece of samples at once. */

import {
  compileNumberColumns,
  isFailure,
  isGrid,
  PIECE,
  type ColumnCall,
  type ColumnPool,
  type CompiledNumber,
  type Node,
  type NumberColumns,
  type Scalar,
  type Grid,
  type Value,
} from '../expression/index.ts';
import { readied } from './bounds.ts';
import { listOf, slotValue, type PreparedDefinition } from './prepared-definition.ts';

/** An equation by columns, or sample by sample where it reads lists. */
interface Computed {
  readonly columns: NumberColumns | undefined;
  readonly run: CompiledNumber;
}

/** What does not change from sample to sample. */
interface FixedCall {
  /** Numbers of the fixed arguments and constants, NaN where a column comes or nothing was given. */
  readonly slots: readonly Float64Array[];
  readonly lists: readonly (readonly number[])[];
  readonly texts: ReadonlyMap<string, string>;
  readonly scales: ReadonlyMap<string, string>;
  /** Places of the arguments that vary. */
  readonly varying: readonly number[];
  /** Parameters left out, by place. */
  readonly leftOut: ReadonlySet<number>;
}

const ALL_BAD = new Float64Array(PIECE).fill(NaN);

/** The slots of one piece and the samples that have failed. */
class Piece {
  readonly slots: Float64Array[];
  readonly samples: number;
  readonly pool: ColumnPool;
  readonly #lists: readonly (readonly number[])[];
  readonly #scratch: Float64Array;
  readonly #owned: Float64Array[] = [];
  #bad: Uint8Array | undefined;
  isLost = false;

  constructor(fixed: FixedCall, scratch: Float64Array, samples: number, pool: ColumnPool) {
    this.slots = [...fixed.slots];
    this.#lists = fixed.lists;
    this.#scratch = scratch;
    this.samples = samples;
    this.pool = pool;
  }

  /** The numbers of all symbols in one sample, to be read before the next is asked for. */
  at(sample: number): Float64Array {
    const { slots } = this;
    for (let slot = 0; slot < slots.length; slot++) {
      const column = slots[slot] as Float64Array;
      this.#scratch[slot] = column[column.length === 1 ? 0 : sample] as number;
    }
    return this.#scratch;
  }

  /** Computes what rests on the slots; the column is given back when the piece is done. */
  compute({ columns, run }: Computed): Float64Array {
    if (columns) {
      const found = columns.run(this);
      if (!columns.isBorrowed) this.#owned.push(found);
      return found;
    }
    const single = this.slots.every((column) => column.length === 1);
    const out = this.take(single);
    for (let i = 0; i < (single ? 1 : this.samples); i++) out[i] = run(this.at(i), this.#lists);
    return out;
  }

  take(single = false): Float64Array {
    const column = this.pool.take(single);
    this.#owned.push(column);
    return column;
  }

  lose(column: Float64Array, sample: number): void {
    if (column.length === 1) this.isLost = true;
    else (this.#bad ??= new Uint8Array(PIECE))[sample] = 1;
  }

  isLostAt(sample: number): boolean {
    return this.#bad?.[sample] === 1;
  }

  loseWhereNone(column: Float64Array): void {
    const n = column.length === 1 ? 1 : this.samples;
    for (let i = 0; i < n; i++) {
      const x = column[i] as number;
      if (x - x !== 0) this.lose(column, i);
    }
  }

  loseWhereTrue(column: Float64Array): void {
    const n = column.length === 1 ? 1 : this.samples;
    for (let i = 0; i < n; i++) if (column[i] === 1) this.lose(column, i);
  }

  /** The column as the call gives it. */
  finish(result: Float64Array | undefined): Float64Array {
    const { samples } = this;
    const out = this.pool.take();
    if (!result || this.isLost) out.set(ALL_BAD);
    else if (result.length === 1) out.fill(result[0] as number, 0, samples);
    else for (let i = 0; i < samples; i++) out[i] = result[i] as number;
    if (result)
      for (let i = 0; i < samples; i++) if ((out[i] as number) - (out[i] as number) !== 0) out[i] = NaN;
    const bad = this.#bad;
    if (bad) for (let i = 0; i < samples; i++) if (bad[i] === 1) out[i] = NaN;
    for (const column of this.#owned) this.pool.give(column);
    return out;
  }
}

/** The arguments that are the same for all samples; undefined where one of them is wrong, so that every sample fails. */
function fixedCall(
  prepared: PreparedDefinition,
  args: readonly (Value | undefined)[],
): FixedCall | undefined {
  const { compiler, parameters, lists, hardnesses, defaults, places, slots: slotOf, fixed } = prepared;
  const slots = compiler.symbols.map(() => Float64Array.of(NaN));
  const numbers: number[][] = lists.map(() => []);
  const texts = new Map<string, string>();
  const varying: number[] = [];
  const leftOut = new Set<number>();
  for (const { slot, value } of fixed) slots[slot] = Float64Array.of(value);
  for (const [index, parameter] of parameters.entries()) {
    const value = index < args.length ? args[index] : null;
    if (value === undefined) varying.push(index);
    else if (value === null) {
      if (!parameter.default) return undefined;
      leftOut.add(index);
    } else if (parameter.list) {
      const list = isFailure(value) ? value : listOf(parameter, value);
      if (!Array.isArray(list)) return undefined;
      numbers[places[index] ?? -1] = list;
    } else {
      const number = isGrid(value) ? undefined : slotValue(parameter, value, texts);
      if (typeof number !== 'number') return undefined;
      slots[slotOf[index] ?? -1] = Float64Array.of(number);
    }
  }
  for (const { index, tree } of defaults) {
    const parameter = parameters[index];
    if (!parameter || !leftOut.has(index) || (tree.type !== 'text' && tree.type !== 'logical')) continue;
    const number = slotValue(parameter, tree.value, texts);
    if (typeof number !== 'number') return undefined;
    slots[slotOf[index] ?? -1] = Float64Array.of(number);
  }
  const scales = new Map<string, string>();
  for (const [index, { symbol }] of hardnesses.entries()) {
    const scale = args[parameters.length + index];
    if (typeof scale === 'string') scales.set(symbol, scale);
  }
  return { slots, lists: numbers, texts, scales, varying, leftOut };
}

/** Compiles the column form once; what it gives is asked for each call with the arguments that stay. */
export function definitionColumns(
  prepared: PreparedDefinition,
): (args: readonly (Value | undefined)[]) => ColumnCall | undefined {
  const { definition, compiler, parameters, lists, defaults, slots: slotOf, ranges } = prepared;
  const { steps, refuses, equation, main, resultSlot } = prepared;
  const { symbols, options } = compiler;
  const columnsOf = (tree: Node): NumberColumns | undefined =>
    compileNumberColumns(readied(tree, compiler), symbols, options);
  const computed = (tree: Node, run: CompiledNumber): Computed => ({ columns: columnsOf(tree), run });
  const limit = (end: number | Node): ((piece: Piece) => Float64Array) => {
    if (typeof end === 'number') {
      const column = Float64Array.of(end);
      return () => column;
    }
    const columns = compileNumberColumns(end, symbols, options);
    // Without columns no number is inside at first sight, and each is checked by itself.
    return (piece) => (columns ? piece.compute({ columns, run: () => NaN }) : Float64Array.of(NaN));
  };
  const limits = ranges.map(({ hard }) => [limit(hard.bottom), limit(hard.top)] as const);
  const defaultOf = defaults.map(({ index, tree, run }) => ({
    index,
    tree,
    made: run && computed(tree, run),
  }));
  const stepOf = steps.map(({ tree, run, slot }) => ({ slot, made: computed(tree, run) }));
  const refusals = refuses.map(({ stage, tree, holds }) => ({ stage, made: computed(tree, holds) }));
  const mainOf = equation && main && computed(equation, main);

  function fillLeftOut(piece: Piece, call: FixedCall): void {
    for (const { index, made } of defaultOf)
      if (made && call.leftOut.has(index)) piece.slots[slotOf[index] ?? -1] = piece.compute(made);
  }

  /** Whole numbers that were missed by rounding are reached; others are refused. */
  function roundWhole(piece: Piece, index: number): void {
    const slot = slotOf[index] ?? -1;
    const given = piece.slots[slot] as Float64Array;
    const out = piece.take();
    for (let i = 0; i < piece.samples; i++) {
      const value = given[i] as number;
      const nearest = Math.round(value);
      out[i] = nearest;
      if (!(Math.abs(value - nearest) <= 1e-9 * Math.max(1, Math.abs(value)))) piece.lose(given, i);
    }
    piece.slots[slot] = out;
  }

  function checkRanges(piece: Piece, call: FixedCall): void {
    for (const [index, { single, slot, hard }] of ranges.entries()) {
      if (!single) continue;
      const [bottom, top] = limits[index] as (typeof limits)[number];
      const values = piece.slots[slot] as Float64Array;
      const low = bottom(piece);
      const high = top(piece);
      const [p, q, r] = [values, low, high].map((column) => (column.length === 1 ? 0 : 1)) as [
        0 | 1,
        0 | 1,
        0 | 1,
      ];
      const n = p + q + r === 0 ? 1 : piece.samples;
      let moved: Float64Array | undefined;
      for (let i = 0; i < n; i++) {
        const value = values[i * p] as number;
        if (value > (low[i * q] as number) && value < (high[i * r] as number)) continue;
        const whole = n === 1 ? values : ALL_BAD;
        if (Number.isNaN(value)) {
          if (!call.leftOut.has(index)) piece.lose(whole, i);
          continue;
        }
        const checked = hard.check(value, piece.at(i));
        if (typeof checked === 'string') piece.lose(whole, i);
        else if (checked !== value) {
          if (!moved) {
            moved = piece.take(n === 1);
            for (let k = 0; k < n; k++) moved[k] = values[k * p] as number;
          }
          moved[i] = checked;
        }
      }
      if (moved) piece.slots[slot] = moved;
    }
  }

  const refuseAt = (stage: number, piece: Piece): void => {
    for (const refusal of refusals)
      if (refusal.stage === stage) piece.loseWhereTrue(piece.compute(refusal.made));
  };

  /** Calls `compute` with plain numbers, sample by sample, in one and the same record. */
  function iterated(piece: Piece, { texts, scales, lists: given }: FixedCall): Float64Array | undefined {
    if (!('compute' in definition)) return undefined;
    const { compute } = definition;
    const record: Record<string, Scalar | Grid> = {};
    const changing: [string, Float64Array, boolean][] = [];
    const number = (value: number | undefined): number | null =>
      value === undefined || Number.isNaN(value) ? null : value;
    const put = (symbol: string, logical: boolean): void => {
      const column = piece.slots[compiler.slot(symbol)] as Float64Array;
      if (column.length > 1) changing.push([symbol, column, logical]);
      const value = number(column[0]);
      record[symbol] = logical && value !== null ? value === 1 : value;
    };
    for (const parameter of parameters) {
      const { symbol, kind, list } = parameter;
      if (list) {
        const numbers = given[lists.indexOf(parameter)];
        record[symbol] = numbers ? { grid: [numbers] } : null;
      } else if (kind === 'text') record[symbol] = texts.get(symbol) ?? null;
      else put(symbol, kind === 'logical');
    }
    for (const { symbol } of [...(definition.constants ?? []), ...steps]) put(symbol, false);
    for (const [symbol, scale] of scales) record[`${symbol}_scale`] = scale;
    const out = piece.take();
    for (let i = 0; i < piece.samples; i++) {
      if (piece.isLostAt(i)) continue;
      for (const [symbol, column, logical] of changing) {
        const value = number(column[i]);
        record[symbol] = logical && value !== null ? value === 1 : value;
      }
      out[i] = numberOf(record);
    }
    return out;

    function numberOf(args: Readonly<Record<string, Scalar | Grid>>): number {
      try {
        const value = compute(
          args,
          () => undefined,
          () => undefined,
        );
        return typeof value === 'number' ? value : NaN;
      } catch {
        return NaN;
      }
    }
  }

  return (args) => {
    const { kind, list } = definition.result;
    if (kind === 'text' || list) return undefined;
    const sampled = (index: number): boolean => {
      const parameter = parameters[index];
      return (
        !parameter || parameter.list === true || parameter.kind === 'text' || parameter.kind === 'logical'
      );
    };
    if (args.some((value, index) => value === undefined && sampled(index))) return undefined;
    const call = fixedCall(prepared, args);
    const scratch = new Float64Array(symbols.length);
    return (columns, samples, pool) => {
      const piece = new Piece(call ?? NOTHING, scratch, samples, pool);
      if (!call) return piece.finish(undefined);
      for (const index of call.varying) {
        piece.slots[slotOf[index] ?? -1] = columns[index] as Float64Array;
        if (parameters[index]?.whole) roundWhole(piece, index);
      }
      fillLeftOut(piece, call);
      checkRanges(piece, call);
      refuseAt(0, piece);
      for (const [index, { slot, made }] of stepOf.entries()) {
        const column = piece.compute(made);
        piece.loseWhereNone(column);
        piece.slots[slot] = column;
        refuseAt(index + 1, piece);
      }
      if (piece.isLost) return piece.finish(undefined);
      const result = mainOf ? piece.compute(mainOf) : iterated(piece, call);
      if (result) piece.slots[resultSlot] = result;
      refuseAt(steps.length + 1, piece);
      return piece.finish(result);
    };
  };
}

const NOTHING: FixedCall = {
  slots: [],
  lists: [],
  texts: new Map(),
  scales: new Map(),
  varying: [],
  leftOut: new Set(),
};
