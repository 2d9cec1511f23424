/** Parameters, steps and conditions of the functions over the forces of an end mill, and the reading of their arguments. */

import type { Arguments, Condition, Constant, EquationStep, Parameter } from '../definition/index.ts';
import type { EndMillCut } from './milling-force.ts';
import { parameter } from './parameter.ts';

export const END_MILL_PARAMETERS: readonly Parameter[] = [
  parameter('cutter_diameter'),
  parameter('teeth'),
  parameter('helix_angle'),
  parameter('feed_per_tooth'),
  parameter('axial_depth'),
  parameter('radial_engagement'),
  parameter('kc11'),
  parameter('mc'),
];

export const END_MILL_CONSTANTS: readonly Constant[] = [
  { symbol: 'h_0', value: '1 mm', meaning: 'chip thickness for which kc1.1 holds' },
];

export const END_MILL_STEPS: readonly EquationStep[] = [
  { symbol: 'phi_s', meaning: 'engagement angle', kind: 'angle', equation: '2 * ASIN(SQRT(ae / Dc))' },
  {
    symbol: 'h_max',
    meaning: 'largest chip thickness',
    kind: 'length',
    equation: 'fz * IF(ae < Dc / 2; 2 * SQRT(ae * (Dc - ae)) / Dc; 1)',
  },
];

export const END_MILL_REFUSALS: readonly Condition[] = [
  {
    when: 'AND(ae < Dc / 2; fz >= 2 * SQRT(ae * (Dc - ae)))',
    text: 'feed per tooth {fz} is longer than the arc in the cut at a radial engagement of {ae}',
  },
];

export const END_MILL_CAUTIONS: readonly Condition[] = [
  {
    when: 'OR(h_max < 0.05 mm; h_max > 2.5 mm)',
    text: 'the largest chip {h_max} lies outside 0.05 mm to 2.5 mm, where the power law was measured',
  },
];

export const END_MILL_REMARKS: readonly string[] = [
  'Run-out, wear and the edges on the end face are not in it.',
  'Side milling with evenly spaced teeth and one helix angle.',
];

const number = (value: Arguments[string] | undefined): number =>
  typeof value === 'number' ? value : Number.NaN;

/** The checked arguments as a cut; the sense is up where the function does not ask for it. */
export function endMillCut(args: Arguments): EndMillCut {
  return {
    cutterDiameter: number(args.Dc),
    teeth: number(args.z),
    helix: number(args.lambda),
    feed: number(args.fz),
    axialDepth: number(args.ap),
    arc: number(args.phi_s),
    kc11: number(args.kc11),
    mc: number(args.mc),
    referenceChip: number(args.h_0),
    radialRatio: typeof args.cr === 'number' ? args.cr : 0,
    sense: args.sense === 'down' ? 'down' : 'up',
  };
}
