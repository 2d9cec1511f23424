/** How a cell came to its value: steps of the functions called, values of what it refers to, where from and where to. */

import { isFailure, isGrid } from '../expression/index.ts';
import type { CallNotes, FunctionTable, Scalar, Step, TableFunction, Value } from '../expression/index.ts';
import { isUnknownUnit, kindNamed, isKindName, parseUnit } from '../quantity/index.ts';
import type { CellAddress, ExplainedStep, Explanation } from '../calculation/index.ts';
import { addressOf, defaultUnit, isCell, isFilled, resultOf } from '../workbook/index.ts';
import type { CellState, Formula, Workbook } from '../workbook/index.ts';
import { tryOut } from './try-out.ts';

/** Cells named in a list of precedents or dependents. */
const NAMED_CELLS = 500;

interface Call {
  readonly function: string;
  readonly steps: Step[];
  result: Value;
}

const shown = (value: Value): ExplainedStep['value'] => {
  const single: Scalar = isGrid(value) ? (value.grid[0]?.[0] ?? null) : value;
  return isFailure(single) ? null : single;
};

/** The table with an ear on every call; calls are listed as they finish, so the outermost is the last. */
function watched(table: FunctionTable, calls: Call[]): FunctionTable {
  const heard = new Map<string, TableFunction>();
  const listen = (name: string, notes: CallNotes, compute: (notes: CallNotes) => Value): Value => {
    const steps: Step[] = [];
    const result = compute({ ...notes, step: (step) => steps.push(step) });
    if (steps.length > 0 || name.includes('.')) calls.push({ function: name, steps, result });
    return result;
  };
  for (const [name, called] of table) {
    const lazily = called.evaluateLazily?.bind(called);
    heard.set(name, {
      ...called,
      evaluate: (args, notes) => listen(name, notes, (inner) => called.evaluate(args, inner)),
      ...(lazily && { evaluateLazily: (args, notes) => listen(name, notes, (inner) => lazily(args, inner)) }),
    });
  }
  return heard;
}

function explainedStep({ symbol, meaning, kind, value }: Step, { notebook }: Workbook): ExplainedStep {
  const unit = isKindName(kind) && typeof value === 'number' ? defaultUnit(kindNamed(kind), notebook) : '';
  const known = unit !== '' && !isUnknownUnit(parseUnit(unit, notebook.currency));
  return { symbol, meaning, value: shown(value), kind, unit: known ? unit : '' };
}

function operandsOf(workbook: Workbook, formula: Formula): Explanation['operands'] {
  const { cells, notebook } = workbook;
  const { references, text, operands } = formula;
  return references.flatMap(({ node, slot }) => {
    const operand = operands[slot];
    if (!operand) return [];
    const written = text.slice(node.from, node.to);
    if (!isCell(operand)) return [{ text: written, value: null, kind: 'range', unit: '' }];
    const { value, kind, unit } = resultOf(cells, operand, notebook);
    return [{ text: written, value, kind, unit }];
  });
}

function precedentsOf({ cells }: Workbook, formula: Formula): CellAddress[] {
  const found = new Set<CellState>(formula.cells);
  for (const range of formula.ranges) {
    for (const state of cells.within(range)) {
      if (found.size >= NAMED_CELLS) break;
      found.add(state);
    }
  }
  return [...found].map((state) => addressOf(cells, state));
}

export function explain(workbook: Workbook, address: CellAddress): Explanation {
  const { cells } = workbook;
  const sheet = cells.sheetNumber(address.worksheet) ?? -1;
  const state = cells.find(sheet, address.row, address.column);
  if (!state || !isFilled(state)) return { calls: [], operands: [], precedents: [], dependents: [] };
  const dependents = [...cells.usersOf(state)].slice(0, NAMED_CELLS).map((user) => addressOf(cells, user));
  const { formula } = state;
  if (!formula) {
    const precedents = state.origin ? [addressOf(cells, state.origin)] : [];
    return { calls: [], operands: [], precedents, dependents };
  }
  const calls: Call[] = [];
  if (formula.inference)
    tryOut(workbook, address, formula.text, { functions: watched(workbook.functions, calls) });
  return {
    calls: calls.map((call) => ({
      function: call.function,
      steps: call.steps.map((step) => explainedStep(step, workbook)),
      result: shown(call.result),
    })),
    operands: operandsOf(workbook, formula),
    precedents: precedentsOf(workbook, formula),
    dependents,
  };
}
