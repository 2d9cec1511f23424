/** Built-in functions: the allow-listed functions of OpenFormula as our own definitions. */

import type { FunctionTable } from '../expression/index.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { COMBINATORICS } from './combinatorics.ts';
import { CONDITIONAL } from './statistics-conditional.ts';
import { DATES } from './date.ts';
import { DESCRIPTIVE } from './statistics-descriptive.ts';
import { DISTRIBUTIONS } from './distributions.ts';
import { FITS } from './regression-coefficients.ts';
import { HYPOTHESIS_TESTS } from './hypothesis-tests.ts';
import { INFORMATION } from './information.ts';
import { LOGICAL_FUNCTIONS } from './logical.ts';
import { LOOKUP } from './lookup.ts';
import { MATHEMATICS } from './mathematics.ts';
import { MATRICES } from './matrix.ts';
import { ORDER } from './statistics-order.ts';
import { REGRESSION } from './regression.ts';
import { ROUNDING } from './rounding.ts';
import { SUMS } from './sums.ts';
import { TEXT_FUNCTIONS } from './text.ts';
import { TEXT_NUMBERS } from './text-numbers.ts';
import { TRIGONOMETRY } from './trigonometry.ts';

export type { BuiltinDefinition, BuiltinExample, BuiltinFunction, Group } from './builtin-definition.ts';

/** All built-in functions in the order of their names. */
export const BUILTINS: readonly BuiltinDefinition[] = [
  ...COMBINATORICS,
  ...CONDITIONAL,
  ...DATES,
  ...DESCRIPTIVE,
  ...DISTRIBUTIONS,
  ...FITS,
  ...HYPOTHESIS_TESTS,
  ...INFORMATION,
  ...LOGICAL_FUNCTIONS,
  ...LOOKUP,
  ...MATHEMATICS,
  ...MATRICES,
  ...ORDER,
  ...REGRESSION,
  ...ROUNDING,
  ...SUMS,
  ...TEXT_FUNCTIONS,
  ...TEXT_NUMBERS,
  ...TRIGONOMETRY,
].sort((a, b) => (a.name < b.name ? -1 : 1));

const TABLE: FunctionTable = new Map(BUILTINS.map(({ name, table }) => [name, table]));

/** What the readers of formulas ask of the built-in functions. */
export function builtinTable(): FunctionTable {
  return TABLE;
}
