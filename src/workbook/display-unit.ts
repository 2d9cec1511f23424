/** The unit in which a cell is shown (F19): its own choice, the unit as typed, else the kind's default in the display system. */

import { displayUnit, isUnknownUnit, ONE_UNIT, parseUnit } from '../quantity/index.ts';
import type { Kind, Unit } from '../quantity/index.ts';
import type { Notebook } from '../document/index.ts';
import type { CellState } from './cells.ts';

export type DisplaySettings = Pick<Notebook, 'display' | 'currency'>;

export function knownUnit(text: string, currency: string): Unit | undefined {
  const unit = parseUnit(text, currency);
  return isUnknownUnit(unit) ? undefined : unit;
}

/** Symbol of the default unit of a kind; "" for plain numbers and dates. */
export function defaultUnit(kind: Kind, { display, currency }: DisplaySettings): string {
  const unit = displayUnit(kind, display, currency);
  return unit === ONE_UNIT ? '' : unit.symbol;
}

/** "" for plain numbers and everything that is no number. A chosen unit of another dimension is not taken. */
export function unitOfCell(state: CellState, settings: DisplaySettings): string {
  const { type, cell } = state;
  if (type.type !== 'number') return '';
  const chosen = cell?.unit;
  if (chosen !== undefined) {
    const unit = knownUnit(chosen, settings.currency);
    if (unit?.kind.dimension === type.kind.dimension) return unit === ONE_UNIT ? '' : chosen;
  }
  return state.typedUnit ?? defaultUnit(type.kind, settings);
}
