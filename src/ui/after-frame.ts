/** What may wait until the page has been painted once more. */

/** Milliseconds after which it is done without a frame: a tab in the background is not painted. */
const WITHOUT = 1000;

/** Runs this after the next frame; the answer takes it back. */
export function afterFrame(run: () => void): () => void {
  let isOver = false;
  const end = (): boolean => {
    clearTimeout(timer);
    return !isOver && (isOver = true);
  };
  const go = (): void => void (end() && run());
  const timer = setTimeout(go, WITHOUT);
  if ('requestAnimationFrame' in globalThis) requestAnimationFrame(() => setTimeout(go));
  return () => void end();
}
