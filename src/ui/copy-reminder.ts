/** When the file copy of a notebook has fallen behind. */

import type { Session } from './session.ts';

const DAY = 86_400_000;
const WEEK = 7 * DAY;

/** Words for a calm band; undefined while there is nothing to remind of. */
export function copyReminder({ copiedAt, madeAt, saved, readOnly, world }: Session): string | undefined {
  const now = world.clock.now();
  const since = copiedAt ?? madeAt;
  if (readOnly || since === undefined || now - since <= WEEK) return undefined;
  // A notebook that was only put there has nothing that its template has not.
  if (saved.type === 'saved' && saved.at <= since) return undefined;
  const days = Math.floor((now - since) / DAY);
  const words =
    copiedAt === undefined
      ? `This notebook is ${days} days old and has no file copy yet.`
      : `The last file copy is ${days} days old, and the notebook has changed since.`;
  const { risk } = world.installation;
  return risk ? `${words} ${risk}` : words;
}
