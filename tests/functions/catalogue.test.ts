/** What must hold of every function of the library; each test tells all offenders. */

import { expect, test } from 'vitest';
import { DEFINITION_FILES, DEFINITIONS } from '../../src/catalogue.ts';
import {
  compileDefinition,
  definitionFaults,
  equationTree,
  FAMILIES,
  type Example,
  type FunctionDefinition,
  HARDNESS,
} from '../../src/definition/index.ts';
import {
  evaluateDecimal,
  type Grid,
  inferType,
  isFailure,
  isGrid,
  parse,
  type Scalar,
  type Value,
  type ValueType,
} from '../../src/expression/index.ts';
import { SOURCES } from '../../src/functions/index.ts';
import { isUnknownUnit, kindNamed, parseUnit, type Dimension } from '../../src/quantity/index.ts';
import { calculated, FUNCTIONS } from './calculated.ts';
import { chance, sampledArguments } from './sampled.ts';

const SAMPLES = 200;

/** Numbers 0, 1, 2 .. while there is processor time: at least `least`, at most `most`. A simulation is tried less often than a product. */
function* attempts(least: number, most: number, milliseconds: number): Generator<number> {
  const begin = process.cpuUsage();
  for (let i = 0; i < most; i += 1) {
    if (i >= least && process.cpuUsage(begin).user > milliseconds * 1000) return;
    yield i;
  }
}

const formulaOf = ({ name }: FunctionDefinition, { given }: Example): string =>
  `=${name}(${given.join('; ')})`;

/** Half a unit of the last digit that is written, in the unit of the text. */
function halfDigit(text: string): number {
  const digits = /^[-+]?[\d.]+(?:[eE][-+]?\d+)?/.exec(text)?.[0] ?? '1';
  const [mantissa = '', exponent = '0'] = digits.toLowerCase().split('e');
  return 0.5 * 10 ** (Number(exponent) - (mantissa.split('.')[1]?.length ?? 0));
}

function quantityOf(text: string): { si: number; scale: number } {
  const { value } = calculated(`=${text}`);
  if (typeof value !== 'number') throw new Error(`${text} is no number`);
  const unit = / (\S+)$/.exec(text)?.[1];
  const known = parseUnit(unit ?? '1');
  return { si: value, scale: isUnknownUnit(known) ? 1 : known.scale };
}

/** Words of what is wrong with an example, or none. */
function exampleFault(definition: FunctionDefinition, example: Example): string | undefined {
  const formula = formulaOf(definition, example);
  const { value } = calculated(formula);
  const told = isFailure(value) ? `${value.failure} ${value.message}` : JSON.stringify(value);
  const expected = typeof example.gives === 'string' ? [example.gives] : example.gives;
  const values = isGrid(value) ? value.grid.flat() : [value];
  if (values.length !== expected.length) return `${formula} gives ${told}, not ${expected.join('; ')}`;
  for (const [index, wanted] of expected.entries()) {
    const given = values[index];
    if (wanted.startsWith('"')) {
      if (given !== wanted.slice(1, -1).replaceAll('""', '"'))
        return `${formula} gives ${told}, not ${wanted}`;
      continue;
    }
    const { si, scale } = quantityOf(wanted);
    const { tolerance } = example;
    const room =
      tolerance === undefined
        ? halfDigit(wanted) * scale
        : / /.test(tolerance)
          ? quantityOf(tolerance).si
          : Number(tolerance) * Math.abs(si);
    if (typeof given !== 'number' || !(Math.abs(given - si) <= room * (1 + 1e-9)))
      return `${formula} gives ${typeof given === 'number' ? given / scale : told}, not ${wanted}`;
  }
  return undefined;
}

test('every definition is sound: symbols, kinds, units, texts', () => {
  expect(DEFINITIONS.flatMap(definitionFaults)).toEqual([]);
});

