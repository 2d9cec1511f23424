/** What the What-if panel holds while a notebook is open: the section in sight, what stands in its fields, its questions. */

import { cellAt, findWorksheet } from '../../document/index.ts';
import type { CellPlace, Distribution, Study, SweptRange } from '../../document/index.ts';
import { fromSI, isUnknownUnit, parseUnit } from '../../quantity/index.ts';
import type { Session } from '../session.ts';
import { Asking } from './asking.ts';
import { givensOf, proposed, workedOf, type Candidate } from './candidate-cells.ts';

export type Section = 'variants' | 'solve' | 'search' | 'sweep' | 'spread';

export type SolveForm = Extract<Study, { readonly type: 'solve' }>;
export type SearchForm = Extract<Study, { readonly type: 'search' }>;
export type SweepForm = Extract<Study, { readonly type: 'sweep' }>;
export type SpreadForm = Extract<Study, { readonly type: 'spread' }>;

export class WhatIf {
  section: Section = 'variants';
  solve: SolveForm | undefined;
  search: SearchForm | undefined;
  sweep: SweepForm | undefined;
  spread: SpreadForm | undefined;
  readonly asking: Readonly<Record<Section, Asking>>;

  constructor(session: Session) {
    this.asking = {
      variants: new Asking(session, true),
      solve: new Asking(session),
      search: new Asking(session),
      sweep: new Asking(session),
      spread: new Asking(session),
    };
  }
}

const states = new WeakMap<Session, WhatIf>();

export function whatIfOf(session: Session): WhatIf {
  let state = states.get(session);
  if (!state) states.set(session, (state = new WhatIf(session)));
  return state;
}

const NOWHERE: CellPlace = { worksheet: '', row: 0, column: 0 };

/** A number in the unit its cell shows, short enough for a field: "0.12 mm". */
export function fieldText(si: number, unit: string, currency: string): string {
  const parsed = unit === '' ? undefined : parseUnit(unit, currency);
  const shown = parsed && !isUnknownUnit(parsed) ? fromSI(si, parsed) : si;
  const digits = String(Number(shown.toPrecision(4)));
  return unit === '' ? digits : `${digits} ${unit}`;
}

/** Bounds to begin with: the cell's own limits where it has them, else half and double of what it holds. */
export function boundsOf(session: Session, candidate: Candidate | undefined): readonly [string, string] {
  if (!candidate) return ['', ''];
  const { place, result } = candidate;
  const sheet = findWorksheet(session.notebook, place.worksheet);
  const limits = sheet && cellAt(sheet, place.row, place.column)?.limits;
  const value = typeof result.value === 'number' ? result.value : 0;
  const around = value === 0 ? [-1, 1] : value > 0 ? [value / 2, value * 2] : [value * 2, value / 2];
  const text = (si: number | undefined): string => fieldText(si ?? 0, result.unit, session.notebook.currency);
  return [limits?.low ?? text(around[0]), limits?.high ?? text(around[1])];
}

export function firstSolve(session: Session): SolveForm {
  const result = proposed(session, workedOf(session));
  const given = proposed(session, givensOf(session));
  const [low, high] = boundsOf(session, given);
  const wanted =
    typeof result?.result.value === 'number'
      ? fieldText(result.result.value, result.result.unit, session.notebook.currency)
      : '';
  return {
    type: 'solve',
    result: result?.place ?? NOWHERE,
    wanted,
    given: given?.place ?? NOWHERE,
    low,
    high,
  };
}

export function firstSearch(session: Session): SearchForm {
  const given = proposed(session, givensOf(session));
  const [low, high] = boundsOf(session, given);
  const constraints = workedOf(session).flatMap(({ place }): SearchForm['constraints'][number][] => {
    const sheet = findWorksheet(session.notebook, place.worksheet);
    const limits = sheet && cellAt(sheet, place.row, place.column)?.limits;
    return [
      ...(limits?.high === undefined ? [] : [{ place, relation: 'at most' as const, limit: limits.high }]),
      ...(limits?.low === undefined ? [] : [{ place, relation: 'at least' as const, limit: limits.low }]),
    ];
  });
  return {
    type: 'search',
    result: proposed(session, workedOf(session))?.place ?? NOWHERE,
    aim: 'largest',
    givens: given ? [{ place: given.place, low, high }] : [],
    constraints: constraints.slice(0, 8),
  };
}

export function rangeOf(session: Session, candidate: Candidate | undefined): SweptRange {
  const [from, to] = boundsOf(session, candidate);
  return { type: 'linear', from, to, count: 11 };
}

export function firstSweep(session: Session): SweepForm {
  const given = proposed(session, givensOf(session));
  const result = proposed(session, workedOf(session));
  return {
    type: 'sweep',
    givens: given ? [{ place: given.place, range: rangeOf(session, given) }] : [],
    results: result ? [result.place] : [],
  };
}

export function firstSpread(session: Session): SpreadForm {
  const result = proposed(session, workedOf(session));
  return { type: 'spread', results: result ? [result.place] : [], samples: 10_000, seed: 1 };
}

/** A distribution to begin with: a tolerance of five in a hundred, each value inside it as likely as the others. */
export function firstDistribution(session: Session, candidate: Candidate): Distribution {
  const value = typeof candidate.result.value === 'number' ? Math.abs(candidate.result.value) : 1;
  const halfWidth = fieldText((value || 1) * 0.05, candidate.result.unit, session.notebook.currency);
  return { type: 'uniform', halfWidth };
}
