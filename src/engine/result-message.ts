/** The answer to a change: numbers as columns where nothing but the number changed, objects for the rest. */

import { packAddress } from '../calculation/index.ts';
import type { CellResult, ChangedResult, FromEngine, SpilledFrom } from '../calculation/index.ts';
import { addressOf, COLUMNS, isFilled, isPlain, resultOf, sameResult } from '../workbook/index.ts';
import type { CellState, Workbook } from '../workbook/index.ts';

export type ResultsMessage = Extract<FromEngine, { type: 'results' }>;

/** What was told of the cells of an earlier workbook, by worksheet and place. */
export type Told = ReadonlyMap<string, ReadonlyMap<number, CellResult>>;

export type FullResult = CellResult & Partial<SpilledFrom>;

export function fullResult({ cells, notebook }: Workbook, state: CellState): FullResult {
  const result = resultOf(cells, state, notebook);
  return state.origin ? { ...result, origin: addressOf(cells, state.origin) } : result;
}

/** Everything that a workbook has told, to be compared with what the next one says. */
export function toldBy(workbook: Workbook): Told {
  const told = new Map<string, Map<number, CellResult>>();
  for (const { id, states } of workbook.cells.sheets) {
    const onSheet = new Map<number, CellResult>();
    for (const state of states) {
      if (state?.sent) onSheet.set(state.row * COLUMNS + state.column, fullResult(workbook, state));
    }
    told.set(id, onSheet);
  }
  return told;
}

class Answer {
  readonly #workbook: Workbook;
  readonly #addresses: number[] = [];
  readonly #values: number[] = [];
  readonly #results: ChangedResult[] = [];

  constructor(workbook: Workbook) {
    this.#workbook = workbook;
  }

  /** Tells what is new of a cell, if anything is. */
  tell(state: CellState): void {
    const { sent, value, type, cell } = state;
    if (sent?.plainOf === type && sent.cell === cell && typeof value === 'number' && isPlain(state)) {
      this.#addresses.push(packAddress(state.sheet, state.row, state.column));
      this.#values.push(value);
      return;
    }
    if (!isFilled(state)) {
      if (sent) this.forget(state);
      return;
    }
    const result = fullResult(this.#workbook, state);
    const isNew = !sent || sent.plainOf !== undefined || !sameResult(sent.result, result);
    state.sent = { result, plainOf: isPlain(state) ? type : undefined, cell };
    if (isNew) this.#results.push({ address: addressOf(this.#workbook.cells, state), result });
  }

  forget(state: CellState): void {
    state.sent = undefined;
    this.#results.push({ address: addressOf(this.#workbook.cells, state) });
  }

  message(revision: number, complete: boolean): ResultsMessage {
    return {
      type: 'results',
      revision,
      worksheets: this.#workbook.cells.sheets.map(({ id }) => id),
      numbers: { addresses: Uint32Array.from(this.#addresses), values: Float64Array.from(this.#values) },
      results: this.#results,
      complete,
    };
  }
}

/** Everything: the answer to a notebook that was opened. */
export function completeMessage(workbook: Workbook, revision: number): ResultsMessage {
  const answer = new Answer(workbook);
  for (const state of workbook.cells.filled()) answer.tell(state);
  workbook.takeChanged();
  return answer.message(revision, true);
}

/** What changed since the last message. */
export function changesMessage(workbook: Workbook, revision: number): ResultsMessage {
  const answer = new Answer(workbook);
  for (const state of workbook.takeChanged()) answer.tell(state);
  return answer.message(revision, false);
}

/** What is different in a workbook that was built anew after changes. */
export function differencesMessage(workbook: Workbook, told: Told, revision: number): ResultsMessage {
  const answer = new Answer(workbook);
  for (const state of workbook.cells.filled()) {
    const before = told.get(workbook.cells.sheet(state.sheet).id)?.get(state.row * COLUMNS + state.column);
    if (before) state.sent = { result: before, plainOf: undefined, cell: undefined };
    answer.tell(state);
  }
  for (const [id, onSheet] of told) {
    const sheet = workbook.cells.sheetNumber(id);
    if (sheet === undefined) continue;
    for (const place of onSheet.keys()) {
      const state = workbook.cells.at(sheet, Math.floor(place / COLUMNS), place % COLUMNS);
      if (!isFilled(state)) answer.forget(state);
    }
  }
  workbook.takeChanged();
  return answer.message(revision, false);
}
