/** CHATTER.DAMPING: damping ratio from a vibration that dies away. */

import type { FunctionDefinition, Parameter } from '../../definition/index.ts';

const peak = (name: string, symbol: string, meaning: string): Parameter => ({
  name,
  symbol,
  kind: 'any number',
  hard: { above: '0' },
  meaning,
});

export default {
  name: 'CHATTER.DAMPING',
  family: 'CHATTER',
  summary: 'Damping ratio from two peaks of a vibration that dies away',
  searchWords: ['logarithmic decrement', 'tap test', 'impact test', 'hammer'],
  parameters: [
    peak('first_peak', 'first', 'height of a peak, in any unit'),
    peak('later_peak', 'later', 'height of a later peak, in the same unit'),
    {
      name: 'cycles',
      symbol: 'cycles',
      kind: 'count',
      hard: { least: '1' },
      usual: { from: '1', to: '50' },
      meaning: 'cycles between the two peaks',
    },
  ],
  result: { kind: 'ratio', symbol: 'zeta', meaning: 'damping ratio' },
  steps: [
    {
      symbol: 'decrement',
      meaning: 'logarithmic decrement',
      kind: 'number',
      equation: 'LN(first / later) / cycles',
    },
  ],
  equation: 'decrement / SQRT(4 * PI()^2 + decrement^2)',
  refuses: [{ when: 'later >= first', text: 'the later peak must be lower than the first' }],
  cautions: [
    {
      when: 'zeta > 0.15',
      text: 'a damping of {zeta} is high for a tool: noise or another mode in the reading?',
    },
  ],
  sources: ['R2'],
  examples: [
    {
      given: ['10 um', '5 um', '5'],
      gives: '0.0220582',
      origin: 'byHand',
      how: 'ln 2 over 5 is 0.138629',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
