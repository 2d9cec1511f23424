/** What the outside is told of a cell: value, kind, unit, error and cautions. */

import { isFailure, readAddress } from '../expression/index.ts';
import type { Caution, Failure, ScalarType } from '../expression/index.ts';
import type { CellAddress, CellResult, ResultCaution, ResultError } from '../calculation/index.ts';
import type { Cell } from '../document/index.ts';
import type { Cells, CellState } from './cells.ts';
import { unitOfCell } from './display-unit.ts';
import type { DisplaySettings } from './display-unit.ts';
import { breaches } from './limit-breach.ts';
import { rootName } from './inference.ts';
import type { Place } from './schedule.ts';

const NO_CAUTIONS: readonly ResultCaution[] = Object.freeze([]);
const BLANK: CellResult = Object.freeze({ value: null, kind: 'blank', unit: '', cautions: NO_CAUTIONS });

export function addressOf(cells: Cells, { sheet, row, column }: Place): CellAddress {
  return { worksheet: cells.sheet(sheet).id, row, column };
}

/** The cell that a failure names as its root. */
function rootAddress(cells: Cells, root: string): CellAddress | undefined {
  const dot = root.lastIndexOf('.');
  const corner = readAddress(root.slice(dot + 1));
  if (!corner) return undefined;
  const written = root.slice(0, dot);
  const title = written.startsWith("'") ? written.slice(1, -1).replaceAll("''", "'") : written;
  const sheet = cells.sheets.find((each) => each.title === title);
  return sheet && { worksheet: sheet.id, row: corner.row, column: corner.column };
}

/** Cells of a circle that are named; the members of a large one share one list, and the list of each would be the square of their number. */
const NAMED_CELLS = 64;
const namedPaths = new WeakMap<readonly Place[], readonly CellAddress[]>();

function pathOf(cells: Cells, cycle: readonly Place[]): readonly CellAddress[] {
  const named = cycle.slice(0, NAMED_CELLS);
  const known = namedPaths.get(cycle);
  // Lines that were inserted or moved since move the cells of the same circle.
  const stands = named.every(({ sheet, row, column }, k) => {
    const address = known?.[k];
    return address?.row === row && address.column === column && address.worksheet === cells.sheet(sheet).id;
  });
  if (known && stands) return known;
  const path = named.map((each) => addressOf(cells, each));
  namedPaths.set(cycle, path);
  return path;
}

function errorOf(cells: Cells, state: CellState, { failure: code, message, root }: Failure): ResultError {
  const began = root === undefined || root === rootName(cells, state) ? undefined : rootAddress(cells, root);
  return {
    code,
    message,
    ...(began && { root: began }),
    ...(state.cycle && { path: pathOf(cells, state.cycle) }),
  };
}

/** An acknowledgement stands as long as the words of the caution and the content of the cell are the same (F23). */
function acknowledged(cell: Cell | undefined, { key, text }: Caution): { acknowledged?: string } {
  const found = cell?.acknowledged?.find(
    (each) => each.key === key && each.text === text && each.content === cell.content,
  );
  return found ? { acknowledged: found.reason } : {};
}

function cautionsOf(state: CellState, unit: string, { currency }: DisplaySettings): readonly ResultCaution[] {
  const { cell, type, value } = state;
  const beyond =
    cell?.limits && type.type === 'number' && typeof value === 'number'
      ? breaches(value, type.kind, cell.limits, unit, currency)
      : NO_CAUTIONS;
  const all = state.cautions.length + state.staticCautions.length + state.assumed.length + beyond.length;
  if (all === 0) return NO_CAUTIONS;
  const marked = (type_: ResultCaution['type']) => (caution: Caution) => ({
    ...caution,
    type: type_,
    ...acknowledged(cell, caution),
  });
  return [
    ...beyond.map(marked('breach')),
    ...state.staticCautions.map(marked('caution')),
    ...state.cautions.map(marked('caution')),
    ...state.assumed.map(marked('assumed')),
  ];
}

function kindName(value: CellState['value'], type: ScalarType): string {
  if (typeof value === 'number') return type.type === 'number' ? type.kind.name : 'number';
  if (typeof value === 'string') return 'text';
  return typeof value === 'boolean' ? 'logical' : 'blank';
}

/** A valid value comes with its cautions; an error without any but the notes of what was read. */
export function resultOf(cells: Cells, state: CellState, settings: DisplaySettings): CellResult {
  const { value, type } = state;
  if (isFailure(value)) {
    return {
      value: null,
      kind: 'error',
      unit: '',
      error: errorOf(cells, state, value),
      cautions: NO_CAUTIONS,
    };
  }
  const unit = typeof value === 'number' ? unitOfCell(state, settings) : '';
  const cautions = cautionsOf(state, unit, settings);
  if (value === null && cautions.length === 0) return BLANK;
  return { value, kind: kindName(value, type), unit, cautions };
}

/** A number with nothing to say besides: the next number may follow in a column of numbers. */
export function isPlain({ value, cell, cautions, staticCautions, assumed }: CellState): boolean {
  return (
    typeof value === 'number' &&
    cell?.limits === undefined &&
    cautions.length + staticCautions.length + assumed.length === 0
  );
}

export function sameResult(a: CellResult, b: CellResult): boolean {
  return (
    a.value === b.value &&
    a.kind === b.kind &&
    a.unit === b.unit &&
    sameError(a.error, b.error) &&
    sameCautions(a, b)
  );
}

const cellsOf = ({ root, path }: ResultError): string => JSON.stringify([root, path]);

function sameError(a: ResultError | undefined, b: ResultError | undefined): boolean {
  if (!a || !b) return a === b;
  if (a.code !== b.code || a.message !== b.message) return false;
  return (a.path === b.path && a.root === b.root) || cellsOf(a) === cellsOf(b);
}

function sameCautions(a: CellResult, b: CellResult): boolean {
  return (
    a.cautions.length === b.cautions.length &&
    a.cautions.every((caution, index) => {
      const other = b.cautions[index];
      return (
        other?.key === caution.key &&
        other.text === caution.text &&
        other.type === caution.type &&
        other.acknowledged === caution.acknowledged
      );
    })
  );
}
