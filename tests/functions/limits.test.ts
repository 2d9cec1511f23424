/** Identities and limits that tie the functions together: what must hold whatever the numbers are. No outside source but mathematics. */

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { directionFactors } from '../../src/functions/milling-stability.ts';
import { calculated, numberIn } from './calculated.ts';

const SEED = { seed: 20_260_309, numRuns: 40 };

const ratio = (a: string, b: string): number => numberIn(`=(${a}) / (${b})`);

test('thinning rises to 1 as the engagement reaches half the cutter, and stays there', () => {
  let before = 0;
  for (const share of [0.01, 0.1, 0.2, 0.3, 0.4, 0.49, 0.499, 0.4999]) {
    const thinning = numberIn(`=MILL.THINNING(20 mm; ${20 * share} mm)`);
    expect(thinning).toBeGreaterThan(before);
    // sin(arccos(1 - 2 share)): what is missing is (1 - 2 share)^2 / 2 and less than its double.
    expect(1 - thinning).toBeLessThanOrEqual((1 - 2 * share) ** 2 + 1e-12);
    before = thinning;
  }
  for (const engagement of [10, 10.001, 15, 20])
    expect(numberIn(`=MILL.THINNING(20 mm; ${engagement} mm)`)).toBeCloseTo(1, 9);
});

test('the facet height of an internal cutter falls to 0 as its ring approaches the size of the journal', () => {
  let before = Number.POSITIVE_INFINITY;
  for (const gap of [100, 10, 1, 0.1, 0.01, 0.001]) {
    const height = numberIn(`=CRANK.FACET_HEIGHT(${80 + gap} mm; 1 mm; 80 mm; "internal")`, 'um');
    expect(height).toBeLessThan(before);
    before = height;
  }
  expect(before).toBeLessThan(1e-3);
  // An endless ring is a flat: external and internal meet.
  expect(
    ratio(
      'CRANK.FACET_HEIGHT(1000000000 mm; 1 mm; 80 mm; "internal")',
      'CRANK.FACET_HEIGHT(1000000000 mm; 1 mm; 80 mm; "external")',
    ),
  ).toBeCloseTo(1, 6);
});

test('a stepped beam with equal steps is the plain one', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 5, max: 60 }), { minLength: 2, maxLength: 6 }),
      fc.integer({ min: 8, max: 40 }),
      fc.integer({ min: 100, max: 650 }),
      (lengths, diameter, modulus) => {
        const many = (value: number): string => lengths.map(() => value).join(';');
        const total = lengths.reduce((sum, length) => sum + length, 0);
        expect(
          ratio(
            `RIGID.STEPPED_DEFLECTION({${lengths.join(';')}} mm; {${many(diameter)}} mm; {${many(modulus)}} GPa; 500 N)`,
            `RIGID.DEFLECTION(${diameter} mm; ${total} mm; ${modulus} GPa; 500 N)`,
          ),
        ).toBeCloseTo(1, 11);
      },
    ),
    SEED,
  );
});

test('the overhang for a deflection is the one that deflects so; springs in series give way together', () => {
  const overhang = numberIn('=RIGID.OVERHANG_FOR(20 mm; 580 GPa; 400 N; 30 um)', 'mm');
  expect(numberIn(`=RIGID.DEFLECTION(20 mm; ${overhang} mm; 580 GPa; 400 N)`, 'um')).toBeCloseTo(30, 8);
  expect(numberIn('=RIGID.IN_SERIES({40;40} N/um)', 'N/um')).toBeCloseTo(20, 12);
  expect(numberIn('=RIGID.IN_SERIES({40;1000000000} N/um)', 'N/um')).toBeCloseTo(40, 5);
});

test('a round bar and a square one with the same radius of gyration sing alike', () => {
  // i = d/4 of a circle, h/sqrt(12) of a rectangle.
  const height = (20 / 4) * Math.sqrt(12);
  expect(
    ratio(
      'RIGID.FREQUENCY(20 mm; 120 mm; 210 GPa; 7850 kg/m3)',
      `RIGID.BAR_FREQUENCY(${height} mm; 120 mm; 210 GPa; 7850 kg/m3)`,
    ),
  ).toBeCloseTo(1, 11);
});

