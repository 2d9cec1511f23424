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

const between = (limit: string): string =>
  `LN(165 / 125) / LN(${atWear('125', limit)} / ${atWear('165', limit)})`;
const logs = (...values: number[]): string => `{${values.map(Math.log).join(';')}}`;
/** Speed at which the life is that of a number of whole parts. */
const wholeCut = (parts: string): string =>
  `(({C} / 1 m/min)^(1 / {n}) * {f} * 1 m / (${parts} * PI() * {D} * {L}))^({n} / (1 - {n})) * 1 m/min`;
/** Life at which two laws give the same speed. */
const meeting = '({tool2[1]} / {tool1[1]})^(1 / ({tool2[0]} - {tool1[0]})) * 1 min';
const hole35 = 'DRILL.TIME({D}; {f} * {n_rpm}; {depth}; {point})';
const speed70 = (sine: string, wear = '({VB} / 1 mm)'): string =>
  `({C} * ${wear}^{n} / (({f} / 1 mm * ${sine})^{p} * ({a} / 1 mm / ${sine})^{q}) / ({T} / 1 min)^{m} * 1 m/min)`;
const modal12 = '{m} * (2 * PI() * {fn})^2';

const floor = (engagement: string, sense: string): string =>
  `CHATTER.MILL_FLOOR(20 mm; {N}; ${engagement}; "${sense}"; {Kt}; {Kr_ratio}; {fx}; {zx}; {kx}; {fy}; {zy}; {ky})`;

