/** COST.PART: machining cost of one part, tool changes and edges included. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'COST.PART',
  family: 'COST',
  summary: 'Machining cost of one part with tool changes and edges',
  searchWords: ['cost per part', 'piece cost', 'cost per component'],
  parameters: [
    parameter('machine_rate'),
    parameter('cut_time'),
    parameter('idle_time'),
    parameter('change_time'),
    parameter('tool_life'),
    parameter('edge_set_cost'),
    optional('share_in_cut', '1'),
  ],
  result: { kind: 'money', symbol: 'C_part', meaning: 'cost of one part' },
  steps: [
    { symbol: 'changes', meaning: 'tool changes for one part', kind: 'ratio', equation: 'q * t_cut / T' },
  ],
  equation: 'rate * (t_idle + t_cut + t_change * changes) + C_set * changes',
  cautions: [
    {
      when: 'T < t_cut',
      text: 'tool life {T} is shorter than the time at feed {t_cut}: the edge may not last one part',
    },
  ],
  remarks: [
    'Tool life is time in the cut; the time at feed counts with the share of it in which the edge really cuts.',
  ],
  sources: ['G2'],
  examples: [
    {
      given: ['80 money/h', '3 min', '1.2 min', '1.5 min', '18 min', '6 money'],
      gives: '6.93333 money',
      origin: 'byHand',
      how: '80/60 times (1.2 + 3 + 0.25) min and a sixth of 6 money',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
