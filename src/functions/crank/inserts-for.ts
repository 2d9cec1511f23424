/** CRANK.INSERTS_FOR: inserts on one cutter for a wanted output. */

import type { FunctionDefinition } from '../../definition/index.ts';
import {
  AVAILABILITY,
  CUTTERS,
  INDEX_TIME,
  JOURNAL_FEED,
  JOURNALS,
  LOAD_TIME,
  OVERLAP,
  PLUNGE_FEED,
  PLUNGE_LENGTH,
} from '../orbit.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CRANK.INSERTS_FOR',
  family: 'CRANK',
  summary: 'Inserts on one cutter for a wanted output of shafts',
  searchWords: ['crankshaft', 'insert count', 'output', 'parts per hour'],
  parameters: [
    parameter('rows'),
    parameter('spindle_speed'),
    PLUNGE_FEED,
    JOURNAL_FEED,
    parameter('journal_diameter'),
    PLUNGE_LENGTH,
    JOURNALS,
    CUTTERS,
    INDEX_TIME,
    LOAD_TIME,
    {
      name: 'wanted_rate',
      symbol: 'wanted_rate',
      kind: 'rate',
      metric: 'parts/h',
      inch: 'parts/h',
      hard: { above: '0' },
      usual: { from: '1 parts/h', to: '500 parts/h' },
      meaning: 'shafts wanted in a time',
    },
    AVAILABILITY,
    OVERLAP,
    parameter('cutter_diameter', {
      default: { meaning: 'the room on the rim is not checked' },
      usual: { from: '100 mm', to: '1500 mm' },
      meaning: 'cutter diameter, to check the room on the rim',
    }),
  ],
  result: { kind: 'count', symbol: 'inserts', meaning: 'inserts on one cutter' },
  steps: [
    {
      symbol: 'settings',
      meaning: 'positions one after the other',
      kind: 'count',
      equation: 'CEILING(journals / cutters)',
    },
    {
      symbol: 't_j',
      meaning: 'time that is left for one journal',
      kind: 'time',
      equation: '(availability / wanted_rate - t_load) / settings - t_index',
    },
    {
      symbol: 'z',
      meaning: 'teeth one after the other',
      kind: 'count',
      equation: 'CEILING((L_p / fp + PI() * Dm * (1 + overlap / 360 deg) / fj) / (n * t_j))',
    },
  ],
  equation: 'z * tracks',
  refuses: [
    { when: 'cutters > journals', text: '{cutters} cutters at once are more than the {journals} journals' },
    { when: 't_j <= 0 s', text: 'handling alone takes longer, no cutter reaches this rate' },
  ],
  cautions: [
    {
      when: 'PI() * Dc / z < 25 mm',
      text: '{z} teeth leave less than 25 mm of rim each on a cutter of {Dc}',
    },
    {
      when: 'journals / cutters <> CEILING(journals / cutters)',
      text: 'the journals do not divide by the cutters: in the last position some stand idle',
    },
  ],
  sources: ['derived'],
  examples: [
    {
      given: [
        '3',
        '90 1/min',
        '0.25 mm',
        '0.9 mm',
        '50 mm',
        '8 mm',
        '4',
        '2',
        '6 s',
        '20 s',
        '40 1/h',
        '0.85',
        '5 deg',
      ],
      gives: '21',
      origin: 'byHand',
      how: 'tried upwards: 18 give 39.01 an hour, 21 give 42.62',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
