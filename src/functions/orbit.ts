/** Parameters and geometry that the functions for crankshaft cutters share: the feed is that on the finished journal. */

import type { Condition, EquationStep, Parameter } from '../definition/index.ts';
import { optional, parameter } from './parameter.ts';

export const JOURNAL_FEED: Parameter = parameter('feed_per_tooth', {
  symbol: 'fj',
  meaning: 'feed per tooth on the finished journal',
});
export const PLUNGE_FEED: Parameter = parameter('feed_per_tooth', {
  name: 'plunge_feed_per_tooth',
  symbol: 'fp',
  meaning: 'feed per tooth of the plunge',
});
export const PLUNGE_LENGTH: Parameter = parameter('length', {
  name: 'plunge_length',
  symbol: 'L_p',
  meaning: 'travel of the plunge from first touch to size',
});
export const OVERLAP: Parameter = {
  name: 'overlap',
  symbol: 'overlap',
  kind: 'angle',
  metric: 'deg',
  inch: 'deg',
  hard: { least: '0 deg', most: '90 deg' },
  default: { value: '5 deg' },
  meaning: 'angle beyond the full turn around the journal',
};
export const JOURNALS: Parameter = {
  name: 'journals',
  symbol: 'journals',
  kind: 'count',
  hard: { least: '1' },
  usual: { from: '1', to: '20' },
  whole: true,
  meaning: 'journals to be cut on one shaft',
};
export const CUTTERS: Parameter = {
  name: 'cutters_at_once',
  symbol: 'cutters',
  kind: 'count',
  hard: { least: '1' },
  usual: { from: '1', to: '8' },
  whole: true,
  meaning: 'cutters at work at the same time',
};
export const INDEX_TIME: Parameter = parameter('index_time');
export const LOAD_TIME: Parameter = parameter('load_time');
export const AVAILABILITY: Parameter = optional('availability', '1');

/** Distance of the axes when the journal is at size. */
export const CENTRE_DISTANCE: EquationStep = {
  symbol: 'e',
  meaning: 'distance of cutter axis and journal axis',
  kind: 'length',
  equation: 'IF(cutter_type = "external"; (Dm + Dc) / 2; (Dc - Dm) / 2)',
};

/** (1 - cos)/2 of the engagement angle. */
export const ORBIT_ARC: EquationStep = {
  symbol: 'q_arc',
  meaning: 'depth of the arc over the cutter diameter',
  kind: 'ratio',
  equation: '(Ds - Dm) * (Ds + Dm) / (8 * e * Dc)',
};

export const ORBIT_REFUSALS: readonly Condition[] = [
  { when: 'Ds <= Dm', text: 'start diameter {Ds} must be more than the finished diameter {Dm}' },
  {
    when: 'AND(cutter_type = "internal"; Dc <= Ds)',
    text: 'an internal cutter of {Dc} must be larger than the start diameter {Ds}',
  },
  { when: 'q_arc > 1', text: 'the cutter of {Dc} is too small for the stock from {Ds} to {Dm}' },
];
