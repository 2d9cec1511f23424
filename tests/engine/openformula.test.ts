/** The committee's own test cases of OpenFormula, computed by the engine as a user's notebook is. */

import { expect, test } from 'vitest';
import { functionTable } from '../../src/catalogue.ts';
import {
  apply,
  defineName,
  emptyNotebook,
  enter,
  isRefusal,
  type Notebook,
  type Transaction,
} from '../../src/document/index.ts';
import type { Refusal } from '../../src/document/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import { CASES, DATA_CELLS, DATA_NAMES, formulaOf, near, type Case } from '../builtins/openformula-cases.ts';
import { NOT_REPRODUCED, REFUSED } from '../builtins/openformula.table.ts';
import { callsOf, parse, readAddress } from '../../src/expression/index.ts';
import type { CellResult } from '../../src/calculation/index.ts';

const FUNCTIONS = functionTable();
const WORKSHEET = 'w1';

function done(notebook: Notebook, step: Transaction | Refusal): Notebook {
  if (isRefusal(step)) throw new Error(step.message);
  return apply(notebook, step.changes);
}

const placeOf = (address: string): { column: number; row: number } => {
  const place = readAddress(address);
  if (!place) throw new Error(`${address} is no address`);
  return { column: place.column, row: place.row };
};

function notebookOfData(): Notebook {
  let notebook = emptyNotebook({ id: 'openformula' });
  for (const [address, typed] of DATA_CELLS)
    notebook = done(notebook, enter(notebook, { worksheet: WORKSHEET, ...placeOf(address), typed }));
  for (const [name, target] of DATA_NAMES) {
    const [from = '', to = from] = target.split(':');
    const [a, b] = [placeOf(from), placeOf(to)];
    const block = { ...a, columns: b.column - a.column + 1, rows: b.row - a.row + 1 };
    notebook = done(notebook, defineName(notebook, { worksheet: WORKSHEET, name, target: block }));
  }
  return notebook;
}

/** Stored text parts arguments by ; alone: cases written with , are checked where typed text is read. */
const isStored = (formula: string): boolean => {
  const { tree, problem } = parse(formula);
  return tree !== undefined && !problem && callsOf(tree).every(({ name }) => FUNCTIONS.has(name));
};

/** A cell shows one value: of an array its first one is compared. */
function agrees({ type, value, tolerance }: Case, result: CellResult): boolean {
  const wanted = type === 'array' ? (value as unknown[][])[0]?.[0] : value;
  if (type === 'error') return result.error !== undefined && (value === 'any' || result.error.code === value);
  if (typeof wanted === 'number')
    return typeof result.value === 'number' && near(result.value, wanted, tolerance);
  return result.value === (wanted ?? '');
}

test('the engine agrees with every published case that evaluation alone agrees with', () => {
  const engine = createEngine({ functions: FUNCTIONS });
  engine.open(notebookOfData());
  const offenders: string[] = [];
  let compared = 0;
  for (const one of CASES) {
    const formula = formulaOf(one);
    const skipped = REFUSED.has(one.id) || NOT_REPRODUCED.has(one.id) || one.type === 'formula';
    if (skipped || !isStored(formula)) continue;
    const result = engine.preview({ worksheet: WORKSHEET, row: 199, column: 12 }, formula);
    compared += 1;
    if (!agrees(one, result))
      offenders.push(
        `${one.id} ${formula} wants ${one.type} ${JSON.stringify(one.value)}, is ${result.error?.message ?? String(result.value)}`,
      );
  }
  expect(compared).toBeGreaterThan(600);
  expect(offenders).toEqual([]);
});
