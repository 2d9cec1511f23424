/** A published case and its formulas: inputs filled into the text, units of the cases in words of the program. */

import cases from '../references/cases.json' with { type: 'json' };
import { numberIn } from './calculated.ts';

interface Quantity {
  readonly value: number | string | readonly (number | string)[];
  readonly unit: string;
  readonly tolerance?: number;
}

export interface ReferenceCase {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly provenance: string;
  readonly inputs: Readonly<Record<string, Quantity>>;
  readonly expected: Readonly<Record<string, Quantity>>;
}

export const REFERENCE_CASES = cases as unknown as readonly ReferenceCase[];

/** One formula, or one for each value in turn. */
export type Formula = string | ((index: number) => string);

/**
 * Formulas by the key of the expected value. {v} is an input with its unit, several as an array; {v[0]} one of several, {v[i]} each in
 * turn, {v[all]} all of them parted by ; without braces and unit; {v#} without its unit. A result is compared in the unit expected.
 */
export type Formulas = Readonly<Record<string, Readonly<Record<string, Formula>>>>;

/** Units of the cases in words of the program; what only describes a plain number has none. */
const UNITS: Readonly<Record<string, string>> = {
  pieces: '',
  'per part': '',
  'inserts (rounded up)': '',
  'f2/r': '',
  'n, C': '',
  mpg: '',
  microohm: '',
  '1e-6': '',
  'm/s at 60 s': 'm/s',
  rpm: '1/min',
  'HBW 3000': 'HB',
  C: 'degC',
  F: 'degF',
  'in.lbf/in3': 'psi',
};

const unitOf = (unit: string): string => UNITS[unit] ?? unit.replaceAll('$', 'money');

function filled(formula: string, { id, inputs }: ReferenceCase, index: number): string {
  return formula.replaceAll(
    /\{([a-zA-Z]\w*(?:\.\w+)?)(#?)(?:\[(\w+)\])?\}/g,
    (_, name: string, bare: string, at?: string) => {
      const input = inputs[name];
      if (!input) throw new Error(`case ${id} has no input ${name}`);
      const { value } = input;
      if (Array.isArray(value) && at === 'all') return value.join(';');
      const whole = Array.isArray(value) && at === undefined;
      const one = Array.isArray(value) ? value[at === 'i' ? index : Number(at)] : value;
      const text = whole ? `{${value.join(';')}}` : String(one);
      const unit = unitOf(input.unit);
      return unit === '' || bare === '#' ? text : `${text} ${unit}`;
    },
  );
}

/** What the formulas of a case give against what is printed: one line for every value that is off. `rooms` widens or narrows, by "id.key". */
export function deviations(
  each: ReferenceCase,
  formulas: Readonly<Record<string, Formula>>,
  rooms: Readonly<Record<string, number>> = {},
): string[] {
  return Object.entries(formulas).flatMap(([key, formula]) => {
    const wanted = each.expected[key];
    if (!wanted) return [`case ${each.id} expects no ${key}`];
    const values = Array.isArray(wanted.value) ? wanted.value : [wanted.value];
    return values.flatMap((value, index) => {
      const text = filled(typeof formula === 'string' ? formula : formula(index), each, index);
      const given = numberIn(`=${text}`, unitOf(wanted.unit) || '1');
      const room = rooms[`${each.id}.${key}`] ?? wanted.tolerance ?? 0;
      return Math.abs(given - Number(value)) <= room
        ? []
        : [`${key}: ${given}, expected ${String(value)} ± ${room} ${wanted.unit}`];
    });
  });
}
