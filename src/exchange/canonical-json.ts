/** JSON that stays the same line by line: sorted keys, one entry a line, and on one line what is marked so. */

/** An object whose keys are the user's: printed in the order of the list, never a plain object. */
export class Entries {
  constructor(readonly list: readonly (readonly [string, unknown])[]) {}
}

/** A value that stands on one line whatever it holds. */
export class OneLine {
  constructor(readonly value: unknown) {}
}

const byCode = (a: readonly [string, unknown], b: readonly [string, unknown]): number =>
  a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : 0;

/** Keys and values in the order in which they are written; what is undefined is left out. */
function entriesOf(value: object): readonly (readonly [string, unknown])[] {
  const list = value instanceof Entries ? value.list : Object.entries(value).sort(byCode);
  return list.filter(([, each]) => each !== undefined);
}

/** On one line, keys sorted. */
export function compactJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(compactJson).join(',')}]`;
  // The one number that JSON can hold and would not write.
  if (Object.is(value, -0)) return '-0';
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const parts = entriesOf(value).map(([key, each]) => `${JSON.stringify(key)}:${compactJson(each)}`);
  return `{${parts.join(',')}}`;
}

/** One entry a line, indented by one blank a level; `OneLine` values compact. */
export function lineJson(value: unknown, indent = ''): string {
  if (value instanceof OneLine) return compactJson(value.value);
  if (typeof value !== 'object' || value === null) return compactJson(value);
  const inner = `${indent} `;
  const list = Array.isArray(value)
    ? value.map((each) => lineJson(each, inner))
    : entriesOf(value).map(([key, each]) => `${JSON.stringify(key)}: ${lineJson(each, inner)}`);
  const [from, to] = Array.isArray(value) ? '[]' : '{}';
  if (list.length === 0) return `${from}${to}`;
  return `${from}\n${list.map((each) => inner + each).join(',\n')}\n${indent}${to}`;
}
