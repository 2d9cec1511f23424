/** The published cases of the shear plane, of cutting temperature and of statistics as formulas: arithmetic with units and the built-in functions. */

import type { Formulas } from './reference-case.ts';

/** Shear angle of Merchant from the chip ratio. */
const shear = (ratio: string, rake = '{rake}'): string =>
  `ATAN(${ratio} * COS(${rake}) / (1 - ${ratio} * SIN(${rake})))`;
/** Friction angle that belongs to a shear angle. */
const friction = (phi: string, rake = '{rake}'): string => `(90 deg + ${rake} - 2 * ${phi})`;
const strain = (phi: string, rake = '{rake}'): string => `(TAN(${phi} - ${rake}) + 1 / TAN(${phi}))`;
/** Forces from the force along the shear plane. */
const cutting = (Fs: string, phi: string, beta: string): string =>
  `${Fs} * COS(${beta} - {rake}) / COS(${phi} + ${beta} - {rake})`;
const thrust = (Fs: string, phi: string, beta: string): string =>
  `${Fs} * SIN(${beta} - {rake}) / COS(${phi} + ${beta} - {rake})`;

const phi02 = '{phi}';
const shear02 = `({Fc} * COS(${phi02}) - {Ft} * SIN(${phi02}))`;
const phi04 = shear('{to} / {tc1}', '{rake1}');
const phi04b = `(45 deg + {rake2} / 2 - ${friction(phi04, '{rake1}')} / 2)`;
const phiR = shear('{r}');
const plane = (chip: string, width: string): string => `${chip} * ${width} / SIN(${phiR})`;
const shear06 = `({Fc} * COS(${phiR}) - {Ft} * SIN(${phiR}))`;
const fromStrength = (chip: string, width: string) => {
  const Fs = `{S} * ${plane(chip, width)}`;
  return { phi: phiR, Fs, Fc: cutting(Fs, phiR, friction(phiR)), Ft: thrust(Fs, phiR, friction(phiR)) };
};
const phi26 = shear('({to} / {tc})');
const force26 = cutting(`{S} * {to} * {w} / SIN(${phi26})`, phi26, friction(phi26));
const lambda38 = 'ATAN({mu})';
const phi38 = `((90 deg + {rake} - ${lambda38}) / 2)`;
const shear38 = `{tau} * {w} * {t1} / SIN(${phi38})`;

/** 0.4 U/(rho C) (v to/K)^0.333. */
const rise = (U: string, heat: string): string => `0.4 * ${U} / (${heat}) * ({vc} * {to} / {K})^0.333`;
const energy23 = '{Fc} * {vc} / ({vc} * {to} * {w})';

const linest = (row: number, column: number, x = '{x}', constant = 'FALSE'): string =>
  `INDEX(LINEST({y}; ${x}; ${constant}; TRUE); ${row}; ${column})`;
const throughZero = {
  B1: linest(1, 1),
  sd_B1: linest(2, 1),
  residual_sd: linest(3, 2),
  R2: linest(3, 1),
  RSS: linest(5, 2),
  F: linest(4, 1),
};
const longley = (row: number, column: number): string =>
  linest(row, column, '{{x1[all]}|{x2[all]}|{x3[all]}|{x4[all]}|{x5[all]}|{x6[all]}}', 'TRUE');

/** One-way analysis of variance as a fit with marks of the groups. */
const variance = (groups: number, count: number) => {
  const names = Array.from({ length: groups }, (_, i) => i + 1);
  const y = `{${names.map((k) => `{group_${k}[all]}`).join(';')}}`;
  const marks = names
    .slice(1)
    .map((k) => names.flatMap((j) => Array.from({ length: count }, () => Number(j === k))).join(';'))
    .join('|');
  const at = (row: number, column: number): string =>
    `INDEX(LINEST(${y}; {${marks}}; TRUE; TRUE); ${row}; ${column})`;
  return {
    df_between: String(groups - 1),
    df_within: at(4, 2),
    SS_between: at(5, 1),
    SS_within: at(5, 2),
    F: at(4, 1),
    R2: at(3, 1),
    residual_sd: at(3, 2),
  };
};

const pooled = 'SQRT((({n[0]} - 1) * {sd[0]}^2 + ({n[1]} - 1) * {sd[1]}^2) / ({n[0]} + {n[1]} - 2))';
const share = (k: number): string => `({sd[${k}]}^2 / {n[${k}]})`;
const welch = `(${share(0)} + ${share(1)})`;

