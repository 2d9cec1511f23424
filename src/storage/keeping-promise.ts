/** The browser's promise to keep what is stored even when space is short: when it may be asked for, and a refusal remembered over starts. */

const KEY = 'promise to keep refused';
const MONTH = 30 * 86_400_000;

/**
 * Such browsers answer by themselves and show the user no question, and they answer otherwise once the page is used more or
 * installed; others ask the user, who is not to be asked again and again (web.dev, "Persistent storage").
 */
const answersAlone = (): boolean => navigator.userAgent.includes('AppleWebKit/');

/** Milliseconds since 1970; undefined where it was never refused, or a window without storage forgot it. */
function refusedAt(): number | undefined {
  try {
    const at = Number(localStorage.getItem(KEY) ?? '');
    return at > 0 ? at : undefined;
  } catch {
    return undefined;
  }
}

function remember(promised: boolean): void {
  try {
    if (promised) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, String(Date.now()));
  } catch {
    // Such a window is asked again at its next start.
  }
}

/** What is known without asking: undefined where the browser was never asked. */
export async function promisedBefore(): Promise<boolean | undefined> {
  const promised = (await navigator.storage?.persisted?.().catch(() => false)) ?? false;
  if (promised) remember(true);
  return promised || (refusedAt() === undefined ? undefined : false);
}

/** Whether asking now would not press the user: where the browser asks him, a refusal holds for 30 days. */
export const mayBeAsked = (): boolean => answersAlone() || Date.now() - (refusedAt() ?? 0) > MONTH;

/** From a gesture of the user, whose question may stay without an answer: until there is one it counts as refused. */
export async function askForPromise(): Promise<boolean> {
  remember(false);
  const promised = (await navigator.storage?.persist?.().catch(() => false)) ?? false;
  remember(promised);
  return promised;
}
