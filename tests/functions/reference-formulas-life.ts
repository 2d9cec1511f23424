/** The published cases of tool life, economics, stiffness, chatter, hardness and wear as formulas. */

import type { Formulas } from './reference-case.ts';

const exponent = 'LIFE.TAYLOR_EXPONENT({v}; {T})';
const constant = 'LIFE.TAYLOR_CONSTANT({v}; {T})';
const life = 'LIFE.TAYLOR({v}; {C}; {n})';
const spindle = (speed: string): string => `CUT.SPINDLE_SPEED({D}; ${speed})`;
const turned = (speed: string): string => `CUT.TIME({f} * ${spindle(speed)}; {L})`;

/** One part at the speed of least cost or greatest output, the tool changed after whole parts. */
function economics(least: boolean, cut: (speed: string) => string, names: Readonly<Record<string, string>>) {
  const { C, Co, Ct, Th, Tt } = { C: '{C}', Co: '{Co}', Ct: '{Ct}', Th: '{Th}', Tt: '{Tt}', ...names };
  const set = least ? Ct : '0 money';
  const v = `COST.ECONOMIC_SPEED(${C}; {n}; ${Tt}; ${set}; ${Co})`;
  const T = `COST.ECONOMIC_LIFE({n}; ${Tt}; ${set}; ${Co})`;
  const Tm = cut(v);
  const np = `LIFE.PARTS_PER_EDGE(${T}; ${Tm})`;
  const part = (rate: string, edge: string, pieces = np): string =>
    `COST.PART(${rate}; ${Tm}; ${Th}; ${Tt}; ${pieces} * ${Tm}; ${edge})`;
  return {
    v,
    T,
    Tm,
    np,
    Tc: `${part('1 money/min', '0 money')} * 1 min / 1 money`,
    cost: part(Co, Ct),
    part,
  };
}

const groover = (least: boolean): Readonly<Record<string, string>> => {
  const { v, T, Tm, np, Tc, cost } = economics(least, turned, {});
  return { v, T, Tm, np, Tc, cost };
};

const SECONDS = { C: '{vr}', Co: '{M}', Th: '{tl}', Tt: '{tct}' };

/** Boothroyd's tables: K is the length that the edge travels for one part. */
const boothroyd = (pieces?: (T: string, Tm: string) => string): Readonly<Record<string, string>> => {
  const { v, T, Tm, np, part } = economics(true, (speed) => `({K} / ${speed})`, SECONDS);
  const count = pieces ? pieces(T, Tm) : np;
  return {
    tc: T,
    v,
    tm: Tm,
    pieces: count,
    time: `${part('1 money/min', '0 money', count)} * 1 min / 1 money`,
    cost: part('{M}', '{Ct}', count),
  };
};

const fastest = economics(false, (speed) => `CUT.TIME({f} * CUT.SPINDLE_SPEED({d}; ${speed}); {l})`, SECONDS);
const holes = (index: number): string =>
  `{holes[${index}]} * CUT.TIME({f} * ${spindle(`{v[${index}]}`)}; {depth})`;
const pieces = (index: number): string =>
  `{pieces[${index}]} * CUT.TIME(CUT.FEED_RATE({z}; {fz}; ${spindle(`{v[${index}]}`)}); {L} + 0.5 * ({D} - SQRT(({D})^2 - ({w})^2)))`;
const shop37 = (index: number, T: string): Readonly<Record<string, string>> => {
  const Tm = turned(`{v[${index}]}`);
  const np = `LIFE.PARTS_PER_EDGE(${T}; ${Tm})`;
  const part = (rate: string, edge: string): string =>
    `COST.PART(${rate}; ${Tm}; {Th}; {Tt}; ${np} * ${Tm}; ${edge})`;
  return {
    [`Tm_${index + 1}`]: Tm,
    [`np_${index + 1}`]: np,
    [`Tc_${index + 1}`]: `${part('1 money/min', '0 money')} * 1 min / 1 money`,
    [`cost_${index + 1}`]: part('{Co}', '{Ct}'),
  };
};
const boring = (speed: string, T: string): string =>
  `(COST.PART(1 money/min; ${turned(speed)}; {Th}; {Tt}; ${T}; 0 money) * 1 min / 1 money)`;
const fast = 'COST.ECONOMIC_SPEED({C}; {n}; {Tt}; 0 money; 1 money/h)';
const fastLife = 'COST.ECONOMIC_LIFE({n}; {Tt}; 0 money; 1 money/h)';
const bend = (l: string, d: string): string => `RIGID.DEFLECTION(${d}; ${l}; 210 GPa; 500 N)`;
const atWear = (run: string, limit: string): string => `LIFE.AT_WEAR({t_${run}}; {VB_${run}}; ${limit})`;

