/** Parts that a key or the browser itself asks for at any moment: fetched when the page has long been painted, because neither waits. */

const LATER = 2_000;

export const fetchGoBar = (): Promise<unknown> => import('./views/go-bar.ts');
export const fetchFindBar = (): Promise<unknown> => import('./views/find-bar.ts');
export const fetchActions = (): Promise<unknown> => import('./views/actions-menu.ts');
export const fetchFindNext = (): Promise<typeof import('./find-next.ts')> => import('./find-next.ts');
export const fetchHelp = (): Promise<unknown> => import('./views/help-leaf.ts');
export const fetchPrint = (): Promise<typeof import('./views/print-view.ts')> =>
  import('./views/print-view.ts');

const PARTS = [fetchGoBar, fetchFindBar, fetchActions, fetchFindNext, fetchPrint, fetchHelp];

/** Fetches them one after the other in a quiet moment; what does not come is asked for again when it is needed. */
export function fetchLater(): void {
  setTimeout(async () => {
    for (const fetchPart of PARTS) await fetchPart().catch(() => undefined);
  }, LATER);
}