test.each([
  ['down', 4, 0.3, 0.035],
  ['up', 3, 0.2, 0.02],
  ['down', 2, 0.4, 0.05],
] as const)(
  'with the y direction very stiff the floor in two directions is the closed form in one (%s milling)',
  (sense, teeth, radialRatio, zeta) => {
    // One direction: 1 + L axx Gx = 0, so depth = 2 pi / (z Kt axx Re G); Re G reaches -1/(4 k zeta (1 + zeta)) and 1/(4 k zeta (1 - zeta)).
    const arc = 2 * Math.asin(Math.sqrt(0.6));
    const [from, to] = sense === 'down' ? [Math.PI - arc, Math.PI] : [0, arc];
    const [axx] = directionFactors(from, to, radialRatio);
    const stiffness = 10e6;
    const real = axx < 0 ? 1 + zeta : 1 - zeta;
    const closed = (2 * Math.PI * 4 * stiffness * zeta * real) / (teeth * 600e6 * Math.abs(axx));
    const modes = `600 MPa; ${radialRatio}; 600 Hz; ${zeta}; 10 N/um; 600 Hz; ${zeta}; 1000000000 N/um`;
    const floor = numberIn(`=CHATTER.MILL_FLOOR(20 mm; ${teeth}; 12 mm; "${sense}"; ${modes})`, 'm');
    expect(floor / closed).toBeCloseTo(1, 5);
    if (axx >= 0) return;
    // The same number as the turning limit with the mean direction factor of the teeth in cut.
    const factor = (teeth * Math.abs(axx)) / (4 * Math.PI);
    expect(numberIn(`=CHATTER.TURN_LIMIT(10 N/um; ${zeta}; 600 MPa; ${factor})`, 'm') / closed).toBeCloseTo(
      1,
      12,
    );
  },
);

const MODES = [
  '600 MPa; 0.3; 600 Hz; 0.035; 10 N/um; 660 Hz; 0.035; 12 N/um',
  '1800 MPa; 0.25; 900 Hz; 0.03; 20 N/um; 700 Hz; 0.045; 15 N/um',
] as const;

test.each([
  [4, 9500, 0],
  [4, 4000, 0],
  [4, 7000, 1],
  [6, 5200, 0],
] as const)(
  'with an even number of teeth the full and the zero-order limit meet at a full slot within 2 %: %i teeth, %i 1/min',
  (teeth, speed, which) => {
    const cut = `20 mm; ${teeth}; 20 mm; "down"; ${speed} 1/min; ${MODES[which]}`;
    expect(
      Math.abs(ratio(`CHATTER.MILL_LIMIT_FULL(${cut}; 120)`, `CHATTER.MILL_LIMIT(${cut})`) - 1),
    ).toBeLessThan(0.02);
  },
);

test('with 3 teeth the factors of a slot swing: the full limit is that of another program, the mean is 9.5 % too high', () => {
  const cut = `20 mm; 3; 20 mm; "down"; 7000 1/min; ${MODES[1]}`;
  // Semi-discretisation written for this check in Python (NumPy 2.4, 120 steps): 1.5423 mm; 60 steps give 1.5483.
  expect(Math.abs(numberIn(`=CHATTER.MILL_LIMIT_FULL(${cut}; 120)`, 'mm') / 1.5423 - 1)).toBeLessThan(0.003);
  expect(numberIn(`=CHATTER.MILL_LIMIT(${cut})`, 'mm') / 1.5423).toBeCloseTo(1.095, 2);
});

test('two modes in one direction: a second one that is very stiff changes nothing, equal halves act as one', () => {
  const limit = (x: string): number =>
    numberIn(
      `=CHATTER.MILL_LIMIT(20 mm; 4; 20 mm; "down"; 9500 1/min; 600 MPa; 0.3; ${x}; 660 Hz; 0.035; 12 N/um)`,
      'mm',
    );
  const one = limit('600 Hz; 0.035; 10 N/um');
  expect(limit('{600;1100} Hz; {0.035;0.02}; {10;100000000} N/um')).toBeCloseTo(one, 4);
  expect(limit('{600;600} Hz; {0.035;0.035}; {20;20} N/um')).toBeCloseTo(one, 9);
});

