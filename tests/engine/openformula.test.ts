/** The committee's own test cases of OpenFormula through the engine: cells, names and ranges give what the readers of formulas alone give. */

import { expect, test } from 'vitest';
import { isFailure, isGrid } from '../../src/expression/index.ts';
import { builtinTable } from '../../src/builtins/index.ts';
import { CASES, DATA_CELLS, DATA_NAMES, formulaOf } from '../builtins/openformula-cases.ts';
import { SmallGrid } from '../builtins/small-grid.ts';
import { createEngine } from '../../src/engine/index.ts';
import { canonicalContent, isRefusal } from '../../src/document/index.ts';
import { at, notebookOf } from './notebook.ts';

test('the engine agrees with the readers of formulas on every published case', () => {
  const engine = createEngine({ functions: builtinTable() });
  const cells = Object.fromEntries(DATA_CELLS);
  engine.open(notebookOf([{ title: 'Sheet1', cells, names: Object.fromEntries(DATA_NAMES) }]));
  const grid = new SmallGrid(DATA_CELLS, DATA_NAMES);
  const offenders: string[] = [];
  for (const one of CASES) {
    const formula = formulaOf(one);
    const alone = grid.compute(formula).value;
    const single = !isFailure(alone) && isGrid(alone) ? alone.grid[0]?.[0] : alone;
    const typed = canonicalContent(formula);
    if (isRefusal(typed)) throw new Error(typed.message);
    const { value, error } = engine.preview(at('BL2000'), typed.content);
    const wanted = isFailure(single ?? null) ? single : (single ?? null);
    const same =
      wanted !== null && wanted !== undefined && isFailure(wanted)
        ? error?.code === wanted.failure
        : value === wanted;
    if (!same)
      offenders.push(
        `${one.id} ${formula}: ${String(value)} ${error?.code ?? ''} ${error?.message ?? ''}, alone ${JSON.stringify(single)}`,
      );
  }
  expect(CASES.length).toBeGreaterThan(700);
  expect(offenders).toEqual([]);
});