const floor = (engagement: string, sense: string): string =>
  `CHATTER.MILL_FLOOR(20 mm; {N}; ${engagement}; "${sense}"; {Kt}; {Kr_ratio}; {fx}; {zx}; {kx}; {fy}; {zy}; {ky})`;

export const FORMULAS: Formulas = {
  d03: { n: exponent, C: constant },
  d04: {
    n: exponent,
    C: constant,
    T_at_300: `LIFE.TAYLOR(300 ft/min; ${constant}; ${exponent})`,
    v_at_T10: `LIFE.TAYLOR_SPEED(10 min; ${constant}; ${exponent})`,
  },
  d05: {
    n: exponent,
    C: constant,
    T_at_110: `LIFE.TAYLOR(110 m/min; ${constant}; ${exponent})`,
    v_at_T15: `LIFE.TAYLOR_SPEED(15 min; ${constant}; ${exponent})`,
  },
  d06: {
    n: exponent,
    C: constant,
    T_at_110: `LIFE.TAYLOR(110 m/min; ${constant}; ${exponent})`,
    v_at_T15: `LIFE.TAYLOR_SPEED(15 min; ${constant}; ${exponent})`,
  },
  d07: { C: constant, n: exponent, T_at_1mps: `LIFE.TAYLOR(1 m/s; ${constant}; ${exponent})` },
  d08: {
    A: '0.5 * ({D} - SQRT(({D})^2 - ({w})^2))',
    T1: pieces(0),
    T2: pieces(1),
    n: 'LIFE.TAYLOR_EXPONENT({v}; {7.61;60.78} min)',
    C: 'LIFE.TAYLOR_CONSTANT({v}; {7.61;60.78} min)',
  },
  d10: { n_lnT_on_lnv: exponent, C_lnT_on_lnv: constant },
  d11: { n_regression: exponent, C_regression: constant },
  d16: {
    T1: holes(0),
    T2: holes(1),
    n: 'LIFE.TAYLOR_EXPONENT({v}; {27.25;1.82} min)',
    C: 'LIFE.TAYLOR_CONSTANT({v}; {27.25;1.82} min)',
  },
  d17: { Tm: 'LIFE.TAYLOR(226.6 m/min; {C}; {n})' },
  d18: { Tm: 'LIFE.TAYLOR(476.56 ft/min; {C}; {n})' },
  d19: {
    n: 'LIFE.TAYLOR_EXPONENT({v}; {6.319;58.98} min)',
    C: 'LIFE.TAYLOR_CONSTANT({v}; {6.319;58.98} min)',
  },
  d21: { T: 'LIFE.TAYLOR({v_dry}; {C}; {n})' },
  d22: {
    T_dry: life,
    T_wet: 'LIFE.TAYLOR({v}; (1 + {gain}) * {C}; {n})',
    percent: `LIFE.TAYLOR({v}; (1 + {gain}) * {C}; {n}) / ${life} - 1`,
  },
  d23: {
    T_dry: 'LIFE.TAYLOR({v}; {C_dry}; {n})',
    T_wet: 'LIFE.TAYLOR({v}; {C_wet}; {n})',
    percent: 'LIFE.TAYLOR({v}; {C_wet}; {n}) / LIFE.TAYLOR({v}; {C_dry}; {n}) - 1',
    v_same_life: 'LIFE.TAYLOR_SPEED(LIFE.TAYLOR({v}; {C_dry}; {n}); {C_wet}; {n})',
  },
  d25: {
    v30_base: 'LIFE.TAYLOR_SPEED(30 min; 490 m/min; 0.29)',
    v30_new: 'LIFE.TAYLOR_SPEED(30 min; 430 m/min; 0.23)',
    T150_base: 'LIFE.TAYLOR(150 m/min; 490 m/min; 0.29)',
    T150_new: 'LIFE.TAYLOR(150 m/min; 430 m/min; 0.23)',
  },
  d26: {
    T_ratio_minus20: 'LIFE.TAYLOR(80 m/min; 450 m/min; {n}) / LIFE.TAYLOR(100 m/min; 450 m/min; {n})',
    T_ratio_plus30: 'LIFE.TAYLOR(130 m/min; 450 m/min; {n}) / LIFE.TAYLOR(100 m/min; 450 m/min; {n})',
  },
  d28: { v: 'LIFE.TAYLOR_SPEED(165.382 min; 250 m/min; 0.3)' },
  d29: { v: 'LIFE.TAYLOR_SPEED(32 min; 300 m/min; 0.3)' },
  d30: { v: 'LIFE.TAYLOR_SPEED(15 min; 200 m/min; 0.6)' },
  d31: { v: 'CUT.SPEED({D}; {n_rpm})', T: 'LIFE.TAYLOR(CUT.SPEED({D}; {n_rpm}); {C}; {n})' },
  d32: {
    n: exponent,
    C: constant,
    T_opt: `COST.ECONOMIC_LIFE(${exponent}; {Tc}; 0 money; 1 money/h)`,
    v_opt: `COST.ECONOMIC_SPEED(${constant}; ${exponent}; {Tc}; 0 money; 1 money/h)`,
  },
  d33: {
    T: life,
    Tm: turned('{v}'),
    cost: `(COST.PART(5 money/min; ${turned('{v}')}; 0 min; {t_change}; ${life}; 0 money) - 5 money/min * ${turned('{v}')}) / 1 money`,
  },
  d34: {
    percent_change:
      'LIFE.EXTENDED(200 m/min; 0.2 mm; 2 mm; 1e9 min; {exponent}; 1; 0.5) / LIFE.EXTENDED(100 m/min; 0.2 mm; 2 mm; 1e9 min; {exponent}; 1; 0.5) - 1',
  },
  d35: { t_hole: 'DRILL.TIME({D}; {f} * {n_rpm}; {depth}; {point})' },
  d37: { ...shop37(0, '14.76 min'), ...shop37(1, '59.54 min') },
  d38: groover(false),
  d39: groover(true),
  d40: groover(false),
  d42: groover(true),
  d43: groover(true),
  d45: groover(false),
  d46: groover(true),
  d55: {
    T_now: 'LIFE.TAYLOR({v_now}; {C}; {n})',
    Tm_now: turned('{v_now}'),
    rate_now: `1 / ${boring('{v_now}', 'LIFE.TAYLOR({v_now}; {C}; {n})')}`,
    v_max: fast,
    T_max: fastLife,
    Tc_max: boring(fast, fastLife),
    rate_max: `1 / ${boring(fast, fastLife)}`,
  },
  d60: {
    tp: fastest.T,
    vp: fastest.v,
    tm: fastest.Tm,
    pieces: fastest.np,
    time: fastest.Tc,
    cost: fastest.cost,
  },
  d61: boothroyd((T, Tm) => `ROUND(${T} / ${Tm}; 0)`),
  d62: boothroyd(),
  d63: boothroyd(),
  d64: boothroyd(),
  d65: boothroyd(),
  d66: {
    tc: 'COST.ECONOMIC_LIFE({n}; {tct}; {Ct}; {M})',
    v: 'COST.ECONOMIC_SPEED({vr}; {n}; {tct}; {Ct}; {M}; {Q})',
    pieces_ignoring_Q: 'LIFE.PARTS_PER_EDGE(COST.ECONOMIC_LIFE({n}; {tct}; {Ct}; {M}; {Q}); {Q} * {tm})',
  },
  d68: { life_ratio: 'LIFE.TAYLOR(100 m/min; 300 m/min; {n}) / LIFE.TAYLOR(150 m/min; 300 m/min; {n})' },
  d69: { T_p: 'COST.ECONOMIC_LIFE({m[i]}; {T_CT}; 0 money; 1 money/h)' },
  g01: {
    delta_steel: 'RIGID.DEFLECTION({d}; {L}; {E_steel}; {F})',
    delta_carbide: 'RIGID.DEFLECTION({d}; {L}; {E_carbide}; {F})',
    k_steel: '{F} / RIGID.DEFLECTION({d}; {L}; {E_steel}; {F})',
  },
  g02: {
    deflection_ratio_L: `${bend('{ratio} * 60 mm', '20 mm')} / ${bend('60 mm', '20 mm')}`,
    deflection_ratio_D_halved: `${bend('100 mm', '20 mm / {ratio}')} / ${bend('100 mm', '20 mm')}`,
    deflection_ratio_L_10pct: `${bend('110 mm', '20 mm')} / ${bend('100 mm', '20 mm')}`,
  },
  g04: {
    delta_solid_bar: 'RIGID.STEPPED_DEFLECTION({30;20} mm; {10;10} mm; {600;600} GPa; {F})',
  },
  g05: { f1: 'RIGID.FREQUENCY({d}; {L}; {E}; {rho})' },
  g12: { y_chuck: 'RIGID.DEFLECTION({d}; {L}; {E}; {F})' },
  h03: { k_y: '{k} / COS({theta})^2', b_min: 'CHATTER.TURN_LIMIT({k} / COS({theta})^2; {zeta}; {Kf})' },
  h12: { w_min: 'CHATTER.TURN_LIMIT(1340049.648 N/m; {zeta}; 100 MPa)' },
  h14: {
    n_next_lower_lobe: 'CHATTER.POCKET_SPEED({z}; {fc}; 3)',
    n_next_higher_lobe: 'CHATTER.POCKET_SPEED({z}; {fc}; 4)',
  },
  h15: { a_min: floor('10 mm', 'down') },
  h16: { a_min: floor('10 mm', 'up') },
  l30: { shape_ml: 'LIFE.WEIBULL_SHAPE({t})', scale_ml: 'LIFE.WEIBULL_SCALE({t})' },
  l32: {
    median: 'LIFE.AT_RELIABILITY({beta}; {eta}; 0.5)',
    B10: 'LIFE.AT_RELIABILITY({beta}; {eta}; 0.9)',
  },
  m01: {
    'T_125_VB0.75': atWear('125', '0.75 mm'),
    'T_165_VB0.75': atWear('165', '0.75 mm'),
    'T_125_VB0.50': atWear('125', '0.5 mm'),
    'T_165_VB0.50': atWear('165', '0.5 mm'),
  },
  m04: { slope: 'LIFE.WEAR_RATE({t}; {wear})', 't_at_0.15': 'LIFE.AT_WEAR({t}; {wear}; 0.15 mm)' },
  m05: { slope: 'LIFE.WEAR_RATE({t}; {wear})', 't_at_0.15': 'LIFE.AT_WEAR({t}; {wear}; 0.15 mm)' },
  m06: { slope: 'LIFE.WEAR_RATE({t}; {wear})', 't_at_0.15': 'LIFE.AT_WEAR({t}; {wear}; 0.15 mm)' },
  m08: { slope: 'LIFE.WEAR_RATE({t}; {wear})', 't_at_0.15': 'LIFE.AT_WEAR({t}; {wear}; 0.15 mm)' },
};

