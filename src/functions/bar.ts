/** The section of a rectangular bar, shared by its deflection and its frequency. */

import type { Parameter } from '../definition/index.ts';

export const BAR_WIDTH: Parameter = {
  name: 'width',
  symbol: 'w',
  kind: 'length',
  metric: 'mm',
  inch: 'in',
  hard: { above: '0' },
  meaning: 'width of the section across the force',
};

export const BAR_HEIGHT: Parameter = {
  name: 'height',
  symbol: 'h',
  kind: 'length',
  metric: 'mm',
  inch: 'in',
  hard: { above: '0' },
  meaning: 'height of the section along the motion',
};
