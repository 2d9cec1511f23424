/** The life of least cost, shared by the two functions that give it. */

import type { Parameter } from '../definition/index.ts';
import { optional, parameter } from './parameter.ts';

export const ECONOMIC_PARAMETERS: readonly Parameter[] = [
  parameter('exponent'),
  parameter('change_time'),
  parameter('edge_set_cost'),
  parameter('machine_rate'),
  optional('share_in_cut', '1'),
];

export const ECONOMIC_LIFE = 'q * (1 / n - 1) * (t_change + C_set / rate)';

export const GREATEST_OUTPUT = 'A cost of 0 for the set of edges gives the life of greatest output.';
