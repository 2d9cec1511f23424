/** CUT.CHIP_VOLUME: room that the chips of a cut take when they lie loose. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { CHIP_FORMS } from '../chip-forms.table.ts';
import { parameter } from '../parameter.ts';

export default {
  name: 'CUT.CHIP_VOLUME',
  family: 'CUT',
  summary: 'Volume of the loose chips from the volume cut and the chip form',
  searchWords: ['swarf', 'chip bin', 'conveyor', 'bulk ratio'],
  parameters: [
    parameter('removed_volume'),
    {
      name: 'chip_form',
      symbol: 'chip_form',
      kind: 'text',
      words: [...CHIP_FORMS.keys()],
      meaning: 'form of the chips',
    },
  ],
  result: { kind: 'volume', symbol: 'V_loose', meaning: 'volume of the loose chips, at least' },
  reading: 'V times the bulk ratio of the chip form',
  compute({ V, chip_form }, note) {
    const ratio = typeof chip_form === 'string' ? CHIP_FORMS.get(chip_form) : undefined;
    if (ratio === undefined || typeof V !== 'number')
      return failure('#N/A', `chip form ${String(chip_form)} is not in the table`);
    note('ratio', ratio, 'ratio');
    return V * ratio;
  },
  remarks: ['The ratios are lower bounds from memory; measure a bin for your own chips.'],
  sources: ['K2'],
  examples: [
    {
      given: ['2 cm3', '"short helical"'],
      gives: '50 cm3',
      origin: 'byHand',
      how: 'ratio 25 of the chip volume ratio table (from memory) times 2 cm3',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
