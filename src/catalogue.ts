/** Collects the definitions of the domain library, one file a function, and makes the table of all functions. */

import { BUILTINS, builtinTable } from './builtins/index.ts';
import { tableFunction, type FunctionDefinition } from './definition/index.ts';
import type { FunctionTable } from './expression/index.ts';

const modules = import.meta.glob<{ default: FunctionDefinition }>('./functions/*/*.ts', { eager: true });

/** Definitions by the path of their file, for the tests of the catalogue. */
export const DEFINITION_FILES: ReadonlyMap<string, FunctionDefinition> = new Map(
  Object.entries(modules).flatMap(([path, module]) =>
    module.default ? [[path, module.default] as const] : [],
  ),
);

/** All domain functions, by name. */
export const DEFINITIONS: readonly FunctionDefinition[] = [...DEFINITION_FILES.values()].sort((a, b) =>
  a.name < b.name ? -1 : 1,
);

/** Built-in and domain functions by name. */
export function functionTable(): FunctionTable {
  return new Map([
    ...builtinTable(),
    ...DEFINITIONS.map((definition) => [definition.name, tableFunction(definition)] as const),
  ]);
}

export { BUILTINS };
