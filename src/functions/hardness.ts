/** Conversion of hardness by the table of ISO 18265. */

import type { Arguments, NoteCaution, Parameter } from '../definition/index.ts';
import { failure, type Failure } from '../expression/index.ts';
import { interpolateLinear } from '../numeric/index.ts';
import { HARDNESS_ROWS, type HardnessRow } from './hardness.table.ts';

type Column = 'HV' | 'HB' | 'HRC' | 'Rm';

const PLACES: Readonly<Record<Column, 0 | 1 | 2 | 3>> = { HV: 0, HB: 1, Rm: 2, HRC: 3 };
const LAST_SEEN = 470;

const scale = (name: string, symbol: Column, least: string, most: string, said: string): Parameter => ({
  name,
  symbol,
  kind: `hardness ${symbol}`,
  metric: symbol,
  inch: symbol,
  hard: { least: `${least} ${symbol}`, most: `${most} ${symbol}` },
  default: { meaning: 'the hardness is given in another scale' },
  meaning: `hardness, if it is given in ${said}`,
});

/** One of the three is given. */
export const HARDNESS_PARAMETERS: readonly Parameter[] = [
  scale('rockwell', 'HRC', '20.3', '68', 'Rockwell C'),
  scale('brinell', 'HB', '76', '618', 'Brinell'),
  scale('vickers', 'HV', '80', '940', 'Vickers'),
];

export const INDICATION =
  'An indication only, for unalloyed and low alloy steel: not for austenitic, work-hardened or non-ferrous material. It does not replace a measurement in the scale that is asked for.';

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
export function converted(args: Arguments, to: Column, caution: NoteCaution): number | Failure {
  const given = (['HRC', 'HB', 'HV'] as const).filter((column) => typeof args[column] === 'number');
  const [from] = given;
  if (from === undefined || given.length > 1)
    return failure('#VALUE!', 'give the hardness in one scale: rockwell, brinell or vickers');
  const hardness = Number(args[from]);
  const value = from === to ? hardness : lookedUp(hardness, from, to);
  if (value === undefined)
    return failure('#NUM!', `the table gives no ${to} for ${Number(hardness.toPrecision(6))} ${from}`);
  if ((lookedUp(hardness, from, 'HV') ?? 0) > LAST_SEEN)
    caution(`rows of the table above ${LAST_SEEN} HV are from memory: check them with the standard`);
  return value;
}
