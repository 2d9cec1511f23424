/** THREAD.MINOR_MAX: largest minor diameter of an internal thread 6H. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { MAJOR, PITCH, TOLERANCED_PITCHES, minorMax } from '../thread-profile.ts';

export default {
  name: 'THREAD.MINOR_MAX',
  family: 'THREAD',
  summary: 'Largest minor diameter of an internal thread 6H',
  searchWords: ['6H', 'core hole', 'plug gauge', 'hole limit', 'TD1'],
  parameters: [MAJOR, PITCH],
  result: { kind: 'length', symbol: 'D1_max', meaning: 'largest minor diameter' },
  reading: 'd - 5 * SQRT(3) / 8 * P + TD1 of the pitch (table, 6H)',
  compute({ d, P }) {
    if (typeof d !== 'number' || typeof P !== 'number') return failure('#VALUE!', 'value missing');
    return (
      minorMax(d, P) ??
      failure(
        '#N/A',
        `pitch ${Number((P * 1e3).toPrecision(6))} mm is not in the table of 6H: ${TOLERANCED_PITCHES.join(', ')} mm`,
      )
    );
  },
  scaling: 'table',
  remarks: [
    'The tolerances of pitches from 0.35 to 8 mm were read in a stored copy of the limits 6H; those of 0.25 and 0.3 mm are from memory.',
  ],
  sources: ['ISO 965-1'],
  examples: [
    {
      given: ['10 mm', '1.5 mm'],
      gives: '8.676 mm',
      origin: 'published',
      how: 'ISO 965-2, M10 6H, read in a stored copy (case f12)',
    },
    {
      given: ['6 mm', '1 mm'],
      gives: '5.153 mm',
      origin: 'published',
      how: 'ISO 965-2, M6 6H, read in a stored copy',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
