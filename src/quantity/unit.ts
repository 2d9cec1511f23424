/** Units as objects: the table made findable, compound units assembled and remembered. */

import { divided, raised, DIMENSIONLESS, multiplied, type Dimension } from './dimension.ts';
import { exactProduct, nearestDouble, ONE, over, power, times, type Exact } from './exact.ts';
import type { Kind } from './kind.ts';
import { generalKind, kindNamed, PLAIN } from './kind-tree.ts';
import { UNIT_ROWS, type UnitRow } from './units.table.ts';

/** SI value = digits * factor + offset, exactly. Interned by symbol: compare with ===. */
export interface Unit {
  /** Canonical spelling in plain letters: "mm", "N·m", "kW/(cm3/min)". */
  readonly symbol: string;
  readonly spellings: readonly string[];
  readonly singular: string;
  readonly plural: string;
  readonly kind: Kind;
  readonly factor: Exact;
  /** In K, for absolute temperatures only. */
  readonly offset?: Exact;
  readonly ucum: string;
  /** The doubles nearest to factor and offset. */
  readonly scale: number;
  readonly shift: number;
}

/** A unit text that is not understood, and symbols that are near it. */
export interface UnknownUnit {
  readonly unknown: string;
  readonly near: readonly string[];
}

export function isUnknownUnit(value: Unit | UnknownUnit): value is UnknownUnit {
  return 'unknown' in value;
}

function unitFrom([symbol, kind, factor, ucum, singular, plural, spellings = [], offset]: UnitRow): Unit {
  const exactFactor = exactProduct(factor);
  const exactOffset = offset === undefined ? undefined : exactProduct(offset);
  return Object.freeze({
    symbol,
    spellings,
    singular,
    plural,
    kind: kindNamed(kind),
    factor: exactFactor,
    ...(exactOffset && { offset: exactOffset }),
    ucum,
    scale: nearestDouble(exactFactor),
    shift: exactOffset ? nearestDouble(exactOffset) : 0,
  });
}

/** All units that have a row, in the table's order. */
export const UNITS: readonly Unit[] = UNIT_ROWS.map(unitFrom);

const bySpelling = new Map<string, Unit>();
for (const unit of UNITS) {
  for (const spelling of [unit.symbol, ...unit.spellings]) bySpelling.set(spelling, unit);
}

/** The row with this symbol; a programming error if there is none. */
export function unitNamed(symbol: string): Unit {
  const unit = bySpelling.get(symbol);
  if (!unit) throw new RangeError(`Unknown unit "${symbol}"`);
  return unit;
}

/** The unit of plain numbers, "1". */
export const ONE_UNIT: Unit = unitNamed('1');
export const PERCENT: Unit = unitNamed('%');
const MONEY = unitNamed('money');

/** What a compound is made of while it is read. */
export interface Part {
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly factor: Exact;
  readonly ucum: string;
  readonly singular: string;
  readonly plural: string;
  /** Counted things by symbol and exponent, which tell a feed per tooth from a length. */
  readonly counted: ReadonlyMap<string, number>;
}

export const ONE_PART: Part = {
  symbol: '1',
  dimension: DIMENSIONLESS,
  factor: ONE,
  ucum: '1',
  singular: '',
  plural: '',
  counted: new Map(),
};

/** The part with this spelling, or undefined. An absolute temperature stands for its difference inside a compound. */
export function atom(spelling: string, currency: string | undefined): Part | undefined {
  const unit = bySpelling.get(spelling) ?? (spelling === currency ? MONEY : undefined);
  if (!unit || isProduct(unit.symbol)) return undefined;
  const counts = unit.kind.name === 'count';
  return {
    symbol: unit === MONEY && currency ? currency : counts ? spelling : unit.symbol,
    // An angle counts as its radian value in products.
    dimension: multiplied(unit.kind.dimension, DIMENSIONLESS),
    factor: unit.factor,
    ucum: unit === MONEY && currency ? `{${currency}}` : unit.offset ? 'K' : unit.ucum,
    singular: unit === MONEY && currency ? currency : unit.singular,
    plural: unit === MONEY && currency ? currency : unit.plural,
    counted: counts ? new Map([[unit.symbol, 1]]) : new Map(),
  };
}

const isProduct = (symbol: string): boolean => /[·/]/.test(symbol);
const bracketed = (symbol: string, needed: boolean): string => (needed ? `(${symbol})` : symbol);
const spoken = (...words: string[]): string => words.filter(Boolean).join(' ');

function joined(a: Part, b: Part, sign: 1 | -1): ReadonlyMap<string, number> {
  const counted = new Map(a.counted);
  for (const [symbol, exponent] of b.counted) {
    counted.set(symbol, (counted.get(symbol) ?? 0) + sign * exponent);
  }
  return counted;
}

