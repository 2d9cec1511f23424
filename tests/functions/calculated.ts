/** Computes a formula along the road of the program: read, inferred, compiled, evaluated. */

import { functionTable } from '../../src/catalogue.ts';
import {
  compileScalar,
  failure,
  inferType,
  isFailure,
  parse,
  type InferenceContext,
  type Value,
} from '../../src/expression/index.ts';
import { fromSI, isUnknownUnit, parseUnit } from '../../src/quantity/index.ts';

export const FUNCTIONS = functionTable();

const CONTEXT: InferenceContext = {
  cellType: () => ({ type: 'blank' }),
  rangeType: () => ({ type: 'blank' }),
  nameType: () => undefined,
  functions: FUNCTIONS,
  reading: 'metric',
  currency: 'money',
};

export interface Calculated {
  readonly value: Value;
  /** Name of the result's kind. */
  readonly kind?: string;
  readonly cautions: readonly string[];
}

/** Value in coherent SI and cautions of a formula without references. */
export function calculated(formula: string): Calculated {
  const { tree, problem } = parse(formula);
  if (!tree || problem) return { value: failure('#NAME?', problem?.message ?? 'empty'), cautions: [] };
  const inference = inferType(tree, CONTEXT);
  const cautions = inference.cautions.map(({ text }) => text);
  if (inference.failure) return { value: inference.failure, cautions };
  const run = compileScalar(inference.tree, { functions: FUNCTIONS, slot: () => -1 });
  const value = run([], { caution: ({ text }) => cautions.push(text) });
  const { type } = inference;
  return { value, cautions, ...(type.type === 'number' ? { kind: type.kind.name } : {}) };
}

/** The number of a formula in a unit; throws with the failure's words where there is none. */
export function numberIn(formula: string, unit = '1'): number {
  const { value } = calculated(formula);
  const known = parseUnit(unit);
  if (isUnknownUnit(known)) throw new Error(`no unit ${unit}`);
  if (isFailure(value)) throw new Error(`${formula}: ${value.failure} ${value.message}`);
  if (typeof value !== 'number') throw new Error(`${formula} gives no number`);
  return fromSI(value, known);
}
