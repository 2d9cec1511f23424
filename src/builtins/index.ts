/** Built-in functions: the allow-listed functions of OpenFormula as our own definitions. */

import type { FunctionTable } from '../expression/index.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { INFORMATION } from './information.ts';
import { LOGICAL_FUNCTIONS } from './logical.ts';
import { MATHEMATICS } from './mathematics.ts';
import { ROUNDING } from './rounding.ts';
import { SUMS } from './sums.ts';
import { TRIGONOMETRY } from './trigonometry.ts';

export type { BuiltinDefinition, BuiltinExample, BuiltinFunction, Group } from './builtin-definition.ts';

/** All built-in functions by name. */
export const BUILTINS: readonly BuiltinDefinition[] = [
  ...LOGICAL_FUNCTIONS,
  ...ROUNDING,
  ...TRIGONOMETRY,
].sort((a, b) => (a.name < b.name ? -1 : 1));

/** What the readers of formulas ask of the built-in functions. */
export function builtinTable(): FunctionTable {
  return new Map(BUILTINS.map(({ name, table }) => [name, table]));
}
