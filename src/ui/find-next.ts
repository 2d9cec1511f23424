/** Going to the next place of what was looked for last, with the bar open or not. Loaded with the first F3. */

import { find, nextOf, type Query } from './finding.ts';
import { latestQuery, openBar } from './page-bar.ts';
import type { Session } from './session.ts';

/** The next place of the question; nothing happens where there is none. */
export function goToNext(session: Session, query: Query, step: 1 | -1): void {
  const places = find(session.notebook, query);
  const next = places[nextOf(session.notebook, places, session.address, step)];
  if (next) session.select(next.row, next.column, false, next.worksheet);
  else session.say(`"${query.text}" is not found`);
}

/** Without a question so far the bar is opened. */
export function findNext(session: Session, step: 1 | -1): void {
  const query = latestQuery(session);
  if (query && query.text !== '') goToNext(session, query, step);
  else openBar(session, 'find');
}
