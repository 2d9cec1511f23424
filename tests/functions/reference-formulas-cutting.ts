/**
 * The published cases of cutting data, milling, force, cost and crankshafts as formulas. {D} stands for the input D of the case with its unit,
 * {ap[0]} for one of several, {ap[i]} for each in turn. A formula's result is compared in the unit of the expected value.
 */

import type { Formulas } from './reference-case.ts';

const spindle = 'CUT.SPINDLE_SPEED({D}; {vc})';
const feed = `CUT.FEED_RATE({z}; {fz}; ${spindle})`;
const approach = 'SQRT({d} * ({D} - {d}))';
const atEdge = (width: string, depth: string): string => `MILL.REMOVAL_RATE(${width}; ${depth}; ${feed})`;
const turning = '{vc} * {f} * {ap}';
const titanium = 'PI() * 70 mm * 5 mm * {vf}';
const mean = '({D1} - {ap})';
const hMean = 'MILL.CHIP_MEAN({D}; {fz}; {ae}; 90 deg; 0 mm)';
const plunged = '{fz} * SQRT({ae} / {d})';
const chipOf = '({f} * SIN({kappa}))';
const widthOf = '({a} / SIN({kappa}))';
const drillChip = '({f} / 2 * SIN({point} / 2))';
const c32Chip = '({f} * SIN({kappa_r}))';
const kc = (chip: string): string => `FORCE.SPECIFIC({kc11}; {mc}; ${chip})`;
const mills = '{D}; {z}; 0 deg; {fz}; {ap}; {ae}; {kc11}; {mc}';
const mean34 = `MILL.TORQUE_PEAK(${mills}) / MILL.TORQUE_RIPPLE(${mills})`;
/** The arc in the middle is what one side arc has more than another. */
const side33 = (ae: string): string => {
  const cut = `{D}; {z}; 0 deg; {fz}; {ap}; ${ae}; {kc11}; {mc}`;
  return `MILL.TORQUE_PEAK(${cut}) / MILL.TORQUE_RIPPLE(${cut})`;
};
const centred33 = `(${side33('({D} + {ae}) / 2')} - ${side33('({D} - {ae}) / 2')}) * 2 * PI() * ${spindle}`;
const mills43 = '{d}; {z}; 0 deg; {fz}; {b}; {ae}; {kc11}; {mc}';
const teeth43 = 'MILL.TEETH_IN_CUT({d}; {z}; MILL.ENGAGEMENT_ANGLE({d}; {ae}))';
const force43 = `${kc(plunged)} * {b} * ${plunged}`;
const inside = 'MILL.CIRCLE_ENGAGEMENT({Dc}; {Dw}; {Dm}; "inside")';
const outside = 'MILL.CIRCLE_ENGAGEMENT({Dc}; {D_stock}; {D_finished}; "outside")';
const internal = 'CRANK.ENGAGEMENT(2 * {R_cutter}; 2 * {R_stock}; 2 * {R_pin}; "internal")';
const external = 'CRANK.ENGAGEMENT(2 * {R_cutter}; 2 * {R_stock}; 2 * {R_pin}; "external")';
const pinFeed = 'CUT.FEED_RATE({z}; {fz_pin}; CUT.SPINDLE_SPEED(2 * {R_cutter}; {vc}))';
const orbit = `CUT.TIME(${pinFeed}; 2 * PI() * {R_pin})`;
const pass = (diameter: string, length: string): string =>
  `CUT.TIME({f} * CUT.SPINDLE_SPEED(${diameter}; {vc}); ${length} + {allowance})`;
const round = 'MILL.ROUND_DIAMETER({D}; {iC}; {ap})';
const roundFeed = '{a_max} / SIN(CUT.ROUND_ANGLE({iC}; {ap}; "largest"))';
const roundRate = `CUT.FEED_RATE({z}; ${roundFeed}; CUT.SPINDLE_SPEED(${round}; {vc}))`;
const sideRate = (teeth: string): string =>
  `CUT.FEED_RATE(${teeth}; MILL.FEED_FOR_CHIP_MAX({D}; {a_max}; {ae}); ${spindle})`;
const table = (name: string): string =>
  `FORCE.SPECIFIC(MATERIAL.KC11("${name}"); MATERIAL.MC("${name}"); {h[i]})`;

