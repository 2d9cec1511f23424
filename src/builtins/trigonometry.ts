/** Trigonometry: angles in, plain numbers read as radians with a note; the inverse functions give angles (F17). */

import { failure } from '../expression/index.ts';
import type { Failure } from '../expression/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { angle, number, plain } from './parameter.ts';
import { ANGLE, PLAIN_NUMBER, shared } from './type-rules.ts';

const noNumber = (words: string): Failure => failure('#NUM!', words);

/** Rounding of pi and its fractions shall not leave 6e-17 where the mathematics says 0. */
const clean = (value: number): number => (Math.abs(value) < 1e-15 ? 0 : value);

/** A quotient whose divisor may vanish. */
const over = (a: number, b: number): number | Failure =>
  Math.abs(b) < 1e-15 ? failure('#DIV/0!', 'not defined at this angle') : clean(a) / b;

const ofAngle = (
  name: string,
  section: string,
  words: string,
  f: (x: number) => number | Failure,
  given: string,
  gives: string,
  source?: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'trigonometry',
    section,
    summary: `The ${words} of an angle`,
    searchWords: [words, 'angle', 'triangle'],
    takes: [angle('angle')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([x]) => f(x),
    examples: [example(given, gives, source)],
  });

const toAngle = (
  name: string,
  section: string,
  words: string,
  f: (x: number) => number | Failure,
  given: string,
  gives: string,
  source?: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'trigonometry',
    section,
    summary: `The angle whose ${words} is the number`,
    searchWords: [`inverse ${words}`, `arc ${words}`, 'angle'],
    takes: [plain('number')],
    gives: () => ANGLE,
    evaluate: ([x]) => f(x),
    examples: [example(given, gives, source)],
  });

const hyperbolic = (
  name: string,
  section: string,
  words: string,
  f: (x: number) => number | Failure,
  given: string,
  gives: string,
  source?: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'trigonometry',
    section,
    summary: `The ${words} of a plain number`,
    searchWords: [words, 'hyperbolic'],
    takes: [plain('number')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([x]) => f(x),
    examples: [example(given, gives, source)],
  });

const unitRange = (f: (x: number) => number) => (x: number) =>
  Math.abs(x) > 1 ? noNumber(`${x} lies outside -1 to 1`) : f(x);

