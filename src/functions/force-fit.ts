/** The straight line through ln kc over ln h, shared by the two functions that read it. */

import type { Condition, EquationStep, Parameter } from '../definition/index.ts';
import { parameter } from './parameter.ts';

export const FIT_PARAMETERS: readonly Parameter[] = [
  parameter('chip_thickness', {
    name: 'chip_thicknesses',
    list: true,
    meaning: 'chip thicknesses of the trials',
  }),
  parameter('specific_force', {
    name: 'specific_forces',
    list: true,
    meaning: 'specific forces measured at them',
  }),
];

/** Means and slope by least squares. */
export const FIT_STEPS: readonly EquationStep[] = [
  { symbol: 'x_m', meaning: 'mean of ln(h / 1 mm)', kind: 'number', equation: 'AVERAGE(LN(h / 1 mm))' },
  { symbol: 'y_m', meaning: 'mean of ln(kc / 1 MPa)', kind: 'number', equation: 'AVERAGE(LN(kc / 1 MPa))' },
  {
    symbol: 'slope',
    meaning: 'slope of the line',
    kind: 'number',
    equation: 'SUM((LN(h / 1 mm) - x_m) * (LN(kc / 1 MPa) - y_m)) / SUM((LN(h / 1 mm) - x_m)^2)',
  },
];

export const FIT_REFUSALS: readonly Condition[] = [
  { when: 'COUNT(h) <> COUNT(kc)', text: 'chip thicknesses and specific forces differ in count' },
  { when: 'MAX(h) <= MIN(h)', text: 'a line needs at least 2 different chip thicknesses' },
];

export const NARROW_FIT: Condition = {
  when: 'MAX(h) < 2 * MIN(h)',
  text: 'the largest chip thickness is less than twice the smallest: the line is uncertain',
};
