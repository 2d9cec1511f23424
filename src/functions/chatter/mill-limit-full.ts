/** CHATTER.MILL_LIMIT_FULL: largest depth of milling without chatter, with the forces as they change over the turn. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import {
  CHATTER_REMARKS,
  LIMIT_PARAMETERS,
  millingSystem,
  MODE_REFUSALS,
  NO_LIMIT,
} from '../milling-chatter.ts';
import { firstUnstableDepth } from '../milling-transition.ts';

const FIRST_STEPS = 40;
const MOST_STEPS = 200;
const SETTLED = 0.01;

export default {
  name: 'CHATTER.MILL_LIMIT_FULL',
  family: 'CHATTER',
  summary: 'Largest axial depth without chatter, also for narrow and interrupted cuts',
  searchWords: ['stability', 'flip lobes', 'semi-discretisation', 'thin cut', 'period doubling'],
  parameters: [
    ...LIMIT_PARAMETERS,
    {
      name: 'steps',
      symbol: 'steps',
      kind: 'count',
      hard: { least: '20', most: '200' },
      whole: true,
      default: { meaning: 'as many as needed: doubled from 40 until the limit moves by less than 1 %' },
      meaning: 'steps of a tooth period',
    },
  ],
  result: { kind: 'length', symbol: 'ap_lim', meaning: 'largest axial depth without chatter' },
  reading:
    'first depth from 0 upwards at which the transition over one tooth period of the delay equation has an eigenvalue of size 1',
  compute(args, note, caution) {
    const system = millingSystem(args);
    const speed = Number(args['n']);
    const { steps: wanted } = args;
    let steps = typeof wanted === 'number' ? wanted : FIRST_STEPS;
    let limit = firstUnstableDepth(system, speed, steps);
    if (typeof wanted !== 'number')
      for (;;) {
        if (steps * 2 > MOST_STEPS) {
          caution(`with ${steps} steps of a tooth period the limit still moves by more than 1 %`);
          break;
        }
        steps *= 2;
        const before = limit;
        limit = firstUnstableDepth(system, speed, steps, before);
        if (limit === undefined || before === undefined) break;
        if (Math.abs(limit - before) <= SETTLED * limit) break;
      }
    note('steps', steps, 'count');
    return limit ?? failure('#NUM!', NO_LIMIT);
  },
  refuses: MODE_REFUSALS,
  cautions: [
    {
      when: 'ae < 0.05 * Dc',
      text: '{ae} is less than a twentieth of {Dc}: short blows, in which runout and damping of the process decide',
    },
  ],
  remarks: [
    'Finds the extra (flip) lobes that CHATTER.MILL_LIMIT misses: the one to use for less than half of the diameter.',
    ...CHATTER_REMARKS.slice(1),
  ],
  sources: ['SD', 'A1'],
  examples: [
    {
      given: [
        '20 mm',
        '4',
        '20 mm',
        '"down"',
        '9500 1/min',
        '600 MPa',
        '0.3',
        '600 Hz',
        '0.035',
        '10 N/um',
        '660 Hz',
        '0.035',
        '12 N/um',
      ],
      gives: '4.757 mm',
      tolerance: '0.01',
      origin: 'otherProgram',
      how: 'semi-discretisation by an independent program: 4.757 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
