/** Asking for a leaf by its key: apart from the rows themselves, so that a leaf may open another. */

/** Asks for a leaf from anywhere in the page. */
export function openLeaf(from: EventTarget, key: string, detail?: unknown): void {
  from.dispatchEvent(
    new CustomEvent('open-leaf', { bubbles: true, composed: true, detail: { key, detail } }),
  );
}
