/** Which sketch illustrates which domain function, and where its parameters come from: data beside the screen, because the functions know no screen. */

export interface FunctionSketch {
  /** Key of the sketch, or one for each word of a text argument. */
  readonly sketch: string | { readonly by: string; readonly of: Readonly<Record<string, string>> };
  /** Sketch parameter: symbol of the function's parameter; "=" is its result. */
  readonly takes: Readonly<Record<string, string>>;
}

const SENSE = { by: 'sense', of: { down: 'engagement-down', up: 'engagement-up' } } as const;
const SIDE = { by: 'side', of: { inside: 'circle-inside', outside: 'circle-outside' } } as const;
const PIN = { by: 'cutter_type', of: { external: 'pin-external', internal: 'pin-internal' } } as const;
const ARC = { Dc: 'Dc', ae: 'ae', kappa_r: 'kappa_r', e: 'e' };
const TEETH = { Dc: 'Dc', ae: 'ae', fz: 'fz', z: 'z' };
const THREAD = { d: 'd', P: 'P' };
const chip: FunctionSketch = { sketch: 'engagement-down', takes: { ...ARC, fz: 'fz' } };
const feed: FunctionSketch = { sketch: 'engagement-down', takes: { ...ARC, fz: '=' } };
const force: FunctionSketch = { sketch: 'engagement-down', takes: TEETH };
const chatter: FunctionSketch = { sketch: SENSE, takes: { Dc: 'Dc', ae: 'ae', z: 'z' } };
const corner: FunctionSketch = { sketch: 'turned-surface', takes: { r_eps: 'r_eps', f: 'f' } };
const hole: FunctionSketch = { sketch: 'thread-section', takes: { ...THREAD, Dh: '=' } };
const thread: FunctionSketch = { sketch: 'thread-section', takes: THREAD };
const threadPath: FunctionSketch = { sketch: 'thread-milling', takes: { ...THREAD, Dc: 'Dc', L: 'L' } };
const stock: FunctionSketch = { sketch: 'stock-part', takes: { m_b: 'm_b', m_f: 'm_f', rho: 'rho' } };
const rod = { lengths: 'l', diameters: 'D', moduli: 'E', F: 'F' };

