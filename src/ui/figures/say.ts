/** Values in words for a figure: the notebook's display unit of their kind, four digits that matter. */

import type { Notebook } from '../../document/index.ts';
import { displayUnit, formatNumber, fromSI, kindNamed, unitLabel } from '../../quantity/index.ts';
import type { Say } from './sketch.ts';

const DIGITS = 4;

/** "0.08294 mm", "53.13°", "12"; thin spaces as everywhere. */
export const sayIn =
  ({ display, currency }: Pick<Notebook, 'display' | 'currency'>): Say =>
  (value, kind) => {
    const unit = displayUnit(kindNamed(kind), display, currency);
    const number = formatNumber(Number(fromSI(value, unit).toPrecision(DIGITS)));
    const label = unitLabel(unit);
    return label === ''
      ? number
      : label.startsWith('°') && label.length === 1
        ? `${number}°`
        : `${number} ${label}`;
  };

/** Metres of the unit in which the squares of a sketch are counted. */
export const squareUnit = (display: Notebook['display']): number => (display === 'inch' ? 0.0254 : 0.001);