test('every function lies in the file of its name, in the folder of its family', () => {
  const offenders = [...DEFINITION_FILES].flatMap(([path, { name }]) => {
    const [family = '', quantity = ''] = name.toLowerCase().split('.');
    const place = `./functions/${family}/${quantity.replaceAll('_', '-')}.ts`;
    return path === place ? [] : [`${name} lies in ${path}`];
  });
  expect(offenders).toEqual([]);
  expect(new Set(DEFINITIONS.map(({ name }) => name)).size).toBe(DEFINITION_FILES.size);
});

test('every family is known', () => {
  const families = new Set(FAMILIES.map(({ name }) => name));
  expect(DEFINITIONS.filter(({ family }) => !families.has(family)).map(({ name }) => name)).toEqual([]);
});

test('every example gives what its origin says', () => {
  const faults = DEFINITIONS.flatMap((definition) =>
    definition.examples.flatMap((example) => exampleFault(definition, example) ?? []),
  );
  expect(faults).toEqual([]);
});

test('every source that is named exists, and every source is used', () => {
  const named = new Set(DEFINITIONS.flatMap(({ sources }) => sources));
  expect([...named].filter((key) => !SOURCES.has(key))).toEqual([]);
  const families = new Set(DEFINITIONS.map(({ family }) => family));
  const complete = FAMILIES.every(({ name }) => families.has(name));
  // Sources of families that are not there yet wait for them.
  if (complete) expect([...SOURCES.keys()].filter((key) => !named.has(key))).toEqual([]);
});

/** An angle counts as its radian value. */
const sameDimension = (a: Dimension, b: Dimension): boolean =>
  a === b ||
  (['', 'angle'].includes(a.scale) &&
    ['', 'angle'].includes(b.scale) &&
    (['length', 'mass', 'time', 'temperature', 'money'] as const).every((base) => a[base] === b[base]));

/** A hardness in any scale stands here as one in HRC. */
const typed = (kind: string, list = false): ValueType => {
  if (kind === 'text' || kind === 'logical') return { type: kind };
  const number = { type: 'number' as const, kind: kindNamed(kind === HARDNESS ? 'hardness HRC' : kind) };
  return list ? { type: 'grid', columns: [number, number], rows: 1 } : number;
};

test('the dimension of every equation, step and condition is what it is said to be', () => {
  const offenders: string[] = [];
  for (const definition of DEFINITIONS) {
    const { name, parameters, constants = [], steps = [], refuses = [], cautions = [], result } = definition;
    const types = new Map<string, ValueType>();
    for (const { symbol, kind, list } of parameters) {
      if (kind === 'any number') continue;
      types.set(symbol, typed(kind, list));
    }
    const inferred = (text: string): ValueType =>
      inferType(equationTree(text), {
        cellType: () => ({ type: 'blank' }),
        rangeType: () => ({ type: 'blank' }),
        nameType: (_, symbol) => types.get(symbol),
        functions: FUNCTIONS,
        reading: 'metric',
        currency: 'money',
      }).type;
    const check = (text: string, kind: string): void => {
      if (kind.startsWith('like ') || kind === 'text') return;
      const type = inferred(text);
      if (type.type === 'failed') offenders.push(`${name}: ${text}: ${type.failure.message}`);
      else if (type.type === 'number' && !sameDimension(type.kind.dimension, kindNamed(kind).dimension))
        offenders.push(`${name}: ${text} is ${type.kind.name}, not ${kind}`);
    };
    for (const { symbol, value } of constants) types.set(symbol, inferred(value));
    for (const { symbol, kind, equation } of steps) {
      if (parameters.some(({ kind: each }) => each === 'any number')) continue;
      if (!parameters.some(({ list }) => list)) check(equation, kind);
      types.set(symbol, typed(kind));
    }
    if (parameters.some(({ list, kind }) => list || kind === 'any number')) continue;
    if ('equation' in definition) check(definition.equation, result.kind);
    if (!result.kind.startsWith('like ')) types.set(result.symbol, typed(result.kind));
    for (const { when } of [...refuses, ...cautions]) {
      const type = inferred(when);
      if (type.type === 'failed') offenders.push(`${name}: ${when}: ${type.failure.message}`);
    }
  }
  expect(offenders).toEqual([]);
});

