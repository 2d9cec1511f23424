/** Tool life, trials and lines: laws that hold for all values, a second library for the statistics, and what is refused. */

import jstat from 'jstat';
import { expect, test } from 'vitest';
import { compileDefinition, type FunctionDefinition } from '../../src/definition/index.ts';
import { isFailure, isGrid } from '../../src/expression/index.ts';
import taylorConstant from '../../src/functions/life/taylor-constant.ts';
import taylorExponent from '../../src/functions/life/taylor-exponent.ts';
import { calculated, numberIn } from './calculated.ts';

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

const message = (formula: string): string => {
  const { value } = calculated(formula);
  return isFailure(value) ? value.message : `gives ${JSON.stringify(value)}`;
};

test('the constants of the law scale with the base units as a ratio and a speed do', () => {
  const speeds = { grid: [[2, 3, 4]] };
  const lives = { grid: [[4000, 1100, 300]] };
  const given = (definition: FunctionDefinition): number =>
    Number(compileDefinition(definition).evaluate([speeds, lives], {}));
  const other = (definition: FunctionDefinition): number =>
    Number(
      compileDefinition(definition, (si, { length, time }) => si * 3 ** length * 7 ** time).evaluate(
        [
          { grid: [[2, 3, 4].map((v) => (v * 3) / 7)] },
          { grid: [[4000, 1100, 300].map((life) => life * 7)] },
        ],
        {},
      ),
    );
  expect(other(taylorExponent)).toBeCloseTo(given(taylorExponent), 12);
  expect(other(taylorConstant)).toBeCloseTo((given(taylorConstant) * 3) / 7, 12);
});

test('LIFE.TAYLOR and LIFE.TAYLOR_SPEED undo each other', () => {
  expect(
    numberIn('=LIFE.TAYLOR(LIFE.TAYLOR_SPEED(23 min; 310 m/min; 0.22); 310 m/min; 0.22)', 'min'),
  ).toBeCloseTo(23, 10);
});

test('the lower prediction limit of a life agrees with a second library (jstat 1.9.6)', () => {
  const x = [150, 180, 220, 260].map(Math.log);
  const y = [44, 24, 11.5, 6.2].map(Math.log);
  const [xm, ym] = [mean(x), mean(y)];
  const sxx = x.reduce((sum, each) => sum + (each - xm) ** 2, 0);
  const slope = x.reduce((sum, each, i) => sum + (each - xm) * ((y[i] ?? 0) - ym), 0) / sxx;
  const rest = x.reduce((sum, each, i) => sum + ((y[i] ?? 0) - ym - slope * (each - xm)) ** 2, 0);
  const away = Math.log(200) - xm;
  const room = jstat.studentt.inv(0.95, 2) * Math.sqrt(rest / 2) * Math.sqrt(1.25 + away ** 2 / sxx);
  expect(
    numberIn('=LIFE.TAYLOR_LOW({150;180;220;260} m/min; {44;24;11.5;6.2} min; 200 m/min)', 'min'),
  ).toBeCloseTo(Math.exp(ym + slope * away - room), 7);
});

test('the interval of the ratio of lives lies evenly about the ratio on logarithms', () => {
  const lists = '{30;36;33;40} min; {20;26;23} min';
  const [low, high] = [numberIn(`=LIFE.RATIO_LOW(${lists})`), numberIn(`=LIFE.RATIO_HIGH(${lists})`)];
  expect(low * high).toBeCloseTo(numberIn(`=LIFE.RATIO(${lists})`) ** 2, 12);
});

test('the power behind LIFE.SAMPLE_SIZE is that of the non-central t test (values of a statistics package)', () => {
  // Power of the two-sided test by the non-central t distribution of SciPy 1: first n with 0.9 is 13, with 0.8 is 16.
  expect(numberIn('=LIFE.SAMPLE_SIZE(1.5; 0.3; 0.95; 0.9)')).toBe(13);
  expect(numberIn('=LIFE.SAMPLE_SIZE(0.8; 0.25; 0.9; 0.8)')).toBe(16);
});

test('equal lives have no Weibull shape, two lives are too few', () => {
  expect(message('=LIFE.WEIBULL_SHAPE({20;20;20} min)')).toBe('the lives are all equal: there is no shape');
  expect(message('=LIFE.WEIBULL_SCALE({20;21} min)')).toBe('a Weibull fit needs at least 3 lives');
});

test('a wear curve that stays below its limit says how far it got', () => {
  expect(message('=LIFE.AT_WEAR({0;5;10} min; {0;0.1;0.2} mm; 0.3 mm)')).toBe(
    'the limit 0.3 mm is not reached: the largest wear is 0.2 mm',
  );
});

test('a falling wear reading and a wide last interval are marked', () => {
  const { cautions } = calculated('=LIFE.AT_WEAR({0;5;10;20} min; {0;0.12;0.1;0.4} mm; 0.3 mm)');
  expect(cautions.some((text) => text.startsWith('point 3 shows less wear'))).toBe(true);
  expect(cautions.some((text) => text.includes('more than 30 %'))).toBe(true);
});

test('lives that rise with speed give no exponent', () => {
  expect(message('=LIFE.TAYLOR_EXPONENT({100;200} m/min; {10;20} min)')).toContain('do not fall with speed');
});

test('a ratio of 1 needs endless trials', () => {
  expect(message('=LIFE.SAMPLE_SIZE(1; 0.2)')).toContain('no trial can show it');
});

test('the order of a trial holds every run once', () => {
  const { value } = calculated('=TRIAL.ORDER(500; 7)');
  const runs = isGrid(value) ? value.grid.flat().map(Number) : [];
  expect([...runs].sort((a, b) => a - b)).toEqual(Array.from({ length: 500 }, (_, i) => i + 1));
});

test('the better of two purchases at any count has no break-even', () => {
  expect(message('=COST.BREAK_EVEN(0 money; 5 money; 100 money; 5 money)')).toContain('at any count');
  expect(message('=COST.BREAK_EVEN(0 money; 4 money; 100 money; 5 money)')).toContain('at any count');
});

test('a hardness is given in one scale, inside the table', () => {
  expect(message('=HARDNESS.HRC(200 HB)')).toContain('the table gives no HRC');
  expect(message('=HARDNESS.HB(15 HRC)')).toContain('15 HRC lies outside the table: 20.3 to 68 HRC');
});
