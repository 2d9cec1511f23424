/** Whether the page may go: the open edit is in its cell and everything is on the disk. */

import type { Session } from './session.ts';

const until = (session: Session, holds: () => boolean): Promise<void> =>
  new Promise((resolve) => {
    if (holds()) return resolve();
    const stop = session.subscribe(() => {
      if (!holds()) return;
      stop();
      resolve();
    });
  });

/** `patient` waits for the user to finish; otherwise the edit is taken into its cell now, and false says why not on the screen. */
export async function finished(session: Session | undefined, patient: boolean): Promise<boolean> {
  if (!session) return true;
  if (patient) {
    await until(session, () => !session.draft);
    await session.saving.written();
    await until(session, () => !session.draft && session.saved.type === 'saved');
    return true;
  }
  if (session.draft && !session.leaveDraft?.()) return false;
  if (await session.saving.written()) return true;
  session.say('this notebook is not saved on this device: save a file copy first', true);
  return false;
}

const fields = new WeakMap<Session, Set<() => boolean>>();

/** Tells that fields outside the page may hold what was typed and not taken yet; `holds` says whether they do. */
export function addFields(session: Session, holds: () => boolean): void {
  fields.set(session, (fields.get(session) ?? new Set()).add(holds));
}

export const removeFields = (session: Session, holds: () => boolean): boolean =>
  fields.get(session)?.delete(holds) ?? false;

/** Whether leaving now would lose something that was typed. */
export const wouldLose = (session: Session): boolean =>
  (!session.readOnly && session.saved.type !== 'saved') ||
  (session.draft?.text ?? '') !== '' ||
  [...(fields.get(session) ?? [])].some((holds) => holds());