const gauge = [
  '{u_l_s#}',
  '{u_d#}',
  '({l_s#} * {theta#} * {u_delta_alpha#})',
  '({l_s#} * {u_delta_theta#} * {alpha_s#})',
];
const uncertainty = `SQRT(${gauge.map((part) => `${part}^2`).join(' + ')})`;
// The order of the degrees of freedom is that of the parts: length, comparison, difference of temperature, of expansion.
const freedom = `(${uncertainty}^4 / (${[gauge[0], gauge[1], gauge[3], gauge[2]].map((part, k) => `${part}^4 / {dof_ls_d_dtheta_dalpha[${k}]}`).join(' + ')}))`;
const expanded = `TINV(0.01; INT(${freedom}))`;

const line28 = '{b#}; {t#}';
const spread28 = `STEYX(${line28})`;
const at28 = (t: string): string =>
  `${spread28} * SQRT(1 / COUNT({t#}) + (${t} - AVERAGE({t#}))^2 / DEVSQ({t#}))`;

const LIVES = [16, 34, 53, 75, 93, 120];
const lnLives = `{${LIVES.map(Math.log).join(';')}}`;
const ranks = LIVES.map((_, i) => (i + 0.7) / (LIVES.length + 0.4));
const lnRanks = `{${ranks.map((rank) => Math.log(-Math.log(1 - rank))).join(';')}}`;

const normal = (p: string): string => `LEGACY.NORMSINV(${p})`;
const a35 = `(1 - ${normal('{confidence}')}^2 / (2 * ({n} - 1)))`;
const b35 = `(${normal('{p}')}^2 - ${normal('{confidence}')}^2 / {n})`;
const critical40 = 'TINV(2 * {alpha} / 8; 6)';
const loss = (x: string, k: number) => ({
  [`x1_${x}_y_first_order`]: `{x1[${k}]}^2 / 1E-6`,
  [`x1_${x}_u_first_order`]: `2 * {x1[${k}]} * {u} / 1E-6`,
  [`x1_${x}_y_exact`]: `({x1[${k}]}^2 + 2 * {u}^2) / 1E-6`,
  [`x1_${x}_u_exact`]: `SQRT(4 * {x1[${k}]}^2 * {u}^2 + 4 * {u}^4) / 1E-6`,
});