test('a journal is a circle milled outside: both functions see the same arc', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 200, max: 900 }),
      fc.integer({ min: 30, max: 120 }),
      fc.integer({ min: 1, max: 12 }),
      (cutter, journal, stock) => {
        const circles = `${cutter} mm; ${journal + stock} mm; ${journal} mm`;
        expect(
          ratio(
            `CRANK.ENGAGEMENT(${circles}; "external")`,
            `MILL.ENGAGEMENT_ANGLE(${cutter} mm; MILL.CIRCLE_ENGAGEMENT(${circles}; "outside"))`,
          ),
        ).toBeCloseTo(1, 9);
      },
    ),
    SEED,
  );
});

test('a circle of endless radius is a straight cut: equivalent engagement and feed tend to those of the edge', () => {
  const size = 1e7;
  for (const [side, start] of [
    ['inside', size - 6],
    ['outside', size + 6],
  ] as const) {
    expect(numberIn(`=MILL.CIRCLE_ENGAGEMENT(20 mm; ${start} mm; ${size} mm; "${side}")`, 'mm')).toBeCloseTo(
      3,
      4,
    );
    expect(numberIn(`=MILL.CIRCLE_FEED(20 mm; 500 mm/min; ${size} mm; "${side}")`, 'mm/min')).toBeCloseTo(
      500,
      1,
    );
  }
});

test('mean and peak: the torque over a turn is power over speed, the mean chip times the arc is the feed times the width', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.05, max: 1, noNaN: true }),
      fc.double({ min: 0.02, max: 0.3, noNaN: true }),
      (share, feed) => {
        const cut = `20 mm; ${feed} mm; ${20 * share} mm`;
        // Arc length times mean chip is the area that one tooth takes away.
        expect(
          ratio(
            `MILL.CHIP_MEAN(${cut}) * MILL.ENGAGEMENT_ANGLE(20 mm; ${20 * share} mm) / 1 rad * 10 mm`,
            `${feed} mm * ${20 * share} mm`,
          ),
        ).toBeCloseTo(1, 9);
      },
    ),
    { ...SEED, numRuns: 15 },
  );
  const cut = '16 mm; 3; 35 deg; 0.08 mm; 12 mm; 5 mm; 1700 MPa; 0';
  // With mc = 0 the specific force is constant: mean torque = kc ap ae vf / (2 pi n) = kc ap ae z fz / (2 pi).
  expect(
    ratio(
      `MILL.TORQUE_PEAK(${cut}) / MILL.TORQUE_RIPPLE(${cut})`,
      '1700 MPa * 12 mm * 5 mm * 3 * 0.08 mm / (2 * PI())',
    ),
  ).toBeCloseTo(1, 8);
});

test('the economic life is where the cost of a part is least, and with a free edge where output is greatest', () => {
  for (const edges of ['6 money', '0 money']) {
    const life = numberIn(`=COST.ECONOMIC_LIFE(0.25; 1.5 min; ${edges}; 80 money/h)`, 'min');
    const cost = (factor: number): number => {
      const tool = life * factor;
      // Taylor with n = 0.25: cutting time goes as life^n.
      const cut = 3 * factor ** 0.25;
      return numberIn(`=COST.PART(80 money/h; ${cut} min; 0 min; 1.5 min; ${tool} min; ${edges})`, 'money');
    };
    for (const factor of [0.5, 0.9, 0.99, 1.01, 1.1, 2]) expect(cost(factor)).toBeGreaterThan(cost(1));
  }
});

test('at the break-even count both ways cost the same', () => {
  const parts = numberIn('=COST.BREAK_EVEN(1000 money; 5 money; 4000 money; 3.5 money)');
  expect(1000 + 5 * parts).toBeCloseTo(4000 + 3.5 * parts, 9);
});

test('torque times speed is power, over the whole curve of a spindle', () => {
  const curve = '{500;1500;6000;12000} 1/min; {5;15;15;10} kW';
  for (const speed of [500, 900, 1500, 4000, 9000, 12_000])
    expect(
      ratio(
        `MACHINE.TORQUE_AT(${speed} 1/min; ${curve}) * ${speed} 1/min * 2 * PI()`,
        `MACHINE.POWER_AT(${speed} 1/min; ${curve})`,
      ),
    ).toBeCloseTo(1, 12);
});

