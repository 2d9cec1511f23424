/** Parameters and conditions that the functions for threads share: 60 deg profile, lengths in metres inside. */

import type { Condition, Parameter } from '../definition/index.ts';
import { optional, parameter } from './parameter.ts';
import { MINOR_TOLERANCES } from './threads.table.ts';

export const MAJOR: Parameter = parameter('major_diameter');

/** Pitch of a thread whose major diameter is given too. */
export const PITCH: Parameter = parameter('pitch', {
  hard: { above: '0', below: 'd / 2' },
  usual: { from: '0.01 * d', to: '0.26 * d' },
  meaning: 'distance from thread to thread along the axis',
});

export const THREAD_LENGTH: Parameter = parameter('length', { meaning: 'length of the full thread' });

export const ROWS: Parameter = {
  name: 'rows',
  symbol: 'rows',
  kind: 'text',
  words: ['single', 'every', 'every other'],
  default: { value: '"every"' },
  meaning: '"single" row of teeth, a tooth in "every" pitch, or in "every other" pitch',
};

export const CUTTER_LENGTH: Parameter = optional('length', 'L', {
  name: 'cutter_length',
  symbol: 'L_c',
  meaning: 'cutting length of the thread mill; left out: as long as the thread',
});

/** A thread mill must go into the hole. */
export const MILL_IN_HOLE: Condition = {
  when: 'Dc >= d - 5 * SQRT(3) / 8 * P',
  text: 'the cutter {Dc} does not go into the hole of a thread {d} with pitch {P}',
};

export const MILL_TOO_LARGE: Condition = {
  when: 'Dc > IF(P < 0.1 * d; 0.8; 0.7) * d',
  text: 'the cutter {Dc} is above 0.7 of the thread {d} (0.8 for a pitch below a tenth of it): the flanks are cut too full',
};

/** Basic minor diameter of the internal thread. */
export const minorInternal = (major: number, pitch: number): number =>
  major - ((5 * Math.sqrt(3)) / 8) * pitch;

/** Pitches that the table of minor diameter tolerances holds, in mm. */
export const TOLERANCED_PITCHES: readonly number[] = [...MINOR_TOLERANCES.keys()];

/** Largest minor diameter of 6H; undefined where the pitch is not in the table. */
export function minorMax(major: number, pitch: number): number | undefined {
  const known = TOLERANCED_PITCHES.find((each) => Math.abs(pitch * 1e3 - each) <= 1e-6 * each);
  const tolerance = known === undefined ? undefined : MINOR_TOLERANCES.get(known);
  return tolerance === undefined ? undefined : minorInternal(major, pitch) + tolerance * 1e-6;
}
