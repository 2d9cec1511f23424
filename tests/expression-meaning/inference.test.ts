import { expect, test } from 'vitest';
import { compileScalar, isGrid, print, singleValue } from '../../src/expression/index.ts';
import type {
  Inference,
  InferenceContext,
  Scalar,
  TableFunction,
  Value,
} from '../../src/expression/index.ts';
import { CELLS, cautionsOf, FUNCTIONS, inferred, kind, said } from './sample-notebook.ts';

const DEGREE = Math.PI / 180;

/** Evaluates what inference gave; every operand has the same value. */
const evaluated = ({ tree }: Inference, value: Value = null): Scalar =>
  singleValue(compileScalar(tree, { functions: FUNCTIONS, slot: () => 0 })([value]));

test('F11 an angle and each hardness scale are dimensions of their own in sums and comparisons', () => {
  expect(said('=B5+30 deg')).toBe('angle');
  expect(said('=B5+B3')).toBe('#UNIT! adds an angle, B5 in deg, to a length, B3 in mm');
  expect(said('=B13>50 HRC')).toBe('logical');
  expect(said('=B13>500 HB')).toBe('#UNIT! compares a hardness HRC, B13 in HRC, with a hardness HB, 500 HB');
});

test('F11 in products and powers an angle is its radian value', () => {
  expect(said('=B5*2')).toBe('radian measure');
  expect(said('=B5*B3')).toBe('length');
  expect(said('=B5^2')).toBe('number');
  expect(evaluated(inferred('=90 deg*2'))).toBeCloseTo(180 * DEGREE, 14);
});

