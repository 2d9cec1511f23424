/** Every domain function gives over columns what it gives sample by sample: values, and where there is none. */

import { expect, test } from 'vitest';
import { DEFINITIONS } from '../../src/catalogue.ts';
import { compileDefinition } from '../../src/definition/index.ts';
import type { FunctionDefinition } from '../../src/definition/index.ts';
import { ColumnPool, compileScalar, parse } from '../../src/expression/index.ts';
import type { Value } from '../../src/expression/index.ts';
import { chance, sampledArguments } from './sampled.ts';

const SAMPLES = 12;

/** The arguments of the first worked example in coherent SI. */
function exampleOf({ examples, parameters }: FunctionDefinition): Value[] {
  const given = examples[0]?.given ?? [];
  return parameters.map((_, index) => {
    const text = given[index] ?? '';
    const { tree } = parse(`=${text}`);
    return text !== '' && tree ? compileScalar(tree, { functions: new Map(), slot: () => -1 })([]) : null;
  });
}

/** Arguments of which the numbers vary, here and there beyond their limits. */
function samplesOf(definition: FunctionDefinition, seed: number): Value[][] {
  const next = chance(seed);
  const first = seed % 3 === 0 ? exampleOf(definition) : sampledArguments(definition, next, 'usual');
  return Array.from({ length: SAMPLES }, (_, sample) =>
    sample === 0
      ? first
      : first.map((value, index) => {
          if (typeof value !== 'number' || definition.parameters[index]?.list) return value;
          const past = next() < 0.06 ? -1 : next() < 0.06 ? 1e4 : 1;
          return next() < 0.1 ? 0 : value * past * (0.7 + 0.6 * next());
        }),
  );
}

const scalesOf = (definition: FunctionDefinition): string[] =>
  definition.parameters.filter(({ kind }) => kind === 'any hardness').map(() => 'HV');

test.each(
  DEFINITIONS.filter(({ result }) => result.kind !== 'text' && !result.list).map(
    (each) => [each.name, each] as const,
  ),
)('%s over columns equals one call after another', (name, definition) => {
  const compiled = compileDefinition(definition);
  let compared = 0;
  for (let seed = 1; seed <= 6; seed++) {
    const rows = samplesOf(definition, seed).map((row) => [...row, ...scalesOf(definition)]);
    const [first = []] = rows;
    // Every second time only the first number varies, so that fixed arguments are met too.
    const one = first.findIndex(
      (value, index) => typeof value === 'number' && !definition.parameters[index]?.whole,
    );
    const varies = (index: number): boolean =>
      typeof first[index] === 'number' &&
      !definition.parameters[index]?.list &&
      (seed % 2 === 1 || index === one);
    const samples = rows.map((row) =>
      row.map((value, index) => (varies(index) ? value : (first[index] ?? null))),
    );
    const call = compiled.overColumns(first.map((value, index) => (varies(index) ? undefined : value)));
    if (!call) throw new Error(`${name} does not work on columns`);
    const columns = first.map((_, index) =>
      varies(index)
        ? Float64Array.from({ length: 512 }, (__, i) => Number(samples[i]?.[index] ?? NaN))
        : undefined,
    );
    const found = call(columns, SAMPLES, new ColumnPool());
    samples.forEach((args, sample) => {
      const single = compiled.evaluate(args, {});
      const expected = typeof single === 'number' ? single : NaN;
      const value = found[sample] ?? NaN;
      const same = Number.isNaN(expected)
        ? Number.isNaN(value)
        : Math.abs(value - expected) <= 1e-12 * Math.max(Math.abs(value), Math.abs(expected));
      if (!same) expect({ args, value }).toEqual({ args, value: expected, single });
      if (!Number.isNaN(expected)) compared++;
    });
  }
  // Texts and scales by chance fit nothing, in some functions.
  const open = definition.parameters.some(
    ({ kind, words }) => kind === 'any hardness' || (kind === 'text' && !words),
  );
  if (!open) expect(compared).toBeGreaterThan(0);
});
