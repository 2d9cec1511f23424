/** FORCE.SPECIFIC: specific cutting force at a chip thickness, with rake and wear. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { optional, parameter } from '../parameter.ts';

export default {
  name: 'FORCE.SPECIFIC',
  family: 'FORCE',
  summary: 'Specific cutting force at a chip thickness',
  searchWords: ['kc', 'Kienzle', 'unit power', 'specific energy', 'cutting force'],
  parameters: [
    parameter('kc11'),
    parameter('mc'),
    parameter('chip_thickness'),
    optional('rake', 'gamma_0'),
    optional('reference_rake', '6 deg'),
    {
      name: 'rake_effect',
      symbol: 'k_gamma',
      kind: 'ratio',
      hard: { least: '0', most: '0.1' },
      usual: { from: '0.01', to: '0.02' },
      default: { value: '0.015' },
      meaning: 'share by which the force falls for each degree of rake',
    },
    {
      name: 'wear_factor',
      symbol: 'k_wear',
      kind: 'ratio',
      hard: { least: '1', most: '3' },
      default: { value: '1' },
      meaning: 'how much the force has risen with wear; 1.3 to 1.5 for a blunt edge',
    },
  ],
  result: { kind: 'specific cutting force', symbol: 'kc', meaning: 'specific cutting force' },
  steps: [
    {
      symbol: 'k_rake',
      meaning: 'factor for the rake',
      kind: 'ratio',
      equation: '1 - k_gamma * (gamma - gamma_0) / 1 deg',
    },
  ],
  equation: 'kc11 * (h / 1 mm)^(-mc) * k_rake * k_wear',
  refuses: [
    {
      when: 'ABS(gamma - gamma_0) > 25 deg',
      text: 'rake {gamma} lies more than 25 deg from the reference rake {gamma_0}: the straight line does not reach so far',
    },
    { when: 'k_rake <= 0', text: 'the factor for the rake, {k_rake}, leaves no force' },
  ],
  cautions: [
    {
      when: 'OR(h < 0.05 mm; h > 2.5 mm)',
      text: 'chip thickness {h} lies outside 0.05 mm to 2.5 mm, where the power law was measured',
    },
    {
      when: 'ABS(gamma - gamma_0) > 15 deg',
      text: 'rake {gamma} lies more than 15 deg from the reference rake {gamma_0}',
    },
  ],
  sources: ['K1', 'K2', 'T1'],
  examples: [
    {
      given: ['1700 MPa', '0.25', '0.1 mm', '12 deg', '6 deg', '0.015', '1.3'],
      gives: '3576.3 MPa',
      origin: 'byHand',
      how: '1700 times 0.1^-0.25 = 3023.08, times 0.91, times 1.3',
    },
    {
      given: ['1400 MPa', '0.4', '0.043 mm'],
      gives: '4928.79 MPa',
      origin: 'published',
      how: 'Ghosh and Mallik, Manufacturing Science, example 4.16, case c39: specific energy 1.4 J/mm3 at 1 mm',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
