/** The tree of kinds: finding one by name, the general kind of any dimension, and words for both (F11a). */

import type { Dimension } from './dimension.ts';
import type { Kind } from './kind.ts';
import { KIND_ROWS } from './kinds.table.ts';

/** All named kinds, in the table's order. */
export const KINDS: readonly Kind[] = KIND_ROWS.map(({ name, dimension, general, metric, inch }) =>
  Object.freeze({ name, dimension, general, metric, inch }),
);

const byName = new Map(KINDS.map((kind) => [kind.name, kind]));
const generals = new Map<Dimension, Kind>();
const words = new Map<Kind, string>();
KINDS.forEach((kind, index) => {
  if (kind.general && !generals.has(kind.dimension)) generals.set(kind.dimension, kind);
  const said = KIND_ROWS[index]?.words;
  if (said) words.set(kind, said);
});

/** The kind with this name: one of KINDS, or one that generalKind has made. Throws RangeError on an unknown name. */
export function kindNamed(name: string): Kind {
  const kind = byName.get(name);
  if (!kind) throw new RangeError(`Unknown quantity kind "${name}"; known: ${[...byName.keys()].join(', ')}`);
  return kind;
}

/** True where kindNamed gives a kind. */
export function isKindName(name: string): boolean {
  return byName.has(name);
}

/** Plain numbers. */
export const PLAIN: Kind = kindNamed('number');

const EXPONENTS = ['mass', 'length', 'time', 'temperature', 'money'] as const;
const SI_SYMBOLS = { mass: 'kg', length: 'm', time: 's', temperature: 'K', money: 'money' } as const;

/** Digits of an exponent: whole where it can be, otherwise rounded to nine places. */
const exponentText = (exponent: number): string =>
  exponent === 1 ? '' : String(Number(exponent.toFixed(9)));

function product(dimension: Dimension, symbolOf: (base: (typeof EXPONENTS)[number]) => string): string {
  const factors = (sign: number): string[] =>
    EXPONENTS.filter((base) => dimension[base] * sign > 0).map((base) => {
      const exponent = exponentText(dimension[base] * sign);
      return symbolOf(base) + (/[./-]/.test(exponent) ? `^${exponent}` : exponent);
    });
  const [above, below] = [factors(1), factors(-1)];
  const divisor = below.length > 1 ? `(${below.join('·')})` : below[0];
  return (above.join('·') || '1') + (divisor ? `/${divisor}` : '');
}

/** The SI product of a dimension: "kg·m2", "1/(m·s)"; "" for a plain number. Money stands as "money". */
export function siSymbol(dimension: Dimension): string {
  const symbol = product(dimension, (base) => SI_SYMBOLS[base]);
  return symbol === '1' ? '' : symbol;
}

/** The general kind of a dimension; one without a row of its own is named by its dimension and shows the SI product. */
export function generalKind(dimension: Dimension): Kind {
  const known = generals.get(dimension);
  if (known) return known;
  const symbol = siSymbol(dimension);
  const made = Object.freeze({
    name: product(dimension, (base) => base),
    dimension,
    general: true,
    metric: symbol,
    inch: symbol,
  });
  generals.set(dimension, made);
  byName.set(made.name, made);
  return made;
}

/** With its article: "a length", "an angle", "a plain number", "a mass·length2". */
export function describeKind(kind: Kind): string {
  return words.get(kind) ?? `${/^[aeiou]/.test(kind.name) ? 'an' : 'a'} ${kind.name}`;
}

/** What a dimension is, with its article: "a length", "a plain number". */
export function describeDimension(dimension: Dimension): string {
  return describeKind(generalKind(dimension));
}

/** F16: false only for two different special kinds of one dimension. Says nothing of different dimensions. */
export function kindsAgree(a: Kind, b: Kind): boolean {
  return a === b || a.general || b.general;
}
