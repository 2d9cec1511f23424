/** Equality of plain data. */

/** Equal plain data: same keys, same values, whatever the order of keys. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length || Array.isArray(a) !== Array.isArray(b)) return false;
  const right = new Map<string, unknown>(Object.entries(b));
  return Object.entries(a).every(([key, value]) => right.has(key) && isSame(value, right.get(key)));
}
