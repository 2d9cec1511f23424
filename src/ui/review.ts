/** The review of a notebook: its formulas in reading order, and which of them somebody has looked through. */

import {
  cellAt,
  findWorksheet,
  forEachCell,
  freshPartId,
  labelOf,
  partsOf,
  putPart,
} from '../document/index.ts';
import type { CellPlace, ReviewTick } from '../document/index.ts';
import { inWords } from './number-locale.ts';
import type { KnownResult } from './results.ts';
import type { Session } from './session.ts';

export interface ReviewedCell {
  readonly place: CellPlace;
  readonly content: string;
  readonly label: string;
  readonly result: KnownResult | undefined;
  readonly tick: ReviewTick | undefined;
  /** 'fallen': ticked once, but formula or unit are others now. */
  readonly state: 'open' | 'ticked' | 'fallen';
}

const keyOf = ({ worksheet, row, column }: CellPlace): string => `${worksheet} ${row} ${column}`;
const known = new WeakMap<Session, { readonly version: number; readonly list: readonly ReviewedCell[] }>();

function stateOf(
  tick: ReviewTick | undefined,
  content: string,
  result: KnownResult | undefined,
): ReviewedCell['state'] {
  if (!tick) return 'open';
  if (tick.content !== content) return 'fallen';
  // Before the calculator has answered, nothing is known against it.
  return result === undefined || tick.unit === result.unit ? 'ticked' : 'fallen';
}

/** Every formula, worksheet by worksheet, row by row. */
export function reviewedCells(session: Session): readonly ReviewedCell[] {
  const before = known.get(session);
  if (before?.version === session.version) return before.list;
  const ticks = new Map(partsOf(session.notebook, 'reviews').map((tick) => [keyOf(tick.place), tick]));
  const list: ReviewedCell[] = [];
  for (const worksheet of session.notebook.worksheets)
    forEachCell(worksheet, ({ content }, row, column) => {
      if (!content.startsWith('=')) return;
      const place = { worksheet: worksheet.id, row, column };
      const result = session.results.at(worksheet.id, row, column);
      const tick = ticks.get(keyOf(place));
      const label = labelOf(worksheet, row, column);
      list.push({ place, content, label, result, tick, state: stateOf(tick, content, result) });
    });
  known.set(session, { version: session.version, list });
  return list;
}

/** How many formulas wait; 0 as long as no review was begun. */
export function waitingForReview(session: Session): number {
  if (partsOf(session.notebook, 'reviews').length === 0) return 0;
  return reviewedCells(session).filter(({ state }) => state !== 'ticked').length;
}

/** The formula under the selection. */
export function cellInReview(session: Session): ReviewedCell | undefined {
  const here = keyOf(session.address);
  return reviewedCells(session).find(({ place }) => keyOf(place) === here);
}

/** The next formula that is not ticked, from the selection on and round again; the next one at all where all are. */
export function nextInReview(session: Session, way: 1 | -1 = 1): ReviewedCell | undefined {
  const list = reviewedCells(session);
  const order = new Map(session.notebook.worksheets.map(({ id }, k) => [id, k]));
  const rank = ({ worksheet, row, column }: CellPlace): number =>
    (order.get(worksheet) ?? 0) * 2 ** 17 + row * 64 + column;
  const here = rank(session.address);
  const after = list.filter(({ place }) => (rank(place) - here) * way > 0);
  const before = list.filter(({ place }) => (rank(place) - here) * way < 0);
  const round = way > 0 ? [...after, ...before] : [...after.toReversed(), ...before.toReversed()];
  return round.find(({ state }) => state !== 'ticked') ?? round[0];
}

/** Turns the page to a formula. */
export function turnTo(session: Session, { place }: ReviewedCell): void {
  session.select(place.row, place.column, false, place.worksheet);
}

/** Ticks a formula; false where it can not be: no result yet, or an error. */
export function tickFormula(
  session: Session,
  { place, content, result, tick: before }: ReviewedCell,
  initials: string,
): boolean {
  if (!result || result.error) {
    session.say(
      result
        ? `An error can not be ticked: ${inWords(result.error?.message ?? '')}`
        : 'It is still being worked out.',
      true,
    );
    return false;
  }
  const { notebook, world } = session;
  const home = findWorksheet(notebook, place.worksheet);
  if (!home || cellAt(home, place.row, place.column)?.content !== content) return false;
  const record: ReviewTick = {
    id: before?.id ?? freshPartId(notebook, 'reviews'),
    place,
    content,
    unit: result.unit,
    initials,
    at: new Date(world.clock.now()).toISOString(),
  };
  return session.run(
    putPart(notebook, { part: 'reviews', record, description: 'tick a formula as reviewed' }),
  );
}
