/** What the functions of milling chatter share: parameters, checks, and the system that they describe. */

import type { Arguments, Condition, Parameter } from '../definition/index.ts';
import { type MillingSystem, type Mode, sideArc } from './milling-stability.ts';
import { numbersOf } from './numbers.ts';
import { parameter } from './parameter.ts';

const axis = (letter: 'x' | 'y', along: string): readonly Parameter[] => [
  parameter('natural_frequency', {
    name: `frequency_${letter}`,
    symbol: `f_${letter}`,
    list: true,
    hard: { least: '10 Hz', most: '20000 Hz' },
    meaning: `natural frequencies of the modes ${along}`,
  }),
  parameter('damping_ratio', {
    name: `damping_${letter}`,
    symbol: `zeta_${letter}`,
    list: true,
    meaning: `damping of these modes ${along}`,
  }),
  parameter('stiffness', {
    name: `stiffness_${letter}`,
    symbol: `k_${letter}`,
    list: true,
    meaning: `modal stiffness of these modes ${along}`,
  }),
];

const CUTTER: readonly Parameter[] = [
  parameter('cutter_diameter'),
  parameter('teeth'),
  parameter('radial_engagement'),
  parameter('milling_sense'),
];

const FORCES_AND_MODES: readonly Parameter[] = [
  parameter('tangential_coefficient'),
  parameter('radial_ratio'),
  ...axis('x', 'along the feed'),
  ...axis('y', 'across the feed'),
];

export const FLOOR_PARAMETERS: readonly Parameter[] = [...CUTTER, ...FORCES_AND_MODES];
export const LIMIT_PARAMETERS: readonly Parameter[] = [
  ...CUTTER,
  parameter('spindle_speed'),
  ...FORCES_AND_MODES,
];

export const MODE_REFUSALS: readonly Condition[] = (['x', 'y'] as const).map((letter) => ({
  when: `OR(COUNT(f_${letter}) <> COUNT(zeta_${letter}); COUNT(f_${letter}) <> COUNT(k_${letter}))`,
  text: `frequencies, dampings and stiffnesses of direction ${letter} differ in count`,
}));

export const ENGAGEMENT_CAUTIONS: readonly Condition[] = [
  {
    when: 'AND(ae >= 0.25 * Dc; ae < 0.5 * Dc)',
    text: '{ae} is less than half of {Dc}: the limit can be 15 % off',
  },
  {
    when: 'AND(ae >= 0.1 * Dc; ae < 0.25 * Dc)',
    text: '{ae} is less than a quarter of {Dc}: the limit can be 50 % off, and extra (flip) lobes are missing',
  },
  {
    when: 'ae < 0.1 * Dc',
    text: '{ae} is less than a tenth of {Dc}: the lobes do not hold, use CHATTER.MILL_FLOOR only',
  },
];

export const CHATTER_REMARKS: readonly string[] = [
  'Linear, with the mean of the cutting forces over a turn; measured modes of the tool in the spindle are needed, and they change with its speed.',
  'Low speed is better than this: rubbing on the wave damps.',
];

/** What the mean over a turn leaves out. */
export const MEAN_REMARKS: readonly string[] = [
  ...CHATTER_REMARKS,
  'The mean is exact in a slot with 4, 6 or more teeth in even number. With 3 teeth it was 9.5 % too high in a case worked by another program: CHATTER.MILL_LIMIT_FULL follows every tooth.',
];

export const NO_LIMIT = 'nothing in this model limits the depth: the modes do not meet the force';

function modes(args: Arguments, letter: 'x' | 'y'): Mode[] {
  const [damping, stiffness] = [numbersOf(args[`zeta_${letter}`]), numbersOf(args[`k_${letter}`])];
  return numbersOf(args[`f_${letter}`]).map((frequency, i) => ({
    frequency,
    damping: damping[i] ?? Number.NaN,
    stiffness: stiffness[i] ?? Number.NaN,
  }));
}

/** The checked arguments as a system. */
export function millingSystem(args: Arguments): MillingSystem {
  const sense = args['sense'] === 'up' ? 'up' : 'down';
  const [from, to] = sideArc(Number(args['Dc']), Number(args['ae']), sense);
  return {
    teeth: Number(args['z']),
    from,
    to,
    tangential: Number(args['Kt']),
    radialRatio: Number(args['cr']),
    x: modes(args, 'x'),
    y: modes(args, 'y'),
  };
}
