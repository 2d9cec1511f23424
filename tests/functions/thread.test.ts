/** Threads held against grooves integrated over their depth, paths followed point by point, and programs read back. */

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { failure, isGrid } from '../../src/expression/index.ts';
import { MINOR_TOLERANCES, COARSE_PITCHES, FINE_PITCHES } from '../../src/functions/threads.table.ts';
import { calculated, numberIn } from './calculated.ts';
import { readProgram, secondsOf } from './thread-path.ts';

const SEED = { seed: 20_260_309, numRuns: 60 };

const pitchOf = (designation: string): number => numberIn(`=THREAD.PITCH("${designation}")`, 'mm');

test('designations are read as they are written in the shop', () => {
  expect(pitchOf('M8')).toBe(1.25);
  expect(pitchOf('m 10 x 1')).toBe(1);
  expect(pitchOf('M10×1,25-6H')).toBe(1.25);
  expect(pitchOf('M20 LH')).toBe(2.5);
  expect(pitchOf('1/4-20 UNC-2B')).toBe(1.27);
  expect(pitchOf('1/2-13')).toBeCloseTo(25.4 / 13, 12);
  expect(pitchOf('10-32 UNF')).toBeCloseTo(25.4 / 32, 12);
  expect(pitchOf('#1-64 UNC')).toBeCloseTo(25.4 / 64, 12);
  expect(pitchOf('1-8 UNC')).toBeCloseTo(25.4 / 8, 12);
  expect(pitchOf('1 1/8-7 UNC')).toBeCloseTo(25.4 / 7, 12);
  expect(pitchOf('1-1/8-12 UNF')).toBeCloseTo(25.4 / 12, 12);
  expect(pitchOf('2-4.5 UNC')).toBeCloseTo(25.4 / 4.5, 12);
});

test('a designation that is no thread is told with what was meant', () => {
  expect(calculated('=THREAD.PITCH("G1/2")').value).toMatchObject({
    failure: '#N/A',
    message: expect.stringContaining('designation "G1/2": no thread of the table'),
  });
  expect(calculated('=THREAD.PITCH("1/4-28 UNC")').value).toEqual(
    failure('#N/A', 'designation "1/4-28 UNC": 1/4 UNC has 20 threads on an inch, not 28'),
  );
  expect(calculated('=THREAD.PITCH("M15")').value).toEqual(
    failure('#N/A', 'designation "M15": M15 has no coarse pitch; write M15x1.5, M15x1'),
  );
  expect(calculated('=THREAD.PITCH("M10x6")').value).toMatchObject({ failure: '#N/A' });
  expect(calculated('=THREAD.PITCH("M10x1.1")').cautions).toEqual([
    'M10x1.1 is not in the table of ISO 261: a special thread',
  ]);
});

test('every fine pitch is finer than the coarse one; coarse pitches rise with the diameter', () => {
  let before = 0;
  for (const [diameter, coarse] of COARSE_PITCHES) {
    expect(coarse).toBeGreaterThanOrEqual(before);
    before = coarse;
    for (const fine of FINE_PITCHES.get(diameter) ?? []) expect(fine).toBeLessThan(coarse);
  }
});

test('every tolerance of the minor diameter lies within 4 % of the formula of ISO 965-1', () => {
  // 230 P^0.7 from 1 mm, 433 P - 190 P^1.22 below (formula and table from memory).
  for (const [pitch, tolerance] of MINOR_TOLERANCES) {
    const formula = pitch >= 1 ? 230 * pitch ** 0.7 : 433 * pitch - 190 * pitch ** 1.22;
    expect(Math.abs(tolerance / formula - 1), `pitch ${pitch}: ${formula}`).toBeLessThan(0.04);
  }
});

test('a pitch outside the table of tolerances is refused with the table', () => {
  expect(calculated('=THREAD.MINOR_MAX(12 mm; 1.1 mm)').value).toMatchObject({
    failure: '#N/A',
    message: expect.stringContaining('pitch 1.1 mm is not in the table of 6H: 0.25, 0.3'),
  });
});

