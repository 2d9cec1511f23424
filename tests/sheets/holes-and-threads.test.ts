/** The notebooks on holes and threads: decisions that turn, values worked by hand, lists and cautions they show. */

import { expect, test } from 'vitest';
import { resolveName } from '../../src/document/index.ts';
import { computedSheet } from './computed-sheet.ts';

const DEEP = 'deep-holes-manifold.json';
const SLOT = 'chain-drilled-slot.json';
const THREAD = 'thread-three-ways.json';
const STEP = 'step-drill.json';

/** A given that is changed, and how the decision reads before and after. */
const FLIPS = [
  [DEEP, 'pump', '0.5 l/min', /^yes: pilot hole/, /^no: too little coolant/],
  [DEEP, 'alpha', '25 deg', /^yes: pilot hole/, /^no: the pilot drill walks/],
  [DEEP, 'M_max', '4 N·m', /^yes: pilot hole/, /^no: the torque is too high/],
  [DEEP, 'change', '60 s', /^yes: pilot hole/, /^yes, though slower: pecking hardens/],
  [DEEP, 'depth', '60 mm', /^yes: pilot hole/, /^yes: one pass, no pilot/],
  [SLOT, 'alpha', '10 deg', /^no: the flat/, /^yes: the chain/],
  [SLOT, 't_flat', '5 s', /^no: the flat/, /^yes: mill a flat/],
  [SLOT, 'pitch_max', '8 mm', /^no: the flat/, /^no: the ridges are too high/],
  [SLOT, 'ap', '6 mm', /^no: the flat/, /^no: milling is quicker/],
  [THREAD, 'part_value', '800 EUR', /^form it, hole 7\.45 mm/, /^mill it, hole 6\.75 mm/],
  [THREAD, 'hardness', '46 HRC', /^form it/, /^mill it/],
  [THREAD, 'below', '2 mm', /^form it/, /^mill it/],
  [THREAD, 'below', '0.2 mm', /^form it/, /^no way is open/],
  [STEP, 'grind', '100 parts', /^yes: it pays from 2761 parts/, /^no: a part costs more/],
  [STEP, 'batch', '2000 parts', /^yes/, /^no: it pays from 2761 parts only/],
  [STEP, 'M_max', '25 N·m', /^yes/, /^no: the torque of all steps/],
] as const;

test.each(FLIPS)('%s: the decision turns when %s becomes %s', (file, name, content, before, after) => {
  const sheet = computedSheet(file);
  expect(sheet.named('decision').value).toMatch(before);
  sheet.type(name, content);
  expect(sheet.named('decision').value).toMatch(after);
});

/**
 * Worked by hand from geometry and the power law, without this program, in coherent SI: point D/2 cot(sigma/2);
 * entry run D/2 cot(sigma/2) + D/2 tan(alpha), or D tan(alpha) where the corner touches first; one go as lengths over feed
 * rates, pecks walked move by move; kc = kc1.1 (h/1 mm)^-mc times 1.2 with h = f/2 sin(sigma/2), M = kc f (D^2 - d^2)/8,
 * thrust 0.5 kc f D/2 sin(sigma/2)/0.7, flow P q/(rho cp dT); ridge r - sqrt(r^2 - p^2/4); tap torque as the groove of
 * 60 degrees integrated over its depth in 200000 slices, twice for forming; thread mill as two leads and one turn along the
 * helix; costs as rate times time and shares of prices. kc1.1 and mc: main values of textbooks, from memory.
 */
