/** Printing: its element is fetched when the page has long been painted, because the browser's own command does not wait. */

const LATER = 2_000;

const bring = (): Promise<typeof import('./views/print-view.ts')> => import('./views/print-view.ts');

/** Fetches the printed notebook in a quiet moment. */
export function fetchPrintLater(): void {
  setTimeout(() => void bring(), LATER);
}

/** Prints with all workings. `root` holds the print-view. */
export async function printNotebook(root: ParentNode): Promise<void> {
  const { PrintView } = await bring();
  const view = root.querySelector('print-view');
  if (view instanceof PrintView) await view.prepare();
  window.print();
}
