/** A device on which only the values for the machine can be changed: a setting of the device, not of the notebook, and no lock against ill will. */

import { isSame } from '../document/index.ts';
import type { Cell, Change, Transaction } from '../document/index.ts';
import type { Session } from './session.ts';

const keyOf = (notebook: string): string => `machine only ${notebook}`;

function isSet(notebook: string): boolean {
  try {
    return localStorage.getItem(keyOf(notebook)) !== null;
  } catch {
    return false;
  }
}

/** Everything of a cell but what a new value at the machine brings along. */
function settings({ content: _c, unit: _u, changed: _d, acknowledged: _a, ...rest }: Cell): unknown {
  return rest;
}

function isForMachine(change: Change): boolean {
  if (change.type === 'part') return change.part === 'trials' || change.part === 'photographs';
  if (change.type !== 'cell' || !change.from || !change.to) return false;
  const { from, to } = change;
  return from.machine?.place === 'changed' && isSame(settings(from), settings(to));
}

const onlyMachine = ({ changes }: Transaction): string | undefined =>
  changes.every(isForMachine)
    ? undefined
    : 'On this device only the values for the machine can be changed, and trials recorded. The Notebook menu lets everything be changed.';

/** Puts the device's setting into force for an opened notebook. */
export function applyMachineOnly(session: Session): void {
  session.refuses = isSet(session.notebook.id) ? onlyMachine : undefined;
}

export const isMachineOnly = (session: Session): boolean => session.refuses !== undefined;

export function toggleMachineOnly(session: Session): void {
  const { id } = session.notebook;
  const wanted = !isMachineOnly(session);
  try {
    if (wanted) localStorage.setItem(keyOf(id), '1');
    else localStorage.removeItem(keyOf(id));
  } catch {
    // A window without storage keeps it until it is closed.
  }
  session.refuses = wanted ? onlyMachine : undefined;
  session.changed();
}