export function productOf(a: Part, b: Part): Part {
  return {
    symbol: `${a.symbol}·${bracketed(b.symbol, b.symbol.includes('/'))}`,
    dimension: multiplied(a.dimension, b.dimension),
    factor: times(a.factor, b.factor),
    ucum: `${a.ucum}.${bracketed(b.ucum, b.ucum.includes('/'))}`,
    singular: spoken(a.singular, b.singular),
    plural: spoken(a.singular, b.plural),
    counted: joined(a, b, 1),
  };
}

export function quotientOf(a: Part, b: Part): Part {
  return {
    symbol: `${a.symbol}/${bracketed(b.symbol, isProduct(b.symbol))}`,
    dimension: divided(a.dimension, b.dimension),
    factor: over(a.factor, b.factor),
    ucum: `${a.ucum}/${bracketed(b.ucum, /[./]/.test(b.ucum))}`,
    singular: spoken(a.singular, 'per', b.singular),
    plural: spoken(a.plural, 'per', b.singular),
    counted: joined(a, b, -1),
  };
}

const POWER_WORDS = new Map([
  [2, 'squared'],
  [3, 'cubed'],
]);

/** UCUM has whole exponents on simple units only: a compound is repeated, a fractional power goes along as an annotation. */
function ucumPower({ ucum, symbol }: Part, exponent: number, digits: string): string {
  if (!Number.isInteger(exponent)) return `{${symbol}^${digits}}`;
  if (!/[./]/.test(ucum)) return ucum + digits;
  const repeated = Array.from({ length: Math.abs(exponent) }, () => `(${ucum})`);
  return exponent < 0 ? `1/${repeated.join('/')}` : repeated.join('.');
}

/** A power with a whole exponent; undefined where the exact factor has no such root. */
export function powerOf(base: Part, exponent: number): Part | undefined {
  if (exponent === 1) return base;
  if (!Number.isInteger(exponent) && base.factor.numerator !== base.factor.denominator) return undefined;
  const digits = String(Number(exponent.toFixed(9)));
  const text = /^\d+$/.test(digits) ? digits : `^${digits}`;
  const word = POWER_WORDS.get(exponent) ?? `to the power ${digits}`;
  const area =
    base.dimension.length === 1 && /^[a-z]+$/.test(base.symbol) && (exponent === 2 || exponent === 3);
  const adjective = exponent === 2 ? 'square' : 'cubic';
  return {
    symbol: bracketed(base.symbol, isProduct(base.symbol)) + text,
    dimension: raised(base.dimension, exponent),
    factor: Number.isInteger(exponent) ? power(base.factor, exponent) : base.factor,
    ucum: ucumPower(base, exponent, digits),
    singular: area ? `${adjective} ${base.singular}` : `${base.singular} ${word}`,
    plural: area ? `${adjective} ${base.plural}` : `${base.plural} ${word}`,
    counted: new Map([...base.counted].map(([symbol, n]) => [symbol, n * exponent])),
  };
}

/** Special kinds that the counted things say (F11a): a length per tooth or revolution, revolutions or parts per time. */
function kindOf({ dimension, counted }: Part): Kind {
  const general = generalKind(dimension);
  const [[thing, exponent] = [], ...others] = [...counted].filter(([, n]) => n !== 0);
  if (!thing || others.length > 0) return general;
  const said = `${general.name} ${thing} ${exponent}`;
  const kinds: Record<string, string> = {
    'length teeth -1': 'feed per tooth',
    'length rev -1': 'feed per revolution',
    '1/time rev 1': 'rotational speed',
    '1/time parts 1': 'rate',
  };
  const name = general === PLAIN && exponent === 1 ? 'count' : kinds[said];
  return name === undefined ? general : kindNamed(name);
}

/** The unit that a compound amounts to. */
export function unitOfPart(part: Part): Unit {
  return Object.freeze({
    symbol: part.symbol,
    spellings: [],
    singular: part.singular,
    plural: part.plural,
    kind: kindOf(part),
    factor: part.factor,
    ucum: part.ucum,
    scale: nearestDouble(part.factor),
    shift: 0,
  });
}

const currencies = new Map<string, Unit>();

/** The unit of money under the notebook's currency code. */
function moneyIn(currency: string): Unit {
  const known = currencies.get(currency);
  if (known) return known;
  const made = Object.freeze({
    ...MONEY,
    symbol: currency,
    spellings: [MONEY.symbol],
    ucum: `{${currency}}`,
    singular: currency,
    plural: currency,
  });
  currencies.set(currency, made);
  return made;
}

/** A unit with a row, by any of its spellings; money also by the notebook's currency code (F22). */
export function knownUnit(spelling: string, currency: string | undefined): Unit | undefined {
  const unit = bySpelling.get(spelling);
  if (unit) return unit === MONEY && currency ? moneyIn(currency) : unit;
  return spelling === currency ? moneyIn(spelling) : undefined;
}

/** Every spelling that has a row. */
export function knownSpellings(): readonly string[] {
  return [...bySpelling.keys()];
}
