/** A formula in its cell: the tree, the cells it reads by slot, what was inferred and the compiled form. */

import {
  LIMITS,
  namesOn,
  recordingColumn,
  recordingTitled,
  resolveName,
  worksheetTitled,
} from '../document/index.ts';
import type { Block, Notebook } from '../document/index.ts';
import { failure, parse } from '../expression/index.ts';
import type {
  CellNode,
  CompiledScalar,
  Corner,
  Failure,
  FunctionTable,
  Inference,
  NameNode,
  Node,
  RangeNode,
  Value,
} from '../expression/index.ts';
import { isCell } from './cells.ts';
import type { Cells, CellState, RangeState } from './cells.ts';
import type { Surroundings } from './surroundings.ts';
import { recordedColumn } from './recorded-column.ts';
import { withReferenceArguments } from './reference-arguments.ts';
import { fixedBlock } from './schedule.ts';
import type { Precedent } from './schedule.ts';

export type ReferenceNode = CellNode | RangeNode | NameNode;

export interface Reference {
  readonly node: ReferenceNode;
  /** Place among the operands; -1 where it leads nowhere. */
  readonly slot: number;
  /** Why it leads nowhere; undefined also for a name that nobody defined. */
  readonly lost: Failure | undefined;
}

export interface Formula {
  readonly text: string;
  /** Absent where the text is no formula or passes a limit: then there is a problem. */
  readonly tree: Node | undefined;
  problem: Failure | undefined;
  /** Cells, blocks and recorded columns that it reads; the place in the list is the slot. */
  readonly operands: readonly (CellState | RangeState)[];
  /** Each reference once. */
  readonly references: readonly Reference[];
  readonly cells: readonly CellState[];
  readonly ranges: readonly RangeState[];
  inference: Inference | undefined;
  /** Cells whose very number took part in the inference (F12). */
  constants: readonly CellState[];
  /** Sum of the type versions of all columns read by blocks, when it was inferred. */
  rangeTypes: number;
  run: CompiledScalar | undefined;
}

const sameCorner = (a: Corner, b: Corner): boolean => a.column === b.column && a.row === b.row;

/** True for two references that mean the same when they stand in the same cell. */
function sameReference(a: ReferenceNode, b: ReferenceNode): boolean {
  if (a === b) return true;
  if (a.worksheet !== b.worksheet) return false;
  if (a.type === 'cell') return b.type === 'cell' && sameCorner(a, b);
  if (a.type === 'name') return b.type === 'name' && a.name === b.name;
  return b.type === 'range' && sameCorner(a.start, b.start) && sameCorner(a.end, b.end);
}

/** The reference that means the same as a node of the formula. */
export function referenceTo({ references }: Formula, node: ReferenceNode): Reference | undefined {
  return references.find((known) => sameReference(known.node, node));
}

/** What the library is told of a reference; undefined for one that leads nowhere. */
export function precedentOf({ operands }: Formula, { node, slot }: Reference): Precedent | undefined {
  const operand = operands[slot];
  if (!operand) return undefined;
  const { sheet } = operand;
  if ('recorded' in operand) return undefined;
  if (node.type === 'cell') return { sheet, start: node };
  return node.type === 'range' ? { sheet, start: node.start, end: node.end } : fixedBlock(operand);
}

/** References and names from left to right, repeated ones included. */
function referencesIn(node: Node, found: ReferenceNode[]): ReferenceNode[] {
  switch (node.type) {
    case 'cell':
    case 'range':
    case 'name':
      found.push(node);
      break;
    case 'call':
      for (const arg of node.args) referencesIn(arg, found);
      break;
    case 'unary':
    case 'percent':
      referencesIn(node.operand, found);
      break;
    case 'binary':
      referencesIn(node.left, found);
      referencesIn(node.right, found);
      break;
    case 'group':
      referencesIn(node.inner, found);
      break;
    default:
  }
  return found;
}

export function blockOf(node: RangeNode): Block {
  const { start, end } = node;
  return {
    row: Math.min(start.row, end.row),
    column: Math.min(start.column, end.column),
    rows: Math.abs(start.row - end.row) + 1,
    columns: Math.abs(start.column - end.column) + 1,
  };
}

const NONE: readonly never[] = Object.freeze([]);

type Operand = CellState | RangeState;

