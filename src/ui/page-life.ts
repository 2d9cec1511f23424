/** What the browser does to the page: it hides it, wakes it, ends it; and the first gesture after something was kept. */

import { wouldLose } from './finished.ts';
import { keepDraft } from './kept-draft.ts';
import type { World } from './ports.ts';
import type { Session } from './session.ts';

export function watchPage(world: World, session: () => Session | undefined): void {
  const wake = (): void => {
    void world.shelf.wake();
    session()?.saving.retry();
  };
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') return wake();
    keepDraft(session());
    void session()?.saving.flushResults();
  });
  window.addEventListener('pageshow', (event) => {
    if (event.persisted) wake();
  });
  window.addEventListener('pagehide', () => keepDraft(session()));
  window.addEventListener('beforeunload', (event) => {
    const open = session();
    if (open && wouldLose(open)) event.preventDefault();
  });
  const ask = (): void => {
    const open = session();
    if (!open || open.history.past.length === 0 || open.saved.type !== 'saved') return;
    for (const type of GESTURES) window.removeEventListener(type, ask);
    void world.installation.askToKeep();
  };
  for (const type of GESTURES) window.addEventListener(type, ask);
  const before = (types: readonly string[], show: () => void): void => {
    for (const type of types) window.addEventListener(type, show, { capture: true });
  };
  before(KEYS, () => session()?.watchers.release());
  before(TOUCHES, () => session()?.watchers.flush());
}

const GESTURES = ['pointerup', 'keydown'] as const;
/** What the hands do meets the page as it is after the edit before. */
const KEYS = ['keydown', 'beforeinput', 'paste', 'cut', 'copy'] as const;
const TOUCHES = ['pointerdown', 'drop'] as const;
