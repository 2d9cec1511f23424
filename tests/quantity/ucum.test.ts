import { expect, test } from 'vitest';
import { isUnknownUnit, parseUnit, UNITS, type Unit } from '../../src/quantity/index.ts';

/** Factor to SI and exponents of length, mass, time, temperature. */
type Meaning = readonly [number, number, number, number, number];

/** Atoms of the UCUM specification (version 2.1, tables 4 to 9 and the US customary ones), written down from memory; metric ones take prefixes. */
const METRIC: Readonly<Record<string, Meaning>> = {
  m: [1, 1, 0, 0, 0],
  g: [1e-3, 0, 1, 0, 0],
  s: [1, 0, 0, 1, 0],
  K: [1, 0, 0, 0, 1],
  Cel: [1, 0, 0, 0, 1],
  rad: [1, 0, 0, 0, 0],
  Hz: [1, 0, 0, -1, 0],
  N: [1, 1, 1, -2, 0],
  J: [1, 2, 1, -2, 0],
  W: [1, 2, 1, -3, 0],
  Pa: [1, -1, 1, -2, 0],
  L: [1e-3, 3, 0, 0, 0],
  bar: [1e5, -1, 1, -2, 0],
  t: [1e3, 0, 1, 0, 0],
};
const POUND_FORCE = 0.45359237 * 9.80665;
const PLAIN: Readonly<Record<string, Meaning>> = {
  '%': [0.01, 0, 0, 0, 0],
  '[ppm]': [1e-6, 0, 0, 0, 0],
  min: [60, 0, 0, 1, 0],
  h: [3600, 0, 0, 1, 0],
  d: [86400, 0, 0, 1, 0],
  a_j: [365.25 * 86400, 0, 0, 1, 0],
  deg: [Math.PI / 180, 0, 0, 0, 0],
  "'": [Math.PI / 180 / 60, 0, 0, 0, 0],
  "''": [Math.PI / 180 / 3600, 0, 0, 0, 0],
  kgf: [9.80665, 1, 1, -2, 0],
  '[in_i]': [0.0254, 1, 0, 0, 0],
  '[ft_i]': [0.3048, 1, 0, 0, 0],
  '[mil_i]': [0.0254e-3, 1, 0, 0, 0],
  '[sin_i]': [0.0254 ** 2, 2, 0, 0, 0],
  '[cin_i]': [0.0254 ** 3, 3, 0, 0, 0],
  '[gal_us]': [231 * 0.0254 ** 3, 3, 0, 0, 0],
  '[lb_av]': [0.45359237, 0, 1, 0, 0],
  '[oz_av]': [0.45359237 / 16, 0, 1, 0, 0],
  '[lbf_av]': [POUND_FORCE, 1, 1, -2, 0],
  '[HP]': [550 * 0.3048 * POUND_FORCE, 2, 1, -3, 0],
  '[psi]': [POUND_FORCE / 0.0254 ** 2, -1, 1, -2, 0],
  '[degF]': [5 / 9, 0, 0, 0, 1],
};
const PREFIXES: Readonly<Record<string, number>> = {
  n: 1e-9,
  u: 1e-6,
  m: 1e-3,
  c: 1e-2,
  d: 0.1,
  k: 1e3,
  M: 1e6,
  G: 1e9,
};
const UNITY: Meaning = [1, 0, 0, 0, 0];

const joined = (a: Meaning, b: Meaning, sign: 1 | -1): Meaning => [
  sign === 1 ? a[0] * b[0] : a[0] / b[0],
  a[1] + sign * b[1],
  a[2] + sign * b[2],
  a[3] + sign * b[3],
  a[4] + sign * b[4],
];

function atomMeaning(name: string): Meaning {
  const whole = PLAIN[name] ?? METRIC[name];
  if (whole) return whole;
  const [prefix, rest] = [PREFIXES[name.charAt(0)], METRIC[name.slice(1)]];
  if (prefix === undefined || !rest) throw new Error(`no UCUM atom: ${name}`);
  return joined([prefix, 0, 0, 0, 0], rest, 1);
}

/** Reads a code from left to right, as the specification has it. */
function meaning(code: string): Meaning {
  let at = 0;
  const component = (): Meaning => {
    if (code[at] === '(') {
      at += 1;
      const inner = term();
      at += 1;
      return inner;
    }
    const [text = '', annotation, ten, number, name = '', exponent = '1'] =
      /^(?:(\{[^{}]*\})|10\*(-?\d+)|(\d+)|((?:\[\w+\]|[A-Za-z_%']+))(-?\d+)?)/.exec(code.slice(at)) ?? [];
    if (!text) throw new Error(`not UCUM: ${code} at ${at}`);
    at += text.length;
    if (annotation) return UNITY;
    if (ten) return [10 ** Number(ten), 0, 0, 0, 0];
    if (number) return [Number(number), 0, 0, 0, 0];
    const base = atomMeaning(name);
    let result = UNITY;
    for (let n = 0; n < Math.abs(Number(exponent)); n += 1)
      result = joined(result, base, Number(exponent) < 0 ? -1 : 1);
    return result;
  };
  const term = (): Meaning => {
    let result = code[at] === '/' ? UNITY : component();
    while (at < code.length && code[at] !== ')') {
      const sign = code[at] === '/' ? -1 : 1;
      at += 1;
      result = joined(result, component(), sign);
    }
    return result;
  };
  return term();
}

const compounds = [
  'J/(kg·K)',
  'W/(m·K)',
  'kN/mm2',
  'in·lbf/in3',
  'um/tooth',
  '1/in',
  'm^-2',
  'ft/day',
  'N·m/(kg·s2)',
  '(m/s)2',
  'kg/(m/s)2',
  'EUR/(kg·h)',
];

test('The UCUM code of a unit means the same factor and the same exponents', () => {
  const read = compounds
    .map((text) => parseUnit(text, 'EUR'))
    .filter((unit): unit is Unit => !isUnknownUnit(unit));
  expect(read).toHaveLength(compounds.length);
  for (const { symbol, ucum, scale, kind } of [...UNITS, ...read]) {
    const [factor, ...exponents] = meaning(ucum);
    const { length, mass, time, temperature } = kind.dimension;
    expect([symbol, Math.abs(factor / scale - 1) < 1e-14, exponents.map((n) => n || 0)]).toEqual([
      symbol,
      true,
      [length, mass, time, temperature],
    ]);
  }
});
