/** The last results of every cell, as the calculator sent them; a row is another object whenever something in it changed. */

import { packAddress, unpackAddress } from '../calculation/index.ts';
import type { CellResult, SpilledFrom } from '../calculation/index.ts';
import type { StoredResults } from '../exchange/index.ts';
import { readAddress } from '../expression/index.ts';
import type { ResultsMessage } from './calculation-client.ts';

export type KnownResult = CellResult & Partial<SpilledFrom>;

/** Results of one row, by column. */
export type ResultRow = ReadonlyMap<number, KnownResult>;

/** Results of one worksheet: rows by number, and the places (packed) with something to look at. */
interface Sheet {
  readonly rows: Map<number, ResultRow>;
  readonly flagged: Set<number>;
}

const isFlagged = ({ error, cautions }: KnownResult): boolean => error !== undefined || cautions.length > 0;

export class Results {
  #sheets = new Map<string, Sheet>();
  /** A complete answer of which pieces are still to come. */
  #coming: { readonly revision: number; readonly sheets: Map<string, Sheet> } | undefined;
  /** What is known was computed the last time; the calculator has not confirmed it yet. */
  fromLastTime = false;

  /** Begins with results that were stored, as far as they still have a place, until the calculator answers. */
  begin(stored: StoredResults, hasPlace: (worksheet: string, row: number, column: number) => boolean): void {
    this.fromLastTime = stored.size > 0;
    const change = this.#change(this.#sheets);
    for (const [worksheet, cells] of stored)
      for (const [address, { cautions = [], ...result }] of cells) {
        const place = readAddress(address);
        if (place && hasPlace(worksheet, place.row, place.column))
          change(worksheet, place.row, place.column, { ...result, cautions });
      }
  }

  at(worksheet: string, row: number, column: number): KnownResult | undefined {
    return this.#sheets.get(worksheet)?.rows.get(row)?.get(column);
  }

  /** The same object as long as no result of the row changes. */
  row(worksheet: string, row: number): ResultRow | undefined {
    return this.#sheets.get(worksheet)?.rows.get(row);
  }

  /** Rows of every worksheet that stay as they are whatever is taken in later. */
  rowsAsTheyAre(): ReadonlyMap<string, readonly (readonly [number, ResultRow])[]> {
    return new Map([...this.#sheets].map(([worksheet, { rows }]) => [worksheet, [...rows]]));
  }

  /** Calls back for every result, worksheet by worksheet. */
  forEach(visit: (result: KnownResult, worksheet: string, row: number, column: number) => void): void {
    for (const [worksheet, { rows }] of this.#sheets)
      for (const [row, cells] of rows)
        for (const [column, result] of cells) visit(result, worksheet, row, column);
  }

  /** Calls back for every result that is an error or carries a caution. */
  forEachFlagged(visit: (result: KnownResult, worksheet: string, row: number, column: number) => void): void {
    for (const [worksheet, { rows, flagged }] of this.#sheets)
      for (const place of flagged) {
        const { row, column } = unpackAddress(place);
        const result = rows.get(row)?.get(column);
        if (result) visit(result, worksheet, row, column);
      }
  }

  /** A complete answer takes the place of what was known when its last piece is there. */
  take(message: ResultsMessage): void {
    if (message.complete && this.#coming?.revision !== message.revision)
      this.#coming = { revision: message.revision, sheets: new Map() };
    const sheets = message.complete && this.#coming ? this.#coming.sheets : this.#sheets;
    const change = this.#change(sheets);
    const { addresses, values } = message.numbers;
    for (let k = 0; k < addresses.length; k += 1) {
      const { worksheetIndex, row, column } = unpackAddress(addresses[k] ?? 0);
      const worksheet = message.worksheets[worksheetIndex];
      if (worksheet === undefined) continue;
      const known = sheets.get(worksheet)?.rows.get(row)?.get(column);
      if (known) change(worksheet, row, column, { ...known, value: values[k] ?? 0 });
    }
    for (const { address, result } of message.results)
      change(address.worksheet, address.row, address.column, result);
    if (!message.complete || message.more) return;
    this.#sheets = sheets;
    this.#coming = undefined;
    this.fromLastTime = false;
  }

  /** Puts results in place or takes them away; every row it touches becomes a new object, once. */
  #change(
    sheets: Map<string, Sheet>,
  ): (worksheet: string, row: number, column: number, result: KnownResult | undefined) => void {
    const fresh = new Map<Sheet, Map<number, Map<number, KnownResult>>>();
    return (worksheet, row, column, result) => {
      let sheet = sheets.get(worksheet);
      if (!sheet) sheets.set(worksheet, (sheet = { rows: new Map(), flagged: new Set() }));
      let copied = fresh.get(sheet);
      if (!copied) fresh.set(sheet, (copied = new Map()));
      let cells = copied.get(row);
      if (!cells) {
        copied.set(row, (cells = new Map(sheet.rows.get(row))));
        sheet.rows.set(row, cells);
      }
      const place = packAddress(0, row, column);
      if (result) cells.set(column, result);
      else cells.delete(column);
      if (result && isFlagged(result)) sheet.flagged.add(place);
      else sheet.flagged.delete(place);
    };
  }
}
