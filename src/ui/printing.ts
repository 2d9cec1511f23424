/** Printing by the program's own command. */

import { fetchPrint } from './fetched-later.ts';

/** Prints with all workings. `root` holds the print-view. */
export async function printNotebook(root: ParentNode): Promise<void> {
  const { PrintView } = await fetchPrint();
  const view = root.querySelector('print-view');
  if (view instanceof PrintView) await view.prepare();
  window.print();
}