test('the usual holes of the trade lie between the limits of 6H, without caution (common practice, no source)', () => {
  for (const [size, hole] of [
    [3, 2.5],
    [4, 3.3],
    [5, 4.2],
    [6, 5],
    [8, 6.8],
    [10, 8.5],
    [12, 10.2],
    [16, 14],
    [20, 17.5],
    [24, 21],
  ] as const) {
    const thread = `${size} mm; THREAD.PITCH("M${size}")`;
    expect(hole).toBeGreaterThan(numberIn(`=THREAD.MINOR_INTERNAL(${thread})`, 'mm'));
    expect(hole).toBeLessThan(numberIn(`=THREAD.MINOR_MAX(${thread})`, 'mm'));
    expect(Math.abs(numberIn(`=THREAD.CUT_HOLE(${thread})`, 'mm') - hole)).toBeLessThan(0.06);
    expect(calculated(`=THREAD.CUT_HOLE(${thread})`).cautions).toEqual([]);
  }
  expect(calculated('=THREAD.CUT_HOLE(10 mm; 1.5 mm; 60 %)').cautions).toEqual([
    'the hole is above the largest minor diameter of 6H, 8.6762 mm',
  ]);
});

test('the height of a hole is the height that the hole was made for', () => {
  for (const method of ['cut', 'form']) {
    const hole = numberIn(`=THREAD.${method.toUpperCase()}_HOLE(12 mm; 1.75 mm; 70 %)`, 'mm');
    expect(numberIn(`=THREAD.PERCENT(${hole} mm; 12 mm; 1.75 mm; "${method}")`, '%')).toBeCloseTo(70, 9);
  }
});

test('a pitch of half the diameter is refused', () => {
  expect(calculated('=THREAD.PITCH_DIAMETER(10 mm; 5 mm)').value).toMatchObject({
    failure: '#NUM!',
    message: expect.stringContaining('pitch 5 mm must be less than'),
  });
});

test('the torque of a tap is the integral of the groove over its depth', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 3, max: 60 }),
      fc.double({ min: 0.06, max: 0.2, noNaN: true }),
      fc.double({ min: 0.3, max: 1.2, noNaN: true }),
      (major, share, height) => {
        const pitch = share * major;
        const hole = major - height * pitch;
        const count = 20_000;
        let torque = 0;
        for (let i = 0; i < count; i += 1) {
          const step = (major - hole) / 2 / count;
          const below = (i + 0.5) * step;
          // The groove is P/8 wide at the outside and opens by 2 tan 30 deg.
          torque += (pitch / 8 + 2 * below * Math.tan(Math.PI / 6)) * (major / 2 - below) * step * 3000;
        }
        const formula = `=THREAD.TAP_TORQUE(${major} mm; ${pitch} mm; ${hole} mm; 3000 MPa)`;
        expect((numberIn(formula, 'N·m') * 1000) / torque).toBeCloseTo(1, 7);
      },
    ),
    SEED,
  );
});

test('a forming factor on the hole for forming has a caution: the factor goes with a cut thread', () => {
  const cautions = (hole: number, factor: number): readonly string[] =>
    calculated(`=THREAD.TAP_TORQUE(10 mm; 1.5 mm; ${hole} mm; 3500 MPa; ${factor})`).cautions;
  expect(cautions(9.34, 2)).toEqual([
    'hole 9.34 mm is one for forming: the factor 2 goes with the groove of a cut thread; give the hole of a cut thread, about diameter minus pitch',
  ]);
  expect(cautions(8.5, 2)).toEqual([]);
  expect(cautions(9.34, 1)).toEqual([]);
});

test('turns by kind of cutter: single row, a tooth in every pitch, in every other', () => {
  expect(numberIn('=THREAD.MILL_TURNS(1.5 mm; 15 mm)')).toBe(1);
  expect(numberIn('=THREAD.MILL_TURNS(1.5 mm; 15 mm; "every other")')).toBe(2);
  expect(numberIn('=THREAD.MILL_TURNS(1.5 mm; 25 mm; "every"; 10 mm)')).toBe(3);
  expect(numberIn('=THREAD.MILL_TURNS(1.5 mm; 6.6 mm; "every"; 2.2 mm)')).toBe(3);
  expect(calculated('=THREAD.MILL_TURNS(1.5 mm; 15 mm; "all")').value).toMatchObject({ failure: '#VALUE!' });
});

function blocksOf(formula: string): string[] {
  const { value } = calculated(formula);
  if (!isGrid(value)) throw new Error(`${formula} gives ${JSON.stringify(value)}`);
  return value.grid.flat().map(String);
}

const COMBINATIONS = ['right', 'left'].flatMap((hand) =>
  ['down', 'up'].flatMap((sense) => ['mm', 'inch'].map((units) => [hand, sense, units] as const)),
);

