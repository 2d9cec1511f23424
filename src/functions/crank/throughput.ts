/** CRANK.THROUGHPUT: shafts in a time, from the inserts on the cutter. */

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
  name: 'CRANK.THROUGHPUT',
  family: 'CRANK',
  summary: 'Shafts in a time from the insert count of the cutter',
  searchWords: ['crankshaft', 'insert count', 'output', 'parts per hour'],
  parameters: [
    parameter('inserts'),
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
    AVAILABILITY,
    OVERLAP,
  ],
  result: { kind: 'rate', symbol: 'shaft_rate', meaning: 'shafts in a time' },
  steps: [
    { symbol: 'z', meaning: 'teeth one after the other', kind: 'count', equation: 'inserts / tracks' },
    {
      symbol: 't_j',
      meaning: 'time for one journal',
      kind: 'time',
      equation: '(L_p / fp + PI() * Dm * (1 + overlap / 360 deg) / fj) / (z * n)',
    },
    {
      symbol: 'settings',
      meaning: 'positions one after the other',
      kind: 'count',
      equation: 'CEILING(journals / cutters)',
    },
    {
      symbol: 't_shaft',
      meaning: 'time for one shaft',
      kind: 'time',
      equation: 'settings * (t_j + t_index) + t_load',
    },
  ],
  equation: 'availability / t_shaft',
  refuses: [
    { when: 'cutters > journals', text: '{cutters} cutters at once are more than the {journals} journals' },
    { when: 'tracks > inserts', text: '{tracks} rows need at least as many inserts, there are {inserts}' },
  ],
  cautions: [
    {
      when: 'inserts / tracks <> INT(inserts / tracks)',
      text: 'inserts and rows do not divide evenly: the teeth are unevenly loaded',
    },
    {
      when: 'journals / cutters <> CEILING(journals / cutters)',
      text: 'the journals do not divide by the cutters: in the last position some stand idle',
    },
    {
      when: 't_shaft / (t_shaft - settings * t_j * (1 - 1 / 1.1)) < 1.02',
      text: 'a tenth more inserts would gain less than 2 %: handling decides, not the cutter',
    },
  ],
  sources: ['derived'],
  examples: [
    {
      given: [
        '21',
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
        '0.85',
        '5 deg',
      ],
      gives: '42.62 1/h',
      origin: 'byHand',
      how: '7 teeth: 19.9007 s a journal, 71.8014 s a shaft, times 0.85',
    },
    {
      given: [
        '18',
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
        '0.85',
        '5 deg',
      ],
      gives: '39.01 1/h',
      origin: 'byHand',
      how: '6 teeth: 23.2175 s a journal, 78.4350 s a shaft, times 0.85',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
