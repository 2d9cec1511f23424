/** STOCK.TRIAL_LENGTH: length of cut that a test block gives. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'STOCK.TRIAL_LENGTH',
  family: 'STOCK',
  summary: 'Length of cut that a test block gives',
  searchWords: ['trial', 'test block', 'tool life test', 'passes'],
  parameters: [
    parameter('axial_depth'),
    parameter('radial_engagement', { hard: { above: '0' }, usual: { from: '0.01 mm', to: '1000 mm' } }),
    {
      name: 'block_length',
      symbol: 'L',
      kind: 'length',
      metric: 'mm',
      inch: 'in',
      hard: { above: '0' },
      meaning: 'length of the block along the passes',
    },
    {
      name: 'block_width',
      symbol: 'W',
      kind: 'length',
      metric: 'mm',
      inch: 'in',
      hard: { above: '0' },
      meaning: 'width of the block',
    },
    {
      name: 'block_height',
      symbol: 'H',
      kind: 'length',
      metric: 'mm',
      inch: 'in',
      hard: { above: '0' },
      meaning: 'height of the block',
    },
    {
      name: 'clamped_height',
      symbol: 'H_c',
      kind: 'length',
      metric: 'mm',
      inch: 'in',
      hard: { least: '0' },
      default: { value: '0 mm' },
      meaning: 'height that stays in the clamp',
    },
  ],
  result: { kind: 'length', symbol: 'L_cut', meaning: 'length of cut' },
  steps: [
    { symbol: 'across', meaning: 'passes side by side', kind: 'count', equation: 'INT(W / ae)' },
    {
      symbol: 'layers',
      meaning: 'layers one above the other',
      kind: 'count',
      equation: 'INT((H - H_c) / ap)',
    },
  ],
  equation: 'L * across * layers',
  refuses: [
    { when: 'H_c >= H', text: 'clamped height {H_c} leaves nothing of the block height {H}' },
    { when: 'ae > W', text: 'radial engagement {ae} is more than the block width {W}' },
    { when: 'ap > H - H_c', text: 'axial depth {ap} is more than the free height of the block' },
  ],
  remarks: ['Each pass has the shock of an entry and an exit: count the passes too.'],
  sources: ['derived'],
  examples: [
    {
      given: ['4 mm', '10 mm', '300 mm', '102 mm', '90 mm', '30 mm'],
      gives: '45 m',
      origin: 'byHand',
      how: '10 passes side by side, 15 layers, 0.3 m each',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