/** What a reference in a formula on the sheet stands for; undefined for a name that nobody defined. */
function operandOf(
  node: ReferenceNode,
  sheet: number,
  cells: Cells,
  notebook: Notebook,
): Operand | Failure | undefined {
  const titled = node.worksheet === undefined ? undefined : worksheetTitled(notebook, node.worksheet);
  if (node.worksheet !== undefined && !titled) return recordedOperand(node, node.worksheet, cells, notebook);
  const on = titled ? cells.sheetNumber(titled.id) : sheet;
  if (on === undefined) return failure('#REF!', `there is no worksheet ${node.worksheet ?? ''}`);
  if (node.type === 'cell') return cells.at(on, node.row, node.column);
  if (node.type === 'range') return rangeOf(blockOf(node), on, cells);
  const found = titled
    ? { worksheet: titled, defined: namesOn(titled).get(node.name) }
    : resolveName(notebook, cells.sheet(sheet).id, node.name);
  if (!found?.defined) return undefined;
  const { target } = found.defined;
  const home = cells.sheetNumber(found.worksheet.id) ?? on;
  return target.rows * target.columns === 1
    ? cells.at(home, target.row, target.column)
    : rangeOf(target, home, cells);
}

/** A column of a recording, read as title.column. */
function recordedOperand(
  node: ReferenceNode,
  title: string,
  cells: Cells,
  notebook: Notebook,
): Operand | Failure {
  const recording = recordingTitled(notebook, title);
  if (!recording) return failure('#REF!', `there is no worksheet or recording ${title}`);
  const names = recording.columns.map(({ name }) => name).slice(0, 8);
  if (node.type !== 'name')
    return failure('#REF!', `${title} is a recording: its columns are read as ${title}.${names[0] ?? ''}`);
  const column = recordingColumn(recording, node.name);
  if (!column)
    return failure('#NAME?', `the recording ${title} has no column ${node.name}; it has ${names.join(', ')}`);
  const recorded = recordedColumn(column, notebook.currency);
  return 'failure' in recorded ? recorded : cells.recorded(recorded);
}

function rangeOf(block: Block, sheet: number, cells: Cells): RangeState | Failure {
  const count = block.rows * block.columns;
  return count > LIMITS.rangeCells
    ? failure('#LIMIT!', `the range holds ${count} cells; ${LIMITS.rangeCells} is the most`)
    : cells.range(sheet, block);
}

/** Reads a formula that stands (or would stand) on a sheet. Whatever is wrong with the text becomes its problem. */
export function readFormula(
  text: string,
  sheet: number,
  { cells, notebook, functions }: Pick<Surroundings, 'cells' | 'notebook' | 'functions'>,
): Formula {
  const { tree: parsedTree, problem: wrong } = parse(text);
  const problem = wrong && failure(wrong.code, wrong.message);
  const tree = problem || !parsedTree ? undefined : withReferenceArguments(parsedTree, functions);
  const operands: Operand[] = [];
  const references: Reference[] = [];
  for (const node of tree ? referencesIn(tree, []) : []) {
    if (references.some((known) => sameReference(known.node, node))) continue;
    const operand = operandOf(node, sheet, cells, notebook);
    if (!operand) references.push({ node, slot: -1, lost: undefined });
    else if ('failure' in operand) references.push({ node, slot: -1, lost: operand });
    else {
      const known = operands.indexOf(operand);
      references.push({ node, slot: known < 0 ? operands.push(operand) - 1 : known, lost: undefined });
    }
  }
  const isSingles = operands.every(isCell);
  return {
    text,
    tree,
    problem,
    operands,
    references,
    cells: isSingles ? operands : operands.filter(isCell),
    ranges: isSingles
      ? NONE
      : operands.filter((operand): operand is RangeState => !isCell(operand) && !operand.recorded),
    inference: undefined,
    constants: NONE,
    rangeTypes: -1,
    run: undefined,
  };
}

/** True where the formula is the call of a function that gives several values on purpose (F26). */
export function givesSeveral({ tree }: Formula, functions: FunctionTable): boolean {
  let node = tree;
  while (node?.type === 'group') node = node.inner;
  return node?.type === 'call' && functions.get(node.name)?.spills === true;
}

/** One list for all formulas: no evaluation begins while another reads it. */
const inputs: Value[] = [];

/** The values of the operands now, by slot; to be read before it is asked for again. */
export function inputsOf({ operands }: Formula, cells: Cells): readonly Value[] {
  for (let slot = 0; slot < operands.length; slot++) {
    const operand = operands[slot];
    if (operand) inputs[slot] = isCell(operand) ? operand.value : cells.gridOf(operand);
  }
  return inputs;
}
