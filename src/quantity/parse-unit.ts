/** Reading a unit as typed: a row of the table by any spelling, otherwise a compound of them (F4, F7). */

import { nearUnits } from './near-units.ts';
import {
  atom,
  knownUnit,
  ONE_PART,
  powerOf,
  productOf,
  quotientOf,
  unitOfPart,
  type Part,
  type Unit,
  type UnknownUnit,
} from './unit.ts';

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** One spelling for signs that look alike: micro, multiplication dot, superscripts, minus, degree. */
export function plainUnitText(text: string): string {
  return text
    .trim()
    .replace(/[µμ]/g, 'u')
    .replace(/º/g, '°')
    .replace(/⁻(?=[⁰¹²³⁴⁵⁶⁷⁸⁹])/g, '^-')
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, (digit) => String(SUPERSCRIPTS.indexOf(digit)))
    .replace(/[−‐‑]/g, '-')
    .replace(/[*⋅∙•×]/g, '·')
    .replace(/(?<!\^-?\d+)\.|\.(?!\d)/g, '·');
}

/** Longest unit text that is looked at. */
const LENGTH_LIMIT = 60;
const NAME = /[A-Za-z_°%′″]+/y;
/** m2, m^2, s^-1, m^0.5, m^(1/2); a minus straight after the name is a subtraction. */
const EXPONENT = /\^\((-?\d{1,2})(?:\/(\d{1,2}))?\)|\^(-?\d{1,2}(?:\.\d{1,9})?)|(\d{1,2})/y;

class Reader {
  private at = 0;
  constructor(
    private readonly text: string,
    private readonly currency: string | undefined,
  ) {}

  /** The whole text as one compound, or undefined. */
  whole(): Part | undefined {
    const part = this.product();
    return this.at === this.text.length ? part : undefined;
  }

  private take(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.at;
    const match = pattern.exec(this.text);
    if (match) this.at = pattern.lastIndex;
    return match;
  }

  private takeSign(sign: string): boolean {
    if (this.text[this.at] !== sign) return false;
    this.at += 1;
    return true;
  }

  /** factor · factor ... / factor: after a solidus nothing follows without parentheses (ISO 80000-1, 7.1.4). */
  private product(): Part | undefined {
    let result = this.text.startsWith('1/', this.at) ? ONE_PART : undefined;
    if (result) this.at += 1;
    else result = this.factor();
    while (result && this.takeSign('·')) {
      const next = this.factor();
      result = next && productOf(result, next);
    }
    if (!result || !this.takeSign('/')) return result;
    const divisor = this.factor();
    return divisor && quotientOf(result, divisor);
  }

  private factor(): Part | undefined {
    let base: Part | undefined;
    if (this.takeSign('(')) {
      base = this.product();
      if (!this.takeSign(')')) return undefined;
    } else {
      const name = this.take(NAME)?.[0];
      base = name === undefined ? undefined : atom(name, this.currency);
    }
    const exponent = this.take(EXPONENT);
    if (!base || !exponent) return base;
    const [, above, below = '1', decimal, plain] = exponent;
    const value = above === undefined ? Number(decimal ?? plain) : Number(above) / Number(below);
    return Number.isFinite(value) && value !== 0 ? powerOf(base, value) : undefined;
  }
}

const CACHE_LIMIT = 5000;
const SUGGESTIONS = 4;
const read = new Map<string, Unit | UnknownUnit>();
const compounds = new Map<string, Unit>();

function readUnit(text: string, currency: string | undefined): Unit | undefined {
  const plain = plainUnitText(text);
  if (plain.length > LENGTH_LIMIT || plain === '') return undefined;
  const known = knownUnit(plain, currency);
  if (known) return known;
  const part = new Reader(plain, currency).whole();
  if (!part) return undefined;
  const row = knownUnit(part.symbol, currency);
  if (row) return row;
  const compound = compounds.get(part.symbol) ?? unitOfPart(part);
  compounds.set(part.symbol, compound);
  return compound;
}

/** Symbols that the text may be meant for: with the parentheses it lacks, with its unknown words replaced, or near it as a whole. */
function suggestions(text: string, currency: string | undefined): readonly string[] {
  const plain = plainUnitText(text).slice(0, LENGTH_LIMIT);
  const found = new Set<string>();
  const offer = (candidate: string): void => {
    const symbol = readUnit(candidate, currency)?.symbol;
    if (symbol !== undefined) found.add(symbol);
  };
  const [, above, below] = /^([^/()]+)\/([^()]+)$/.exec(plain) ?? [];
  if (above && below && /[·/]/.test(below)) offer(`${above}/(${below.replaceAll('/', '·')})`);
  for (const near of nearUnits(plain, currency)) found.add(near);
  if (/[·/]/.test(plain)) {
    const known = (name: string): string =>
      atom(name, currency) ? name : (nearUnits(name, currency, 1)[0] ?? name);
    offer(plain.replace(/[A-Za-z_°%]+/g, known));
  }
  return [...found].slice(0, SUGGESTIONS);
}

/**
 * The unit that a text means; equal units are the same object. `currency` is the notebook's ISO 4217 code:
 * it and "money" both mean its one currency (F22). An unknown text comes back with near symbols (F4).
 */
export function parseUnit(text: string, currency?: string): Unit | UnknownUnit {
  const key = `${currency ?? ''} ${text}`;
  const before = read.get(key);
  if (before) return before;
  const unit = readUnit(text, currency) ?? { unknown: text, near: suggestions(text, currency) };
  if (read.size >= CACHE_LIMIT) read.clear();
  read.set(key, unit);
  return unit;
}
