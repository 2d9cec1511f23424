/** Parameters of built-in functions: what inference lets through, and how a value is read for evaluation. */

import {
  asLogical,
  asNumber,
  asText,
  failure,
  isFailure,
  isGrid,
  type ArgumentType,
  type Failure,
  type Grid,
  type UnitSystem,
  type Value,
} from '../expression/index.ts';
import { DIMENSIONLESS, kindNamed } from '../quantity/index.ts';
import { isPlain, perUnit, refused, said, singles, unitOf } from './type-rules.ts';
import type { FailedType, NumberType } from '../expression/index.ts';

/** What a parameter says of an argument's type: nothing, a refusal, a caution, or a unit that a plain number is read in. */
export interface Verdict {
  readonly refusal?: FailedType;
  readonly caution?: string;
  readonly assumed?: string;
}

/** The call around an argument, for messages with a ready replacement. */
export interface Call {
  readonly name: string;
  readonly args: readonly ArgumentType[];
  readonly reading: UnitSystem;
}

export interface Parameter<T> {
  readonly name: string;
  readonly optional?: boolean;
  /** Failures are handed to the function instead of being passed on. */
  readonly raw?: boolean;
  judge(arg: ArgumentType, index: number, call: Call): Verdict;
  read(value: Value): T | Failure;
}

const NOTHING: Verdict = {};

/** The one value of a scalar parameter. */
function single(value: Value): Exclude<Value, Grid> {
  if (isFailure(value) || !isGrid(value)) return value;
  const only = value.grid.length === 1 && value.grid[0]?.length === 1;
  return only ? (value.grid[0]![0] ?? null) : failure('#VALUE!', 'a range stands where one value is needed');
}

const tooMany = (arg: ArgumentType, name: string, call: Call): Verdict | undefined =>
  arg.type.type === 'grid' && (arg.type.rows > 1 || arg.type.columns.length > 1)
    ? { refusal: refused(`${call.name}: ${name} is one value, ${arg.text.trim()} is a range`, '#VALUE!') }
    : undefined;

const emptyCell = (arg: ArgumentType): Verdict => {
  const [type] = singles(arg.type);
  if (type?.type !== 'blank') return NOTHING;
  return { caution: `${type.cell ?? arg.text.trim()} is empty, counted as 0` };
};

/** The call's text with one argument divided by its unit. */
function replacement(call: Call, index: number, type: NumberType, after = ''): string {
  const args = call.args.map((arg, i) =>
    i === index ? perUnit(arg, type.kind, call.reading) : arg.text.trim(),
  );
  return `${call.name}(${args.join('; ')})${after}`;
}

/** A number of any dimension; an empty cell beside quantities is a missing value. */
export const number = (name: string): Parameter<number> => ({
  name,
  judge(arg, _, call) {
    const verdict = tooMany(arg, name, call) ?? emptyCell(arg);
    const quantities =
      verdict.caution !== undefined && call.args.some(({ type }) => !singles(type).every(isPlain));
    const [type] = singles(arg.type);
    const cell = type?.type === 'blank' && type.cell ? type.cell : arg.text.trim();
    return quantities ? { refusal: refused(`value missing: ${cell}`, '#VALUE!') } : verdict;
  },
  read: (value) => asNumber(single(value)),
});

/** "*1 mm", behind a call that lost its unit. */
export const timesUnit = (unit: string): string => `*1 ${unit}`;

/** A plain number; a quantity is refused with the replacement that divides by its unit; `back` gives the unit back. */
export const plain = (name: string, back?: (unit: string) => string): Parameter<number> => ({
  name,
  judge(arg, index, call) {
    const many = tooMany(arg, name, call);
    if (many) return many;
    const [type] = singles(arg.type);
    if (type?.type !== 'number' || isPlain(type)) return emptyCell(arg);
    const instead = replacement(call, index, type, back?.(unitOf(type.kind, call.reading)));
    return { refusal: refused(`${call.name} takes a plain number; ${said(arg, type.kind)}: ${instead}`) };
  },
  read: (value) => asNumber(single(value)),
});

/** A whole number: fractions are cut off. */
export const whole = (name: string): Parameter<number> => {
  const inner = plain(name);
  return {
    ...inner,
    read: (value) => {
      const read = inner.read(value);
      return typeof read === 'number' ? Math.trunc(Number(read.toPrecision(15))) : read;
    },
  };
};

