/** A small invented worksheet and function table for the tests of meaning. */

import { inferType, parse } from '../../src/expression/index.ts';
import type {
  ArgumentType,
  FunctionTable,
  Inference,
  InferenceContext,
  Node,
  ScalarType,
  TableFunction,
  Value,
  ValueType,
} from '../../src/expression/index.ts';
import { applyBinary, failure, isFailure, isGrid } from '../../src/expression/index.ts';
import { kindNamed, PLAIN } from '../../src/quantity/index.ts';

export const kind = (name: string, literal?: number): ScalarType =>
  literal === undefined
    ? { type: 'number', kind: kindNamed(name) }
    : { type: 'number', kind: kindNamed(name), literal };

const plain: ScalarType = { type: 'number', kind: PLAIN };

/** Cells of column B by row number as shown. */
export const CELLS = new Map<number, ScalarType>([
  [1, kind('number', 3)],
  [2, plain],
  [3, kind('length')],
  [4, kind('time')],
  [5, kind('angle')],
  [6, { type: 'blank', cell: 'B6' }],
  [7, { type: 'text' }],
  [8, { type: 'logical' }],
  [9, kind('feed per tooth')],
  [10, kind('feed per revolution')],
  [11, kind('torque')],
  [12, kind('energy')],
  [13, kind('hardness HRC')],
  [14, kind('date')],
  [15, kind('temperature')],
  [16, kind('temperature difference')],
  [17, { type: 'failed', failure: failure('#UNIT!', 'adds a mass to a force', 'Feeds.B4') }],
  [18, kind('cutting speed')],
  [19, kind('rotational speed')],
  [20, kind('count')],
  [21, { type: 'neutral' }],
  [22, kind('power')],
]);

const asNumbers = (args: readonly Value[]): readonly number[] =>
  args.flatMap((arg) => (isGrid(arg) ? arg.grid.flat() : [arg])).filter((arg) => typeof arg === 'number');

const numeric = (name: string, run: (x: number) => number): TableFunction => ({
  name,
  arity: [1, 1],
  infer: () => ({ type: plain }),
  evaluate: ([x = null]) => {
    if (isFailure(x)) return x;
    const value = typeof x === 'number' ? run(x) : NaN;
    return Number.isFinite(value) ? value : failure('#NUM!', 'no number results');
  },
});

/** A domain function for tests: the chip of an invented cutter, its feed read in mm or in. */
const chip: TableFunction = {
  name: 'TEST.CHIP',
  arity: [1, 2],
  infer: ([feed], reading) => {
    const type = feed?.type;
    if (type?.type !== 'number' || type.kind !== PLAIN) return { type: kind('length') };
    return { type: kind('length'), assumed: [{ argument: 0, unit: reading === 'inch' ? 'in' : 'mm' }] };
  },
  evaluate: ([feed = null, factor = null]) => {
    if (isFailure(feed)) return feed;
    if (typeof feed !== 'number') return failure('#VALUE!', 'value missing: feed');
    if (feed <= 0) return failure('#NUM!', 'feed must be above 0 mm');
    return feed * (typeof factor === 'number' ? factor : 1);
  },
};

const branches = ([, then, otherwise]: readonly ArgumentType[]): ValueType =>
  then?.type.type === 'number' ? then.type : (otherwise?.type ?? { type: 'neutral' });

