/** THREAD.CUT_HOLE: hole for a cut thread. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { optional } from '../parameter.ts';
import { MAJOR, PITCH, minorInternal, minorMax } from '../thread-profile.ts';

export default {
  name: 'THREAD.CUT_HOLE',
  family: 'THREAD',
  summary: 'Hole for a cut internal thread from the wanted thread height',
  searchWords: ['tap drill', 'tapping size', 'core hole', 'percent of thread', 'drill size'],
  parameters: [MAJOR, PITCH, optional('percent', '77 %', { usual: { from: '60 %', to: '80 %' } })],
  result: { kind: 'length', symbol: 'Dh', meaning: 'diameter of the hole' },
  reading: 'd - 3 * SQRT(3) / 4 * P * percent',
  compute({ d, P, percent }, _note, caution) {
    if (typeof d !== 'number' || typeof P !== 'number' || typeof percent !== 'number')
      return failure('#VALUE!', 'value missing');
    const hole = d - ((3 * Math.sqrt(3)) / 4) * P * percent;
    const millimetres = (si: number): string => `${Number((si * 1e3).toPrecision(6))} mm`;
    const least = minorInternal(d, P);
    const most = minorMax(d, P);
    if (hole < least * (1 - 1e-9))
      caution(`the hole is below the smallest minor diameter, ${millimetres(least)}`);
    if (most !== undefined && hole > most * (1 + 1e-9))
      caution(`the hole is above the largest minor diameter of 6H, ${millimetres(most)}`);
    return hole;
  },
  remarks: [
    '77 % is the rule "diameter minus pitch". A lower height saves torque and taps, the strength of the thread hardly falls above 60 %.',
    'Pitches outside the table of 6H are checked against the smallest minor diameter only.',
  ],
  sources: ['tap hole', 'ISO 965-1'],
  examples: [
    {
      given: ['0.25 in', '0.05 in', '75 %'],
      gives: '0.201286 in',
      origin: 'published',
      how: 'D - 0.01299 percent/n, read in a public page (case f07); 1/4-20',
    },
    {
      given: ['10 mm', '1.5 mm', '76.98 %'],
      gives: '8.500 mm',
      origin: 'byHand',
      how: '4/(3 sqrt 3) = 76.98 % makes it diameter minus pitch, 8.5 mm, the hole of the trade for M10',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
