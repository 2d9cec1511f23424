/**
 * The published cases of turning, drilling, threads, surface finish and tolerance grades as formulas. {D} stands for
 * the input D of the case with its unit, {ap[0]} for one of several, {ap[i]} for each in turn.
 */

import type { Formula, Formulas } from './reference-case.ts';

const spindle = 'CUT.SPINDLE_SPEED({D}; {vc})';
const drillFeed = `{f} * ${spindle}`;
const point = 'DRILL.POINT_LENGTH({D}; {point})';
const hole04 = `DRILL.TIME({D}; ${drillFeed}; {t}; {point}; {clearance})`;
const size03 = ['6', '8', '10', '12', '16', '20', '24', '30', '36'];
const inches05 = ['0.25', '0.375', '0.5', '0.75', '1'];
const inches16 = ['0.25', '0.5', '0.75', '1'];
const rangeEnds = ['6', '10', '18', '30', '50', '80', '120', '180'];
const milled = (length: string): string =>
  `THREAD.MILL_TIME({Dc}; {z}; {fz}; {vc}; {D}; {P}; ${length}; "single")`;
const contour = 'CUT.FEED_RATE({z}; {fz}; CUT.SPINDLE_SPEED({Dc}; {vc}))';
/** The textbook writes 32 where the exact mean of the parabola has 18 sqrt(3). */
const textbook = '(18 * SQRT(3) / 32)';
/** Height of the parabola f^2/(8 r), through its mean deviation. */
const parabola = (f: string): string => `TURN.MEAN_ROUGHNESS({r}; ${f}) * 18 * SQRT(3) / 8`;
const feed09 = `TURN.FEED_FOR_ROUGHNESS({r}; {Ra} / {ratio} / ${textbook})`;

