/** Shipped notebooks on wear, economics, chatter, machine and line: decisions that turn, and values worked without this program. */

import { expect, test } from 'vitest';
import { computedSheet } from './computed-sheet.ts';

const BORE = 'bearing-bore-wear-test.json';
const SHIFTS = 'tool-life-whole-shifts.json';
const CHATTER = 'long-cutter-chatter.json';
const ENVELOPE = 'machine-envelope.json';
const GANG = 'crank-line-gang.json';

/** A given that is changed, and how the decision reads before and after. */
const FLIPS = [
  [
    BORE,
    'price_B',
    '12.20 EUR',
    /^yes: B lasts 1\.33 times as long, at least 1\.13/,
    /^not yet: the ratio lies between/,
  ],
  [BORE, 'price_B', '16 EUR', /^yes/, /^no: B does not last long enough/],
  [BORE, 'sure', '99 %', /^yes/, /^not yet: the ratio lies between/],
  [BORE, 'Cpk_wanted', '3.5', /^yes/, /^not yet: a capability of 3\.05 is sure/],
  [
    SHIFTS,
    'change_shift',
    '40 min',
    /^yes: 200 m\/min, change after 1 shift, 0\.28 EUR/,
    /^no: a part would cost more/,
  ],
  [SHIFTS, 'shifts', '3', /^yes/, /^not yet: 138 m\/min is slower/],
  [SHIFTS, 'reserve', '100 %', /^yes/, /^no: more than one set in ten/],
  [SHIFTS, 'S', '195 parts', /^yes/, /^no: the plan does not fit/],
  [
    CHATTER,
    'n',
    '10680 1/min',
    /^no: at 9000 1\/min it chatters, set 10680/,
    /^yes: it runs quietly at 10680/,
  ],
  [CHATTER, 'ap', '0.8 mm', /^no/, /^yes: it runs quietly at 9000/],
  [CHATTER, 'ap', '3 mm', /^no: at 9000/, /^no: too deep at any speed .* take 2\.7 mm/],
  [CHATTER, 'ap', '4 mm', /^no: at 9000/, /^no: the cutter bends/],
  [CHATTER, 'overhang', '80 mm', /^no: at 9000/, /^not yet: tap again/],
  [
    ENVELOPE,
    'ap',
    '5 mm',
    /^yes: rough at 909 .* finish at 12000 .* 226 m\/min/,
    /^no: roughing takes 99 % of the power/,
  ],
  [ENVELOPE, 'r', '0.5 mm', /^yes/, /^no: the corner keeps only 81 %/],
  [ENVELOPE, 'M_max', '70 N·m', /^yes/, /^no: the torque/],
  [
    GANG,
    'cutters',
    '3',
    /^no: milling the pins .* 42\.8 parts\/h, it needs 2 machines/,
    /^yes: 54\.0 parts\/h with 3 cutters/,
  ],
  [GANG, 'm_pins', '2', /^no/, /^yes/],
  [GANG, 'wanted', '42 parts/h', /^no/, /^yes/],
  [GANG, 'cutters', '4', /^no: milling/, /^no: the drive/],
] as const;

test.each(FLIPS)('%s: the decision turns when %s becomes %s', (file, name, content, before, after) => {
  const sheet = computedSheet(file);
  expect(sheet.named('decision').value).toMatch(before);
  sheet.type(name, content);
  expect(sheet.named('decision').value).toMatch(after);
});

const Z_PIN = (24 * 68) / 60;
const T_PIN = (4.5 / 0.15 + (Math.PI * 60 * (1 + 5 / 360)) / 0.6) / Z_PIN;
const T_SHAFT = 3 * (T_PIN + 5) + 18;
const N_ROUGH = 3 / (Math.PI * 0.063);
const Q_ROUGH = 0.004 * 0.045 * 5 * 0.0002 * N_ROUGH;
const CURVE = 6000 + ((N_ROUGH * 60 - 500) / 1000) * 12000;

