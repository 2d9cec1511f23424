/** How names and values of a definition read in messages. */

import type { UnitSystem } from '../expression/index.ts';
import { fromSI, isUnknownUnit, parseUnit } from '../quantity/index.ts';
import type { Parameter } from './function-definition.ts';

/** "radial engagement" for radial_engagement. */
export const spoken = (name: string): string => name.replaceAll('_', ' ');

const DIGITS = 6;

/** "30 mm": an SI value in a unit, six digits; without a unit the plain number. */
export function valueWords(si: number, unit: string | undefined): string {
  const known = unit === undefined || unit === '' ? undefined : parseUnit(unit);
  if (!known || isUnknownUnit(known)) return String(Number(si.toPrecision(DIGITS)));
  const value = Number(fromSI(si, known).toPrecision(DIGITS));
  return unit === '%' ? `${value} %` : `${value} ${unit}`;
}

/** The unit in which a parameter's values are told. */
export function unitOfParameter(parameter: Parameter, system: UnitSystem = 'metric'): string {
  const own = system === 'inch' ? (parameter.inch ?? parameter.metric) : parameter.metric;
  return own ?? (parameter.kind === 'share' ? '%' : '');
}
