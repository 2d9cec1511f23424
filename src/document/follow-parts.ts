/** Places of cells and blocks in the notebook's lists, carried along when rows, columns and worksheets go elsewhere. */

import type { Whereabouts } from './follow-references.ts';
import { isSame } from './is-same.ts';
import type { Notebook } from './notebook.ts';
import { partsFrom } from './part-lists.ts';
import { PART_NAMES } from './parts.ts';
import type { AnyPart, Parts } from './parts.ts';
import type { BlockPlace, CellPlace } from './place.ts';

type Carried = BlockPlace | undefined;

/** Where a place stands afterwards; undefined where it is gone. */
interface Carrier {
  readonly known: ReadonlySet<string>;
  readonly block: NonNullable<Whereabouts['block']>;
}

function carriedBlock({ known, block }: Carrier, place: BlockPlace): Carried {
  const to = block(place.worksheet, place.block);
  return to && known.has(to.worksheet) ? to : undefined;
}

function carriedCell(carrier: Carrier, { worksheet, row, column }: CellPlace): CellPlace | undefined {
  const to = carriedBlock(carrier, { worksheet, block: { row, column, rows: 1, columns: 1 } });
  return to && { worksheet: to.worksheet, row: to.block.row, column: to.block.column };
}

const GONE = Symbol('gone');

/** Lists that have to hold something: the record goes with the last entry. */
const NEVER_EMPTY: ReadonlySet<string> = new Set(['givens', 'series']);

/**
 * Any record with its places carried along. A place that is gone takes its list entry with it; where it is
 * indispensable the whole record goes. A cell is told by the keys worksheet, row, column; a block by worksheet, block.
 */
function carried(carrier: Carrier, value: unknown): unknown {
  if (Array.isArray(value)) {
    if (value.length === 0 || typeof value[0] !== 'object') return value;
    return value.map((each: unknown) => carried(carrier, each)).filter((each) => each !== GONE);
  }
  if (typeof value !== 'object' || value === null) return value;
  if ('worksheet' in value && 'row' in value) return carriedCell(carrier, value as CellPlace) ?? GONE;
  if ('worksheet' in value && 'block' in value) return carriedBlock(carrier, value as BlockPlace) ?? GONE;
  const entries = Object.entries(value).map(([key, each]): [string, unknown] =>
    key === 'kept' ? [key, each] : [key, carried(carrier, each)],
  );
  const isGone = ([key, each]: [string, unknown]): boolean =>
    each === GONE || (NEVER_EMPTY.has(key) && Array.isArray(each) && each.length === 0);
  return entries.some(isGone) ? GONE : Object.fromEntries(entries);
}

/** The lists after rows, columns or worksheets went where `whereabouts` says; `known` are the worksheets that are left. */
export function followedParts(
  parts: Parts | undefined,
  known: ReadonlySet<string>,
  whereabouts: Whereabouts,
): Parts | undefined {
  const { block } = whereabouts;
  if (!parts || !block) return parts;
  const carrier = { known, block };
  const lists = PART_NAMES.flatMap((name): [string, readonly AnyPart[]][] => {
    const list: readonly AnyPart[] = parts[name] ?? [];
    if (list.length === 0) return [];
    if (name === 'recordings' || name === 'photographs' || name === 'trials') return [[name, list]];
    const records = list.flatMap((record: AnyPart): AnyPart[] => {
      const after = carried(carrier, record);
      if (after === GONE) return [];
      return [isSame(after, record) ? record : Object.freeze(after as AnyPart)];
    });
    return records.length === 0 ? [] : [[name, Object.freeze(records)]];
  });
  return partsFrom(lists, parts.kept);
}

/** The notebook with a worksheet under another id, its places in the lists included. The id must be free. */
export function withWorksheetId(notebook: Notebook, from: string, to: string): Notebook {
  const worksheets = notebook.worksheets.map((each) =>
    each.id === from ? Object.freeze({ ...each, id: to }) : each,
  );
  const known = new Set(worksheets.map(({ id }) => id));
  const parts = followedParts(notebook.parts, known, {
    block: (worksheet, block) => ({ worksheet: worksheet === from ? to : worksheet, block }),
  });
  const { parts: _before, ...rest } = notebook;
  return { ...rest, worksheets, ...(parts && { parts }) };
}
