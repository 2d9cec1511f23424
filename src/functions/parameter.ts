/** Takes a row of the shared parameter table, with what differs in this function. */

import type { Parameter } from '../definition/index.ts';
import { PARAMETERS, type ParameterName } from './parameters.table.ts';

/** The shared parameter of this name; `overrides` replace single fields (a name too, for a plural or a second one of its sort). */
export function parameter(name: ParameterName, overrides: Partial<Parameter> = {}): Parameter {
  return { name, ...PARAMETERS[name], ...overrides };
}

/** The shared parameter made optional: without it, this value (an expression in the other symbols) is taken. */
export function optional(name: ParameterName, value: string, overrides: Partial<Parameter> = {}): Parameter {
  return parameter(name, { default: { value }, ...overrides });
}
