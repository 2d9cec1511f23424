/** The dimension pass: what every formula is before it is computed (F12), in dependency order and only where something changed. */

import { resolveName } from '../document/index.ts';
import { addressText, failure, inferType, titleText } from '../expression/index.ts';
import type {
  CellNode,
  Failure,
  FunctionTable,
  GridType,
  Inference,
  InferenceContext,
  NameNode,
  RangeNode,
  ScalarType,
  UnitSystem,
  ValueType,
} from '../expression/index.ts';
import { isCell, rooted } from './cells.ts';
import type { Cells, CellState, RangeState } from './cells.ts';
import { dependencyOrder, dependentsOf } from './dependency-order.ts';
import { referenceTo } from './formula.ts';
import type { Formula, Reference } from './formula.ts';
import type { Surroundings } from './surroundings.ts';
import { namesNear } from './names-near.ts';
import { rangeType } from './range-type.ts';

/** "B4", with its worksheet where that is another one. */
export function placeName(cells: Cells, sheet: number, row: number, column: number, from?: number): string {
  const address = addressText(column, row);
  return sheet === from ? address : `${titleText(cells.sheet(sheet).title)}.${address}`;
}

export const rootName = (cells: Cells, { sheet, row, column }: CellState): string =>
  placeName(cells, sheet, row, column);

/** The type of an operand as the formula's worksheet sees it. */
function operandType(cells: Cells, operand: CellState | RangeState, from: number): ScalarType | GridType {
  if (!isCell(operand)) return operand.recorded?.type ?? rangeType(cells, operand);
  const { type, sheet, row, column } = operand;
  return type.type === 'blank' ? { type: 'blank', cell: placeName(cells, sheet, row, column, from) } : type;
}

const NONE: readonly never[] = Object.freeze([]);
const NOT_THERE: ScalarType = { type: 'failed', failure: failure('#REF!', 'there is no such cell') };

/** The surroundings as one formula after another sees them. */
class FormulaContext implements InferenceContext {
  readonly functions: FunctionTable;
  readonly reading: UnitSystem;
  readonly currency: string;
  readonly #around: Surroundings;
  #formula: Formula;
  #sheet = 0;

  constructor(around: Surroundings, formula: Formula) {
    this.#around = around;
    this.#formula = formula;
    this.functions = around.functions;
    this.reading = around.notebook.reading;
    this.currency = around.notebook.currency;
  }

  /** The formula whose surroundings these are from now on. */
  of(formula: Formula, sheet: number): this {
    this.#formula = formula;
    this.#sheet = sheet;
    return this;
  }

  cellType(worksheet: string | undefined, column: number, row: number): ScalarType {
    const { references } = this.#formula;
    const reference = references.find(
      ({ node }) =>
        node.type === 'cell' && node.column === column && node.row === row && node.worksheet === worksheet,
    );
    const type = this.#typeOf(reference);
    return type && type.type !== 'grid' ? type : NOT_THERE;
  }

  rangeType(node: RangeNode): GridType | ScalarType {
    return this.#typeOf(referenceTo(this.#formula, node)) ?? NOT_THERE;
  }