export const TRIGONOMETRY: readonly BuiltinDefinition[] = [
  ofAngle('SIN', '6.16.55', 'sine', (x) => clean(Math.sin(x)), 'SIN(30 deg)', '0.5', 'exact value'),
  ofAngle('COS', '6.16.19', 'cosine', (x) => clean(Math.cos(x)), 'COS(60 deg)', '0.5', 'exact value'),
  ofAngle(
    'TAN',
    '6.16.65',
    'tangent',
    (x) => over(Math.sin(x), Math.cos(x)),
    'TAN(45 deg)',
    '1',
    'exact value',
  ),
  ofAngle(
    'COT',
    '6.16.21',
    'cotangent',
    (x) => over(Math.cos(x), Math.sin(x)),
    'COT(45 deg)',
    '1',
    'exact value',
  ),
  ofAngle('SEC', '6.16.52', 'secant', (x) => over(1, Math.cos(x)), 'SEC(60 deg)', '2', 'exact value'),
  ofAngle('CSC', '6.16.23', 'cosecant', (x) => over(1, Math.sin(x)), 'CSC(30 deg)', '2', 'exact value'),
  toAngle('ASIN', '6.16.7', 'sine', unitRange(Math.asin), 'ASIN(0.5)', '30 deg', 'exact value'),
  toAngle('ACOS', '6.16.3', 'cosine', unitRange(Math.acos), 'ACOS(0.5)', '60 deg', 'exact value'),
  toAngle('ATAN', '6.16.9', 'tangent', Math.atan, 'ATAN(1)', '45 deg', 'exact value'),
  toAngle(
    'ACOT',
    '6.16.5',
    'cotangent',
    (x) => Math.PI / 2 - Math.atan(x),
    'ACOT(1)',
    '45 deg',
    'exact value',
  ),
  builtin({
    name: 'ATAN2',
    group: 'trigonometry',
    section: '6.16.10',
    summary: 'The angle of the point with these coordinates, from -180 deg to 180 deg',
    searchWords: ['polar', 'direction', 'arc tangent', 'angle'],
    takes: [number('x'), number('y')],
    gives(args) {
      const type = shared('ATAN2', args);
      return type?.type === 'failed' ? type : ANGLE;
    },
    evaluate: ([x, y]) =>
      x === 0 && y === 0 ? failure('#DIV/0!', 'both coordinates are 0') : Math.atan2(y, x),
    examples: [example('ATAN2(1; 1)', '45 deg', 'exact value')],
  }),
  builtin({
    name: 'DEGREES',
    group: 'trigonometry',
    section: '6.16.25',
    summary: 'The plain number of degrees in an angle',
    searchWords: ['degrees', 'convert angle'],
    takes: [angle('angle')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([x]) => (x / Math.PI) * 180,
    examples: [example('DEGREES(PI())', '180', 'exact value')],
  }),
  builtin({
    name: 'RADIANS',
    group: 'trigonometry',
    section: '6.16.49',
    summary: 'The angle with a plain number of degrees',
    searchWords: ['radians', 'degrees', 'convert angle'],
    takes: [plain('degrees')],
    gives: () => ANGLE,
    evaluate: ([x]) => (x / 180) * Math.PI,
    examples: [example('RADIANS(180)', '180 deg', 'exact value')],
  }),
  hyperbolic('SINH', '6.16.56', 'hyperbolic sine', Math.sinh, 'SINH(0)', '0'),
  hyperbolic('COSH', '6.16.20', 'hyperbolic cosine', Math.cosh, 'COSH(1)', '1.5430806348'),
  hyperbolic('TANH', '6.16.66', 'hyperbolic tangent', Math.tanh, 'TANH(1)', '0.761594155955765'),
  hyperbolic(
    'COTH',
    '6.16.22',
    'hyperbolic cotangent',
    (x) => (x === 0 ? failure('#DIV/0!', 'not defined at 0') : 1 / Math.tanh(x)),
    'COTH(EXP(1))',
    '1.00874693',
  ),
  hyperbolic('SECH', '6.16.57', 'hyperbolic secant', (x) => 1 / Math.cosh(x), 'SECH(0)', '1'),
  hyperbolic(
    'CSCH',
    '6.16.24',
    'hyperbolic cosecant',
    (x) => (x === 0 ? failure('#DIV/0!', 'not defined at 0') : 1 / Math.sinh(x)),
    'CSCH(1)*SINH(1)',
    '1',
    'by definition',
  ),
  hyperbolic('ASINH', '6.16.8', 'inverse hyperbolic sine', Math.asinh, 'ASINH(1)', '0.881373587'),
  hyperbolic(
    'ACOSH',
    '6.16.4',
    'inverse hyperbolic cosine',
    (x) => (x < 1 ? noNumber('the number must be at least 1') : Math.acosh(x)),
    'ACOSH(2)',
    '1.316957897',
  ),
  hyperbolic(
    'ATANH',
    '6.16.11',
    'inverse hyperbolic tangent',
    (x) => (Math.abs(x) >= 1 ? noNumber('the number must lie between -1 and 1') : Math.atanh(x)),
    'ATANH(0.5)',
    '0.549306144',
  ),
  hyperbolic(
    'ACOTH',
    '6.16.6',
    'inverse hyperbolic cotangent',
    (x) => (Math.abs(x) <= 1 ? noNumber('the number must lie outside -1 to 1') : Math.atanh(1 / x)),
    'ACOTH(2)',
    '0.549306144',
  ),
];