/**
 * Worked without this program, coherent SI.
 * Bore: straight lines between two readings by hand; Welch intervals of ln T and of the bores, nu 5.859 and 47.42, with t and
 * normal quantiles of SciPy; Cpk = min(U - m, m - L)/3s less 1.645 sqrt(1/(9 k) + Cpk^2/(2 (k - 1))).
 * Shifts: least squares of ln T over ln vc; Te = (1/n - 1)(t_c + C_set/rate); vc from T(vc) 0.8 = 160 K/vc, K = pi Dc L/(z fz);
 * one-sided t of SciPy for the life of one more set.
 * Chatter: logarithmic decrement; clamped rod F l^3/(3 E I); zero-order solution with directional factors of a down-milling arc,
 * eigenvalues of the quadratic over frequencies in steps of 0.001 Hz, depth read off on the lobe that crosses the speed.
 * Envelope: P = Q kc, straight line of the curve, M = P/(2 pi n), v = sqrt(a r). Gang: angle of two circles, 5 deg of overlap.
 */
const BY_HAND = [
  [BORE, 'life_A_1', (15 + (3 * 2) / 5) * 60],
  [BORE, 'life_A_3', (15 + (3 * 3) / 4) * 60],
  [BORE, 'life_B_2', (18 + (3 * 2) / 4) * 60],
  [BORE, 'ratio', ((21.6 * 19.5 * 18.6 * 22.5) / (16.2 * 13.8 * 17.25 * 14.4)) ** 0.25],
  [BORE, 'ratio_low', 1.1294088751932763],
  [BORE, 'ratio_high', 1.577494559021648],
  [BORE, 'shift', 2.96e-6],
  [BORE, 'margin', 0.651518946579e-6],
  [BORE, 'Cpk_low', 3.0531167420573335],
  [SHIFTS, 'n', 0.2522767057726014],
  [SHIFTS, 'C', 10.370095237467016],
  [SHIFTS, 'C_set', (9.5 * 14) / (8 * 0.9)],
  [SHIFTS, 'T_e', 6635.846025824129],
  [SHIFTS, 'vc_e', 3.163686754635994],
  [SHIFTS, 'vc_s', 200.1151741329174 / 60],
  [SHIFTS, 'T_low', 4980.443301120552],
  [SHIFTS, 'cost_today', 4.0105093708803965],
  [SHIFTS, 'cost_new', 3.73239981465813],
  [CHATTER, 'zeta_x', 0.031205559899755514],
  [CHATTER, 'bend', (64 * 160 * 0.09 ** 3) / (3 * Math.PI * 580e9 * 0.016 ** 4)],
  [
    CHATTER,
    'f_rod',
    ((1.875104068711961 ** 2 / (8 * Math.PI)) * 0.016 * Math.sqrt(580e9 / 14500)) / 0.09 ** 2,
  ],
  [CHATTER, 'n_pocket', 1090 / 6],
  [CHATTER, 'floor', 0.9069258447947059e-3],
  [CHATTER, 'limit', 1.038954336692322e-3],
  [CHATTER, 'limit_best', 3.4254055141170856e-3],
  [ENVELOPE, 'P', Q_ROUGH * 2700e6],
  [ENVELOPE, 'load', (Q_ROUGH * 2700e6) / (0.85 * CURVE)],
  [ENVELOPE, 'M', (Q_ROUGH * 2700e6) / (2 * Math.PI * N_ROUGH)],
  [ENVELOPE, 'M_n', CURVE / (2 * Math.PI * N_ROUGH)],
  [ENVELOPE, 'vf_r', Math.PI * 0.006 * 200],
  [ENVELOPE, 'v_arc', Math.sqrt(3 * 0.001)],
  [ENVELOPE, 'r_full', 0.048 ** 2 / 3],
  [GANG, 't_pin', T_PIN],
  [GANG, 't_pins', T_SHAFT],
  [GANG, 'rate', 0.85 / T_SHAFT],
  [GANG, 'rate_others', (0.85 * 3) / 170],
  [GANG, 'phi', 0.0438761991416184],
  [GANG, 't_contact', (0.0438761991416184 / (2 * Math.PI)) * 3 * T_PIN],
  [GANG, 'facet', (0.6e-3 ** 2 / 4) * (1 / 0.7 + 1 / 0.06)],
  [GANG, 'per_set', Math.floor(240 / ((0.0438761991416184 / (2 * Math.PI)) * 3 * T_PIN)) * 4],
  [GANG, 'need', 198],
] as const;

test.each(BY_HAND)('%s: %s agrees with the value worked by hand', (file, name, expected) => {
  const { value } = computedSheet(file).named(name);
  expect(Math.abs(Number(value) / expected - 1)).toBeLessThan(1e-9);
});