const INVERSE = 'solved backwards; the life at the printed speed is checked instead';
const OTHER_TABLE =
  'ASTM E140 is another table than ISO 18265 A.1; the nearness of the two is checked by itself';

/** Values of these topics that no function expresses, with the reason. */
export const NOT_EXPRESSED: Readonly<Record<string, string>> = {
  'd10.n_lnv_on_lnT': 'speed is set and life is measured: the library fits ln T on ln vc only',
  'd10.C_lnv_on_lnT': 'as its exponent',
  'd10.C_check_mid': 'one point of the print, not the line',
  'd11.n_two_point': 'rounded two-point values of the print; the regression is checked',
  'd11.C_two_point': 'as its exponent',
  'd11.C_mid_check': 'one point of the print, not the line',
  'd17.v': INVERSE,
  'd18.v': INVERSE,
  'd19.v50': INVERSE,
  'd21.C_new': 'a product of the inputs',
  'd21.percent': 'an input',
  'd28.T': 'life at which two laws meet; the speed at it is checked',
  'd29.T': 'as d28',
  'd30.T': 'as d28',
  'd35.C': 'constant from one point and a known exponent',
  'd37.T_1': 'the constants of the law are in another problem of the book',
  'd37.T_2': 'as T_1',
  d52: 'limits of the standards stand in the remarks of LIFE.AT_WEAR',
  'd66.pieces_with_Q':
    'counts the contact share twice; 279 follows from time in the cut over time in the cut',
  'd66.cost': 'needs the pieces of the print',
  'd69.KG_over_KU_implied': 'read backwards from the print',
  d70: 'law with wear limit and entering angle, its constants arbitrary',
  'g01.I': 'second moment of area, an intermediate value',
  'g04.delta': 'empirical formula that is not unit-free, not in the library',
  'g05.beta1L': 'a root of the beam equation, a constant of the equation',
  'g05.beta2L': 'second mode',
  'g05.ratio_f2_f1': 'second mode',
  g06: 'family HOLE',
  g09: 'units',
  g10: 'modal mass',
  'g12.ratio': 'needs the bar between centres',
  'g12.y_centres': 'the bar between centres',
  h02: 'points of the lobes of turning by chatter frequency; the library gives the floor only',
  h05: 'mean tooth angle, a cruder law than that of the library',
  h06: 'direction factors are checked inside the family by themselves',
  h07: 'as h06',
  h08: 'as h06',
  h10: 'multipliers of the full problem with one mode and none across',
  'h12.k': 'an intermediate value',
  'h12.h_mean': 'an intermediate value',
  'h14.waves': 'an intermediate value',
  'h15.f_chatter': 'the frequency is not a result of the library; the test of the family checks it',
  'h15.n_lobe_1': 'as f_chatter',
  'h16.f_chatter': 'as h15',
  'h16.n_lobe_1': 'as h15',
  h18: 'mode shapes instead of stiffnesses; the test of the family checks it',
  k01: OTHER_TABLE,
  k02: OTHER_TABLE,
  k03: OTHER_TABLE,
  k05: 'rule of thumb, not in the library: the table is',
};
