/** Which decimal mark the numbers of a table have: found where one of them tells, asked where none does. */

export interface FoundMark {
  readonly decimalMark: '.' | ',';
  /** Set where every number with a mark has two readings. */
  readonly example?: { readonly text: string; readonly readings: readonly string[] };
}

const SPACES = /[ \u00a0\u2009\u202f]/g;

/** A number with at least one mark in it: 1.5 1,5 1.234,5 1,234,567. */
const MARKED = /^[+-]?\d*(?:[.,]\d+)+(?:[eE][+-]?\d+)?$/;

/** A number with its unit behind it says as much as the number alone. */
const UNIT_BEHIND = /^([+-]?\d[\d.,]*(?:[eE][+-]?\d+)?)[ \u00a0\u202f]+[^\d\s]\S*$/;

/** What one number says: its decimal mark, or nothing where it has two readings. */
function markOf(text: string): '.' | ',' | undefined {
  const marks: readonly string[] = text.match(/[.,]/g) ?? [];
  const last = marks.at(-1);
  const other = (mark: string): '.' | ',' => (mark === '.' ? ',' : '.');
  if (last !== '.' && last !== ',') return undefined;
  if (marks.includes(other(last))) return last;
  if (marks.length > 1) return other(last);
  // One mark before exactly three digits may part thousands, unless a 0 or more than three digits stand before it.
  return /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(text) ? undefined : last;
}

/** Looks at all fields; those that are no numbers say nothing. */
export function findDecimalMark(fields: readonly string[]): FoundMark {
  let example: string | undefined;
  for (const field of fields) {
    const text = field.trim().replace('\u2212', '-').replace(UNIT_BEHIND, '$1').replaceAll(SPACES, '');
    if (!MARKED.test(text)) continue;
    const mark = markOf(text);
    if (mark) return { decimalMark: mark };
    example ??= text;
  }
  if (example === undefined) return { decimalMark: '.' };
  const readings = [example.replace(',', '.'), example.replace(/[.,]/, '')];
  return { decimalMark: '.', example: { text: example, readings } };
}

/** The number of a field under a decimal mark, with a point and without groups; undefined where it is none. */
export function pointNumber(field: string, decimalMark: '.' | ','): string | undefined {
  const text = field.trim().replace('\u2212', '-');
  const group = decimalMark === '.' ? ',' : '.';
  const number = new RegExp(
    `^[+-]?(?:\\d{1,3}(?:([${group} \\u00a0\\u2009\\u202f])\\d{3})(?:\\1\\d{3})*|\\d+)?(?:[${decimalMark}]\\d*)?(?:[eE][+-]?\\d{1,3})?$`,
  );
  if (!/\d/.test(text) || !number.test(text) || /^[+-]?[eE]/.test(text)) return undefined;
  return text.replaceAll(SPACES, '').replaceAll(group, '').replace(decimalMark, '.').replace(/^\+/, '');
}
