/** Conversion of hardness by the table of ISO 18265. */

import {
  HARDNESS,
  valueWords,
  type Arguments,
  type NoteCaution,
  type Parameter,
} from '../definition/index.ts';
import { failure, type Failure } from '../expression/index.ts';
import { interpolateLinear } from '../numeric/index.ts';
import { HARDNESS_ROWS, type HardnessRow } from './hardness.table.ts';

type Column = 'HV' | 'HB' | 'HRC' | 'Rm';

const PLACES: Readonly<Record<Column, 0 | 1 | 2 | 3>> = { HV: 0, HB: 1, Rm: 2, HRC: 3 };
const LAST_SEEN = 470;

/** What the table holds of each scale; a value outside is refused with these ends. */
const RANGES = { HRC: [20.3, 68], HB: [76, 618], HV: [80, 940] } as const;

/** A hardness in any of the three scales. */
export const HARDNESS_PARAMETERS: readonly Parameter[] = [
  {
    name: 'hardness',
    symbol: 'H',
    kind: HARDNESS,
    hard: { above: '0' },
    meaning: 'hardness in HRC (20.3 to 68), HB (76 to 618) or HV (80 to 940)',
  },
];

export const INDICATION =
  'An indication only, for unalloyed and low alloy steel: not for austenitic, work-hardened or non-ferrous material. It does not replace a measurement in the scale that is asked for.';

export const TABLE_ORIGIN =
  'Rows up to 470 HV were read in a copy of the table, those above are from memory; so are the strengths at 80, 120, 155 and 360 HV, where the copy breaks the run of its rows.';

const valueIn = (row: HardnessRow, column: Column): number | undefined => row[PLACES[column]];

/** The value along one column at a value of another; undefined outside the rows that have both. */
function lookedUp(value: number, from: Column, to: Column): number | undefined {
  const rows = HARDNESS_ROWS.filter(
    (row) => valueIn(row, from) !== undefined && valueIn(row, to) !== undefined,
  );
  const along = (column: Column): number[] => rows.map((row) => valueIn(row, column) ?? Number.NaN);
  return interpolateLinear(along(from), along(to), value);
}

/** The given hardness in another column of the table, a strength in MPa. */
export function converted({ H, H_scale }: Arguments, to: Column, caution: NoteCaution): number | Failure {
  const from = (['HRC', 'HB', 'HV'] as const).find((column) => column === H_scale);
  if (typeof H !== 'number' || from === undefined)
    return failure('#VALUE!', 'hardness wants a value in HRC, HB or HV');
  const [least, most] = RANGES[from];
  if (H < least || H > most)
    return failure(
      '#NUM!',
      `hardness ${valueWords(H, from)} lies outside the table: ${least} to ${most} ${from}`,
    );
  const value = from === to ? H : lookedUp(H, from, to);
  if (value === undefined) return failure('#NUM!', `the table gives no ${to} for ${valueWords(H, from)}`);
  if ((lookedUp(H, from, 'HV') ?? 0) > LAST_SEEN)
    caution(`rows of the table above ${LAST_SEEN} HV are from memory: check them with the standard`);
  return value;
}