/** Failures that say nothing of a parameter: a gap in the ranges. */
const SPEECHLESS = /^(no number results|division by zero|the result is too large|[A-Z]+\.[A-Z0-9_]+: )/;

test('inside the hard ranges every function gives a finite value or says what is refused', () => {
  const offenders = new Set<string>();
  for (const definition of DEFINITIONS) {
    const next = chance(20_260_309);
    const compiled = compileDefinition(definition);
    for (const i of attempts(4, SAMPLES, 40)) {
      const args = sampledArguments(definition, next, i % 2 === 0 ? 'usual' : 'hard');
      const value = compiled.evaluate(args, {});
      if (isFailure(value) && SPEECHLESS.test(value.message))
        offenders.add(`${definition.name}(${JSON.stringify(args)}): ${value.message}`);
    }
  }
  expect([...offenders]).toEqual([]);
});

/** Sizes of the base units, as odd as can be. */
const SIZES = { length: 3.7, mass: 0.21, time: 5.3, temperature: 1.9, money: 13 };

const rescale = (si: number, dimension: Dimension): number =>
  si *
  (['length', 'mass', 'time', 'temperature', 'money'] as const).reduce(
    (factor, base) => factor * SIZES[base] ** dimension[base],
    1,
  );

test('every function is homogeneous: with base units of other sizes the result changes as its dimension does', () => {
  const offenders: string[] = [];
  for (const definition of DEFINITIONS) {
    const { scaling = 'homogeneous', parameters, result, name } = definition;
    if (scaling !== 'homogeneous' || result.kind === 'text') continue;
    const like = result.kind.startsWith('like ') ? result.kind.slice('like '.length) : undefined;
    const named =
      like === undefined ? result.kind : (parameters.find((each) => each.name === like)?.kind ?? 'number');
    // What takes any number is given lengths.
    const dimensionOf = (kind: string): Dimension =>
      kindNamed(kind === 'any number' ? 'length' : kind).dimension;
    const dimension = dimensionOf(named);
    const plain = compileDefinition(definition);
    const scaled = compileDefinition(definition, rescale);
    const next = chance(7);
    let compared = 0;
    for (let i = 0; i < 1000 && compared < 3; i += 1) {
      const args = sampledArguments(definition, next, 'usual');
      const before = plain.evaluate(args, {});
      const after = scaled.evaluate(
        args.map((value, index): Value => {
          const of = parameters[index]?.kind ?? 'text';
          if (of === 'text' || of === 'logical' || value === null) return value;
          const size = (one: Value): number => rescale(Number(one), dimensionOf(of));
          return isGrid(value) ? { grid: value.grid.map((row) => row.map(size)) } : size(value);
        }),
        {},
      );
      if (isFailure(before) || before === null) {
        if (!isFailure(after)) offenders.push(`${name}: refused only in one system: ${JSON.stringify(args)}`);
        continue;
      }
      compared += 1;
      const listed = (value: Value): readonly Value[] => (isGrid(value) ? value.grid.flat() : [value]);
      const given = listed(after);
      for (const [index, one] of listed(before).entries()) {
        const wanted = rescale(Number(one), dimension);
        if (!(Math.abs(Number(given[index]) - wanted) <= 1e-9 * Math.abs(wanted) + 1e-300))
          offenders.push(`${name}: ${JSON.stringify(after)} instead of ${wanted}`);
      }
    }
    if (compared === 0) offenders.push(`${name}: no sample gave a value`);
  }
  expect(offenders).toEqual([]);
});

