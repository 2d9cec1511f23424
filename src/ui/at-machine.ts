/** The way to the machine-side page, whose element is fetched when it is first gone. */

import { keptReceived } from './received-values.ts';
import type { Session } from './session.ts';

/** True where this window was at the machine with the notebook when it was reloaded; selects the worksheet. */
export function wasAtMachine(session: Session): boolean {
  const received = keptReceived(session.notebook);
  if (received) session.select(0, 0, false, received.worksheet);
  return received !== undefined;
}

export const fetchMachinePage = (): Promise<unknown> => import('./views/machine-page.ts');
