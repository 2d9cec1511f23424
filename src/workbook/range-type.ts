/** The static type of a block: one type a column, texts and blanks being neutral in a column of numbers (F13b). */

import { describeDimension, generalKind } from '../quantity/index.ts';
import { addressText, failure } from '../expression/index.ts';
import type { GridType, NumberType, ScalarType } from '../expression/index.ts';
import { COLUMNS, isFilled } from './cells.ts';
import type { Cells, CellState } from './cells.ts';
import type { PlaceBlock } from './schedule.ts';

function joined(first: NumberType, second: NumberType): NumberType {
  const kind = first.kind === second.kind ? first.kind : generalKind(first.kind.dimension);
  return { type: 'number', kind };
}

const isZero = (type: NumberType): boolean => type.literal === 0;

/** Number types outrank logicals, these texts, these blanks; two dimensions in one column clash. */
function columnType(states: readonly CellState[]): ScalarType {
  let number: { readonly type: NumberType; readonly state: CellState } | undefined;
  let other: ScalarType = { type: 'blank' };
  for (const state of states) {
    const { type } = state;
    if (type.type === 'failed') return type;
    if (type.type === 'number') {
      if (!number || (isZero(number.type) && !isZero(type))) number = { type, state };
      else if (number.type.kind.dimension === type.kind.dimension)
        number = { type: joined(number.type, type), state: number.state };
      else if (!isZero(type)) {
        return {
          type: 'failed',
          failure: failure(
            '#UNIT!',
            `the column holds ${describeDimension(number.type.kind.dimension)} in ${addressText(number.state.column, number.state.row)} and ${describeDimension(type.kind.dimension)} in ${addressText(state.column, state.row)}`,
          ),
        };
      }
    } else if (type.type !== 'blank' && other.type !== 'logical') other = type;
  }
  return number ? { type: 'number', kind: number.type.kind } : other;
}

/** Addresses of empty cells are listed up to this many: enough to name, not enough to cost. */
const NAMED_BLANKS = 20;

export function rangeType(cells: Cells, block: PlaceBlock): GridType {
  const { states } = cells.sheet(block.sheet);
  const columns: ScalarType[] = [];
  const blanks: string[] = [];
  for (let c = block.column; c < block.column + block.columns; c++) {
    const filled: CellState[] = [];
    for (let r = block.row; r < block.row + block.rows; r++) {
      const state = states[r * COLUMNS + c];
      if (state && isFilled(state) && state.type.type !== 'blank') filled.push(state);
      else if (blanks.length < NAMED_BLANKS) blanks.push(addressText(c, r));
    }
    columns.push(columnType(filled));
  }
  return { type: 'grid', columns, rows: block.rows, ...(blanks.length > 0 && { blanks }) };
}
