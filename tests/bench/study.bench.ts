/**
 * What-if by columns beside the engine sample by sample, and beside the same arithmetic written by hand in a loop:
 * ratios measured in one run, processor time, the best of several turns, after a warm-up.
 */

import { expect, test } from 'vitest';
import { functionTable } from '../../src/catalogue.ts';
import { contentOf } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import { deviationProducts, deviationSquares, mean, student, sum } from '../../src/numeric/index.ts';
import { Plan, StudyBook } from '../../src/study/index.ts';
import { at, notebookOf, typed } from '../engine/notebook.ts';
import { chance } from '../functions/sampled.ts';
import { finished } from '../study/asking.ts';

const SAMPLES = 10_000;
/** The engine is asked for so many samples and the cost counted up: a whole run would take half a minute. */
const ENGINE_SAMPLES = 250;
const TURNS = 7;

const GIVENS = {
  B1: '80 mm',
  B2: '6',
  B3: '180 m/min',
  B4: '0.15 mm',
  B5: '50 mm',
  B6: '3 mm',
  B7: '1700 MPa',
  B8: '0.25',
  B9: '400 mm',
  B10: '90 money/h',
  B11: '60 money',
  B12: '0.85',
};
const TRIALS = {
  D1: '150 m/min',
  D2: '180 m/min',
  D3: '220 m/min',
  D4: '260 m/min',
  E1: '44 min',
  E2: '24 min',
  E3: '11.5 min',
  E4: '6.2 min',
};

/** 60 formula cells: seven domain functions with equations, one that computes by iteration, and 52 of arithmetic. */
const FORMULAS = [
  'CUT.SPINDLE_SPEED(B1;B3)',
  'CUT.FEED_RATE(B2;B4;C1)',
  'MILL.REMOVAL_RATE(B6;B5;C2)',
  'MILL.CHIP_MAX(B1;B4;B5)',
  'FORCE.SPECIFIC(B7;B8;C4)',
  'CUT.POWER(C3;C5)',
  'LIFE.TAYLOR_LOW(D1:D4;E1:E4;B3)',
  'COST.PART(B10;C9;40 s;90 s;C7;B11)',
  '(B9+B1)/C2',
  'C6/B12',
  'C6/(2*PI()*C1)',
  'B5/B1',
  'SQRT(B5*(B1-B5))',
  'C13/B1',
  '1-2*C12',
  'B4*C13*2/B1',
  'C16/C4',
  'B6*C16',
  'C18*C5',
  'C19*B1/2',
  'C20*C1*2*PI()',
  'C21/C6',
  'C3/B2',
  'C9*C3',
  'C7/C9',
  'B11/C25',
  'C26+B10*C9',
  'C27/C8',
  'IF(C6>10 kW;C6/10 kW;1)',
  'MIN(B4;0.2 mm)',
  'MAX(B6;2 mm)',
  'C30*C31',
  'C32*C5',
  'C33/B12',
  'B9/B1',
  'C35^2',
  'C36*C35',
  '64*C19*B9^3/(3*PI()*210 GPa*B1^4)',
  'C38/B4',
  'ABS(C38-10 um)',
  'C40/C38',
  'C9+40 s',
  '3600 s/C42',
  'C43*8',
  'C44*C9',
  'C45/C7',
  'C46*B11',
  'C47/C44',
  'C48+C8',
  'C49*1.19',
  'C50-C8',
  'C51/C50',
  'SQRT(C52*C52+C41*C41)',
  'C53*100 %',
  'C2*60 s',
  'C55/B9',
  'C56+C54+C29',
  'C57/(1+C22)',
  'C58*C28',
  'C59+C52-C41',
];

