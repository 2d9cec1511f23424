/** What a cell has to show for the formulas that the first hour with the program consists of. */

import { expect, test } from 'vitest';
import { at, opened } from './notebook.ts';

const shown = (formula: string, settings = {}) => opened({ A1: formula }, settings).result(at('A1'));

/** h = fz 2 sqrt(ae (D - ae))/D = 0.1 mm * 2 sqrt(36)/20, worked out by hand. */
const CHIP = 0.00006;

test('a chip thickness from millimetres is 0.06 mm without a caution', () => {
  const result = shown('=MILL.CHIP_MAX(20 mm; 0.1 mm; 2 mm)');
  expect(result.value).toBeCloseTo(CHIP, 16);
  expect(result).toMatchObject({ kind: 'length', unit: 'mm', cautions: [] });
});

test('the same chip thickness from inches agrees to 12 digits', () => {
  // 20 mm, 0.1 mm and 2 mm in inches of 25.4 mm, more digits than a double keeps.
  const inches = shown(
    '=MILL.CHIP_MAX(0.78740157480314960630 in; 0.0039370078740157480315 in; 0.078740157480314960630 in)',
  );
  expect(Math.abs(Number(inches.value) - CHIP)).toBeLessThan(1e-12 * CHIP);
});

test('F15 plain numbers are read in the units of the parameters and the cell says so', () => {
  const result = shown('=MILL.CHIP_MAX(20;0.1;2)');
  expect(result.value).toBeCloseTo(CHIP, 16);
  expect(result.cautions.map(({ type, text }) => [type, text])).toContainEqual([
    'assumed',
    '0.1 read as 0.1 mm',
  ]);
  expect(result.cautions.every(({ type }) => type === 'assumed')).toBe(true);
});

test('F15 switching the display system leaves the value bit-identical and shows the other unit', () => {
  const engine = opened({ A1: '=MILL.CHIP_MAX(20;0.1;2)' });
  const before = engine.result(at('A1'));
  const shared = { title: '', currency: 'EUR' };
  const metric = { ...shared, display: 'metric' } as const;
  const inch = { ...shared, display: 'inch' } as const;
  const message = engine.apply([{ type: 'settings', from: metric, to: inch }]);
  const after = engine.result(at('A1'));
  expect(after.value).toBe(before.value);
  expect(after.unit).toBe('in');
  expect(after.cautions).toEqual(before.cautions);
  expect(message.results).toHaveLength(1);
  engine.apply([{ type: 'settings', from: inch, to: metric }]);
  expect(engine.result(at('A1'))).toEqual(before);
});

test('an argument beyond its limit is an error that names parameter, value and limit', () => {
  const { value, error } = shown('=MILL.CHIP_MAX(20 mm; 0.1 mm; 30 mm)');
  expect(value).toBeNull();
  expect(error?.code).toBe('#NUM!');
  expect(error?.message).toMatch(/radial engagement/);
  expect(error?.message).toMatch(/30 mm/);
  expect(error?.message).toMatch(/20 mm/);
});

test('a blank cell given to a quantity parameter is a missing value', () => {
  const { error } = opened({ A1: '=MILL.CHIP_MAX(20 mm; 0.1 mm; B1)' }).result(at('A1'));
  expect(error?.message).toMatch(/value missing: radial engagement/);
});

test('F13 a length and a time do not add, and no IFERROR hides it', () => {
  for (const formula of ['=3 mm + 2 min', '=IFERROR(3 mm + 2 min; 0)']) {
    const { error } = shown(formula);
    expect(error?.code).toBe('#UNIT!');
    expect(error?.message).toMatch(/length/);
    expect(error?.message).toMatch(/time/);
  }
});

test('F13 what depends on a clash shows it with its root, and IFERROR there does not hide it', () => {
  const engine = opened({ A1: '=3 mm + 2 min', A2: '=IFERROR(A1; 0)', A3: '=A2*2' });
  for (const address of ['A2', 'A3']) {
    expect(engine.result(at(address)).error).toMatchObject({ code: '#UNIT!', root: at('A1') });
  }
});

test('F16 a feed per revolution given as feed per tooth is computed with a caution', () => {
  const result = shown('=CUT.FEED_RATE(4; 0.1 mm/rev; 1000 1/min)');
  expect(result.value).toBeCloseTo(0.4 / 60, 15);
  expect(result.cautions).toHaveLength(1);
  expect(result.cautions[0]).toMatchObject({ type: 'caution' });
  expect(result.cautions[0]?.text).toMatch(
    /feed per revolution.*feed per tooth|feed per tooth.*feed per revolution/,
  );
});

test('rounding takes numbers as they read in decimals', () => {
  expect(shown('=ROUND(21.9/0.2;0)').value).toBe(110);
  expect(shown('=INT(-2.5)').value).toBe(-3);
});

test('F7a 3/8 in inside a formula gets a caution with both readings', () => {
  const { value, cautions } = shown('=3/8 in');
  expect(value).toBeCloseTo(3 / (8 * 0.0254), 12);
  expect(cautions).toHaveLength(1);
  expect(cautions[0]?.text).toMatch(/0\.375 in/);
});

test('F3 a thread designation stays text', () => {
  const engine = opened({ A1: '1/4-20', A2: '=A1', A3: '=A1&" UNC"' });
  expect(engine.result(at('A1'))).toMatchObject({ value: '1/4-20', kind: 'text' });
  expect(engine.result(at('A2'))).toMatchObject({ value: '1/4-20', kind: 'text' });
  expect(engine.result(at('A3')).value).toBe('1/4-20 UNC');
});

test('text in arithmetic is #VALUE!, digits or not', () => {
  expect(shown('="12"+1').error?.code).toBe('#VALUE!');
  expect(opened({ A1: "'12", A2: '=A1+1' }).result(at('A2')).error?.code).toBe('#VALUE!');
});
