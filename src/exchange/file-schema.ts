/** What may stand in a notebook file of format 1: allow-listed keys, checked into fresh objects. */

import * as v from 'valibot';
import { LIMITS, ROLES } from '../document/index.ts';

const LINE = 200;
const WORDS = 20_000;

const line = v.pipe(v.string(), v.maxLength(LINE));
const words = v.pipe(v.string(), v.maxLength(WORDS));
const digits = (least: number) => v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(15));

const FormatSchema = v.variant('type', [
  v.strictObject({ type: v.literal('significant'), digits: digits(1) }),
  v.strictObject({ type: v.literal('decimals'), digits: digits(0) }),
  v.strictObject({ type: v.literal('fraction'), denominator: v.picklist([2, 4, 8, 16, 32, 64, 128]) }),
]);

export const RoleSchema = v.picklist(ROLES);

export const CellSchema = v.object({
  content: v.pipe(v.string(), v.maxLength(LIMITS.contentLength)),
  unit: v.exactOptional(line),
  format: v.exactOptional(FormatSchema),
  role: v.exactOptional(RoleSchema),
  choices: v.exactOptional(v.pipe(v.array(words), v.maxLength(200))),
  limits: v.exactOptional(
    v.strictObject({
      low: v.exactOptional(line),
      lowText: v.exactOptional(words),
      high: v.exactOptional(line),
      highText: v.exactOptional(words),
    }),
  ),
  source: v.exactOptional(words),
  label: v.exactOptional(words),
  note: v.exactOptional(words),
  machine: v.exactOptional(
    v.variant('place', [
      v.strictObject({ place: v.literal('changed'), step: v.exactOptional(line) }),
      v.strictObject({ place: v.literal('shown') }),
    ]),
  ),
  acknowledged: v.exactOptional(
    v.pipe(
      v.array(v.strictObject({ key: words, reason: words, text: words, content: words })),
      v.maxLength(100),
    ),
  ),
  changed: v.exactOptional(
    v.strictObject({ by: line, at: line, from: words, reason: v.exactOptional(words) }),
  ),
});

export const NameSchema = v.object({
  name: line,
  target: line,
  symbol: v.exactOptional(line),
});

const count = (most: number) => v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(most));

/** Cells, names and widths are read one by one, so that a complaint can name the place. */
export const WorksheetSchema = v.object({
  id: v.pipe(v.string(), v.regex(/^w[1-9]\d{0,8}$/, 'an id is w and a number')),
  title: v.pipe(v.string(), v.minLength(1), v.maxLength(LIMITS.titleLength)),
  common: v.boolean(),
  rows: count(LIMITS.rows),
  columns: count(LIMITS.columns),
  headRow: v.exactOptional(v.literal(true)),
  headColumn: v.exactOptional(v.literal(true)),
  names: v.pipe(v.array(v.unknown()), v.maxLength(5000)),
  widths: v.looseObject({}),
  cells: v.looseObject({}),
});

export const WidthSchema = v.pipe(v.number(), v.minValue(1), v.maxValue(10_000));

export const NotebookSchema = v.object({
  format: v.pipe(v.number(), v.integer(), v.minValue(1)),
  id: v.pipe(v.string(), v.minLength(1), v.maxLength(LINE)),
  title: v.pipe(v.string(), v.minLength(1), v.maxLength(LIMITS.titleLength)),
  reading: v.picklist(['metric', 'inch']),
  display: v.picklist(['metric', 'inch']),
  currency: v.pipe(v.string(), v.regex(/^[A-Z]{3}$/, 'a currency is a code of three capitals')),
  worksheets: v.pipe(v.array(v.unknown()), v.minLength(1), v.maxLength(LIMITS.worksheets)),
  parts: v.exactOptional(v.looseObject({})),
  results: v.exactOptional(v.looseObject({})),
  program: v.exactOptional(line),
});

export const ResultSchema = v.object({
  value: v.union([v.number(), words, v.boolean(), v.null()]),
  kind: line,
  unit: line,
  error: v.exactOptional(v.object({ code: line, message: words })),
  cautions: v.exactOptional(
    v.pipe(
      v.array(v.object({ key: words, text: words, type: v.picklist(['caution', 'assumed', 'breach']) })),
      v.maxLength(100),
    ),
  ),
});
