/**
 * The arc of a milling cutter in the work, shared by the functions over it: the offset of the cut, the ends of the arc, the limits of the circle model.
 * q_in and q_out are (1 - cos)/2 of the angles between the far side of the cutter and the two ends of the arc:
 * written so, a narrow engagement loses no digits; in side milling the outer end is exactly 0.
 */

import type { Condition, EquationStep, Parameter } from '../definition/index.ts';
import { optional, parameter } from './parameter.ts';

/** Cutter diameter, feed per tooth or wanted chip, engagement, edge angle, offset: the order is that of the signatures. */
export function engagementParameters(feed: 'feed_per_tooth' | 'wanted_chip'): Parameter[] {
  return [
    parameter('cutter_diameter'),
    parameter(feed),
    parameter('radial_engagement'),
    optional('cutting_edge_angle', '90 deg'),
    SIDE_OFFSET,
  ];
}

/** Offset of the cut, by default that of side milling. Its sign does not matter where this one is used. */
export const SIDE_OFFSET: Parameter = optional('axis_offset', '(Dc - ae) / 2', {
  meaning: 'from the cutter axis to the middle of the cut; left out: side milling',
});

/** True where an end of the cut lies on the circle of the cutter. */
const AT_THE_SIDE = 'Dc - 2 * ABS(e) - ae <= 0.000000001 * Dc';

const Q_IN: EquationStep = {
  symbol: 'q_in',
  meaning: 'depth of the inner end of the arc over the diameter',
  kind: 'ratio',
  equation: `IF(${AT_THE_SIDE}; ae / Dc; (Dc - 2 * ABS(e) + ae) / (2 * Dc))`,
};
const Q_OUT: EquationStep = {
  symbol: 'q_out',
  meaning: 'depth of the outer end of the arc over the diameter',
  kind: 'ratio',
  equation: `IF(${AT_THE_SIDE}; 0; (Dc - 2 * ABS(e) - ae) / (2 * Dc))`,
};

/** Engagement angle phi_s from both ends of the arc. */
export const ARC_STEPS: readonly EquationStep[] = [
  Q_IN,
  Q_OUT,
  {
    symbol: 'phi_s',
    meaning: 'engagement angle',
    kind: 'angle',
    equation: '2 * ASIN(SQRT(q_in)) - 2 * ASIN(SQRT(q_out))',
  },
];

/** Largest sine of the angle in the cut: 1 where the cut holds the middle of the cutter. */
export const LARGEST_SINE_STEPS: readonly EquationStep[] = [
  Q_IN,
  {
    symbol: 'sin_max',
    meaning: 'largest chip thickness over feed, edge square to the axis',
    kind: 'ratio',
    equation: 'IF(2 * ABS(e) <= ae; 1; 2 * SQRT(q_in * (1 - q_in)))',
  },
];

export const OUTSIDE_CUTTER: Condition = {
  when: 'ABS(e) + ae / 2 > Dc / 2',
  text: 'the cutter does not reach across the stated width: axis offset {e} and half the radial engagement {ae} go beyond half the cutter diameter {Dc}',
};

/** The feed, written in `feed`, is longer than the arc itself: there is no chip of this shape. */
export function feedBeyondArc(feed: string, named = 'feed per tooth'): Condition {
  return {
    when: `AND(${AT_THE_SIDE}; ae < Dc / 2; ${feed} >= 2 * SQRT(ae * (Dc - ae)))`,
    text: `${named} {${feed}} is longer than the arc in the cut at a radial engagement of {ae}`,
  };
}

export function circleModelHigh(feed: string): Condition {
  return {
    when: `AND(ae < Dc / 2; ${feed} > 0.1 * SQRT(ae * (Dc - ae)))`,
    text: `feed {${feed}} is large for the arc of a radial engagement of {ae}: the circle model gives a chip 5 % or more too thick`,
  };
}
