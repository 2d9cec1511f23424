/** Words at the place where what was typed can not go into its cell, and what can be done. */

import type { Session } from './session.ts';

/** Why nothing is taken in a notebook that is read only here. */
export const notTaken = ({ newer }: Session): string =>
  newer
    ? 'Not taken: a newer version of the program has kept this notebook.'
    : 'Not taken: another tab or device holds this notebook now. “Take over” at the top brings it here.';

export const STAYS_OPEN = 'What you typed stays open here; Escape drops it.';

export const CELL_GONE =
  'The cell in which this was being typed is gone: Enter puts it here, Escape drops it.';

export const CELL_CHANGED =
  'This cell was changed while you typed: Enter once more puts your text in its place, Escape leaves it.';

export const NOBODY = 'Not taken: it was not said who sets it.';
