/** The last results of every cell, as the calculator sent them. */

import type { CellResult, SpilledFrom } from '../calculation/index.ts';
import type { StoredResults } from '../exchange/index.ts';
import { readAddress } from '../expression/index.ts';
import type { ResultsMessage } from './calculation-client.ts';

export type KnownResult = CellResult & Partial<SpilledFrom>;

const COLUMNS = 64;
const SHEET = 2 ** 17;

export class Results {
  #cells = new Map<string, Map<number, KnownResult>>();
  /** What is known was computed the last time; the calculator has not confirmed it yet. */
  fromLastTime = false;

  /** Begins with results that were stored, as far as they still have a place, until the calculator answers. */
  begin(stored: StoredResults, hasPlace: (worksheet: string, row: number, column: number) => boolean): void {
    this.fromLastTime = stored.size > 0;
    for (const [worksheet, cells] of stored) {
      const known = new Map<number, KnownResult>();
      for (const [address, { cautions = [], ...result }] of cells) {
        const place = readAddress(address);
        if (place && hasPlace(worksheet, place.row, place.column))
          known.set(place.row * COLUMNS + place.column, { ...result, cautions });
      }
      this.#cells.set(worksheet, known);
    }
  }

  at(worksheet: string, row: number, column: number): KnownResult | undefined {
    return this.#cells.get(worksheet)?.get(row * COLUMNS + column);
  }

  /** Calls back for every result, worksheet by worksheet. */
  forEach(visit: (result: KnownResult, worksheet: string, row: number, column: number) => void): void {
    for (const [worksheet, cells] of this.#cells)
      for (const [place, result] of cells)
        visit(result, worksheet, Math.floor(place / COLUMNS), place % COLUMNS);
  }

  take(message: ResultsMessage): void {
    if (message.complete) {
      this.#cells = new Map();
      this.fromLastTime = false;
    }
    const { addresses, values } = message.numbers;
    for (let k = 0; k < addresses.length; k += 1) {
      const address = addresses[k] ?? 0;
      const worksheet = message.worksheets[Math.floor(address / SHEET)];
      const cells = worksheet === undefined ? undefined : this.#cells.get(worksheet);
      const known = cells?.get(address % SHEET);
      if (cells && known) cells.set(address % SHEET, { ...known, value: values[k] ?? 0 });
    }
    for (const { address, result } of message.results) {
      let cells = this.#cells.get(address.worksheet);
      if (!cells) this.#cells.set(address.worksheet, (cells = new Map()));
      const place = address.row * COLUMNS + address.column;
      if (result) cells.set(place, result);
      else cells.delete(place);
    }
  }
}