export const PHYSICS_FORMULAS: Formulas = {
  c02: { Fs: shear02, As: `{to} * {w} / SIN(${phi02})`, tau: `${shear02} / ({to} * {w} / SIN(${phi02}))` },
  c04: {
    phi1: phi04,
    gamma1: strain(phi04, '{rake1}'),
    beta: friction(phi04, '{rake1}'),
    phi2: phi04b,
    tc2: `{to} * COS(${phi04b} - {rake2}) / SIN(${phi04b})`,
    gamma2: strain(phi04b, '{rake2}'),
  },
  c06: {
    phi: phiR,
    Fs: shear06,
    As: plane('{to}', '{w}'),
    S: `${shear06} / (${plane('{to}', '{w}')})`,
    mu: `TAN(${friction(phiR)})`,
  },
  c07: {
    ...fromStrength('{to}', '{w}'),
    tc: '{to} / {r}',
    beta: friction(phiR),
    mu: `TAN(${friction(phiR)})`,
    gamma: strain(phiR),
  },
  c09: { ...fromStrength('{f}', '{ap}'), mu: `TAN(${friction(phiR)})` },
  c10: { ...fromStrength('{f}', '{ap}'), As: plane('{f}', '{ap}') },
  c23: { U: energy23, T: `{T0} + ${rise(energy23, '{rhoC#} J/mm3 / 1 K')}` },
  c24: { U: energy23, T: `{T0} + ${rise(energy23, '{rhoC#} psi / 1 ddegF')}` },
  c26: {
    phi: phi26,
    Fc: force26,
    HPc: `${force26} * {vc}`,
    Q: '{to} * {w} * {vc}',
    HPu: `${force26} / ({to} * {w})`,
    'HPu_at_0.010': `${force26} / ({to} * {w}) / {size_factor}`,
  },
  c38: {
    phi: phi38,
    Fc: `${shear38} / COS(${phi38} + ${lambda38} - {rake}) * COS(${lambda38} - {rake})`,
    Ft: `${shear38} / COS(${phi38} + ${lambda38} - {rake}) * SIN(${lambda38} - {rake})`,
  },
  l02: throughZero,
  l03: throughZero,
  l05: {
    ...Object.fromEntries(
      [0, 1, 2, 3, 4, 5, 6].flatMap((k) => [
        [`B${k}`, longley(1, 7 - k)],
        [`sd_B${k}`, longley(2, 7 - k)],
      ]),
    ),
    residual_sd: longley(3, 2),
    R2: longley(3, 1),
    RSS: longley(5, 2),
    F: longley(4, 1),
  },
  l15: variance(5, 5),
  l16: variance(2, 24),
  l18: { n: 'COUNT({y})', mean: 'AVERAGE({y})', sd: 'STDEV({y})' },
  l20: { n: 'COUNT({y})', mean: 'AVERAGE({y})', sd: 'STDEV({y})' },
  l21: {
    sd_pooled: pooled,
    df_pooled: '{n[0]} + {n[1]} - 2',
    T_pooled: `({mean[0]} - {mean[1]}) / (${pooled} * SQRT(1 / {n[0]} + 1 / {n[1]}))`,
    T_welch: `({mean[0]} - {mean[1]}) / SQRT(${welch})`,
    df_welch: `${welch}^2 / (${share(0)}^2 / ({n[0]} - 1) + ${share(1)}^2 / ({n[1]} - 1))`,
  },
  l25: { F: 'FINV({p[i]}; {df1[i]}; {df2[i]})' },
  l26: {
    l: '({l_s#} + {d#}) * 1 nm',
    u_from_d_theta: `${gauge[3]} * 1 nm`,
    u_from_d_alpha: `ABS(${gauge[2]}) * 1 nm`,
    uc: `${uncertainty} * 1 nm`,
    nu_eff_truncated: `INT(${freedom})`,
    t_99: expanded,
    U99: `${expanded} * ${uncertainty} * 1 nm`,
    uc_second_order: `SQRT(${uncertainty}^2 + {l_s#}^2 * (({u_delta_alpha#} * {u_theta#})^2 + ({u_alpha_s#} * {u_delta_theta#})^2)) * 1 nm`,
  },
  l28: {
    y1: `FORECAST({t0#}; ${line28}) * 1 K + 0 degC`,
    u_y1: `${at28('{t0#}')} * 1 K + 0 degC`,
    y2: `SLOPE(${line28})`,
    u_y2: `${spread28} / SQRT(DEVSQ({t#}))`,
    r: '-(AVERAGE({t#}) - {t0#}) / SQRT(DEVSQ({t#}) / COUNT({t#}) + (AVERAGE({t#}) - {t0#})^2)',
    s: `${spread28} * 1 K + 0 degC`,
    b_30: `FORECAST(30; ${line28}) * 1 K + 0 degC`,
    u_b_30: `${at28('30')} * 1 K + 0 degC`,
  },
  l31: {
    median_ranks: (i) => `(${i + 1} - 0.3) / (6 + 0.4)`,
    shape_rry: `SLOPE(${lnRanks}; ${lnLives})`,
    scale_rry: `EXP(-INTERCEPT(${lnRanks}; ${lnLives}) / SLOPE(${lnRanks}; ${lnLives})) * 1 h`,
    shape_rrx: `1 / SLOPE(${lnLives}; ${lnRanks})`,
    scale_rrx: `EXP(INTERCEPT(${lnLives}; ${lnRanks})) * 1 h`,
  },
  l32: {
    mean: '{eta} * GAMMA(1 + 1 / {beta})',
    sd: '{eta} * SQRT(GAMMA(1 + 2 / {beta}) - GAMMA(1 + 1 / {beta})^2)',
  },
  l33: {
    reliability: '1 - WEIBULL({t_change#}; {beta}; {eta#}; TRUE)',
    mean_life_in_use: '{eta} * WEIBULL({t_change#}; {beta}; {eta#}; TRUE)',
  },
  l34: {
    Cp: '({USL} - {LSL}) / (6 * {sd})',
    Cpk: 'HOLE.CAPABILITY({mean} mm; {sd} mm; {LSL} mm; {USL} mm)',
    k: '1 - HOLE.CAPABILITY({mean} mm; {sd} mm; {LSL} mm; {USL} mm) / (({USL} - {LSL}) / (6 * {sd}))',
  },
  l35: { k_approx: `(${normal('{p}')} + SQRT(${normal('{p}')}^2 - ${a35} * ${b35})) / ${a35}` },
  l36: {
    u_99: `{U99} / ${normal('0.995')}`,
    u_50pct: `{half_width_50pct} / ${normal('0.75')}`,
    u_rect: '{half_width_rect#} / SQRT(3) / 1 K',
  },
  l37: {
    u: 'SQRT({n}) * {u_each}',
    normal_half_width: `${normal('0.975')} * SQRT({n}) * {u_each}`,
    rectangular_half_width: '2 * SQRT(3) * (2 - (3 / 5)^(1 / 4)) * {u_each}',
  },
  l39: { ...loss('0', 0), ...loss('0.01', 1), ...loss('0.05', 2) },
  l40: {
    G: '(MAX({y}) - AVERAGE({y})) / STDEV({y})',
    G_critical: `(8 - 1) / SQRT(8) * SQRT(${critical40}^2 / (8 - 2 + ${critical40}^2))`,
  },
};