export const CUTTING_FORMULAS: Formulas = {
  a01: {
    in_to_mm: '1 in',
    ft_to_m: '1 ft',
    sfm_to_m_per_min: '1 ft/min',
    m_per_min_to_sfm: '1 m/min',
    in3_to_cm3: '1 in3',
    ipm_to_mm_per_min: '1 in/min',
    'ipt_0.005_to_mm': '0.005 in/tooth',
  },
  a03: {
    lbf_N: '{lb} * {g_n}',
    lbf_ft_Nm: '1 lbf·ft',
    lbf_in_Nm: '1 lbf·in',
    kgf_m_Nm: '1 kgf * 1 m',
    Nm_to_lbf_ft: '1 N·m',
  },
  a08: { um: '{uin[i]}' },
  a09: { in_lbf_per_in3: '{hp_unit[i]}', J_per_mm3: '{hp_unit[i]}' },
  a11: {
    N: spindle,
    Tm: `CUT.TIME({f} * ${spindle}; {L})`,
    Tm_min: `CUT.TIME({f} * ${spindle}; {L})`,
    Q: turning,
  },
  a12: { vc: 'CUT.SPEED({D}; {L} / ({f} * {Tm}))' },
  a13: { vf: '{f} * {n}', Tm: 'CUT.TIME({f} * {n}; {D} / 2)' },
  a15: {
    ap: '({D0} - {D1}) / 2',
    f: '{Q} / ({vc} * ({D0} - {D1}) / 2)',
    n: 'CUT.SPINDLE_SPEED({D0}; {vc})',
    Tm: 'CUT.TIME({Q} / ({vc} * ({D0} - {D1}) / 2) * CUT.SPINDLE_SPEED({D0}; {vc}); {L})',
  },
  a16: {
    t1: pass('{D_pass1}', '{lengths[0]}'),
    t2: pass('{D_pass2}', '{lengths[0]}'),
    t3: pass('{D_pass1}', '{lengths[1]}'),
    t4: pass('{D_pass2}', '{lengths[1]}'),
    cycle: `{load} + {reverse} + ${pass('{D_pass1}', '{lengths[0]}')} + ${pass('{D_pass2}', '{lengths[0]}')} + ${pass('{D_pass1}', '{lengths[1]}')} + ${pass('{D_pass2}', '{lengths[1]}')}`,
  },
  a17: {
    Tm: 'CUT.TIME({f} * {n}; ({Do} - {Di}) / 2)',
    v_outer: 'CUT.SPEED({Do}; {n})',
    Q_outer: 'CUT.SPEED({Do}; {n}) * {f} * {ap}',
    v_inner: 'CUT.SPEED({Di}; {n})',
    Q_inner: 'CUT.SPEED({Di}; {n}) * {f} * {ap}',
  },
  a19: {
    vc_max: 'CUT.SPEED({D0}; {n})',
    t: 'CUT.TIME({vf}; {L})',
    P_low: `CUT.POWER(${titanium}; {u[0]})`,
    P_high: `CUT.POWER(${titanium}; {u[1]})`,
    F_low: `CUT.POWER(${titanium}; {u[0]}) / CUT.SPEED({D0}; {n})`,
    F_high: `CUT.POWER(${titanium}; {u[1]}) / CUT.SPEED({D0}; {n})`,
  },
  a22: {
    n: spindle,
    vf: feed,
    approach,
    Tm: `CUT.TIME(${feed}; {L} + ${approach})`,
    Q: atEdge('{w}', '{d}'),
    Tf: `CUT.TIME(${feed}; 0.5 in + ${approach} + {L} + {D} / 2 + 0.5 in)`,
  },
  a25: {
    n: spindle,
    vf: feed,
    A: approach,
    Tm: `CUT.TIME(${feed}; {L} + {approach_extra} + ${approach} + {overtravel})`,
    Q: atEdge('{w}', '{d}'),
  },
  a26: {
    n: spindle,
    vf: feed,
    A: approach,
    Tm: `CUT.TIME(${feed}; {L} + ${approach})`,
    Q: atEdge('{w}', '{d}'),
  },
  a27: { Q: atEdge('{ap}', '{ae}') },
  a28: { A: approach, Tm: `CUT.TIME(${feed}; {L} + ${approach})` },
  a29: { travel: `{L} + ${approach}` },
  a30: { n: spindle, vf: feed, Tm: `CUT.TIME(${feed}; {L} + {D} / 2)`, Q: atEdge('{ap}', '{w}') },
  a31: {
    vf: 'CUT.FEED_RATE({z}; {fz}; {n})',
    Q: 'MILL.REMOVAL_RATE({w}; {d}; CUT.FEED_RATE({z}; {fz}; {n}))',
    P: 'CUT.POWER(MILL.REMOVAL_RATE({w}; {d}; CUT.FEED_RATE({z}; {fz}; {n})); {u})',
    torque: 'CUT.TORQUE(CUT.POWER(MILL.REMOVAL_RATE({w}; {d}; CUT.FEED_RATE({z}; {fz}; {n})); {u}); {n})',
    lc: 'SQRT({d} * {D})',
    t: 'CUT.TIME(CUT.FEED_RATE({z}; {fz}; {n}); {L} + SQRT({d} * {D}))',
  },
  a33: {
    Q: turning,
    P: `CUT.POWER(${turning}; {u})`,
    n: `CUT.SPINDLE_SPEED(${mean}; {vc})`,
    torque: `CUT.TORQUE(CUT.POWER(${turning}; {u}); CUT.SPINDLE_SPEED(${mean}; {vc}))`,
  },
  a34: { tm: `CUT.TIME({f} * CUT.SPINDLE_SPEED(${mean}; {vc}); {L} + {approach})` },
  a35: {
    Q: 'MILL.REMOVAL_RATE({ap}; {w}; {vf})',
    t: 'CUT.TIME({vf}; {L} + 2 * {D} / 2)',
    fz: 'CUT.FEED_PER_TOOTH({z}; {vf}; {n})',
    P: 'CUT.POWER(MILL.REMOVAL_RATE({ap}; {w}; {vf}); {u})',
  },
  a36: {
    Q: 'MILL.REMOVAL_RATE({w}; {d}; CUT.FEED_RATE({z}; {fz}; {n}))',
    P: 'CUT.POWER(MILL.REMOVAL_RATE({w}; {d}; CUT.FEED_RATE({z}; {fz}; {n})); {u})',
    torque: 'CUT.TORQUE(CUT.POWER(MILL.REMOVAL_RATE({w}; {d}; CUT.FEED_RATE({z}; {fz}; {n})); {u}); {n})',
    lc: 'SQRT({d} * {D})',
    t: 'CUT.TIME(CUT.FEED_RATE({z}; {fz}; {n}); {L} + SQRT({d} * {D}))',
  },
  b01: {
    phi_s: 'MILL.ENGAGEMENT_ANGLE({D}; {ae})',
    h_ex: 'MILL.CHIP_MAX({D}; {fz}; {ae})',
    h_m: 'MILL.CHIP_MEAN({D}; {fz}; {ae})',
    hm_approx_sqrt: '{fz} * SQRT({ae} / {D})',
    'fz_for_hex_0.1': 'MILL.FEED_FOR_CHIP_MAX({D}; 0.1 mm; {ae})',
  },
  b03: {
    phi_s: 'MILL.ENGAGEMENT_ANGLE({D}; {ae})',
    h_ex: 'MILL.CHIP_MAX({D}; {fz}; {ae})',
    h_m: 'MILL.CHIP_MEAN({D}; {fz}; {ae})',
  },
  b07: {
    phi_s: 'MILL.ENGAGEMENT_ANGLE({D}; {ae}; 0 mm)',
    h_m: 'MILL.CHIP_MEAN({D}; {fz}; {ae}; {kappa_r}; 0 mm)',
    h_ex: 'MILL.CHIP_MAX({D}; {fz}; {ae}; {kappa_r}; 0 mm)',
    h_at_entry: 'MILL.CHIP_AT_EXIT({D}; {fz}; {ae}; {kappa_r}; 0 mm)',
  },
  b11: { De: 'MILL.BALL_DIAMETER({D}; {ap[i]})', vc: 'CUT.SPEED(MILL.BALL_DIAMETER({D}; {ap[i]}); {n})' },
  b12: { De: 'MILL.BALL_DIAMETER({D}; {ap}; {tilt})' },
  b14: {
    vf_periphery: 'CUT.FEED_RATE({z}; {fz}; {n})',
    vf_centre: 'MILL.CIRCLE_FEED({Dc}; CUT.FEED_RATE({z}; {fz}; {n}); {Dm}; "inside")',
    factor:
      'MILL.CIRCLE_FEED({Dc}; CUT.FEED_RATE({z}; {fz}; {n}); {Dm}; "inside") / CUT.FEED_RATE({z}; {fz}; {n})',
    time_one_turn:
      'CUT.TIME(MILL.CIRCLE_FEED({Dc}; CUT.FEED_RATE({z}; {fz}; {n}); {Dm}; "inside"); PI() * ({Dm} - {Dc}))',
  },
  b15: {
    vf_centre: 'MILL.CIRCLE_FEED({Dc}; {vf_periphery}; {Dm}; "outside")',
    factor: 'MILL.CIRCLE_FEED({Dc}; {vf_periphery}; {Dm}; "outside") / {vf_periphery}',
  },
  b16: { ae_geometric: '({Dm} - {Dw}) / 2', ae_equivalent: inside },
  b17: {
    engagement_internal: `MILL.ENGAGEMENT_ANGLE({Dc}; ${inside})`,
    engagement_straight_same_ae: 'MILL.ENGAGEMENT_ANGLE({Dc}; ({Dm} - {Dw}) / 2)',
  },
  b18: { engagement_external: `MILL.ENGAGEMENT_ANGLE({Dc}; ${outside})`, ae_equivalent: outside },
  b19: { h_circular: 'MILL.CHIP_MAX({D}; {fz}; {ae})' },
  b20: { z_iE: 'MILL.TEETH_IN_CUT({D}; {z}; MILL.ENGAGEMENT_ANGLE({D}; {ae[i]}))' },
  b21: {
    ramp_angle: 'MILL.RAMP_ANGLE(3 mm; {Dm} - {Dc})',
    path_per_turn: 'SQRT((PI() * ({Dm} - {Dc}))^2 + (3 mm)^2)',
    turn_time: 'CUT.TIME({vf_centre}; SQRT((PI() * ({Dm} - {Dc}))^2 + (3 mm)^2))',
  },
  b22: { a: '{f} * SIN(90 deg - {lead})', Lm: '{ap} / COS({lead})' },
  b23: {
    De: round,
    fz: roundFeed,
    n: `CUT.SPINDLE_SPEED(${round}; {vc})`,
    vf: roundRate,
    Q: `MILL.REMOVAL_RATE({ap}; ${round}; ${roundRate})`,
  },
  b25: {
    fz: 'MILL.FEED_FOR_CHIP_MAX({D}; {a_max}; {ae})',
    approach_check: 'SQRT({ae} * ({D} - {ae}))',
    tm_16: `CUT.TIME(${sideRate('{z[0]}')}; {L} + {approach} + {over})`,
    tm_8: `CUT.TIME(${sideRate('{z[1]}')}; {L} + {approach} + {over})`,
    Q_power_limit: '{P} / {u}',
  },
  b26: {
    Q_slab: 'MILL.ENGAGEMENT_ANGLE(100 mm; {ae_over_dt[i]} * 100 mm) / (2 * PI())',
    Q_face: 'MILL.ENGAGEMENT_ANGLE(100 mm; {face_ae_over_dt[i]} * 100 mm; 0 mm) / (2 * PI())',
  },
  c11: { Q: turning, Pc: `CUT.POWER(${turning}; {U})`, Pg: `CUT.POWER(${turning}; {U}) / {E}` },
  c12: {
    U_corr: '{U} * {size_factor}',
    Q: turning,
    Pc: `CUT.POWER(${turning}; {U} * {size_factor})`,
    Pg: `CUT.POWER(${turning}; {U} * {size_factor}) / {E}`,
  },
  c14: {
    f_first: '{P_motor} * {E} / ({U} * {vc} * {ap})',
    f_second: '{P_motor} * {E} / ({size_factor} * {U} * {vc} * {ap})',
  },
  c17: { Q: turning, HPc: `CUT.POWER(${turning}; {HPu})`, HPg: `CUT.POWER(${turning}; {HPu}) / {E}` },
  c18: {
    Q: turning,
    HPc: `CUT.POWER(${turning}; {HPu} * {size_factor})`,
    HPg: `CUT.POWER(${turning}; {HPu} * {size_factor}) / {E}`,
  },
  c19: { Q: turning, Pc: `CUT.POWER(${turning}; {U})`, Pg: `CUT.POWER(${turning}; {U}) / {E}` },
  c22: { vc: '{HP_motor} * {E} / ({size_factor} * {HPu} * {f} * {ap})' },
  c27: {
    P_outer: 'CUT.POWER(PI() * {D} * {wall} * {vf}; {u})',
    P_exact_annulus: 'CUT.POWER(PI() * ({D} - {wall}) * {wall} * {vf}; {u})',
  },
  c28: { Fc: '{u} * {f} * {ap}' },
  c30: {
    Fc_ratio:
      'FORCE.SPECIFIC(1000 MPa; {exponent}; 0.2 mm * SIN({lambda2})) / FORCE.SPECIFIC(1000 MPa; {exponent}; 0.2 mm * SIN({lambda1}))',
    percent_change:
      'FORCE.SPECIFIC(1000 MPa; {exponent}; 0.2 mm * SIN({lambda2})) / FORCE.SPECIFIC(1000 MPa; {exponent}; 0.2 mm * SIN({lambda1})) - 1',
  },
  c31: {
    'kc_E295 (St50-2)': table('E295'),
    'kc_E335 (St60-2)': table('E335'),
    'kc_C45E (Ck45)': table('C45E'),
    'kc_C60E (Ck60)': table('C60E'),
    kc_16MnCr5: table('16MnCr5'),
    kc_18CrNi6: 'FORCE.SPECIFIC({kc11[5]}; {mc[5]}; {h[i]})',
    kc_42CrMo4: table('42CrMo4'),
    kc_34CrMo4: table('34CrMo4'),
    kc_50CrV4: table('50CrV4'),
    'kc_EN-GJL-250 (GG-26)': table('EN-GJL-250'),
  },
  c32: {
    h: c32Chip,
    b: '{ap} / SIN({kappa_r})',
    kc: kc(c32Chip),
    Fc: `${kc(c32Chip)} * {ap} * {f}`,
    Pc: `CUT.POWER(${turning}; ${kc(c32Chip)})`,
    P_motor: `CUT.POWER(${turning}; ${kc(c32Chip)}) / {eta}`,
    Q: turning,
  },
  c33: {
    n: spindle,
    vf: feed,
    h_m: hMean,
    kc_m: kc(hMean),
    P_from_hm: `CUT.POWER(${atEdge('{ap}', '{ae}')}; ${kc(hMean)})`,
    P_exact: centred33,
    ratio: `CUT.POWER(${atEdge('{ap}', '{ae}')}; ${kc(hMean)}) / (${centred33})`,
  },
  c34: {
    h_m: 'MILL.CHIP_MEAN({D}; {fz}; {ae})',
    P_from_hm: `CUT.POWER(${atEdge('{ap}', '{ae}')}; ${kc('MILL.CHIP_MEAN({D}; {fz}; {ae})')})`,
    P_exact: `${mean34} * 2 * PI() * ${spindle}`,
    ratio: `CUT.POWER(${atEdge('{ap}', '{ae}')}; ${kc('MILL.CHIP_MEAN({D}; {fz}; {ae})')}) / (${mean34} * 2 * PI() * ${spindle})`,
  },
  c35: {
    h: drillChip,
    b: '{d} / 2 / SIN({point} / 2)',
    kc: kc(drillChip),
    torque: `${kc(drillChip)} * {f} * ({d})^2 / 8`,
    P: `${kc(drillChip)} * {f} * ({d})^2 / 8 * 2 * PI() * {n}`,
  },
  c39: {
    U: 'FORCE.SPECIFIC(1.4 J/mm3; {exponent}; {t_av})',
    Q: 'MILL.REMOVAL_RATE({ap}; {w}; {vf})',
    P: 'CUT.POWER(MILL.REMOVAL_RATE({ap}; {w}; {vf}); FORCE.SPECIFIC(1.4 J/mm3; {exponent}; {t_av}))',
  },
  c42: {
    b: widthOf,
    h: chipOf,
    A: '{a} * {f}',
    slenderness: `${widthOf} / ${chipOf}`,
    Fc_bh: `${kc(chipOf)} * ${widthOf} * ${chipOf}`,
    Fc_shorthand: `${kc('{f}')} * {a} * {f}`,
    ratio: `${kc(chipOf)} * ${widthOf} * ${chipOf} / (${kc('{f}')} * {a} * {f})`,
  },
  c43: {
    h_mean: plunged,
    h_mean_exact: 'MILL.CHIP_MEAN({d}; {fz}; {ae})',
    z_i: teeth43,
    Fc: force43,
    Fc_exact_mean: `MILL.TORQUE_PEAK(${mills43}) / MILL.TORQUE_RIPPLE(${mills43}) / (${teeth43} * {d} / 2)`,
    M: `${force43} * {d} / 2 * ${teeth43}`,
    P: `${force43} * {v} * ${teeth43}`,
  },
  j01: { chip_share: '1 - 1 / STOCK.BUY_TO_FLY({BTF[i]} * 1 kg; 1 kg)' },
  j02: {
    chip_share: '1 - 1 / STOCK.BUY_TO_FLY({BTF[i]} * 1 kg; 1 kg)',
    BTF_at_98: 'STOCK.BUY_TO_FLY(1 kg; (1 - {removed}) * 1 kg)',
  },
  j04: {
    n_exact: '500 money / (80 money/h * {t1} - 160 money/h * {t2})',
    n: 'CEILING(500 money / (80 money/h * {t1} - 160 money/h * {t2}); 1)',
  },
  j06: {
    Tc_old: '{machine} + {load}',
    Tc_new: 'MAX({machine}; {load}) + {transfer}',
    rate_old: '1 / ({machine} + {load})',
    rate_new: '1 / (MAX({machine}; {load}) + {transfer})',
    gain_percent: '({machine} + {load}) / (MAX({machine}; {load}) + {transfer}) - 1',
  },
  j08: {
    saving_time: '1.5 money/min * ({t_old} - {t_new}) / 1 money',
    edge_new_break_even:
      '{parts_new} * (6 money / {parts_old} + 1.5 money/min * ({t_old} - {t_new})) / 1 money',
  },
  n01: {
    theta_internal: internal,
    theta_external: external,
    arc_internal: `${internal} * {R_cutter}`,
    arc_external: `${external} * {R_cutter}`,
  },
  n02: {
    ae_internal: `MILL.ENGAGEMENT_FOR_ANGLE(2 * {R_cutter}; ${internal})`,
    ae_external: `MILL.ENGAGEMENT_FOR_ANGLE(2 * {R_cutter}; ${external})`,
    ae_internal_by_area: '(({R_stock})^2 - ({R_pin})^2) / (2 * ({R_cutter} - {R_pin}))',
    ae_external_by_area: 'MILL.CIRCLE_ENGAGEMENT(2 * {R_cutter}; 2 * {R_stock}; 2 * {R_pin}; "outside")',
  },
  n03: {
    n: 'CUT.SPINDLE_SPEED(2 * {R_cutter}; {vc})',
    vf_pin: pinFeed,
    vf_centre_internal: `${pinFeed} * ({R_cutter} - {R_pin}) / {R_pin}`,
    vf_centre_external: `MILL.CIRCLE_FEED(2 * {R_cutter}; ${pinFeed}; 2 * {R_pin}; "outside")`,
    orbit_time: orbit,
    pin_rpm: `1 / ${orbit}`,
  },
  // The case moves on three times between four pins; the function counts a move for every position.
  n05: {
    t_pin: '{approach} + {orbit_time} * (1 + {overlap_deg} / 360 deg)',
    cycle:
      'CRANK.SHAFT_TIME({approach} + {orbit_time} * (1 + {overlap_deg} / 360 deg); {pins}; 1; {index}; {load}) - {index}',
    shafts_per_h:
      '1 / (CRANK.SHAFT_TIME({approach} + {orbit_time} * (1 + {overlap_deg} / 360 deg); {pins}; 1; {index}; {load}) - {index})',
  },
  n06: {
    z: 'CRANK.INSERTS_FOR(1; {n}; {fz_pin}; {fz_pin}; 2 * {R_pin}; 0.000001 mm; 1; 1; 0 s; 0 s; 1 / {t_orbit_target}; 1; 0 deg)',
    z_exact: '2 * PI() * {R_pin} / ({t_orbit_target} * {n} * {fz_pin})',
  },
};