const BY_HAND = [
  [DEEP, 'Le', 0.0015185783175954675],
  [DEEP, 't_go', 36.036582019650176],
  [DEEP, 't_peck', 73.2020265656447],
  [DEEP, 'pecks', 41],
  [DEEP, 'M_deep', 4.08935973899749],
  [DEEP, 'Fz', 1219.917831896803],
  [DEEP, 'flow', 1.449356632641322e-5],
  [SLOT, 'least', 10],
  [SLOT, 'pitch', 0.06 / 10],
  [SLOT, 'cusp', 0.0055 - Math.sqrt(0.0055 ** 2 - 0.003 ** 2)],
  [SLOT, 'Le', 0.011 * Math.tan((25 * Math.PI) / 180)],
  [SLOT, 'wall', 0.0005 + 0.0055 - Math.sqrt(0.0055 ** 2 - 0.003 ** 2)],
  [SLOT, 't_chain', 71.84613959786212],
  [SLOT, 't_drill', 89.84613959786212],
  [SLOT, 't_mill', 80.78381109230895],
  [THREAD, 'hole_cut', 0.006749675823286217],
  [THREAD, 'hole_form', 0.008 - 0.68 * 0.00125 * 0.65],
  [THREAD, 'minor', 0.008 - ((5 * Math.sqrt(3)) / 8) * 0.00125],
  [THREAD, 'M_form', 12.733598827433472],
  [THREAD, 't_form', 3.1651325000738915],
  [THREAD, 't_mill', 4.122451863238998],
  [THREAD, 'c_form', 0.12194026041820609],
  [THREAD, 'c_mill', 0.16588441381747915],
  [STEP, 'gain', 24.119138558250413],
  [STEP, 'M', 29.83464255604995],
  [STEP, 'load', 0.38999532753006466],
  [STEP, 'one_grind', (420 + 4 * 70) / 5],
  [STEP, 'c_three', 1.5996772063534515],
  [STEP, 'c_step', 1.2736963495034423],
  [STEP, 'pays', 2761],
] as const;

test.each(BY_HAND)('%s: %s agrees with the value worked by hand', (file, name, expected) => {
  const { value } = computedSheet(file).named(name);
  expect(Math.abs(Number(value) / expected - 1)).toBeLessThan(1e-11);
});

/** The values of a list that a named cell puts below itself. */
function listBelow(file: string, name: string, count: number): readonly unknown[] {
  const { notebook, engine } = computedSheet(file);
  const found = resolveName(notebook, notebook.worksheets[0]?.id ?? '', name);
  if (!found) throw new Error(`${file} has no name ${name}`);
  const { row, column } = found.defined.target;
  return Array.from(
    { length: count },
    (_, index) => engine.result({ worksheet: found.worksheet.id, row: row + index, column }).value,
  );
}

test('the order of the chain has the solid holes first, then the bridges', () => {
  expect(listBelow(SLOT, 'order', 11)).toEqual([1, 3, 5, 7, 9, 11, 2, 4, 6, 8, 10]);
});

test('at 10 degrees the slow entry of the six solid holes is all that is added to the chain', () => {
  const sheet = computedSheet(SLOT);
  sheet.type('alpha', '10 deg');
  // 71.846 s and six times the entry run over the feed rate, which half the feed costs once more
  expect(Number(sheet.named('t_drill').value)).toBeCloseTo(73.71327273531351, 10);
  expect(sheet.named('Le').cautions).toEqual([]);
});

test('the raw face of 25 degrees brings the caution of the walking drill', () => {
  const texts = computedSheet(SLOT)
    .named('Le')
    .cautions.map(({ text }) => text);
  expect(texts.join(' ')).toMatch(/the drill walks/);
});

/**
 * By hand: 80 m/min at 5.5 mm are 4630 1/min; 3 times 0.04 mm times 4630 times 2.5/8 are 174 mm/min on the axis; path
 * radius 1.25 mm, leads of a quarter of the pitch, 0.3125 mm. Words of ISO 6983-1.
 */
test('the program of the milled thread says to prove it out and runs one pitch in one turn', () => {
  expect(listBelow(THREAD, 'program', 11)).toEqual([
    '(INTERNAL THREAD 8X1.25, RIGHT HAND, CLIMB, UNITS MM)',
    '(FULL-FORM CUTTER 5.5, LONGER THAN THE THREAD; ZERO IN THE MIDDLE OF THE HOLE, ON THE FACE)',
    '(PROVE OUT ABOVE THE PART)',
    'G21 G17 G90 G94 G40',
    'S4630 M3',
    'G0 X0 Y0 Z5',
    'G0 Z-16.3125',
    'G3 X1.25 Y0 Z-16 I0.625 J0 F174',
    'G3 X1.25 Y0 Z-14.75 I-1.25 J0',
    'G3 X0 Y0 Z-14.4375 I-0.625 J0',
    'G0 Z5',
  ]);
});

test.each([DEEP, SLOT, THREAD, STEP])('%s: every given says where it comes from', (file) => {
  const first = computedSheet(file).notebook.worksheets[0];
  const bare = (first?.rows ?? [])
    .map((row) => row?.[1])
    .filter((cell) => cell && !cell.content.startsWith('=') && !cell.source);
  expect(bare).toEqual([]);
});
