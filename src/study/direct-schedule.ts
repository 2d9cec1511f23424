/** The order of recalculation on the workbook's own graph: what depends on a change is computed once, after its precedents. */

import { dependencyOrder, dependentsOf } from '../workbook/index.ts';
import type { Cells, CellState, Evaluate, Place, Schedule } from '../workbook/index.ts';

export class DirectSchedule implements Schedule {
  readonly isWorn = false;
  readonly #cells: Cells;
  readonly #evaluate: Evaluate;
  readonly #tokens = new Map<CellState, number | string>();
  readonly #formulas = new Set<CellState>();
  #changed = new Set<CellState>();

  constructor(cells: Cells, evaluate: Evaluate) {
    this.#cells = cells;
    this.#evaluate = evaluate;
  }

  run(changes: () => void): void {
    changes();
    const changed = this.#changed;
    this.#changed = new Set();
    const { order } = dependencyOrder(this.#cells, dependentsOf(this.#cells, changed));
    for (const state of order) {
      if (!this.#formulas.has(state)) continue;
      this.#evaluate(state.sheet, state.row, state.column);
    }
  }

  setValue(place: Place, token: number | string): void {
    const state = this.#at(place);
    const isFormula = this.#formulas.delete(state);
    if (!isFormula && this.#tokens.get(state) === token) return;
    this.#tokens.set(state, token);
    this.#changed.add(state);
  }

  setBlank(place: Place): void {
    this.setValue(place, '');
  }

  setFormula(place: Place): void {
    const state = this.#at(place);
    this.#tokens.delete(state);
    this.#formulas.add(state);
    this.#changed.add(state);
  }

  destroy(): void {
    this.#formulas.clear();
  }

  #at({ sheet, row, column }: Place): CellState {
    return this.#cells.at(sheet, row, column);
  }
}