test('every equation agrees with 34 digits to 1e-12', () => {
  const offenders: string[] = [];
  for (const definition of DEFINITIONS) {
    if (!('equation' in definition) || definition.parameters.some(({ list }) => list)) continue;
    const { name, parameters, steps = [], constants = [], equation } = definition;
    const compiled = compileDefinition(definition);
    const next = chance(11);
    for (let i = 0; i < 25; i += 1) {
      const args = sampledArguments(definition, next, 'usual');
      const value = compiled.evaluate(args, {});
      if (typeof value !== 'number') continue;
      const known = new Map<string, Value | { readonly exact: string }>();
      const exact = (text: string): Value | { readonly exact: string } => {
        const { tree } = parse(text);
        if (!tree) throw new Error(text);
        const result = evaluateDecimal(tree, {
          operand: (node) => (node.type === 'name' ? known.get(node.name) : undefined),
        });
        return typeof result === 'object' && result !== null && 'digits' in result
          ? { exact: result.digits }
          : result;
      };
      parameters.forEach(({ symbol }, index) => {
        if ((args[index] ?? null) !== null) known.set(symbol, args[index] ?? null);
      });
      let waiting = parameters.filter(({ symbol, default: standard }) => !known.has(symbol) && standard);
      for (let round = 0; waiting.length > 0 && round < 5; round += 1) {
        for (const { symbol, default: standard } of waiting) {
          const given = standard && 'value' in standard ? exact(standard.value) : null;
          if (!isFailure(given as Value)) known.set(symbol, given);
        }
        waiting = waiting.filter(({ symbol }) => !known.has(symbol));
      }
      for (const { symbol, value: text } of constants) known.set(symbol, exact(text));
      for (const step of steps) known.set(step.symbol, exact(step.equation));
      const oracle = exact(equation);
      const wanted =
        typeof oracle === 'object' && oracle !== null && 'exact' in oracle
          ? Number(oracle.exact)
          : Number.NaN;
      if (!(Math.abs(value - wanted) <= 1e-12 * Math.abs(wanted) + 1e-300))
        offenders.push(`${name}(${JSON.stringify(args)}): ${value} against ${JSON.stringify(oracle)}`);
    }
  }
  expect(offenders).toEqual([]);
});

/** A result of the right sort, for conditions that do not look at it. */
const idle = ({ result }: FunctionDefinition): Scalar | Grid =>
  result.list ? { grid: [[result.kind === 'text' ? '' : 1]] } : result.kind === 'text' ? '' : 1;

test('every refusal and every caution is reached by some argument', () => {
  const unreached: string[] = [];
  for (const definition of DEFINITIONS) {
    const { refuses = [], cautions = [], name, result } = definition;
    const waiting = new Set([...refuses, ...cautions].map(({ when }) => when));
    // A condition is seen by what it says: one definition a condition, its words replaced by a mark.
    const marked = refuses.map(({ when }) => ({ when, text: `mark ${when}` }));
    const seesResult = ({ when }: { when: string }): boolean =>
      new RegExp(`(?<![A-Za-z0-9_])${result.symbol}(?![A-Za-z0-9_])`).test(when);
    /** Tries arguments until every condition that is given was met. */
    const tried = (each: FunctionDefinition, least: number): void => {
      const wanted = [...(each.refuses ?? []), ...(each.cautions ?? [])].map(({ when }) => when);
      const compiled = compileDefinition(each);
      const next = chance(3);
      for (const i of attempts(least, 6000, 2000)) {
        if (!wanted.some((when) => waiting.has(when))) return;
        const args = sampledArguments(each, next, i % 2 === 0 ? 'usual' : 'hard');
        const value = compiled.evaluate(args, {
          caution: ({ key }) => waiting.delete(key.slice(name.length + 2)),
        });
        if (isFailure(value) && value.message.startsWith('mark '))
          waiting.delete(value.message.slice('mark '.length));
      }
    };
    if ('compute' in definition)
      tried(
        {
          ...definition,
          compute: () => idle(definition),
          refuses: marked,
          cautions: cautions.filter((each) => !seesResult(each)),
        },
        3000,
      );
    tried({ ...definition, refuses: marked }, 'compute' in definition ? 60 : 3000);
    for (const when of waiting) unreached.push(`${name}: ${when}`);
  }
  expect(unreached).toEqual([]);
});
