/** What no formula expresses, with the reason: a whole case, or one value of it. The only list of its kind. */

const IN_CHATTER = 'an intermediate result, checked by this id in chatter.test.ts';
const IN_STRD =
  'no function fits such a law; the parts that it takes are checked by this id in tests/numeric/nist-strd.test.ts';
const OTHER_TABLE =
  'ASTM E140 is another table than ISO 18265 A.1; the nearness of the two is checked in published-tables.test.ts';
const SECOND_MODE = 'the second mode has no function';

export const NOT_EXPRESSED: Readonly<Record<string, string>> = {
  'b19.h_trochoid': 'the exact path of the tooth has no function; checked by this id in geometry.test.ts',
  'd37.T_1': 'the constants of the law are in another problem of the book',
  'd37.T_2': 'as T_1',
  'd52.ISO3685_VB_B_max': 'a limit for uneven wear, a remark of LIFE.AT_WEAR: the user types it',
  'd52.ISO3685_KT_at_f_0.25': 'crater depth, not measured in the program',
  'd52.ISO8688_VB1_uniform': 'the same default as ISO 3685, checked there',
  'd52.ISO8688_VB3_localized': 'a limit for uneven wear, a remark of LIFE.AT_WEAR: the user types it',
  'd66.pieces_with_Q':
    'counts the contact share twice: 39 200 s is already the time at feed (7 times 5600 s), of which 0.14 is contact; over 140.4 s at feed a part it gives 279, and the cost of the case follows with 279 only',
  'd69.KG_over_KU_implied': 'read backwards from the print',
  'e16.M_inch_Nm': 'two constants of the handbook that it takes are not among the inputs',
  e22: 'lip model with friction and shear strength: no such function',
  'f12.D2_max': 'tolerance of the pitch diameter: gauged, not calculated here',
  'g04.delta': 'empirical formula that is not unit-free, its constants from memory only',
  'g05.beta2L': SECOND_MODE,
  'g05.ratio_f2_f1': SECOND_MODE,
  'g10.m_eff_exact_over_m': 'the quarter that RIGID.FREQUENCY implies, used for the other value of the case',
  'g10.m_eff_rayleigh_over_m': 'the approximation of Rayleigh is not used',
  h02: 'points of the lobes of turning by chatter frequency; the library gives the floor only',
  h06: IN_CHATTER,
  h07: IN_CHATTER,
  h08: IN_CHATTER,
  h10: IN_CHATTER,
  'h15.f_chatter': 'the frequency is no result of the library; it is implied by the speed n_lobe_1',
  'h15.n_lobe_1': 'a speed as input: at it the limit is the floor, checked by this id in chatter.test.ts',
  'h16.f_chatter': 'as h15',
  'h16.n_lobe_1': 'as h15',
  h18: 'mode shapes instead of stiffnesses; checked by this id in chatter.test.ts',
  'i12.Rt_factor': 'parabola; the program takes the arc, and tends to this for fine feeds (limits.test.ts)',
  'i12.Ra_over_Rt': 'parabola; as Rt_factor',
  'i12.Rq_factor': 'no function for Rq',
  k01: OTHER_TABLE,
  k02: OTHER_TABLE,
  k03: OTHER_TABLE,
  k05: 'rule of thumb, not in the library: the table is',
  l09: IN_STRD,
  l10: IN_STRD,
  l12: IN_STRD,
  l14: IN_STRD,
  'l18.autocorrelation_lag1': 'autocorrelation has no function',
  'l20.autocorrelation_lag1': 'autocorrelation has no function',
  l29: 'no function takes lives that had not ended; a recorded trial does, checked by this id in tests/numeric and tests/trial',
  'l35.k_exact': 'the non-central t distribution has no function',
  'm04.intercept': 'LIFE.WEAR_RATE gives the slope only',
  'm04.wear_end': 'an input',
  'm05.intercept': 'as m04',
  'm05.wear_end': 'an input',
  'm06.intercept': 'as m04',
  'm06.wear_end': 'an input',
  'm08.intercept': 'as m04',
  'm08.wear_end': 'an input',
  m09: 'a table of measured forces for tests of import; nothing is calculated',
};
