/** Wear over time as it is read at the machine. */

import type { Parameter } from '../definition/index.ts';
import { parameter } from './parameter.ts';

export const WEAR_TIMES: Parameter = parameter('tool_life', {
  name: 'times',
  symbol: 't',
  list: true,
  hard: { least: '0' },
  meaning: 'times in the cut of the readings, rising',
});

export const WEARS: Parameter = parameter('wear', {
  name: 'wears',
  list: true,
  meaning: 'wear read at these times',
});