/** The same by hand: values of all 60 cells of one sample into `out`, one column a cell. */
function byHand(
  g: readonly Float64Array[],
  i: number,
  out: readonly Float64Array[],
  trials: Trials | undefined,
): void {
  const [Dc, z, vc, fz, ae, ap, kc11, mc, L, rate, set, eta] = g.map((column) => column[i]) as unknown as Row;
  const n = vc / (Math.PI * Dc);
  const vf = z * fz * n;
  const Q = ap * ae * vf;
  const e = (Dc - ae) / 2;
  const side = Dc - 2 * Math.abs(e) - ae <= 1e-9 * Dc;
  const q = side ? ae / Dc : (Dc - 2 * Math.abs(e) + ae) / (2 * Dc);
  const sinMax = 2 * Math.abs(e) <= ae ? 1 : 2 * Math.sqrt(q * (1 - q));
  const h = fz * Math.sin(Math.PI / 2) * sinMax;
  const gamma = (6 * Math.PI) / 180;
  const kRake = 1 - (0.015 * (gamma - gamma)) / (Math.PI / 180);
  const kc = kc11 * (h / 0.001) ** -mc * kRake;
  const Pc = Q * kc;
  const T = trials ? taylorLow(trials.speeds, trials.lives, vc) : 60 * (7 / vc) ** (1 / 0.25);
  const t = (L + Dc) / vf;
  const changes = t / T;
  const C = rate * (40 + t + 90 * changes) + set * changes;
  const c13 = Math.sqrt(ae * (Dc - ae));
  const c12 = ae / Dc;
  const c16 = (fz * c13 * 2) / Dc;
  const c18 = ap * c16;
  const c19 = c18 * kc;
  const c20 = (c19 * Dc) / 2;
  const c21 = c20 * n * 2 * Math.PI;
  const c22 = c21 / Pc;
  const c25 = T / t;
  const c26 = set / c25;
  const c27 = c26 + rate * t;
  const c28 = c27 / C;
  const c29 = Pc > 10_000 ? Pc / 10_000 : 1;
  const c30 = Math.min(fz, 0.0002);
  const c31 = Math.max(ap, 0.002);
  const c32 = c30 * c31;
  const c33 = c32 * kc;
  const c35 = L / Dc;
  const c36 = c35 ** 2;
  const c38 = (64 * c19 * L ** 3) / (3 * Math.PI * 210e9 * Dc ** 4);
  const c40 = Math.abs(c38 - 10e-6);
  const c41 = c40 / c38;
  const c42 = t + 40;
  const c43 = 3600 / c42;
  const c44 = c43 * 8;
  const c45 = c44 * t;
  const c46 = c45 / T;
  const c47 = c46 * set;
  const c48 = c47 / c44;
  const c49 = c48 + C;
  const c50 = c49 * 1.19;
  const c51 = c50 - C;
  const c52 = c51 / c50;
  const c53 = Math.sqrt(c52 * c52 + c41 * c41);
  const c54 = c53 * 1;
  const c55 = vf * 60;
  const c56 = c55 / L;
  const c57 = c56 + c54 + c29;
  const c58 = c57 / (1 + c22);
  const c59 = c58 * c28;
  const all = [
    [n, vf, Q, h, kc, Pc, T, C, t, Pc / eta, Pc / (2 * Math.PI * n), c12, c13, c13 / Dc, 1 - 2 * c12],
    [c16, c16 / h, c18, c19, c20, c21, c22, Q / z, t * Q, c25, c26, c27, c28, c29, c30],
    [c31, c32, c33, c33 / eta, c35, c36, c36 * c35, c38, c38 / fz, c40, c41, c42, c43, c44, c45],
    [c46, c47, c48, c49, c50, c51, c52, c53, c54, c55, c56, c57, c58, c59, c59 + c52 - c41],
  ];
  let cell = 0;
  for (const row of all) for (const value of row) (out[cell++] as Float64Array)[i] = value;
}

type Row = readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];
interface Trials {
  readonly speeds: readonly number[];
  readonly lives: readonly number[];
}

function taylorLow(speeds: readonly number[], lives: readonly number[], vc: number): number {
  const x = speeds.map(Math.log);
  const y = lives.map(Math.log);
  const [xMean, yMean, squares] = [mean(x), mean(y), deviationSquares(x)];
  const slope = deviationProducts(x, y) / squares;
  const away = Math.log(vc) - xMean;
  const rest = sum(x.map((each, i) => ((y[i] ?? 0) - yMean - slope * (each - xMean)) ** 2));
  const spread = Math.sqrt(rest / (x.length - 2));
  const room =
    student(x.length - 2).quantile(0.95) * spread * Math.sqrt(1 + 1 / x.length + away ** 2 / squares);
  return Math.exp(yMean + slope * away - room);
}

