/** THREAD.PITCH: pitch of a thread by its designation. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { parameter } from '../parameter.ts';
import { threadPitch } from '../thread-designation.ts';

export default {
  name: 'THREAD.PITCH',
  family: 'THREAD',
  summary: 'Pitch of a thread by its designation',
  searchWords: ['M8', 'UNC', 'UNF', 'UNEF', 'metric', 'inch thread', 'threads per inch', 'coarse', 'fine'],
  parameters: [
    parameter('designation', {
      meaning: 'as in "M10", "M10x1.25", "1/4-20 UNC", "10-32 UNF", "1/2-28 UNEF"',
    }),
  ],
  result: { kind: 'length', symbol: 'P', meaning: 'pitch' },
  reading: 'table; the pitch that is written; 1 inch over the threads on an inch',
  compute({ designation }, _note, caution) {
    if (typeof designation !== 'string') return failure('#VALUE!', 'value missing: designation');
    const found = threadPitch(designation);
    if ('failure' in found) return found;
    if (found.remark !== undefined) caution(found.remark);
    return found.pitch;
  },
  scaling: 'table',
  remarks: [
    'Threads of 60 deg profile only. The metric pitches up to M64 were read in a stored copy of the limits of DIN 13; larger ones and the inch threads are from memory.',
  ],
  sources: ['ISO 261', 'B1.1'],
  examples: [
    {
      given: ['"M8"'],
      gives: '1.25 mm',
      origin: 'published',
      how: 'ISO 261, read in a stored copy (case f01)',
    },
    { given: ['"M10x1.25"'], gives: '1.25 mm', origin: 'byHand', how: 'as written' },
    {
      given: ['"1/4-20 UNC"'],
      gives: '1.27 mm',
      origin: 'published',
      how: 'ASME B1.1 as read in a public table (case f04): 25.4 mm over 20',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