export const HOLE_FORMULAS: Formulas = {
  a11: { Q: 'TURN.REMOVAL_RATE({vc}; {f}; {ap})' },
  a13: { Tm: 'TURN.FACING_TIME(100000 m/min; {f}; {D}; 0 in; {n})' },
  a17: {
    Tm: 'TURN.FACING_TIME(100000 m/min; {f}; {Do}; {Di}; {n})',
    Q_outer: 'TURN.REMOVAL_RATE(CUT.SPEED({Do}; {n}); {f}; {ap})',
    Q_inner: 'TURN.REMOVAL_RATE(CUT.SPEED({Di}; {n}); {f}; {ap})',
  },
  a19: {
    P_low: 'CUT.POWER(TURN.REMOVAL_RATE(CUT.SPEED(70 mm; {n}); {vf} / {n}; 5 mm); {u[0]})',
    P_high: 'CUT.POWER(TURN.REMOVAL_RATE(CUT.SPEED(70 mm; {n}); {vf} / {n}; 5 mm); {u[1]})',
  },
  a33: { Q: 'TURN.REMOVAL_RATE({vc}; {f}; {ap})' },
  e01: {
    n: spindle,
    vf: drillFeed,
    A: point,
    Tm: `DRILL.TIME({D}; ${drillFeed}; {depth}; {point})`,
    Q: `DRILL.REMOVAL_RATE({D}; ${drillFeed})`,
  },
  e04: {
    n: spindle,
    vf: drillFeed,
    A: point,
    t_hole: hole04,
    total: `1.5 * {holes} * ${hole04} + ({holes} - 1) * {pitch} / {traverse}`,
  },
  e06: {
    A: point,
    L: `{t} + 2 * {clearance_each} + ${point}`,
    t_s: 'DRILL.TIME({D}; {f} * {n}; {t}; {point}; {clearance_each}; {clearance_each})',
  },
  e08: { t_s: 'DRILL.TIME(10 mm; {f} * {n}; {t}; 180 deg)' },
  e09: { t_s: `DRILL.TIME({D}; ${drillFeed}; {t}; ATAN({D} / (2 * {cone})) + ATAN({D} / (2 * {cone})))` },
  e10: { Z: `-({full_depth} + ${point})` },
  e11: {
    L: `{t} + {approach} + {overtravel} + ${point}`,
    t_s: 'DRILL.TIME({D}; CUT.FEED_RATE({z}; {fz}; {n}); {t}; {point}; {approach}; {overtravel})',
  },
  e12: { A: 'DRILL.POINT_LENGTH({D}; {half_point} + {half_point})' },
  e14: {
    Ff: '({f[i]} / 1 in)^0.8',
    FT: '({D[i]} / 1 in)^0.8',
    FM: '({D[i]} / 1 in)^1.8',
  },
  e15: {
    Ff: '({f[i]} / 1 mm)^0.8',
    FT: '({D[i]} / 1 mm)^0.8',
    FM: '({D[i]} / 1 mm)^1.8',
    'FT_8.80': '8.8^0.8',
  },
  e16: { factor_M: '(1 lbf·in / 1 N·m) / 25.4^2.6', factor_T: '2 * (1 lbf / 1 N) / 25.4^1.6' },
  e18: {
    M: '25200 * ({f} / 1 in)^0.8 * ({d} / 1 in)^1.8 * 1 lbf·in',
    T: '(57500 * ({f} / 1 in)^0.8 * ({d} / 1 in)^0.8 + 625 * ({d} / 1 in)^2) * 1 lbf',
  },
  e19: { L_over_D: '{depth} / {D}' },
  e24: { sigma: 'MILL.RAMP_ANGLE({f}; {d[i]})' },
  f01: {
    D2: 'THREAD.PITCH_DIAMETER({d[i]}; THREAD.PITCH("{size[i]}"))',
    D1: 'THREAD.MINOR_INTERNAL({d[i]}; THREAD.PITCH("{size[i]}"))',
  },
  f03: {
    As: (i) => {
      const d = `${size03[i]} mm; THREAD.PITCH("{size[i]}")`;
      return `PI() / 4 * ((THREAD.PITCH_DIAMETER(${d}) + THREAD.ROOT_EXTERNAL(${d})) / 2)^2`;
    },
  },
  f04: {
    pitch_diameter: 'THREAD.PITCH_DIAMETER({D[i]}; THREAD.PITCH("{size[i]} UNC"))',
    minor_external_UNR: 'THREAD.ROOT_EXTERNAL({D[i]}; THREAD.PITCH("{size[i]} UNC"))',
  },
  f05: { D1: (i) => `THREAD.MINOR_INTERNAL(${inches05[i]} in; THREAD.PITCH("{size[i]}"))` },
  f07: {
    drill: (i) => `THREAD.CUT_HOLE(${['0.25', '0.375', '0.5'][i]} in; THREAD.PITCH("{size[i]}"); {percent})`,
    'percent_with_no7_0.201': 'THREAD.PERCENT(0.201 in; 0.25 in; THREAD.PITCH("1/4-20"))',
    percent_half13_27_64: 'THREAD.PERCENT(0.421875 in; 0.5 in; THREAD.PITCH("1/2-13"))',
    percent_38_16_5_16: 'THREAD.PERCENT(0.3125 in; 0.375 in; THREAD.PITCH("3/8-16"))',
  },
  f12: {
    D2_min: 'THREAD.PITCH_DIAMETER(10 mm; 1.5 mm)',
    D1_min: 'THREAD.MINOR_INTERNAL(10 mm; 1.5 mm)',
    D1_max: 'THREAD.MINOR_MAX(10 mm; 1.5 mm)',
  },
  f13: {
    n: 'CUT.SPINDLE_SPEED({Dc}; {vc})',
    vf_contour: contour,
    vf_centre: `MILL.CIRCLE_FEED({Dc}; ${contour}; {D}; "inside")`,
    helix_angle: 'MILL.RAMP_ANGLE({P}; {D})',
    time_360: `${milled('2 * {P}')} - ${milled('{P}')}`,
  },
  f14: { vf_centre: 'MILL.CIRCLE_FEED({Dc}; {vf_contour}; {D}; "outside")' },
  f15: { vf: '{n} * {P}', t_in: 'THREAD.TAP_TIME({n}; {P}; {depth}) / 2' },
  f16: {
    // 0.9743 P is the mean of 3 sqrt(3)/8 P (pitch diameter) and 3 sqrt(3)/4 P (full height).
    At: (i) => {
      const d = `${inches16[i]} in; THREAD.PITCH("{size[i]}")`;
      return `PI() / 4 * ((THREAD.PITCH_DIAMETER(${d}) + THREAD.CUT_HOLE(${d}; 100 %)) / 2)^2`;
    },
  },
  g06: Object.fromEntries(
    ['IT6', 'IT7', 'IT8', 'IT9', 'IT10'].map((grade): [string, Formula] => [
      grade,
      (i) => `HOLE.TOLERANCE(${rangeEnds[i]} mm; "${grade}")`,
    ]),
  ),
  i01: { H_sharp: '{f} / (TAN({SCEA}) + 1 / TAN({ECEA}))', H_nose: parabola('{f}') },
  i04: {
    Ri: `TURN.MEAN_ROUGHNESS({r}; {f}) * ${textbook}`,
    Ra: `{ratio} * TURN.MEAN_ROUGHNESS({r}; {f}) * ${textbook}`,
  },
  i05: {
    Ri: `TURN.MEAN_ROUGHNESS({r}; {f}) * ${textbook}`,
    Ra: `{ratio} * TURN.MEAN_ROUGHNESS({r}; {f}) * ${textbook}`,
  },
  i07: { f: `TURN.FEED_FOR_ROUGHNESS({r}; {Ra} / {ratio} / ${textbook})` },
  // The roughness goes as one over the radius.
  i08: { r: `{ratio} * TURN.MEAN_ROUGHNESS(1 mm; {f}) * ${textbook} * 1 mm / {Ra}` },
  i09: {
    vc: 'CUT.SPEED({D}; {n})',
    Ri: '{Ra} / {ratio}',
    fz: feed09,
    vf: `CUT.FEED_RATE({z}; ${feed09}; {n})`,
  },
  i12: { Ra_factor: 'TURN.MEAN_ROUGHNESS(1 mm; 0.1 mm) * 1 mm / (0.1 mm)^2' },
  i13: { Rt_exact: 'TURN.PEAK_HEIGHT({r}; {f[i]})', Rt_parabola: parabola('{f[i]}') },
  i14: { factor: 'TURN.MEAN_ROUGHNESS({r}; 2 * {f}) / TURN.MEAN_ROUGHNESS({r}; {f})' },
  i15: { h_exact: 'MILL.SCALLOP(2 * {R}; {step[i]})', h_approx: '({step[i]})^2 / (8 * {R})' },
  i16: {
    h_circle: '({fz})^2 / (4 * {D})',
    h_up: '({fz})^2 / (8 * ({D} / 2 + {fz} * {z} / (2 * PI())))',
    h_down: '({fz})^2 / (8 * ({D} / 2 - {fz} * {z} / (2 * PI())))',
  },
};