  nameType(worksheet: string | undefined, name: string): GridType | ScalarType | undefined {
    const { references } = this.#formula;
    return this.#typeOf(
      references.find(
        ({ node }) => node.type === 'name' && node.name === name && node.worksheet === worksheet,
      ),
    );
  }

  hasName(name: string): boolean {
    const { notebook, cells } = this.#around;
    return resolveName(notebook, cells.sheet(this.#sheet).id, name) !== undefined;
  }

  namesNear(worksheet: string | undefined, name: string): readonly string[] {
    const { notebook, cells } = this.#around;
    return namesNear(notebook, cells.sheet(this.#sheet).id, worksheet, name);
  }

  unitOf(node: CellNode | NameNode): string | undefined {
    const operand = this.#formula.operands[referenceTo(this.#formula, node)?.slot ?? -1];
    return operand && isCell(operand) ? this.#around.unitOf(operand) || undefined : undefined;
  }

  #typeOf(reference: Reference | undefined): GridType | ScalarType | undefined {
    if (reference?.lost) return { type: 'failed', failure: reference.lost };
    const operand = this.#formula.operands[reference?.slot ?? -1];
    return operand && operandType(this.#around.cells, operand, this.#sheet);
  }
}

/** What a formula is where it stands, or why it is nothing. */
export type Found = { readonly inference: Inference } | { readonly refused: Failure };

export function inferFormula(formula: Formula, sheet: number, around: Surroundings): Found {
  return infer(formula, sheet, new FormulaContext(around, formula));
}

function infer(formula: Formula, sheet: number, context: FormulaContext): Found {
  if (formula.problem) return { refused: formula.problem };
  if (!formula.tree) return { refused: failure('#VALUE!', 'the formula is empty') };
  const inference = inferType(formula.tree, context.of(formula, sheet));
  return inference.failure ? { refused: inference.failure } : { inference };
}

/** Type of the cell itself: a formula that gives several values shows the first. */
export function ownType(type: ValueType): ScalarType {
  return type.type === 'grid' ? (type.columns[0] ?? { type: 'neutral' }) : type;
}

/** Type of a cell that shows a further value: that of its column. */
export function itemType(item: CellState, origin: CellState): ScalarType {
  const type = origin.formula?.inference?.type;
  if (!type) return { type: 'neutral' };
  return (type.type === 'grid' ? type.columns[item.column - origin.column] : undefined) ?? ownType(type);
}

function sameType(a: ScalarType, b: ScalarType): boolean {
  if (a.type === 'number') return b.type === 'number' && a.kind === b.kind;
  if (a.type === 'failed') {
    return (
      b.type === 'failed' &&
      a.failure.failure === b.failure.failure &&
      a.failure.message === b.failure.message &&
      a.failure.root === b.failure.root
    );
  }
  return a.type === b.type;
}

/** Sets the type of a cell; true if dependents have to be inferred again. */
export function setType(cells: Cells, state: CellState, type: ScalarType): boolean {
  const same = sameType(state.type, type);
  state.type = type;
  if (!same) cells.sheet(state.sheet).typeVersions[state.column]! += 1;
  return !same;
}

function rangeTypesVersion(cells: Cells, formula: Formula): number {
  let version = 0;
  for (const { sheet, column, columns } of formula.ranges) {
    const { typeVersions } = cells.sheet(sheet);
    for (let c = column; c < column + columns; c++) version += typeVersions[c] ?? 0;
  }
  return version;
}

const isClean = (formula: Formula, cells: Cells, moved: ReadonlySet<CellState>): boolean =>
  formula.rangeTypes === rangeTypesVersion(cells, formula) && !formula.cells.some((cell) => moved.has(cell));

function circleFailure(cells: Cells, cycle: readonly CellState[]): Failure {
  const [first] = cycle;
  const names = cycle.map(({ sheet, row, column }) => placeName(cells, sheet, row, column, first?.sheet));
  const shown = names.length > 8 ? [...names.slice(0, 7), `… (${names.length} cells)`] : names;
  return failure('#CIRCLE!', `the cells need each other: ${[...shown, names[0]].join(' needs ')}`);
}

/** Cells whose types or formulas changed: `fresh` formulas are inferred in any case, dependents where a precedent changed its type. */
export interface Unsettled {
  readonly fresh: ReadonlySet<CellState>;
  readonly moved: ReadonlySet<CellState>;
}

/** Infers what has to be inferred, looking at the dependents of what changed or at the cells `among` which they are known to be. Gives the formula cells that were, which all have to be computed again. */
export function inferAll(
  around: Surroundings,
  { fresh, moved: given }: Unsettled,
  among?: ReadonlySet<CellState>,
): CellState[] {
  const { cells } = around;
  const moved = new Set(given);
  const { order, cycles } = dependencyOrder(cells, among ?? dependentsOf(cells, [...fresh, ...given]));
  const inferred: CellState[] = [];
  let context: FormulaContext | undefined;
  for (const state of order) {
    const { formula } = state;
    if (state.origin && setType(cells, state, itemType(state, state.origin))) moved.add(state);
    if (!formula) continue;
    const cycle = cycles.get(state);
    if (!fresh.has(state) && !cycle && !state.cycle && isClean(formula, cells, moved)) continue;
    state.cycle = cycle;
    formula.rangeTypes = rangeTypesVersion(cells, formula);
    const found = cycle
      ? { refused: circleFailure(cells, cycle) }
      : infer(formula, state.sheet, (context ??= new FormulaContext(around, formula)));
    if (settle(cells, state, formula, found)) moved.add(state);
    inferred.push(state);
  }
  return inferred;
}

/** Takes over what was found; true if the cell's type changed. */
function settle(cells: Cells, state: CellState, formula: Formula, found: Found): boolean {
  formula.run = undefined;
  if ('refused' in found) {
    formula.inference = undefined;
    formula.constants = NONE;
    state.staticCautions = NONE;
    state.assumed = NONE;
    return setType(cells, state, { type: 'failed', failure: rooted(found.refused, rootName(cells, state)) });
  }
  const { inference } = found;
  formula.inference = inference;
  formula.constants = inference.constants.flatMap((node) => {
    const operand = formula.operands[referenceTo(formula, node)?.slot ?? -1];
    return operand && isCell(operand) ? [operand] : [];
  });
  state.staticCautions = inference.cautions;
  state.assumed = inference.assumed.map(({ text }) => ({ key: `read: ${text}`, text }));
  return setType(cells, state, ownType(inference.type));
}
