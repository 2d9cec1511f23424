/** The one wrapper around every function: whatever goes wrong inside becomes an error value with words, and heavy ones are announced. */

import { failure, isFailure, isGrid } from '../expression/index.ts';
import type { Failure, FunctionTable, Scalar, TableFunction, Value } from '../expression/index.ts';

function checkedScalar(name: string, value: Scalar | undefined): Scalar {
  if (value === undefined) return failure('#VALUE!', `${name} gave no value`);
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return failure(
      '#NUM!',
      Number.isNaN(value) ? `${name} gave no number` : `${name} gave a number that is too large`,
    );
  }
  return value;
}

const isSound = (value: Scalar | undefined): boolean =>
  value !== undefined && (typeof value !== 'number' || Number.isFinite(value));

function checked(name: string, value: Value | undefined): Value {
  if (value === undefined || !isGrid(value)) return checkedScalar(name, value);
  if (value.grid.length === 0 || value.grid[0]?.length === 0)
    return failure('#VALUE!', `${name} gave no value`);
  if (value.grid.every((row) => row.every(isSound))) return value;
  return { grid: value.grid.map((row) => row.map((each) => checkedScalar(name, each))) };
}

/** Words of something thrown; what JavaScript itself throws says nothing to the reader of a cell. */
function thrown(name: string, error: unknown): Failure {
  return error instanceof RangeError && /call stack/i.test(error.message)
    ? failure('#LIMIT!', `${name} is nested too deep to be computed`)
    : failure('#VALUE!', `${name} can not be computed with these arguments`);
}

function settled(name: string, compute: () => Value | undefined): Value {
  try {
    const value = compute();
    return typeof value === 'number' || (value !== undefined && isFailure(value))
      ? checkedScalar(name, value)
      : checked(name, value);
  } catch (error) {
    return thrown(name, error);
  }
}

/** `heavy` names functions that may take long; `starting` is called before each of their evaluations. */
export function guarded(
  table: FunctionTable,
  heavy: ReadonlySet<string>,
  starting: () => void,
): ReadonlyMap<string, TableFunction> {
  const wrapped = new Map<string, TableFunction>();
  for (const [name, called] of table) {
    const announce = heavy.has(name) ? starting : undefined;
    const lazily = called.evaluateLazily?.bind(called);
    wrapped.set(name, {
      ...called,
      infer(args, reading) {
        try {
          return called.infer(args, reading);
        } catch (error) {
          return { type: { type: 'failed', failure: thrown(name, error) } };
        }
      },
      evaluate(args, notes) {
        announce?.();
        return settled(name, () => called.evaluate(args, notes));
      },
      ...(lazily && { evaluateLazily: (args, notes) => settled(name, () => lazily(args, notes)) }),
    });
  }
  return wrapped;
}