export const LIFE_FORMULAS: Formulas = {
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
  d10: {
    n_lnT_on_lnv: exponent,
    C_lnT_on_lnv: constant,
    n_lnv_on_lnT: `-SLOPE(${logs(160, 130, 100)}; ${logs(5, 12, 41)})`,
    C_lnv_on_lnT: `EXP(INTERCEPT(${logs(160, 130, 100)}; ${logs(5, 12, 41)})) * 1 m/min`,
    C_check_mid: `{v[1]} * ({T[1]} / 1 min)^${exponent}`,
  },
  d11: {
    n_regression: exponent,
    C_regression: constant,
    n_two_point: 'LIFE.TAYLOR_EXPONENT({160;100} m/min; {5.75;47} min)',
    C_two_point: 'LIFE.TAYLOR_CONSTANT({160;100} m/min; {5.75;47} min)',
    // The print goes on with its rounded exponent.
    C_mid_check: '{v[1]} * ({T[1]} / 1 min)^0.224',
  },
  d16: {
    T1: holes(0),
    T2: holes(1),
    n: 'LIFE.TAYLOR_EXPONENT({v}; {27.25;1.82} min)',
    C: 'LIFE.TAYLOR_CONSTANT({v}; {27.25;1.82} min)',
  },
  d17: { v: wholeCut('1'), Tm: `LIFE.TAYLOR(${wholeCut('1')}; {C}; {n})` },
  d18: { v: wholeCut('1'), Tm: `LIFE.TAYLOR(${wholeCut('1')}; {C}; {n})` },
  d19: {
    n: 'LIFE.TAYLOR_EXPONENT({v}; {6.319;58.98} min)',
    C: 'LIFE.TAYLOR_CONSTANT({v}; {6.319;58.98} min)',
    v50: wholeCut('50')
      .replaceAll('{n}', 'LIFE.TAYLOR_EXPONENT({v}; {6.319;58.98} min)')
      .replaceAll('{C}', 'LIFE.TAYLOR_CONSTANT({v}; {6.319;58.98} min)'),
  },
  d21: {
    T: 'LIFE.TAYLOR({v_dry}; {C}; {n})',
    C_new: '(1 + {speed_gain}) * {C}',
    percent: '(1 + {speed_gain}) * {C} / {C} - 1',
  },
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
  d28: { T: meeting, v: `LIFE.TAYLOR_SPEED(${meeting}; {tool2[1]} m/min; {tool2[0]})` },
  d29: { T: meeting, v: `LIFE.TAYLOR_SPEED(${meeting}; {tool2[1]} m/min; {tool2[0]})` },
  d30: { T: meeting, v: `LIFE.TAYLOR_SPEED(${meeting}; {tool2[1]} m/min; {tool2[0]})` },
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
  d35: {
    t_hole: hole35,
    C: `CUT.SPEED({D}; {n_rpm}) * ({holes} * ${hole35} / 1 min)^{n}`,
  },
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
    cost: 'COST.PART({M}; {tm}; {tl}; {tct}; COST.ECONOMIC_LIFE({n}; {tct}; {Ct}; {M}; {Q}); {Ct}; {Q})',
  },
  d68: { life_ratio: 'LIFE.TAYLOR(100 m/min; 300 m/min; {n}) / LIFE.TAYLOR(150 m/min; 300 m/min; {n})' },
  d69: { T_p: 'COST.ECONOMIC_LIFE({m[i]}; {T_CT}; 0 money; 1 money/h)' },
  d52: { ISO3685_VB_B_average: 'LIFE.AT_WEAR({0;1} min; {0;1} mm) * 1 mm / 1 min' },
  d70: {
    v: speed70('SIN({kappa})'),
    life_gain_45_vs_90: `(${speed70('SIN(45 deg)')} / ${speed70('1')})^(1 / {m})`,
    'life_ratio_VB_0.3_to_0.6': `(${speed70('1', '0.6')} / ${speed70('1')})^(1 / {m})`,
  },
  g01: {
    I: 'PI() * ({d})^4 / 64',
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
  g05: {
    f1: 'RIGID.FREQUENCY({d}; {L}; {E}; {rho})',
    beta1L:
      'SQRT(2 * PI() * RIGID.FREQUENCY({d}; {L}; {E}; {rho}) * ({L})^2 * SQRT({rho} * 16 / ({E} * ({d})^2)))',
  },
  g09: {
    E_carbide_GPa: '{E_carbide_psi}',
    stiffness_ratio_carbide_steel: `${bend('100 mm', '20 mm')} / RIGID.DEFLECTION(20 mm; 100 mm; 600 GPa; 500 N)`,
  },
  // Any bar does: modal stiffness (2 pi f)^2 m / 4 over the static one.
  g10: {
    k1_over_kstatic: `(2 * PI() * RIGID.FREQUENCY(20 mm; 100 mm; 210 GPa; 7850 kg/m3))^2 * 7850 kg/m3 * PI() * (20 mm)^2 * 100 mm / 16 * ${bend('100 mm', '20 mm')} / 500 N`,
  },
  // Between centres each half is a cantilever under half of the force.
  g12: {
    y_chuck: 'RIGID.DEFLECTION({d}; {L}; {E}; {F})',
    y_centres: 'RIGID.DEFLECTION({d}; {L} / 2; {E}; {F} / 2)',
    ratio: 'RIGID.DEFLECTION({d}; {L}; {E}; {F}) / RIGID.DEFLECTION({d}; {L} / 2; {E}; {F} / 2)',
  },
  h03: { k_y: '{k} / COS({theta})^2', b_min: 'CHATTER.TURN_LIMIT({k} / COS({theta})^2; {zeta}; {Kf})' },
  h05: {
    Nt_star: 'MILL.TEETH_IN_CUT(20 mm; {Nt}; {phi_e} - {phi_s})',
    mu_x: 'COS({beta} - 45 deg) * COS(45 deg)',
    mu_y: 'COS(135 deg - {beta}) * COS(45 deg)',
    Re_min_factor: '-1 / (2 * {Ks} * CHATTER.TURN_LIMIT({k}; {zeta}; {Ks}))',
  },
  h12: {
    k: modal12,
    h_mean: '{N} * {Kn} / 4',
    w_min: `CHATTER.TURN_LIMIT(${modal12}; {zeta}; {N} * {Kn} / 4)`,
  },
  h14: {
    waves: '{fc} / ({z} * {n})',
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
    'n_VB0.75_interpolated': between('0.75 mm'),
    'n_VB0.50_interpolated': between('0.5 mm'),
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