test('a Weibull shape of 1 is the exponential law; at 1/e the reliable life is the scale', () => {
  expect(numberIn('=LIFE.AT_RELIABILITY(1; 40 min; 0.9)', 'min')).toBeCloseTo(-40 * Math.log(0.9), 10);
  expect(numberIn(`=LIFE.AT_RELIABILITY(2.7; 40 min; ${Math.exp(-1)})`, 'min')).toBeCloseTo(40, 10);
});

test('the extended law without feed and depth is the plain one', () => {
  // C_T = 1 min (C / 1 m/min)^(1/n).
  const constant = 150 ** 4;
  expect(
    ratio(
      `LIFE.EXTENDED(180 m/min; 0.2 mm; 2 mm; ${constant} min; 4; 0; 0)`,
      'LIFE.TAYLOR(180 m/min; 150 m/min; 0.25)',
    ),
  ).toBeCloseTo(1, 10);
});

test('facing without a limit of the spindle is the area over feed times speed; one hole drilled in one peck is fed and withdrawn once', () => {
  expect(
    ratio(
      'TURN.FACING_TIME(200 m/min; 0.25 mm; 200 mm; 20 mm; 1000000 1/min)',
      'PI() * ((200 mm)^2 - (20 mm)^2) / (4 * 0.25 mm * 200 m/min)',
    ),
  ).toBeCloseTo(1, 9);
  expect(
    ratio(
      'DRILL.PECK_TIME(300 mm/min; 10 m/min; 40 mm; 40 mm; 2 mm)',
      '42 mm / 300 mm/min + 42 mm / 10 m/min',
    ),
  ).toBeCloseTo(1, 12);
  expect(ratio('DRILL.TORQUE(12 mm; 0.2 mm; 2000 MPa; 0 mm)', 'DRILL.TORQUE(12 mm; 0.2 mm; 2000 MPa)')).toBe(
    1,
  );
});

test('arcs and parabolas meet for fine feeds: the peak is 18 sqrt(3) / 8 times the mean roughness', () => {
  let before = 1;
  for (const feed of [0.4, 0.2, 0.1, 0.05]) {
    const off = Math.abs(
      ratio(`TURN.PEAK_HEIGHT(0.8 mm; ${feed} mm)`, `TURN.MEAN_ROUGHNESS(0.8 mm; ${feed} mm)`) /
        ((18 * Math.sqrt(3)) / 8) -
        1,
    );
    expect(off).toBeLessThan(before / 3.5);
    before = off;
  }
});

test('a round insert at half its size has the full cutter, and the chip law 1 mm thick gives kc1.1', () => {
  expect(numberIn('=MILL.ROUND_DIAMETER(63 mm; 12 mm; 6 mm)', 'mm')).toBeCloseTo(63, 12);
  expect(numberIn('=MILL.BALL_DIAMETER(10 mm; 5 mm)', 'mm')).toBeCloseTo(10, 9);
  expect(numberIn('=FORCE.SPECIFIC(2100 MPa; 0.26; 1 mm)', 'MPa')).toBeCloseTo(2100, 9);
  expect(numberIn('=CUT.ROUND_ANGLE(12 mm; 6 mm; "largest")', 'deg')).toBeCloseTo(90, 9);
});

test('capability with endless parts is the index itself', () => {
  const sample = '25.008 mm; 0.002 mm; 25 mm; 25.021 mm';
  expect(ratio(`HOLE.CAPABILITY_LOW(${sample}; 1000000000)`, `HOLE.CAPABILITY(${sample})`)).toBeCloseTo(1, 4);
});

test('a forming hole and a cut hole of no height are the major diameter', () => {
  for (const kind of ['CUT', 'FORM'])
    expect(numberIn(`=THREAD.${kind}_HOLE(10 mm; 1.5 mm; 0.000001 %)`, 'mm')).toBeCloseTo(10, 6);
  expect(calculated('=THREAD.CUT_HOLE(10 mm; 1.5 mm; 0 %)').value).toMatchObject({ failure: '#NUM!' });
});
