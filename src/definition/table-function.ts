/** A definition as the readers of the tree ask for it. */

import type { TableFunction } from '../expression/index.ts';
import { inferredCall } from './argument-types.ts';
import { compileDefinition, type CompiledDefinition } from './compiled-definition.ts';
import type { FunctionDefinition } from './function-definition.ts';

/** Compiled at the first call; `evaluate` never throws, its failures name the parameter, the value and what is allowed. */
export function tableFunction(definition: FunctionDefinition): TableFunction {
  const { name, parameters, result } = definition;
  let made: CompiledDefinition | undefined;
  const compiled = (): CompiledDefinition => (made ??= compileDefinition(definition));
  return {
    name,
    arity: [parameters.filter((parameter) => !parameter.default).length, parameters.length],
    infer: (args, reading) => inferredCall(definition, args, reading),
    evaluate: (args, notes) => compiled().evaluate(args, notes),
    overColumns: (fixed) => compiled().overColumns(fixed),
    ...(result.list ? { spills: true } : {}),
  };
}
