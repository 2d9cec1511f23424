/** Quantity kinds, one row each (F11a): name, exponents, general or special, default display units metric and inch (F19). */

import { dimension, type Dimension } from './dimension.ts';

/** `words` is used in messages where the name with an article would not do. */
export interface KindRow {
  readonly name: string;
  readonly dimension: Dimension;
  readonly general: boolean;
  readonly metric: string;
  readonly inch: string;
  readonly words?: string;
}

const none = dimension();
const length = dimension({ length: 1 });
const speed = dimension({ length: 1, time: -1 });
const perTime = dimension({ time: -1 });
const moment = dimension({ mass: 1, length: 2, time: -2 });
const stress = dimension({ mass: 1, length: -1, time: -2 });
const volumeRate = dimension({ length: 3, time: -1 });
const temperature = dimension({ temperature: 1 });
const perLength = dimension({ length: -1 });

const general = (
  name: string,
  of: Dimension,
  metric: string,
  inch: string = metric,
  words?: string,
): KindRow => ({ name, dimension: of, general: true, metric, inch, ...(words && { words }) });

const special = (name: string, of: Dimension, metric: string, inch: string = metric): KindRow => ({
  name,
  dimension: of,
  general: false,
  metric,
  inch,
});

/** The first general row of a dimension is its general kind; further ones (ratio, share, count) meet it in silence too. */
export const KIND_ROWS: readonly KindRow[] = [
  general('number', none, '', '', 'a plain number'),
  general('ratio', none, ''),
  general('share', none, '%'),
  general('count', none, ''),
  /** What an angle counts as in a product (F11): a plain number that still knows where it comes from. */
  general('radian measure', none, '', '', 'a plain number'),
  general('length', length, 'mm', 'in'),
  special('feed per tooth', length, 'mm', 'in'),
  special('feed per revolution', length, 'mm', 'in'),
  special('roughness', length, 'um', 'uin'),
  general('area', dimension({ length: 2 }), 'mm2', 'in2'),
  general('volume', dimension({ length: 3 }), 'cm3', 'in3'),
  general('second moment of area', dimension({ length: 4 }), 'mm4', 'in4'),
  general('angle', dimension({ scale: 'angle' }), 'deg'),
  general('time', dimension({ time: 1 }), 'min'),
  general('speed', speed, 'm/min', 'ft/min'),
  special('cutting speed', speed, 'm/min', 'ft/min'),
  special('feed rate', speed, 'mm/min', 'in/min'),
  special('wear rate', speed, 'um/min', 'uin/min'),
  general('1/time', perTime, '1/min', '1/min', 'a 1/time'),
  special('rotational speed', perTime, '1/min'),
  special('frequency', perTime, 'Hz'),
  special('rate', perTime, 'parts/h'),
  general('1/length', perLength, '1/mm', '1/in', 'a 1/length'),
  general('acceleration', dimension({ length: 1, time: -2 }), 'm/s2', 'ft/s2'),
  general('mass', dimension({ mass: 1 }), 'kg', 'lb'),
  general('mass per time', dimension({ mass: 1, time: -1 }), 'kg/h', 'lb/h'),
  general('density', dimension({ mass: 1, length: -3 }), 'kg/m3', 'lb/in3'),
  general('force', dimension({ mass: 1, length: 1, time: -2 }), 'N', 'lbf'),
  general('force times length', moment, 'N·m', 'lbf·ft'),
  special('torque', moment, 'N·m', 'lbf·ft'),
  special('energy', moment, 'J', 'J'),
  general('power', dimension({ mass: 1, length: 2, time: -3 }), 'kW', 'hp'),
  general('stress', stress, 'MPa', 'psi'),
  special('specific cutting force', stress, 'MPa', 'psi'),
  special('modulus', stress, 'GPa', 'psi'),
  special('specific energy', stress, 'J/mm3', 'hp/(in3/min)'),
  general('volume per time', volumeRate, 'cm3/min', 'in3/min'),
  special('removal rate', volumeRate, 'cm3/min', 'in3/min'),
  special('flow', volumeRate, 'L/min', 'gal/min'),
  general('stiffness', dimension({ mass: 1, time: -2 }), 'N/um', 'lbf/in'),
  general('compliance', dimension({ mass: -1, time: 2 }), 'um/N', 'in/lbf'),
  general('temperature difference', temperature, 'K', 'ddegF'),
  special('temperature', temperature, 'degC', 'degF'),
  general('1/temperature', dimension({ temperature: -1 }), '1/K', '1/ddegF', 'a 1/temperature'),
  general('specific heat', dimension({ length: 2, time: -2, temperature: -1 }), 'J/(kg·K)'),
  general('thermal conductivity', dimension({ mass: 1, length: 1, time: -3, temperature: -1 }), 'W/(m·K)'),
  general('length squared per time', dimension({ length: 2, time: -1 }), 'mm2/s', 'in2/s'),
  general('money', dimension({ money: 1 }), 'money', 'money', 'an amount of money'),
  general('money per time', dimension({ money: 1, time: -1 }), 'money/h', 'money/h', 'money per time'),
  general('money per mass', dimension({ money: 1, mass: -1 }), 'money/kg', 'money/lb', 'money per mass'),
  general('hardness HRC', dimension({ scale: 'HRC' }), 'HRC'),
  general('hardness HB', dimension({ scale: 'HB' }), 'HB'),
  general('hardness HV', dimension({ scale: 'HV' }), 'HV'),
  general('date', dimension({ scale: 'date' }), ''),
];