/** An angle; plain numbers are read as radians with a note (F17), a product of an angle is in radians anyway. */
export const angle = (name: string): Parameter<number> => ({
  name,
  judge(arg, _, call) {
    const many = tooMany(arg, name, call);
    if (many) return many;
    const [type] = singles(arg.type);
    if (type?.type !== 'number' || type.kind.dimension === kindNamed('angle').dimension)
      return emptyCell(arg);
    if (type.kind.dimension === DIMENSIONLESS)
      return type.literal === 0 || type.kind.name === 'radian measure' ? NOTHING : { assumed: 'rad' };
    return { refusal: refused(`${call.name} takes an angle; ${said(arg, type.kind)}`) };
  },
  read: (value) => asNumber(single(value)),
});

/** A date. */
export const date = (name: string): Parameter<number> => ({
  name,
  judge(arg, _, call) {
    const many = tooMany(arg, name, call);
    if (many) return many;
    const [type] = singles(arg.type);
    if (type?.type === 'blank') {
      return { refusal: refused(`value missing: ${type.cell ?? name}`, '#VALUE!') };
    }
    if (type?.type !== 'number' || type.kind === kindNamed('date')) return NOTHING;
    return {
      refusal: refused(`${call.name} takes a date; ${said(arg, type.kind)}: write DATE(year; month; day)`),
    };
  },
  read(value) {
    const read = asNumber(single(value));
    return typeof read === 'number' ? Math.floor(read) : read;
  },
});

/** A text; plain numbers become text, a quantity is refused with TEXT(B3/1 mm; "0.0") & " mm" (F13a). */
export const text = (name: string): Parameter<string> => ({
  name,
  judge(arg, _, call) {
    const many = tooMany(arg, name, call);
    if (many) return many;
    const [type] = singles(arg.type);
    if (type?.type !== 'number' || isPlain(type)) return NOTHING;
    const instead = perUnit(arg, type.kind, call.reading);
    const unit = unitOf(type.kind, call.reading);
    return {
      refusal: refused(
        `${call.name} takes text; ${said(arg, type.kind)}: write TEXT(${instead}; "0.0") & " ${unit}" in its place`,
      ),
    };
  },
  read: (value) => asText(single(value)),
});

export const logical = (name: string): Parameter<boolean> => ({
  name,
  judge: (arg, _, call) => tooMany(arg, name, call) ?? NOTHING,
  read: (value) => asLogical(single(value)),
});

/** A range, an inline array or a single value as a table of one cell; failures in it pass on. */
export const list = (name: string): Parameter<Grid> => ({
  name,
  judge: () => NOTHING,
  read(value) {
    if (isFailure(value)) return value;
    if (!isGrid(value)) return { grid: [[value]] };
    return value.grid.flat().find((cell) => isFailure(cell)) ?? value;
  },
});

/** As `list`, with plain numbers only. */
export const plainList = (name: string): Parameter<Grid> => ({
  ...list(name),
  judge(arg, _, call) {
    const odd = singles(arg.type).find(
      (type): type is NumberType => type.type === 'number' && !isPlain(type),
    );
    return odd ? { refusal: refused(`${call.name} takes plain numbers; ${said(arg, odd.kind)}`) } : NOTHING;
  },
});

/** Any value as it comes, failures included. */
export const anything = (name: string): Parameter<Value> => ({
  name,
  raw: true,
  judge: () => NOTHING,
  read: (value) => value,
});

/** As `list`, cells with failures included. */
export const anyList = (name: string): Parameter<Grid> => ({
  name,
  raw: true,
  judge: () => NOTHING,
  read: (value) => (!isFailure(value) && isGrid(value) ? value : { grid: [[value]] }),
});

/** A parameter that may be left out or skipped. */
export const optional = <T>(parameter: Parameter<T>): Parameter<T | undefined> => ({
  ...parameter,
  optional: true,
  judge: (arg, index, call) =>
    arg.type.type === 'neutral' && arg.text.trim() === '' ? NOTHING : parameter.judge(arg, index, call),
  read: (value) => (value === null ? undefined : parameter.read(value)),
});
