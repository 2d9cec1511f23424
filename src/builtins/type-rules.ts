/** Rules of types that many functions share: one dimension for all (F13, F14), words of refusal, products and quotients. */

import { failure, type ArgumentType } from '../expression/index.ts';
import type {
  ErrorCode,
  FailedType,
  GridType,
  LogicalType,
  NeutralType,
  NumberType,
  ScalarType,
  TextType,
  UnitSystem,
  ValueType,
} from '../expression/index.ts';
import {
  DIMENSIONLESS,
  PLAIN,
  describeDimension,
  describeKind,
  divided,
  generalKind,
  kindNamed,
  multiplied,
  raised,
} from '../quantity/index.ts';
import type { Dimension, Kind } from '../quantity/index.ts';

export const PLAIN_NUMBER: NumberType = { type: 'number', kind: PLAIN };
export const TEXT: TextType = { type: 'text' };
export const LOGICAL: LogicalType = { type: 'logical' };
export const NEUTRAL: NeutralType = { type: 'neutral' };
export const ANGLE: NumberType = { type: 'number', kind: kindNamed('angle') };
export const DATE: NumberType = { type: 'number', kind: kindNamed('date') };

export const numberOf = (kind: Kind): NumberType => ({ type: 'number', kind });
export const numberWith = (dimension: Dimension): NumberType => numberOf(generalKind(dimension));

/** A type that shows #UNIT! (or another code) with these words. */
export const refused = (message: string, code: ErrorCode = '#UNIT!'): FailedType => ({
  type: 'failed',
  failure: failure(code, message),
});

/** All single types in an argument: itself, or one a column of a range. */
export const singles = (type: ValueType): readonly ScalarType[] =>
  type.type === 'grid' ? type.columns : [type];

/** The first failure in an argument. */
export const failedIn = (type: ValueType): FailedType | undefined =>
  singles(type).find((single) => single.type === 'failed');

export const isPlain = (type: ScalarType): boolean =>
  type.type !== 'number' || type.kind.dimension === DIMENSIONLESS;

/** A written 0 fits every dimension (F14). */
export const isZero = (type: NumberType): boolean =>
  type.literal === 0 && type.kind.dimension === DIMENSIONLESS;

/** The unit a quantity of this kind is shown in, for ready replacements. */
export const unitOf = (kind: Kind, reading: UnitSystem): string =>
  (reading === 'inch' ? kind.inch : kind.metric) || generalKind(kind.dimension).metric || 'rad';

/** The argument's text divided by a unit: "B3/1 mm", "(B3+B4)/1 mm". */
export function perUnit(arg: ArgumentType, kind: Kind, reading: UnitSystem): string {
  const text = arg.text.trim();
  const whole = /^[^\s+\-*/^&=<>%]+$/u.test(text) || /^[\p{L}.]+\([^()]*\)$/u.test(text);
  return `${whole ? text : `(${text})`}/1 ${unitOf(kind, reading)}`;
}

const kindShared = (kinds: readonly Kind[]): Kind =>
  kinds.every((kind) => kind === kinds[0]) ? kinds[0]! : generalKind(kinds[0]!.dimension);

/** "B3 is a length". */
export const said = (arg: ArgumentType, kind: Kind): string =>
  `${arg.text.trim()} is ${describeDimension(kind.dimension)}`;

interface Named {
  readonly arg: ArgumentType;
  readonly type: NumberType;
}

const numbersIn = (args: readonly ArgumentType[]): Named[] =>
  args.flatMap((arg) => singles(arg.type).flatMap((type) => (type.type === 'number' ? [{ arg, type }] : [])));

/**
 * The one type of all numbers in the arguments; texts, logicals and blanks are neutral, a written 0 fits all.
 * undefined if there is no number.
 */
export function shared(call: string, args: readonly ArgumentType[]): NumberType | FailedType | undefined {
  const numbers = numbersIn(args);
  const telling = numbers.filter(({ type }) => !isZero(type));
  const first = telling[0] ?? numbers[0];
  if (!first) return undefined;
  for (const { arg, type } of telling) {
    if (type.kind.dimension === first.type.kind.dimension) continue;
    if (arg === first.arg)
      return refused(
        `${call}: the columns of ${arg.text.trim()} mix ${describeDimension(first.type.kind.dimension)} and ${describeDimension(type.kind.dimension)}`,
      );
    return refused(
      `${call} needs values of one dimension: ${said(first.arg, first.type.kind)}, ${said(arg, type.kind)}`,
    );
  }
  return numberOf(kindShared((telling.length ? telling : numbers).map(({ type }) => type.kind)));
}

/** As `shared`, a plain number where there is none. */
export const sharedOrPlain = (call: string, args: readonly ArgumentType[]): NumberType | FailedType =>
  shared(call, args) ?? PLAIN_NUMBER;

/** Dates and hardness scales have no products, quotients or powers (F11). */
export function noArithmetic(type: NumberType): FailedType | undefined {
  const { scale } = type.kind.dimension;
  if (scale === 'date')
    return refused('a date has no products or quotients: take DAYS, which gives plain numbers');
  return scale === '' || scale === 'angle'
    ? undefined
    : refused(`${describeKind(type.kind)} has no products or quotients`);
}

/** Sums and differences of absolute temperatures are temperatures no more (F21), of dates they are no dates. */
export function difference(type: NumberType | FailedType): NumberType | FailedType {
  if (type.type === 'failed') return type;
  if (type.kind.dimension.scale === 'date') {
    return refused('dates have no sum and no spread of their own: take DAYS, which gives plain numbers');
  }
  return type.kind.name === 'temperature' ? numberWith(type.kind.dimension) : type;
}

/** The general kind of a product, a quotient, a power. */
export const timesType = (a: NumberType, b: NumberType): NumberType | FailedType =>
  noArithmetic(a) ?? noArithmetic(b) ?? numberWith(multiplied(a.kind.dimension, b.kind.dimension));
export const overType = (a: NumberType, b: NumberType): NumberType | FailedType =>
  noArithmetic(a) ?? noArithmetic(b) ?? numberWith(divided(a.kind.dimension, b.kind.dimension));
export const powerType = (a: NumberType, exponent: number): NumberType | FailedType =>
  noArithmetic(a) ?? numberWith(raised(a.kind.dimension, exponent));

/** What a change of y is per change of x. */
export function slopeType(y: NumberType, x: NumberType): NumberType | FailedType {
  const rise = difference(y);
  return rise.type === 'failed' ? rise : overType(rise, x);
}

/** A table of one type in every column; of one cell, that cell. */
export const gridOf = (column: ScalarType, rows: number, columns: number): ValueType =>
  rows === 1 && columns === 1
    ? column
    : { type: 'grid', columns: Array.from({ length: columns }, () => column), rows };

/** Rows and columns of an argument. */
export const sizeOf = (type: ValueType): readonly [number, number] =>
  type.type === 'grid' ? [type.rows, type.columns.length] : [1, 1];

/** The types of an argument's columns. */
export const columnsOf = (type: ValueType): GridType['columns'] => singles(type);