const all: readonly TableFunction[] = [
  chip,
  numeric('SIN', Math.sin),
  numeric('COS', Math.cos),
  numeric('TAN', Math.tan),
  numeric('ATAN', Math.atan),
  numeric('ABS', Math.abs),
  numeric('SQRT', Math.sqrt),
  numeric('EXP', Math.exp),
  numeric('LN', Math.log),
  {
    name: 'PI',
    arity: [0, 0],
    infer: () => ({ type: plain }),
    evaluate: () => Math.PI,
  },
  {
    name: 'SUM',
    arity: [1, Infinity],
    infer: ([first]) => ({
      type: first?.type.type === 'grid' ? (first.type.columns[0] ?? plain) : (first?.type ?? plain),
    }),
    evaluate: (args) => asNumbers(args).reduce((sum, x) => sum + x, 0),
  },
  {
    name: 'MAX',
    arity: [1, Infinity],
    infer: ([first]) => ({ type: first?.type ?? plain }),
    evaluate: (args) => args.find(isFailure) ?? Math.max(...asNumbers(args)),
  },
  {
    name: 'PICK',
    arity: [2, 2],
    infer: ([, place]) =>
      place?.type.type === 'number' && place.type.literal === 3 ? { type: kind('length') } : { type: plain },
    evaluate: ([range = null]) => range,
  },
  {
    name: 'IF',
    arity: [2, 3],
    infer: (args) => ({ type: branches(args) }),
    evaluate: () => failure('#VALUE!', 'lazy'),
    evaluateLazily: ([condition, then, otherwise]) => {
      const chosen = condition?.() ?? null;
      if (isFailure(chosen)) return chosen;
      return (chosen ? then?.() : otherwise?.()) ?? null;
    },
  },
  {
    name: 'IFERROR',
    arity: [2, 2],
    infer: ([value]) => ({ type: value?.type ?? plain }),
    evaluate: ([value = null, instead = null]) => (isFailure(value) ? instead : value),
  },
  {
    name: 'ISBLANK',
    arity: [1, 1],
    infer: () => ({ type: { type: 'logical' } }),
    evaluate: ([value = null]) => value === null,
  },
  {
    name: 'LINES',
    arity: [0, 0],
    infer: () => ({ type: { type: 'grid', columns: [plain], rows: 2 } }),
    evaluate: () => ({ grid: [[1], [2]] }),
    spills: true,
  },
  {
    name: 'ADD',
    arity: [2, 2],
    infer: () => ({ type: plain }),
    evaluate: ([a = null, b = null]) =>
      typeof a === 'object' && a !== null
        ? a
        : typeof b === 'object' && b !== null
          ? b
          : applyBinary('+', a, b),
  },
];

export const FUNCTIONS: FunctionTable = new Map(all.map((made) => [made.name, made]));

export const CONTEXT: InferenceContext = {
  functions: FUNCTIONS,
  reading: 'metric',
  currency: 'EUR',
  cellType: (_, column, row) => (column === 1 ? CELLS.get(row + 1) : undefined) ?? { type: 'blank' },
  rangeType: ({ start, end }) => ({
    type: 'grid',
    rows: end.row - start.row + 1,
    columns: Array.from({ length: end.column - start.column + 1 }, () => CELLS.get(start.row + 1) ?? plain),
  }),
  nameType: (_, name) =>
    new Map<string, ValueType>([
      ['ap', kind('length')],
      ['mc', kind('number', 0.25)],
    ]).get(name),
  namesNear: (_, name) => (name === 'aP' ? ['ap'] : []),
};

export function treeOf(text: string): Node {
  const parsed = parse(text);
  if ('problem' in parsed && parsed.problem) throw new Error(parsed.problem.message);
  if (!parsed.tree) throw new Error(`no tree for ${text}`);
  return parsed.tree;
}

export const inferred = (text: string, changes: Partial<InferenceContext> = {}): Inference =>
  inferType(treeOf(text), { ...CONTEXT, ...changes });

/** Name of the result's kind, the failure's code and words, or the sort of type. */
export function said(text: string, changes: Partial<InferenceContext> = {}): string {
  const { type } = inferred(text, changes);
  if (type.type === 'failed') return `${type.failure.failure} ${type.failure.message}`;
  return type.type === 'number' ? type.kind.name : type.type;
}

export const cautionsOf = (text: string): readonly string[] =>
  inferred(text).cautions.map((caution) => caution.text);
