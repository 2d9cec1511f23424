import { expect, test } from 'vitest';
import { HARDNESS, tableFunction, type FunctionDefinition } from '../../src/definition/index.ts';
import { compileScalar, inferType, parse, type FunctionTable } from '../../src/expression/index.ts';

/** Gives back what it was told: the number and the scale. */
const ECHO = {
  name: 'TRIAL.ECHO',
  family: 'TRIAL',
  summary: 'Number and scale of a hardness',
  searchWords: [],
  parameters: [
    { name: 'hardness', symbol: 'H', kind: HARDNESS, meaning: 'hardness in any scale' },
    {
      name: 'wear',
      symbol: 'VB',
      kind: 'length',
      metric: 'mm',
      default: { value: '0 mm' },
      meaning: 'skipped',
    },
  ],
  result: { kind: 'text', symbol: 'told', meaning: 'what arrived' },
  reading: 'the argument in words',
  compute: ({ H, H_scale }) => `${String(H)} ${String(H_scale)}`,
  scaling: 'text',
  sources: [],
  examples: [],
  since: '0.1',
} satisfies FunctionDefinition;

const functions: FunctionTable = new Map([['TRIAL.ECHO', tableFunction(ECHO)]]);

function valueOf(formula: string): unknown {
  const parsed = parse(formula);
  if (!parsed.tree) throw new Error(formula);
  const inference = inferType(parsed.tree, {
    cellType: () => ({ type: 'blank' }),
    rangeType: () => ({ type: 'blank' }),
    nameType: () => undefined,
    functions,
    reading: 'metric',
    currency: 'EUR',
  });
  if (inference.failure) return inference.failure.message;
  return compileScalar(inference.tree, { functions, currency: 'EUR', slot: () => 0 })([]);
}

test('a hardness in any scale arrives with its scale, skipped arguments or not', () => {
  expect(valueOf('=TRIAL.ECHO(40 HRC)')).toBe('40 HRC');
  expect(valueOf('=TRIAL.ECHO(360 HV)')).toBe('360 HV');
  expect(valueOf('=TRIAL.ECHO(342 HB; 0.1 mm)')).toBe('342 HB');
});

test('what is no hardness is refused in words', () => {
  expect(valueOf('=TRIAL.ECHO(3 mm)')).toBe('hardness wants a hardness (HRC, HB or HV), was given a length');
});
