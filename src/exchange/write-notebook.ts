/** The notebook as a file: canonical, line-stable JSON, format 1. */

import { blockText, cellAt, forEachCell, worksheetOf } from '../document/index.ts';
import type { AnyPart, Cell, DefinedName, Kept, Notebook, Parts, Worksheet } from '../document/index.ts';
import { addressText, columnLetters } from '../expression/index.ts';
import { Entries, lineJson, OneLine } from './canonical-json.ts';
import { addressPlace } from './address-place.ts';
import type { PassingResults, StoredResult, StoredResults } from './stored-result.ts';

export const FORMAT = 1;

/** An object with the unknown keys of its level back in their places, each on one line. */
function withKept<T extends Kept>({ kept = {}, ...rest }: T): Record<string, unknown> {
  const lines = Object.entries(kept).map(([key, value]) => [key, new OneLine(value)]);
  return { ...Object.fromEntries(lines), ...rest };
}

/** The same for an object that stands on one line itself. */
function lineWithKept<T extends Kept>({ kept, ...rest }: T): OneLine {
  return new OneLine({ ...kept, ...rest });
}

function nameLine({ target, ...rest }: DefinedName): OneLine {
  return lineWithKept({ ...rest, target: blockText(target) });
}

function worksheetObject(worksheet: Worksheet): Record<string, unknown> {
  const { id, title, common, rowCount, columnCount, headRow, headColumn, names, widths, kept } = worksheet;
  const cells: [string, unknown][] = [];
  forEachCell(worksheet, (cell: Cell, row, column) => {
    cells.push([addressText(column, row), lineWithKept(cell)]);
  });
  const wide = widths.flatMap((width, column): [string, unknown][] =>
    width === undefined ? [] : [[columnLetters(column), width]],
  );
  return withKept({
    id,
    title,
    common,
    rows: rowCount,
    columns: columnCount,
    ...(headRow && { headRow }),
    ...(headColumn && { headColumn }),
    names: names.map(nameLine),
    widths: new Entries(wide),
    cells: new Entries(cells),
    ...(kept && { kept }),
  });
}

const numberOrNull = (value: number): number | null => (Number.isFinite(value) ? value + 0 : null);

/** A result without what can be left out. */
function lean({ value, kind, unit, error, cautions }: StoredResult): StoredResult {
  return {
    value: typeof value === 'number' ? numberOrNull(value) : value,
    kind,
    unit,
    ...(error && { error: { code: error.code, message: error.message } }),
    ...(cautions &&
      cautions.length > 0 && { cautions: cautions.map(({ key, text, type }) => ({ key, text, type })) }),
  };
}

/** Where a result stands that is kept: that of a formula or of a cell it fills; what was typed speaks for itself. */
function keptPlace(
  worksheet: Worksheet,
  address: string,
): { readonly row: number; readonly column: number } | undefined {
  const place = addressPlace(address);
  const cell = place && cellAt(worksheet, place.row, place.column);
  return cell && !cell.content.startsWith('=') ? undefined : place;
}

function resultsObject(notebook: Notebook, results: StoredResults): Entries {
  const worksheets: [string, unknown][] = [];
  for (const { id } of notebook.worksheets) {
    const worksheet = worksheetOf(notebook, id);
    const list = [...(results.get(id) ?? [])].flatMap(([address, result]) => {
      const place = keptPlace(worksheet, address);
      return place ? [{ order: place.row * 64 + place.column, address, result }] : [];
    });
    if (list.length === 0) continue;
    list.sort((a, b) => a.order - b.order);
    const entries = list.map(({ address, result }): [string, unknown] => [
      address,
      new OneLine(lean(result)),
    ]);
    worksheets.push([id, new Entries(entries)]);
  }
  return new Entries(worksheets);
}

/** Results in one piece of `writeResults`. */
const PIECE = 1_000;

/**
 * The results alone: put together, the pieces are a text for `readResults`, "{}" where there are none. In the order in
 * which they are given, not canonical. A piece takes a few milliseconds: the page's thread is free between two of them.
 */
export function* writeResults(notebook: Notebook, results: PassingResults): Generator<string, void> {
  let piece = '{';
  let seen = 0;
  let betweenWorksheets = '';
  for (const { id } of notebook.worksheets) {
    const worksheet = worksheetOf(notebook, id);
    const opening = `${betweenWorksheets}${JSON.stringify(id)}:{`;
    let before = opening;
    for (const [address, result] of results.get(id) ?? []) {
      if (keptPlace(worksheet, address)) {
        piece += `${before}${JSON.stringify(address)}:${JSON.stringify(lean(result))}`;
        before = ',\n';
      }
      if ((seen += 1) % PIECE > 0) continue;
      yield piece;
      piece = '';
    }
    if (before === opening) continue;
    piece += '}';
    betweenWorksheets = ',\n';
  }
  yield `${piece}}`;
}

/** The lists beside the worksheets, one record a line. */
function partsObject(parts: Parts): Record<string, unknown> {
  const { kept, ...known } = parts;
  const lists = Object.entries(known).map(([name, list]): [string, unknown] => [
    name,
    list.map((record: AnyPart) => lineWithKept(record)),
  ]);
  return withKept({ ...Object.fromEntries(lists), ...(kept && { kept }) });
}

/**
 * The file's text. Equal notebooks give equal bytes; results stand apart from the contents, with the version of the
 * program that computed them.
 */
export function writeNotebook(notebook: Notebook, results?: StoredResults, program?: string): string {
  const { id, title, reading, display, currency, worksheets, parts, kept } = notebook;
  const stored = results && resultsObject(notebook, results);
  const file = withKept({
    format: FORMAT,
    id,
    title,
    reading,
    display,
    currency,
    worksheets: worksheets.map(worksheetObject),
    ...(parts && { parts: partsObject(parts) }),
    ...(stored && stored.list.length > 0 && { results: stored, ...(program && { program }) }),
    ...(kept && { kept }),
  });
  return `${lineJson(file)}\n`;
}
