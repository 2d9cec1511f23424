/** What a workbook asks of whoever keeps the order of recalculation; values and arithmetic are its own. */

import type { Corner } from '../expression/index.ts';
import type { Cells } from './cells.ts';

/** Where a cell stands in the schedule; sheet, row and column from 0. */
export interface Place {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
}

/** A block that a formula reads; a single cell has one row and one column. */
export interface PlaceBlock extends Place {
  readonly rows: number;
  readonly columns: number;
}

/**
 * Computes the formula of a cell, whose precedents are all up to date, and keeps its value. Must not throw.
 * Gives a token that differs whenever dependents have to be computed again.
 */
export type Evaluate = (sheet: number, row: number, column: number) => number | string;

/** A block as it is written in the formula: formulas that were filled down look the same. */
export interface Precedent {
  readonly sheet: number;
  readonly start: Corner;
  /** Absent for a single cell. */
  readonly end?: Corner;
}

/** A block that stays where it is, whatever cell refers to it. */
export function fixedBlock({ sheet, row, column, rows, columns }: PlaceBlock): Precedent {
  const fixed = { rowFixed: true, columnFixed: true } as const;
  const start = { row, column, ...fixed };
  const end = { row: row + rows - 1, column: column + columns - 1, ...fixed };
  return rows === 1 && columns === 1 ? { sheet, start } : { sheet, start, end };
}

/** Which formulas to compute after which changes, and in which order. */
export interface Schedule {
  /** True when a new schedule is cheaper to keep than this one. */
  readonly isWorn: boolean;
  /** Makes the changes, then computes everything that depends on them, each cell once and after its precedents. */
  run(changes: () => void): void;
  /** The cell holds a value: a number or a token for anything else. Equal values start nothing. */
  setValue(place: Place, token: number | string): void;
  setBlank(place: Place): void;
  /** The cell is computed from these blocks. */
  setFormula(place: Place, precedents: readonly (Precedent | undefined)[]): void;
  destroy(): void;
}

export type StartSchedule = (cells: Cells, evaluate: Evaluate) => Schedule;
