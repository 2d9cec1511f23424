/** What a cell's canonical text means (F1, F3, F4); never depends on a locale. */

import { kindNamed, ONE_UNIT, PLAIN, readQuantity, toSI } from '../quantity/index.ts';
import type { Kind, Unit } from '../quantity/index.ts';
import type { Cell } from './notebook.ts';

export type Content =
  | { readonly type: 'empty' }
  /** The text with its =. */
  | { readonly type: 'formula'; readonly text: string }
  | {
      readonly type: 'quantity';
      /** Decimal digits; a fraction is worked out ("3/8 in" is 0.375). */
      readonly digits: string;
      readonly unit: Unit;
      /** As typed. */
      readonly unitText: string;
      readonly si: number;
      readonly kind: Kind;
    }
  | { readonly type: 'number'; readonly digits: string; readonly si: number; readonly kind: Kind }
  | { readonly type: 'logical'; readonly value: boolean }
  /** Days since 1899-12-30, as spreadsheets of the OpenFormula standard commonly count. */
  | { readonly type: 'date'; readonly day: number; readonly si: number; readonly kind: Kind }
  | { readonly type: 'text'; readonly text: string }
  | {
      readonly type: 'unknownUnit';
      readonly digits: string;
      readonly unknown: string;
      readonly near: readonly string[];
      /** The whole entry, as typed. */
      readonly text: string;
    };

const DAY = 86_400_000;
const DAY_ZERO = Date.UTC(1899, 11, 30);
const ISO_DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/** The day number of an ISO date; undefined where it is none (2026-02-30). */
export function dayNumber(text: string): number | undefined {
  const [, year = '', month = '', day = ''] = ISO_DATE.exec(text) ?? [];
  if (year === '') return undefined;
  const date = new Date(0);
  date.setUTCFullYear(Number(year), Number(month) - 1, Number(day));
  if (date.getUTCMonth() + 1 !== Number(month) || date.getUTCDate() !== Number(day)) return undefined;
  return Math.round((date.getTime() - DAY_ZERO) / DAY);
}

/** The ISO date of a whole day number of the years 0 to 9999. */
export function isoDate(day: number): string {
  return new Date(DAY_ZERO + Math.floor(day) * DAY).toISOString().slice(0, 10);
}

const EMPTY: Content = Object.freeze({ type: 'empty' });
const text = (content: string): Content => ({ type: 'text', text: content });

/** Reads canonical text. `currency` is the notebook's code (F22). */
export function readContent(content: string, currency?: string): Content {
  if (content === '') return EMPTY;
  const first = content.charCodeAt(0);
  if (first === 0x3d) return { type: 'formula', text: content };
  if (first === 0x27) return text(content.slice(1));
  const trimmed = content.trim();
  const day = dayNumber(trimmed);
  if (day !== undefined) return { type: 'date', day, si: day, kind: kindNamed('date') };
  const read = readQuantity(trimmed, currency === undefined ? {} : { currency });
  if (read && !('refused' in read)) {
    const { digits } = read;
    if ('unknown' in read) {
      return { type: 'unknownUnit', digits, unknown: read.unknown, near: read.near, text: content };
    }
    if (read.unit && read.unit !== ONE_UNIT) {
      const { unit, unitText = unit.symbol } = read;
      const si = toSI(digits, unit);
      if (Number.isFinite(si)) return { type: 'quantity', digits, unit, unitText, si, kind: unit.kind };
    } else if (Number.isFinite(Number(digits))) {
      return { type: 'number', digits, si: Number(digits), kind: PLAIN };
    }
  }
  if (/^(?:true|false)$/i.test(trimmed)) return { type: 'logical', value: trimmed.length === 4 };
  return text(content);
}

const known = new Map<string, WeakMap<Cell, Content>>();

/** The same for a cell, remembered as long as the cell lives. */
export function contentOf(cell: Cell, currency = ''): Content {
  let cells = known.get(currency);
  if (!cells) {
    cells = new WeakMap();
    known.set(currency, cells);
  }
  let content = cells.get(cell);
  if (!content) {
    content = readContent(cell.content, currency);
    cells.set(cell, content);
  }
  return content;
}