/** Numbers of a block in whole steps of the last digit written. */
const steps = (block: string, letter: string): number =>
  Math.round(Number(new RegExp(`${letter}(-?[\\d.]+)`).exec(block)?.[1] ?? 0) * 1e4);

test.each(COMBINATIONS)(
  'the program of a %s hand thread, %s milling, in %s, is the helix asked for, inside its envelope, from and to the safe height',
  (hand, sense, units) => {
    fc.assert(
      fc.property(
        fc.constantFrom('M6', 'M8x1', 'M10', 'M16x1.5', 'M24', 'M48x4'),
        fc.double({ min: 0.35, max: 0.7, noNaN: true }),
        fc.integer({ min: 2, max: 6 }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        (designation, share, diameters, safe) => {
          // All lengths in the units of the program: M10 stands for 10 tenths of an inch.
          const [scale, word] = units === 'mm' ? [1, 'mm'] : [0.1, 'in'];
          const major = Number(/\d+/.exec(designation)?.[0]) * scale;
          const pitch = pitchOf(designation) * scale;
          const length = diameters * 0.5 * major;
          const cutter = share * major;
          const blocks = blocksOf(
            `=THREAD.MILL_PROGRAM(${cutter} ${word}; 4; 0.05 mm; 120 m/min; ${major} ${word}; ${pitch} ${word}; ${length} ${word}; ${safe} ${word}; "${hand}"; "${sense}"; "${units}")`,
          );
          // The first lines say units, assumptions and that it must be proved out.
          expect(blocks[0]).toContain(`UNITS ${units.toUpperCase()})`);
          expect(blocks[1]).toMatch(
            /^\(FULL-FORM CUTTER .*LONGER THAN THE THREAD.*ZERO IN THE MIDDLE OF THE HOLE/,
          );
          expect(blocks[2]).toBe('(PROVE OUT ABOVE THE PART)');
          // Ends and centres of the arcs agree to the last digit: on a grid of whole steps both radii are equal.
          let here = 0;
          for (const block of blocks.filter((each) => /^G[23] /.test(each))) {
            const [end, centre] = [steps(block, 'X'), here + steps(block, 'I')];
            expect(steps(block, 'Y')).toBe(0);
            expect(steps(block, 'J')).toBe(0);
            expect(Math.abs(end - centre)).toBe(Math.abs(here - centre));
            here = end;
          }
          expect(here).toBe(0);
          const program = readProgram(blocks);
          const { moves } = program;
          const places = moves.flatMap((move) => move.places);
          const radius = (major - cutter) / 2;
          const close = 3e-4;

          // Modes: units, XY plane, absolute, feed by the minute, no cutter compensation.
          expect(program.modes).toEqual([units === 'mm' ? 'G21' : 'G20', 'G17', 'G90', 'G94', 'G40']);
          // It ends where it began, in the middle of the hole above the part.
          const [first, last] = [places[0], places.at(-1)];
          expect(last).toEqual(first);
          expect(first).toMatchObject({ x: 0, y: 0 });
          expect(first?.z).toBeCloseTo(safe, 3);
          // Rapid moves keep to the axis of the hole; only helical arcs are at feed.
          for (const { rapid, places: along } of moves)
            if (rapid) for (const { x, y } of along) expect(Math.hypot(x, y)).toBe(0);
          const arcs = moves.filter(({ rapid }) => !rapid);
          expect(arcs).toHaveLength(3);
          expect(arcs.map(({ turn }) => turn)).toEqual(Array(3).fill(sense === 'down' ? 1 : -1));
          // The envelope: never beyond the radius of the path, never deeper than a quarter of the pitch below the thread.
          for (const { x, y, z } of places) {
            expect(Math.hypot(x, y)).toBeLessThanOrEqual(radius + close);
            expect(z).toBeGreaterThanOrEqual(-length - pitch / 4 - close);
            expect(z).toBeLessThanOrEqual(safe + close);
          }
          // The cut begins and ends a quarter of the pitch beyond a full turn between -length and -length + pitch.
          const feedPlaces = arcs.flatMap((move) => move.places);
          const turnPlaces = arcs[1]?.places ?? [];
          for (const { x, y } of turnPlaces) expect(Math.abs(Math.hypot(x, y) - radius)).toBeLessThan(close);
          const heights = turnPlaces.map(({ z }) => z);
          expect(Math.min(...heights)).toBeCloseTo(-length, 3);
          expect(Math.max(...heights)).toBeCloseTo(-length + pitch, 3);
          // One helix throughout, the half circles too: height over polar angle is the pitch, by hand.
          const lead = (hand === 'right' ? 1 : -1) * (pitch / (2 * Math.PI));
          let angle = 0;
          let before: { x: number; y: number; z: number } | undefined;
          let start: { angle: number; z: number } | undefined;
          for (const place of feedPlaces) {
            if (Math.hypot(place.x, place.y) < 0.01 * radius) continue;
            const polar = Math.atan2(place.y, place.x);
            if (before) {
              let change = polar - Math.atan2(before.y, before.x);
              if (change > Math.PI) change -= 2 * Math.PI;
              if (change < -Math.PI) change += 2 * Math.PI;
              angle += change;
            }
            start ??= { angle, z: place.z };
            expect(Math.abs(place.z - start.z - lead * (angle - start.angle))).toBeLessThan(close);
            before = place;
          }
          // A turn and a half in all, up to the points near the axis that were left out.
          expect(Math.abs(Math.abs(angle) - 3 * Math.PI)).toBeLessThan(0.03);
        },
      ),
      { seed: 20_260_309, numRuns: 12 },
    );
  },
);

test('the time of the program is that of THREAD.MILL_TIME', () => {
  const milling = '8 mm; 4; 0.05 mm; 120 m/min; 10 mm; 1.5 mm; 15 mm';
  const program = readProgram(blocksOf(`=THREAD.MILL_PROGRAM(${milling}; 2 mm)`));
  expect(program.speed).toBe(4775);
  // The program rounds its feed to whole mm/min.
  expect(secondsOf(program) / numberIn(`=THREAD.MILL_TIME(${milling})`, 's')).toBeCloseTo(190.986 / 191, 4);
});

test('a cutter that does not go into the hole, and a height inside the part, give no program', () => {
  expect(
    calculated('=THREAD.MILL_PROGRAM(9 mm; 4; 0.05 mm; 120 m/min; 10 mm; 1.5 mm; 15 mm; 2 mm)').value,
  ).toEqual(
    failure('#NUM!', 'the cutter 9 mm does not go into the hole of a thread 10 mm with pitch 1.5 mm'),
  );
  expect(
    calculated('=THREAD.MILL_PROGRAM(8 mm; 4; 0.05 mm; 120 m/min; 10 mm; 1.5 mm; 15 mm; 0 mm)').value,
  ).toMatchObject({ failure: '#NUM!', message: expect.stringContaining('safe height 0 mm must be more') });
  expect(
    calculated('=THREAD.MILL_PROGRAM(8 mm; 4; 0.05 mm; 120 m/min; 10 mm; 1.5 mm; 15 mm; 2 mm)').cautions,
  ).toHaveLength(1);
});

test('the plan takes the hardness in any scale and judges by its Rockwell value (common practice, no source)', () => {
  const plan = (hardness: string, more = ''): unknown =>
    calculated(`=THREAD.PLAN(8 mm; 1.25 mm; 16 mm; ${hardness}; 14 %${more})`).value;
  const open = 'forming possible; cutting possible; milling possible';
  // ISO 18265: 320 HV are 304 HB and 32.2 HRC; 400 HV are 380 HB and 40.8 HRC.
  for (const hardness of ['32 HRC', '320 HV', '304 HB', '110 HB', '60 HB', '100 HV'])
    expect(plan(hardness)).toBe(open);
  for (const hardness of ['40.8 HRC', '400 HV', '380 HB'])
    expect(plan(hardness)).toBe(
      'forming doubtful (hardness above 40 HRC); cutting possible; milling possible',
    );
  expect(plan('60 HRC')).toBe(
    'forming not possible (hardness above 43 HRC); cutting not possible (hardness above 55 HRC); milling possible',
  );
  expect(plan('71 HRC')).toEqual(failure('#NUM!', 'hardness 71 HRC is above 70 HRC, where the rule ends'));
  expect(plan('32')).toMatchObject({ failure: '#UNIT!' });
  expect(calculated('=THREAD.PLAN(8 mm; 1.25 mm; 30 mm; 20 HRC; 14 %; "through")').value).toBe(
    'forming possible; cutting possible; milling doubtful (deeper than 2.5 diameters)',
  );
});
