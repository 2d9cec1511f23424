/** What may stand in the lists beside the worksheets: one schema a list, checked into fresh objects. */

import * as v from 'valibot';
import { LIMITS, PART_LIMITS } from '../document/index.ts';
import type { PartName } from '../document/index.ts';

const line = v.pipe(v.string(), v.maxLength(200));
const words = v.pipe(v.string(), v.maxLength(20_000));
const content = v.pipe(v.string(), v.maxLength(LIMITS.contentLength));
const place = (most: number) => v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(most - 1));
const count = (least: number, most: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(most));
const list = <Item extends v.GenericSchema>(item: Item, most = 1000, least = 0) =>
  v.pipe(v.array(item), v.minLength(least), v.maxLength(most));
const one = v.exactOptional(v.literal(true));

const cell = v.strictObject({ worksheet: line, row: place(LIMITS.rows), column: place(LIMITS.columns) });
const block = v.strictObject({
  worksheet: line,
  block: v.strictObject({
    row: place(LIMITS.rows),
    column: place(LIMITS.columns),
    rows: count(1, LIMITS.rows),
    columns: count(1, LIMITS.columns),
  }),
});

const distribution = v.variant('type', [
  v.strictObject({
    type: v.literal('normal'),
    uncertainty: content,
    degrees: v.exactOptional(v.pipe(v.number(), v.minValue(1))),
  }),
  v.strictObject({ type: v.picklist(['uniform', 'triangular']), halfWidth: content }),
  v.strictObject({ type: v.literal('sample'), from: block }),
]);

const range = v.variant('type', [
  v.strictObject({
    type: v.picklist(['linear', 'logarithmic']),
    from: content,
    to: content,
    count: count(2, LIMITS.rows),
  }),
  v.strictObject({ type: v.literal('list'), values: list(content, LIMITS.rows, 1) }),
]);

const study = v.variant('type', [
  v.strictObject({
    type: v.literal('solve'),
    result: cell,
    wanted: content,
    given: cell,
    low: content,
    high: content,
  }),
  v.strictObject({
    type: v.literal('search'),
    result: cell,
    aim: v.picklist(['largest', 'smallest']),
    givens: list(v.strictObject({ place: cell, low: content, high: content }), 4, 1),
    constraints: list(
      v.strictObject({ place: cell, relation: v.picklist(['at most', 'at least']), limit: content }),
      100,
    ),
  }),
  v.strictObject({
    type: v.literal('sweep'),
    givens: list(v.strictObject({ place: cell, range }), 2, 1),
    results: list(cell, 100),
  }),
  v.strictObject({
    type: v.literal('spread'),
    results: list(cell, 100),
    samples: count(100, 1_000_000),
    seed: count(0, 0xffffffff),
  }),
]);

const series = v.strictObject({
  mark: v.picklist(['points', 'line', 'bars', 'band']),
  y: block,
  to: v.exactOptional(block),
  x: v.exactOptional(block),
  label: v.exactOptional(words),
});

const figure = v.variant('type', [
  v.strictObject({
    type: v.literal('plot'),
    x: v.exactOptional(block),
    series: list(series, 20),
    levels: v.exactOptional(list(v.strictObject({ place: cell, words: v.exactOptional(words) }), 20)),
    logarithmicX: one,
    logarithmicY: one,
  }),
  v.strictObject({
    type: v.literal('sketch'),
    sketch: line,
    values: list(v.strictObject({ parameter: line, place: cell }), 50),
  }),
]);

const recordingColumn = v.strictObject({
  name: line,
  unit: v.exactOptional(line),
  values: list(v.nullable(v.number()), PART_LIMITS.recordingRows),
});

const correction = v.strictObject({ at: line, by: line, what: line, was: words });

const pass = v.strictObject({
  id: line,
  run: line,
  edge: line,
  cut: content,
  values: list(v.strictObject({ measurand: line, content }), 100),
  note: v.exactOptional(words),
  by: line,
  at: line,
  photograph: v.exactOptional(line),
  corrections: v.exactOptional(list(correction, 1000)),
  withdrawn: v.exactOptional(words),
});

const id = { id: v.pipe(line, v.minLength(1)) };

/** Each list's record; keys it does not know are kept. */
export const PART_SCHEMAS = {
  variants: v.object({
    ...id,
    title: line,
    shown: one,
    note: v.exactOptional(words),
    values: list(v.strictObject({ place: cell, content })),
  }),
  watched: v.object({ ...id, place: cell, best: v.exactOptional(v.picklist(['largest', 'smallest'])) }),
  spreads: v.object({ ...id, place: cell, distribution }),
  studies: v.object({ ...id, title: line, study }),
  figures: v.object({ ...id, title: line, content: figure }),
  recordings: v.object({
    ...id,
    title: line,
    columns: list(recordingColumn, PART_LIMITS.recordingColumns, 1),
    source: v.exactOptional(words),
  }),
  photographs: v.object({
    ...id,
    type: v.picklist(['image/jpeg', 'image/png', 'image/webp']),
    data: v.pipe(
      v.string(),
      v.maxLength(PART_LIMITS.photographText),
      v.regex(/^[\d+/A-Za-z]*={0,2}$/, 'it is not base64'),
    ),
    width: count(1, 10_000),
    height: count(1, 10_000),
    words,
    at: v.exactOptional(line),
  }),
  trials: v.object({
    ...id,
    title: line,
    factors: list(v.strictObject({ name: line, levels: list(content, 100, 1) }), 20),
    repeats: count(1, 1000),
    seed: count(0, 0xffffffff),
    runs: list(v.strictObject({ id: line, levels: list(place(100), 20) })),
    stock: v.exactOptional(v.strictObject({ atHand: content, perRun: content })),
    cutUnit: v.exactOptional(line),
    measurands: list(
      v.strictObject({
        name: line,
        unit: line,
        limit: v.exactOptional(content),
        when: v.exactOptional(words),
      }),
      100,
    ),
    passes: list(pass, 10_000),
  }),
  reviews: v.object({ ...id, place: cell, content, unit: line, initials: line, at: line }),
} satisfies Record<PartName, v.GenericSchema>;
