/** THREAD.PLAN: which ways of making an internal thread are open. */

import { HARDNESS, valueWords, type FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { parameter } from '../parameter.ts';
import { MAJOR, PITCH } from '../thread-profile.ts';
import { planText, rockwellOf, threadPlan } from '../thread-plan.ts';

/** HRC beyond which the rule says nothing. */
const HARDEST = 70;

export default {
  name: 'THREAD.PLAN',
  family: 'THREAD',
  summary: 'Which ways of making an internal thread are open: forming, cutting, milling',
  searchWords: ['tap', 'thread mill', 'roll tap', 'strategy', 'hard material', 'blind hole'],
  parameters: [
    MAJOR,
    PITCH,
    parameter('depth', { meaning: 'depth of the thread' }),
    {
      name: 'hardness',
      symbol: 'hardness',
      kind: HARDNESS,
      hard: { above: '0' },
      meaning: 'hardness of the work in HRC, HB or HV',
    },
    {
      name: 'elongation',
      symbol: 'elongation',
      kind: 'share',
      hard: { least: '0', most: '1' },
      usual: { from: '0 %', to: '60 %' },
      meaning: 'elongation at fracture of the work',
    },
    {
      name: 'hole_kind',
      symbol: 'hole_kind',
      kind: 'text',
      words: ['blind', 'through'],
      default: { value: '"blind"' },
      meaning: '"blind" or "through" hole',
    },
  ],
  result: { kind: 'text', symbol: 'plan', meaning: 'verdict on each way' },
  reading:
    'forming up to 40 HRC (doubtful to 43) and from 8 % elongation; cutting up to 45 HRC (doubtful to 55, or deeper than 3 d in a blind hole); milling (doubtful deeper than 2.5 d)',
  compute({ d, L, hardness, hardness_scale, elongation, hole_kind }) {
    if (
      typeof d !== 'number' ||
      typeof L !== 'number' ||
      typeof hardness !== 'number' ||
      typeof elongation !== 'number'
    )
      return failure('#VALUE!', 'value missing');
    if (typeof hardness_scale !== 'string')
      return failure('#UNIT!', 'hardness needs its scale: HRC, HB or HV');
    const rockwell = rockwellOf(hardness, hardness_scale);
    if (rockwell === undefined || rockwell > HARDEST)
      return failure(
        '#NUM!',
        `hardness ${valueWords(hardness, hardness_scale)} is above ${HARDEST} HRC, where the rule ends`,
      );
    return planText(
      threadPlan({ depthRatio: L / d, hardness: rockwell, elongation, blind: hole_kind === 'blind' }),
    );
  },
  scaling: 'text',
  remarks: [
    'Forming: fastest, no chips; needs 1.5 to 2.5 times the torque and the tighter hole (THREAD.FORM_HOLE).',
    'Milling: a broken thread mill does not scrap the part.',
    'HB and HV are converted by the table of ISO 18265 for steel; an indication only for other materials.',
    'A rule of the trade without a source; try before a series.',
  ],
  sources: ['practice', 'I2'],
  examples: [
    {
      given: ['8 mm', '1.25 mm', '16 mm', '32 HRC', '14 %'],
      gives: '"forming possible; cutting possible; milling possible"',
      origin: 'byHand',
      how: 'rule table of common practice: 32 HRC is below 40 and 45, 14 % above 8 %, 2 diameters deep',
    },
    {
      given: ['8 mm', '1.25 mm', '30 mm', '50 HRC', '5 %'],
      gives:
        '"forming not possible (hardness above 43 HRC, elongation below 8 %); cutting doubtful (hardness above 45 HRC, blind and deeper than 3 diameters); milling doubtful (deeper than 2.5 diameters)"',
      origin: 'byHand',
      how: 'the same table row by row; 3.75 diameters deep',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
