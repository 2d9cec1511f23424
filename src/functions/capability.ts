/** Parameters and conditions of the two capability functions. */

import type { Condition, Parameter } from '../definition/index.ts';

const measured = (name: string, symbol: string, meaning: string): Parameter => ({
  name,
  symbol,
  kind: 'length',
  metric: 'mm',
  inch: 'in',
  usual: { from: '-500 mm', to: '500 mm' },
  meaning,
});

export const CAPABILITY_PARAMETERS: readonly Parameter[] = [
  measured('mean', 'm', 'mean of the measured sizes'),
  {
    ...measured('standard_deviation', 's', 'standard deviation of the measured sizes'),
    hard: { above: '0' },
    usual: { from: '0.0001 mm', to: '1 mm' },
  },
  measured('lower_limit', 'L', 'lower limit of the tolerance'),
  measured('upper_limit', 'U', 'upper limit of the tolerance'),
];

export const NO_TOLERANCE: Condition = {
  when: 'U <= L',
  text: 'the upper limit {U} must be above the lower limit {L}',
};

/** Equation of Cpk over the symbols of the parameters. */
export const CPK = 'MIN(U - m; m - L) / (3 * s)';