/** Milliseconds of processor time. */
function cost(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const ITERATIVE = 'LIFE.TAYLOR_LOW(D1:D4;E1:E4;B3)';

function notebookWith(life: string): Notebook {
  const formulas = FORMULAS.map((text, index) => [`C${index + 1}`, `=${text === ITERATIVE ? life : text}`]);
  return notebookOf([{ title: 'Sheet', cells: { ...GIVENS, ...TRIALS, ...Object.fromEntries(formulas) } }]);
}

const siOf = (content: string): number => {
  const read = contentOf({ content });
  return 'si' in read ? read.si : NaN;
};

test.each([
  { what: 'one of them iterative', life: ITERATIVE },
  { what: 'none iterative', life: 'LIFE.TAYLOR(B3;7 m/s;0.25)' },
])('10 000 samples of a notebook with 60 formula cells, 8 domain functions, $what', ({ what, life }) => {
  const notebook = notebookWith(life);
  const next = chance(5);
  const contents = Object.values(GIVENS);
  const columns = contents.map((content, index) =>
    Float64Array.from({ length: SAMPLES }, () => siOf(content) * (index === 1 ? 1 : 0.95 + 0.1 * next())),
  );
  const functions = functionTable();
  const book = new StudyBook(notebook, functions);
  const plan = new Plan(
    book,
    Object.keys(GIVENS).map((address) => book.state(at(address))),
    FORMULAS.map((_, index) => book.state(at(`C${index + 1}`))),
  );
  expect(plan.isOneByOne).toBe(false);
  const engine = createEngine({ functions });
  engine.open(notebook);
  const sample = (i: number) =>
    Object.entries(GIVENS).map(([address, content], index) => {
      const unit = content.replace(/^[\d.]+ ?/, '');
      const shown = (Number.parseFloat(content) * (columns[index]?.[i] ?? NaN)) / siOf(content);
      return typed(address, unit === '' ? String(shown) : `${shown} ${unit}`);
    });
  const trials: Trials = {
    speeds: ['D1', 'D2', 'D3', 'D4'].map((address) => siOf(TRIALS[address as keyof typeof TRIALS])),
    lives: ['E1', 'E2', 'E3', 'E4'].map((address) => siOf(TRIALS[address as keyof typeof TRIALS])),
  };
  const out = FORMULAS.map(() => new Float64Array(SAMPLES));
  let found: readonly Float64Array[] = [];
  const best = { engine: Infinity, columns: Infinity, hand: Infinity };
  for (let turn = 0; turn < TURNS; turn++) {
    const costs = {
      columns: cost(() => {
        found = finished(plan.numbers(columns, SAMPLES));
      }),
      hand: cost(() => {
        for (let i = 0; i < SAMPLES; i++) byHand(columns, i, out, life === ITERATIVE ? trials : undefined);
      }),
      engine:
        cost(() => {
          for (let i = 0; i < ENGINE_SAMPLES; i++) engine.apply(sample(i));
        }) *
        (SAMPLES / ENGINE_SAMPLES),
    };
    if (turn === 0) continue;
    best.engine = Math.min(best.engine, costs.engine);
    best.columns = Math.min(best.columns, costs.columns);
    best.hand = Math.min(best.hand, costs.hand);
  }
  FORMULAS.forEach((text, cell) => {
    for (const i of [0, 1, 999, 9999]) {
      const [value = NaN, hand = NaN] = [found[cell]?.[i], out[cell]?.[i]];
      expect(
        Math.abs(value - hand) <= 1e-11 * Math.abs(hand) + 1e-300,
        `${text}: ${value}, by hand ${hand}`,
      ).toBe(true);
    }
  });
  const [faster, slower] = [best.engine / best.columns, best.columns / best.hand];
  console.log(
    `10 000 samples, 60 cells, ${what}: columns ${best.columns.toFixed(1)} ms, engine ${best.engine.toFixed(0)} ms, by hand ${best.hand.toFixed(1)} ms`,
  );
  console.log(`faster than the engine: ${faster.toFixed(1)} times (aim 20 or more)`);
  console.log(`slower than by hand: ${slower.toFixed(2)} times (aim 3 or less)`);
  expect(faster).toBeGreaterThan(0);
  expect(slower).toBeGreaterThan(0);
});