export const FUNCTION_SKETCHES: ReadonlyMap<string, FunctionSketch> = new Map([
  ['MILL.ENGAGEMENT_ANGLE', { sketch: 'engagement-down', takes: { Dc: 'Dc', ae: 'ae', e: 'e' } }],
  ['MILL.CHIP_MAX', chip],
  ['MILL.CHIP_MEAN', chip],
  ['MILL.CHIP_AT_EXIT', chip],
  ['MILL.THINNING', { sketch: 'engagement-down', takes: ARC }],
  ['MILL.FEED_FOR_CHIP_MAX', feed],
  ['MILL.FEED_FOR_CHIP_MEAN', feed],
  ['MILL.FORCE_PEAK', force],
  ['MILL.TORQUE_PEAK', force],
  ['MILL.TORQUE_RIPPLE', force],
  ['MILL.WALL_FORCE', { sketch: SENSE, takes: TEETH }],
  ['MILL.CIRCLE_ENGAGEMENT', { sketch: SIDE, takes: { Dc: 'Dc', Ds: 'Ds', Dm: 'Dm' } }],
  ['MILL.ENGAGEMENT_FOR_ANGLE', { sketch: 'engagement-down', takes: { Dc: 'Dc', ae: '=' } }],
  ['MILL.BALL_DIAMETER', { sketch: 'ball-depth', takes: { Dc: 'Dc', ap: 'ap', tilt: 'tilt' } }],
  ['MILL.ROUND_DIAMETER', { sketch: 'round-insert', takes: { iC: 'iC', ap: 'ap', Dc: 'Dc' } }],
  ['CUT.ROUND_ANGLE', { sketch: 'round-insert', takes: { iC: 'iC', ap: 'ap' } }],
  ['MILL.AXIAL_PITCH', { sketch: 'helix-pitch', takes: { Dc: 'Dc', z: 'z', lambda: 'lambda' } }],
  ['MILL.TEETH_IN_CUT', { sketch: 'helix-pitch', takes: { Dc: 'Dc', z: 'z', lambda: 'lambda', ap: 'ap' } }],
  ['DRILL.CROSSING_RUN', { sketch: 'crossing-hole', takes: { D: 'D', dc: 'dc', gamma: 'gamma' } }],
  ['MILL.RAMP_ANGLE', { sketch: 'ramp', takes: { P: 'P', Dp: 'Dp' } }],
  ['MILL.SCALLOP', { sketch: 'ball-scallop', takes: { Db: 'Db', s: 's' } }],
  ['CHATTER.MILL_LIMIT', chatter],
  ['CHATTER.MILL_LIMIT_FULL', chatter],
  ['CHATTER.MILL_FLOOR', chatter],
  ['CHATTER.BEST_SPEED', chatter],
  ['DRILL.PLAN', { sketch: 'deep-hole', takes: { D: 'D', L: 'L' } }],
  ['DRILL.TIME', { sketch: 'deep-hole', takes: { D: 'D', L: 'L', sigma: 'sigma' } }],
  ['DRILL.POINT_LENGTH', { sketch: 'drill-entry', takes: { D: 'D', sigma: 'sigma' } }],
  ['DRILL.ENTRY_RUN', { sketch: 'drill-entry', takes: { D: 'D', sigma: 'sigma', alpha: 'alpha' } }],
  ['DRILL.CHAIN_COUNT', { sketch: 'chain-slot', takes: { D: 'D', P: 'P', L: 'L' } }],
  ['DRILL.CHAIN_CUSP', { sketch: 'chain-slot', takes: { D: 'D', P: 'P' } }],
  ['TURN.CHIP', { sketch: 'turning-chip', takes: { kappa_r: 'kappa_r', f: 'f' } }],
  ['TURN.PEAK_HEIGHT', corner],
  ['TURN.MEAN_ROUGHNESS', corner],
  ['TURN.FEED_FOR_ROUGHNESS', { sketch: 'turned-surface', takes: { r_eps: 'r_eps', f: '=' } }],
  ['THREAD.CUT_HOLE', hole],
  ['THREAD.FORM_HOLE', hole],
  ['THREAD.MINOR_INTERNAL', thread],
  ['THREAD.MINOR_MAX', hole],
  ['THREAD.PITCH_DIAMETER', thread],
  ['THREAD.PERCENT', { sketch: 'thread-section', takes: { ...THREAD, Dh: 'Dh' } }],
  ['THREAD.TAP_TORQUE', { sketch: 'thread-section', takes: { ...THREAD, Dh: 'Dh' } }],
  ['THREAD.MILL_TIME', threadPath],
  ['THREAD.MILL_PROGRAM', threadPath],
  ['CRANK.ENGAGEMENT', { sketch: PIN, takes: { Dc: 'Dc', Ds: 'Ds', Dm: 'Dm' } }],
  ['CRANK.CHIP_MAX', { sketch: PIN, takes: { Dc: 'Dc', Ds: 'Ds', Dm: 'Dm', fj: 'fj' } }],
  ['RIGID.DEFLECTION', { sketch: 'overhung-tool', takes: rod }],
  ['RIGID.OVERHANG_FOR', { sketch: 'overhung-tool', takes: { ...rod, lengths: '=' } }],
  ['RIGID.BAR_DEFLECTION', { sketch: 'overhung-tool', takes: { ...rod, diameters: 'h', w: 'w' } }],
  [
    'RIGID.STEPPED_DEFLECTION',
    {
      sketch: 'overhung-tool',
      takes: { lengths: 'lengths', diameters: 'diameters', moduli: 'moduli', F: 'F' },
    },
  ],
  ['STOCK.BUY_TO_FLY', { sketch: 'stock-part', takes: { m_b: 'm_b', m_f: 'm_f' } }],
  ['STOCK.ROUGHING_TIME', stock],
  ['STOCK.PART_COST', stock],
]);
