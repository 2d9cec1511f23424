/** Who works on this device: the last names are remembered here, never in the notebook's settings. */

const KEY = 'who';
const MOST = 6;

function read(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(kept) ? kept.filter((each) => typeof each === 'string' && each !== '') : [];
  } catch {
    return [];
  }
}

/** Names for a window that can not store them. */
let here: readonly string[] = [];

/** The last one first, six at most. */
export function knownNames(): readonly string[] {
  const kept = read();
  return kept.length > 0 ? kept : here;
}

/** Who it is now; undefined until somebody has said so. */
export const whoNow = (): string | undefined => knownNames()[0];

export function rememberName(name: string): void {
  here = [name, ...knownNames().filter((each) => each !== name)].slice(0, MOST);
  try {
    localStorage.setItem(KEY, JSON.stringify(here));
  } catch {
    // A window without storage knows it until it is closed.
  }
}