test('F11 hardness has no arithmetic', () => {
  for (const formula of ['=B13+B13', '=B13*2', '=B13/B13', '=B13^2', '=-B13', '=B13%', '=2*B13']) {
    expect(said(formula)).toContain('a hardness has no arithmetic, it can only be compared');
    expect(said(formula)).toMatch(/^#UNIT! computes with a hardness HRC, B13 in HRC/);
  }
});

test('F11 ratios and counts are plain numbers', () => {
  expect(said('=B20+1')).toBe('number');
  expect(said('=B20+B20')).toBe('count');
  expect(said('=5%')).toBe('share');
  expect(said('=1+5%')).toBe('number');
  expect(cautionsOf('=B20+5%')).toEqual([]);
});

test('F11a products and quotients give the general kind, sums keep a kind that both share', () => {
  expect(said('=B9*2')).toBe('length');
  expect(said('=B9*B20*B19')).toBe('speed');
  expect(said('=B9+B9')).toBe('feed per tooth');
  expect(said('=B9+B3')).toBe('length');
  expect(said('=-B9')).toBe('feed per tooth');
  expect(said('=0.1 mm/rev+0.1 mm/rev')).toBe('feed per revolution');
});

test('F12 references, names and ranges bring their types along', () => {
  expect(said('=B3')).toBe('length');
  expect(said('=ap/B4')).toBe('speed');
  expect(said('=SUM(B3:B4)')).toBe('length');
  expect(inferred('=B4').constants).toEqual([]);
});

test('F12 only an exponent or a number asked for by a function ties the formula to a cell’s number', () => {
  expect(inferred('=B3+B1*1 mm').constants).toEqual([]);
  expect(inferred('=B3^B1').constants.map(print)).toEqual(['B1']);
  expect(inferred('=B2^B1').constants).toEqual([]);
  expect(inferred('=PICK(B3:B4;B1)').constants.map(print)).toEqual(['B1']);
  expect(said('=PICK(B3:B4;B1)')).toBe('length');
});

test('F13 a clash names what is added, subtracted or compared, operand by operand', () => {
  expect(said('=B3+B4')).toBe('#UNIT! adds a length, B3 in mm, to a time, B4 in min');
  expect(said('=B3-B4')).toBe('#UNIT! subtracts a time, B4 in min, from a length, B3 in mm');
  expect(said('=B3<=B4')).toBe('#UNIT! compares a length, B3 in mm, with a time, B4 in min');
  expect(said('=5 min+B3')).toBe('#UNIT! adds a time, 5 min, to a length, B3 in mm');
  expect(said('=B3+B4', { reading: 'inch' })).toBe('#UNIT! adds a length, B3 in in, to a time, B4 in min');
  expect(said('=B3+B4', { unitOf: () => 'um' })).toContain('B3 in um');
});

test('F13 a clash is never computed through and no IFERROR sees it', () => {
  expect(said('=IFERROR(B3+B4;0)')).toContain('#UNIT! adds a length');
  expect(said('=SUM(1;IFERROR(B3+B4;0))')).toContain('#UNIT! adds a length');
  expect(said('=IFERROR(nothing;0)')).toBe('#NAME? no name nothing');
});

test('F13 a failure further up passes on with its root cell', () => {
  const { failure } = inferred('=IFERROR(B17;1)+B3');
  expect(failure).toEqual({ failure: '#UNIT!', message: 'adds a mass to a force', root: 'Feeds.B4' });
});

test('F13a & refuses a quantity and offers the replacement', () => {
  expect(said('="ap "&B3')).toBe(
    '#UNIT! joins a length, B3 in mm, as text: write TEXT(B3/1 mm; "0.0") & " mm"',
  );
  expect(said('="z "&B20')).toBe('text');
  expect(said('=B5&""')).toContain('joins an angle');
});

test('F13b text, errors and blanks are neutral beside quantities', () => {
  expect(said('=B21+B3')).toBe('length');
  expect(said('=#N/A+B3')).toBe('length');
  expect(said('=B6=""')).toBe('logical');
  expect(cautionsOf('=B6=""')).toEqual([]);
  expect(said('=B3=B7')).toBe('logical');
});

test('F14 a plain number meets a quantity only if it is a written 0', () => {
  expect(said('=B3+0')).toBe('length');
  expect(said('=0-B3')).toBe('length');
  expect(said('=B3>(0)')).toBe('logical');
  expect(said('=B5>0')).toBe('logical');
  expect(said('=B13>0')).toBe('logical');
  expect(said('=B3+5')).toBe(
    '#UNIT! adds a length, B3 in mm, to a plain number, 5: a plain number has no unit; write 5 mm',
  );
  expect(said('=B1<B3')).toBe(
    '#UNIT! compares a plain number, B1, with a length, B3 in mm: a plain number has no unit; write B1*1 mm',
  );
  expect(said('=B8+B3')).toContain('adds a plain number, B8');
});

test('F14 a cell that holds 0 is no written 0: its number may change without asking', () => {
  CELLS.set(99, kind('number', 0));
  expect(said('=B3+B99')).toContain('adds a length, B3 in mm, to a plain number, B99');
});

test('F14 in products a plain number is a pure factor', () => {
  expect(said('=2*B3')).toBe('length');
  expect(said('=B3/B20')).toBe('length');
  expect(said('=1/B4')).toBe('1/time');
});

test('F15 a plain number is read in the unit of the reading system, with a note', () => {
  const metric = inferred('=TEST.CHIP(0.1)');
  expect(metric.assumed.map(({ text, unit }) => [text, unit])).toEqual([['0.1 read as 0.1 mm', 'mm']]);
  expect(metric.assumed[0]?.span).toEqual({ from: 11, to: 14 });
  expect(evaluated(metric)).toBe(0.0001);
  const inch = inferred('=TEST.CHIP(0.1)', { reading: 'inch' });
  expect(inch.assumed[0]?.text).toBe('0.1 read as 0.1 in');
  // 1 in = 25.4 mm exactly: international yard and pound agreement, 1959.
  expect(evaluated(inch)).toBe(0.00254);
});

test('F15 what is no literal is multiplied by the unit', () => {
  const cell = inferred('=TEST.CHIP(B1)');
  expect(cell.assumed[0]?.text).toBe('B1 read in mm');
  expect(evaluated(cell, 3)).toBeCloseTo(0.003, 15);
  expect(evaluated(inferred('=TEST.CHIP(-(0.1))'))).toMatchObject({ failure: '#NUM!' });
  expect(inferred('=TEST.CHIP(-0.1)').assumed[0]?.text).toBe('-0.1 read as -0.1 mm');
});

test('F15 an empty cell that is read in a unit stays empty', () => {
  expect(evaluated(inferred('=TEST.CHIP(B2)'), null)).toMatchObject({ message: 'value missing: feed' });
});

/** Reads its plain argument in a unit and gives back what it was given. */
const reader = (unit: string): TableFunction => ({
  name: 'READ',
  arity: [1, 1],
  infer: () => ({ type: { type: 'neutral' }, assumed: [{ argument: 0, unit }] }),
  evaluate: ([value = null]) => (isGrid(value) ? { grid: [[JSON.stringify(value.grid)]] } : value),
});

const readIn = (unit: string, formula: string, value: Value): Scalar => {
  const functions = new Map([['READ', reader(unit)]]);
  const { tree } = inferred(formula, { functions });
  return singleValue(compileScalar(tree, { functions, slot: () => 0 })([value]));
};

test('F15 F21 absolute temperatures are read with their offset: 0 degC is 273.15 K (SI Brochure, 9th edition, 2.3.1)', () => {
  expect(readIn('degC', '=READ(20)', null)).toBeCloseTo(293.15, 12);
  expect(readIn('degC', '=READ(-20)', null)).toBeCloseTo(253.15, 12);
  expect(readIn('degC', '=READ(B1)', 20)).toBeCloseTo(293.15, 12);
  expect(readIn('degF', '=READ(B1)', 212)).toBeCloseTo(373.15, 12);
});

test('F15 a range is read value by value: blanks, texts and logicals stay as they are', () => {
  const range = { grid: [[1000], [null], ['note'], [true]] };
  expect(readIn('mm', '=READ(B1:B4)', range)).toBe('[[1],[null],["note"],[true]]');
  expect(readIn('mm', '=READ({1000;2000})', null)).toBe('[[1,2]]');
});

test('F15 a quantity is not read again', () => {
  expect(inferred('=TEST.CHIP(B3)').assumed).toEqual([]);
  expect(inferred('=TEST.CHIP(0.1 in)').assumed).toEqual([]);
});

test('F16 two special kinds of one dimension are computed with a caution that names both', () => {
  expect(said('=B9+B10')).toBe('length');
  expect(cautionsOf('=B9+B10')).toEqual([
    'adds a feed per tooth, B9 in mm, to a feed per revolution, B10 in mm',
  ]);
  expect(cautionsOf('=B11>B12')).toEqual(['compares a torque, B11 in N·m, with an energy, B12 in J']);
  expect(cautionsOf('=B9+B3')).toEqual([]);
});

test('F17 the exponent must be a plain number, and constant for a quantity', () => {
  expect(said('=B3^2')).toBe('area');
  expect(said('=B3^B1')).toBe('volume');
  expect(said('=(B3^3)^(1/3)')).toBe('length');
  expect(said('=B3^mc')).toBe('length^0.25');
  expect(said('=B2^B2')).toBe('number');
  expect(said('=B3^B2')).toBe(
    '#UNIT! raises a length, B3 in mm, to B2, which is not constant: the exponent of a quantity must be a number or a cell with a number',
  );
  expect(said('=2^B3')).toBe('#UNIT! raises 2 to a length, B3 in mm: the exponent must be a plain number');
  expect(said('=2^B5')).toContain('to an angle');
});

test('F18 a factor that converts a second time gets a caution', () => {
  const marked = new Map([
    ['=PI()*B3*B19/1000', '1000'],
    ['=B18*1000/(PI()*B3)', '1000'],
    ['=B4*60', '60'],
    ['=B3*25.4', '25.4'],
    ['=2 ft*12', '12'],
    ['=318.3*B18/B3', '318.3'],
    ['=3.82*B18/B3', '3.82'],
    ['=9549*B22/B19', '9549'],
    ['=9550*B22/B19', '9550'],
    ['=63025*B22/B19', '63025'],
    ['=5252*B22/B19', '5252'],
    ['=B11*B19/33000', '33000'],
  ]);
  for (const [formula, factor] of marked) {
    const cautions = cautionsOf(formula);
    expect(cautions, formula).toHaveLength(1);
    expect(cautions[0]).toContain(`the factor ${factor} may convert twice`);
  }
});

test('F18 no caution where nothing carries a unit, or the factor belongs to a plain number', () => {
  const silent = ['=1000*B2', '=B3*60', '=B4*25.4', '=B3*12', '=B3/1 mm*1000', '=1000 mm*B20', '=B3*2'];
  for (const formula of silent) expect(cautionsOf(formula), formula).toEqual([]);
});

test('F5 a minus before a power and chained powers show both readings where they differ', () => {
  expect(cautionsOf('=-B2^2')).toEqual([
    '-B2^2 is read as (-B2)^2, the sign first; mathematics reads -(B2^2)',
  ]);
  expect(cautionsOf('=-2^3')).toEqual([]);
  expect(cautionsOf('=2^3^2')).toEqual([
    '2^3^2 is read as (2^3)^2, from the left; mathematics reads 2^(3^2)',
  ]);
  expect(cautionsOf('=(2^3)^2')).toEqual([]);
});

test('F7a whole numbers parted by / before a unit get a caution with both readings', () => {
  expect(cautionsOf('=3/8 in')).toEqual([
    '3/8 in is read as 3 divided by 8 in; the fraction of the unit is 0.375 in',
  ]);
  expect(cautionsOf('=B2/8 in')).toEqual([]);
});

test('F7a the caution carries the press that writes the other reading, and its place', () => {
  const text = '=2 in + 3/8 in';
  const [caution] = inferred(text).cautions;
  expect(caution).toMatchObject({ from: 8, to: 14, replacement: '0.375 in' });
  expect(text.slice(0, caution?.from) + caution?.replacement + text.slice(caution?.to)).toBe(
    '=2 in + 0.375 in',
  );
});

test('F7 a unit that ends like a name of the notebook is pointed at, whether or not the formula uses the name', () => {
  const words = '3 mm/h is read with the unit mm/h; for the name h leave spaces: 3 mm / h';
  const texts = (changes: Partial<InferenceContext>): readonly string[] =>
    inferred('=3 mm/h', changes).cautions.map((caution) => caution.text);
  expect(texts({})).toEqual([]);
  expect(texts({ nameType: (_, name) => (name === 'h' ? kind('time') : undefined) })).toEqual([words]);
  expect(texts({ nameType: () => undefined, hasName: (name) => name === 'h' })).toEqual([words]);
});

test('F4 an unknown unit is named with near ones', () => {
  expect(said('=5 xyz')).toMatch(/^#UNIT! unknown unit xyz; near ones: /);
});

test('F21 differences of absolute temperatures are differences, sums of two are refused', () => {
  expect(said('=B15-B15')).toBe('temperature difference');
  expect(said('=B15+B16')).toBe('temperature');
  expect(said('=B16+B15')).toBe('temperature');
  expect(said('=B15-5 K')).toBe('temperature');
  expect(said('=B15+B15')).toContain('#UNIT! adds two absolute temperatures');
});

test('a date minus a date is a time, a date plus a time is a date', () => {
  expect(said('=B14-B14')).toBe('time');
  expect(said('=B14+3 day')).toBe('date');
  expect(said('=36 h+B14')).toBe('date');
  expect(said('=B14-8 h')).toBe('date');
  expect(said('=B14+3')).toBe('#UNIT! adds a date, B14, to a plain number, 3: write 3 day for days');
  expect(said('=B14+B14')).toContain('a date minus a date is a time');
  expect(said('=B14*2')).toContain('a date only has differences and sums with times');
  expect(said('=B14>B14')).toBe('logical');
  // A day has 86 400 s (SI Brochure, 9th edition, table 8).
  CELLS.set(98, kind('date'));
  const difference = compileScalar(inferred('=B14-B98').tree, {
    functions: FUNCTIONS,
    slot: (node) => (node.type === 'cell' && node.row === 13 ? 0 : 1),
  });
  expect(difference([20_003, 20_001])).toBe(2 * 86_400);
  expect(evaluated(inferred('=B14+36 h'), 20_000)).toBe(20_001.5);
  expect(evaluated(inferred('=36 h+B14'), 20_000)).toBe(20_001.5);
});

test('an empty cell beside a quantity is "value missing", among plain numbers it counts as 0 with a caution', () => {
  expect(said('=B3+B6')).toBe('length');
  for (const formula of ['=B3+B6', '=B6*B3', '=B3/B6', '=B3^B6', '=B3>B6']) {
    expect(evaluated(inferred(formula), 1), formula).toEqual({
      failure: '#VALUE!',
      message: 'value missing: B6',
    });
  }
  expect(cautionsOf('=B2+B6')).toEqual(['B6 is empty, counted as 0']);
  expect(cautionsOf('=-B6')).toEqual(['B6 is empty, counted as 0']);
  expect(cautionsOf('=B6&"x"')).toEqual([]);
});

test('a branch that is not taken may have a value missing', () => {
  const formula = inferred('=IF(ISBLANK(B6);0 mm;B3+B6)');
  expect(formula.type).toMatchObject({ type: 'number', kind: { name: 'length' } });
  expect(evaluated(formula, null)).toBe(0);
});

test('an unknown function is #NAME? with the nearest known one', () => {
  expect(said('=TEST.CHAP(1)')).toBe('#NAME? no function TEST.CHAP; the nearest is TEST.CHIP');
  expect(said('=CHIP(1)')).toBe('#NAME? no function CHIP; the nearest is TEST.CHIP');
  expect(said('=SQRTT(1)')).toBe('#NAME? no function SQRTT; the nearest is SQRT');
  expect(said('=ZZZZZZ(1)')).toBe('#NAME? no function ZZZZZZ');
});

test('an unknown name is #NAME? with near ones', () => {
  expect(said('=aP+1')).toBe('#NAME? no name aP; near ones: ap');
});

test('a wrong number of arguments says how many are expected', () => {
  expect(said('=TEST.CHIP()')).toBe('#VALUE! TEST.CHIP takes 1 to 2 arguments, not 0');
  expect(said('=TEST.CHIP(1;2;3)')).toBe('#VALUE! TEST.CHIP takes 1 to 2 arguments, not 3');
  expect(said('=SIN(1;2)')).toBe('#VALUE! SIN takes 1 argument, not 2');
  expect(said('=PI(1)')).toBe('#VALUE! PI takes no arguments, not 1');
  expect(said('=SUM()')).toBe('#VALUE! SUM takes at least 1 argument, not 0');
});

test('F26 a cell shows one value unless a function gives several on purpose', () => {
  expect(said('=B3:B4')).toBe('#VALUE! B3:B4 gives several values where one is needed');
  expect(said('=LINES()')).toBe('grid');
  expect(said('=SUM(B3:B4*2)')).toBe('length');
});
