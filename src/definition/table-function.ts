/** A definition as the readers of the tree ask for it. */

import type { TableFunction } from '../expression/index.ts';
import { inferredCall } from './argument-types.ts';
import { compileDefinition, type CompiledDefinition } from './compiled-definition.ts';
import type { FunctionDefinition } from './function-definition.ts';

/** Compiled at the first call; `evaluate` never throws, its failures name the parameter, the value and what is allowed. */
export function tableFunction(definition: FunctionDefinition): TableFunction {
  const { name, parameters, result } = definition;
  let compiled: CompiledDefinition | undefined;
  return {
    name,
    arity: [parameters.filter((parameter) => !parameter.default).length, parameters.length],
    infer: (args, reading) => inferredCall(definition, args, reading),
    evaluate(args, notes) {
      compiled ??= compileDefinition(definition);
      return compiled.evaluate(args, notes);
    },
    ...(result.list ? { spills: true } : {}),
  };
}
