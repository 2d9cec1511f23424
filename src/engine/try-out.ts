/** Evaluating content as if it stood in a cell, without changing anything. */

import { failure, isFailure, isGrid, singleValue } from '../expression/index.ts';
import type { CallNotes, Caution, FunctionTable, Grid, Value } from '../expression/index.ts';
import type { CellAddress, CellResult } from '../calculation/index.ts';
import {
  givesSeveral,
  inferFormula,
  inputsOf,
  leadsTo,
  ownType,
  readFormula,
  readGiven,
  resultOf,
} from '../workbook/index.ts';
import type { CellState, Formula, Workbook } from '../workbook/index.ts';

export interface TriedOut {
  readonly result: CellResult;
  /** All values of a formula that gives several, in coherent SI. */
  readonly items?: Grid;
  readonly formula?: Formula;
}

/** `functions` and `step` let Working watch the calls. */
export interface Watch {
  readonly functions?: FunctionTable;
  readonly step?: CallNotes['step'];
}

export function tryOut(
  workbook: Workbook,
  address: CellAddress,
  content: string,
  watch: Watch = {},
): TriedOut {
  const { cells, notebook } = workbook;
  const sheet = cells.sheetNumber(address.worksheet);
  if (sheet === undefined) throw new RangeError(`no worksheet ${address.worksheet} is open`);
  const place = cells.at(sheet, address.row, address.column);
  const cell = { ...place.cell, content };
  const state: CellState = {
    ...place,
    cell,
    value: null,
    cautions: [],
    staticCautions: [],
    assumed: [],
    typedUnit: undefined,
    cycle: undefined,
  };
  const told = (): CellResult => resultOf(cells, state, notebook);
  const given = readGiven(content, notebook.currency);
  if (!('formula' in given)) {
    Object.assign(state, { value: given.value, type: given.type, typedUnit: given.unit });
    return { result: told() };
  }
  const formula = readFormula(given.formula, sheet, workbook);
  if (leadsTo(cells, formula.operands, place)) {
    state.value = failure('#CIRCLE!', 'the formula needs its own cell');
    return { result: told(), formula };
  }
  const found = inferFormula(formula, sheet, workbook);
  if ('refused' in found) {
    state.value = found.refused;
    return { result: told(), formula };
  }
  formula.inference = found.inference;
  state.type = ownType(found.inference.type);
  state.staticCautions = found.inference.cautions;
  state.assumed = found.inference.assumed.map(({ text }) => ({ key: `read: ${text}`, text }));
  const noted: Caution[] = [];
  const value = run(
    workbook,
    formula,
    {
      reading: workbook.notebook.reading,
      caution: (each) => noted.push(each),
      ...(watch.step && { step: watch.step }),
    },
    watch.functions,
  );
  state.cautions = noted.filter((each, index) => noted.findIndex(({ key }) => key === each.key) === index);
  const gives = isGrid(value) && givesSeveral(formula, workbook.functions) ? value : undefined;
  state.value = gives ? (gives.grid[0]?.[0] ?? null) : singleValue(value);
  return { result: told(), formula, ...(gives && { items: gives }) };
}

function run(workbook: Workbook, formula: Formula, notes: CallNotes, functions?: FunctionTable): Value {
  try {
    const value = workbook.compile(formula, functions)(inputsOf(formula, workbook.cells), notes);
    return isFailure(value) ? { ...value } : value;
  } catch {
    return failure('#LIMIT!', 'the formula is too large to be computed');
  }
}
