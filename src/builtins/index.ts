/** Built-in functions: the allow-listed functions of OpenFormula as our own definitions. */

import type { FunctionTable } from '../expression/index.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { CONDITIONAL } from './statistics-conditional.ts';
import { DESCRIPTIVE } from './statistics-descriptive.ts';
import { INFORMATION } from './information.ts';
import { LOGICAL_FUNCTIONS } from './logical.ts';
import { MATHEMATICS } from './mathematics.ts';
import { ORDER } from './statistics-order.ts';
import { ROUNDING } from './rounding.ts';
import { SUMS } from './sums.ts';
import { TRIGONOMETRY } from './trigonometry.ts';

export type { BuiltinDefinition, BuiltinExample, BuiltinFunction, Group } from './builtin-definition.ts';

/** All built-in functions in the order of their names. */
export const BUILTINS: readonly BuiltinDefinition[] = [
  ...CONDITIONAL,
  ...DESCRIPTIVE,
  ...INFORMATION,
  ...LOGICAL_FUNCTIONS,
  ...MATHEMATICS,
  ...ORDER,
  ...ROUNDING,
  ...SUMS,
  ...TRIGONOMETRY,
].sort((a, b) => (a.name < b.name ? -1 : 1));

/** What the readers of formulas ask of the built-in functions. */
export function builtinTable(): FunctionTable {
  return new Map(BUILTINS.map(({ name, table }) => [name, table]));
}
