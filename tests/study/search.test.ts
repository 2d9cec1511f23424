/** Search: constrained problems whose optimum is published or worked by hand. */

import { expect, test } from 'vitest';
import type { Constraint, StudyQuestion } from '../../src/calculation/index.ts';
import { at, notebookOf } from '../engine/notebook.ts';
import type { Cells } from '../engine/notebook.ts';
import { answerTo } from './asking.ts';

type Question = Extract<StudyQuestion, { type: 'search' }>;

const searched = (cells: Cells, question: Omit<Question, 'type' | 'result'>) =>
  answerTo(notebookOf([{ title: 'Sheet', cells }]), { type: 'search', result: at('B1'), ...question });

const given = (address: string, low: string, high: string) => ({ cell: at(address), low, high });
const atMost = (address: string, limit: string): Constraint => ({ cell: at(address), atMost: limit });
const atLeast = (address: string, limit: string): Constraint => ({ cell: at(address), atLeast: limit });
const values = ({ givens }: ReturnType<typeof searched>): number[] => givens.map(({ value }) => value);

/**
 * Published problems: J. J. Liang et al., Problem definitions and evaluation criteria for the CEC 2006 special session
 * on constrained real-parameter optimization, 2006 (optima from memory, recomputed where the text says so).
 */
test('CEC 2006 problem g04 (Himmelblau 1972) with its first variable at the published optimum', () => {
  // f* = -30665.53867 at (78, 33, 29.995256, 45, 36.775813); five variables, of which x1 stays at its bound.
  const answer = searched(
    {
      A1: '78',
      A2: '40',
      A3: '35',
      A4: '35',
      A5: '35',
      B1: '=5.3578547*A3^2+0.8356891*A1*A5+37.293239*A1-40792.141',
      B2: '=85.334407+0.0056858*A2*A5+0.0006262*A1*A4-0.0022053*A3*A5',
      B3: '=80.51249+0.0071317*A2*A5+0.0029955*A1*A2+0.0021813*A3^2',
      B4: '=9.300961+0.0047026*A3*A5+0.0012547*A1*A3+0.0019085*A3*A4',
    },
    {
      aim: 'smallest',
      givens: [
        given('A2', '33', '45'),
        given('A3', '27', '45'),
        given('A4', '27', '45'),
        given('A5', '27', '45'),
      ],
      constraints: [
        { cell: at('B2'), atLeast: '0', atMost: '92' },
        { cell: at('B3'), atLeast: '90', atMost: '110' },
        { cell: at('B4'), atLeast: '20', atMost: '25' },
      ],
    },
  );
  expect(answer.outcome).toBe('found');
  expect(answer.result.value).toBeCloseTo(-30665.53867, 3);
  [33, 29.995256, 45, 36.775813].forEach((expected, k) => expect(values(answer)[k]).toBeCloseTo(expected, 4));
  expect(answer.givens.map((each) => each.at)).toEqual(['low', undefined, 'high', undefined]);
  const binding = answer.constraints.filter((each) => each.binding).map(({ cell, side }) => [cell.row, side]);
  expect(binding).toEqual([
    [1, 'atMost'],
    [3, 'atLeast'],
  ]);
});

test('CEC 2006 problem g06: the optimum in the corner of two circles', () => {
  // f* = -6961.81387558 at (14.095, 0.8429607892); the feasible region is 0.0066 % of the box.
  const answer = searched(
    {
      A1: '50',
      A2: '50',
      B1: '=(A1-10)^3+(A2-20)^3',
      B2: '=(A1-5)^2+(A2-5)^2-100',
      B3: '=(A1-6)^2+(A2-5)^2-82.81',
    },
    {
      aim: 'smallest',
      givens: [given('A1', '13', '100'), given('A2', '0', '100')],
      constraints: [atLeast('B2', '0'), atMost('B3', '0')],
    },
  );
  expect(answer.outcome).toBe('found');
  expect(answer.result.value).toBeCloseTo(-6961.81387558, 3);
  expect(values(answer)[0]).toBeCloseTo(14.095, 6);
  expect(values(answer)[1]).toBeCloseTo(0.8429607892, 6);
  expect(answer.constraints.every(({ binding }) => binding)).toBe(true);
});

test('CEC 2006 problem g08: many hills, the highest inside', () => {
  // f* = 0.0958250414180359 at (1.22797135, 4.24537337).
  const answer = searched(
    {
      A1: '5',
      A2: '5',
      B1: '=SIN(2*PI()*A1)^3*SIN(2*PI()*A2)/(A1^3*(A1+A2))',
      B2: '=A1^2-A2+1',
      B3: '=1-A1+(A2-4)^2',
    },
    {
      aim: 'largest',
      givens: [given('A1', '0', '10'), given('A2', '0', '10')],
      constraints: [atMost('B2', '0'), atMost('B3', '0')],
    },
  );
  expect(answer.result.value).toBeCloseTo(0.0958250414180359, 9);
  expect(values(answer)[0]).toBeCloseTo(1.22797135, 4);
  expect(values(answer)[1]).toBeCloseTo(4.24537337, 4);
  expect(answer.constraints.some(({ binding }) => binding)).toBe(false);
});

test('Rosenbrock’s valley: free, and within a disc', () => {
  const cells: Cells = { A1: '-1.2', A2: '1', B1: '=100*(A2-A1^2)^2+(1-A1)^2', B2: '=A1^2+A2^2' };
  const givens = [given('A1', '-2', '2'), given('A2', '-1', '3')];
  // H. H. Rosenbrock, Computer Journal 3 (1960) 175: least value 0 at (1, 1).
  const free = searched(cells, { aim: 'smallest', givens, constraints: [] });
  expect(free.result.value).toBeLessThan(1e-9);
  values(free).forEach((value) => expect(value).toBeCloseTo(1, 4));
  // In the unit disc: on the circle, where the derivative along it vanishes; by bisection on the angle 0.66581...,
  // the point (0.7864151542, 0.6176983125) and the value 0.0456748087 (worked out apart from this program).
  const disc = searched(cells, { aim: 'smallest', givens, constraints: [atMost('B2', '1')] });
  expect(disc.result.value).toBeCloseTo(0.0456748087, 7);
  expect(values(disc)[0]).toBeCloseTo(0.7864151542, 5);
  expect(values(disc)[1]).toBeCloseTo(0.6176983125, 5);
  expect(disc.constraints[0]).toMatchObject({ binding: true, violation: 0 });
});

test('metal cutting by hand: most removal within power and chip thickness', () => {
  // Slot of 20 mm, 4 teeth, 2000 1/min, kc = 1700 MPa (h/mm)^-0.25, h = fz. Power over removal falls with the feed, so
  // the chip limit 0.12 mm binds: kc = 1700/0.12^0.25 = 2888.37 MPa; 6 kW then allow Q = 6000/2888.37e6 m3/s, and the
  // depth is Q over 20 mm times 4 x 0.12 mm x 33.333/s.
  const kc = 1700e6 * 0.12 ** -0.25;
  const Q = 6000 / kc;
  const ap = Q / (0.02 * 4 * 0.00012 * (2000 / 60));
  const answer = searched(
    {
      A1: '0.05 mm',
      A2: '2 mm',
      A3: '2000 1/min',
      B1: { content: '=MILL.REMOVAL_RATE(A2;20 mm;CUT.FEED_RATE(4;A1;A3))', unit: 'cm3/min' },
      B2: { content: '=CUT.POWER(B1;FORCE.SPECIFIC(1700 MPa;0.25;A1))', unit: 'kW' },
      B3: '=A1*1',
    },
    {
      aim: 'largest',
      givens: [given('A1', '0.02', '0.3'), given('A2', '0.5 mm', '30 mm')],
      constraints: [atMost('B2', '6'), atMost('B3', '0.12 mm')],
    },
  );
  expect(answer.outcome).toBe('found');
  expect((answer.result.value ?? 0) / Q).toBeCloseTo(1, 7);
  expect(values(answer)[0]).toBeCloseTo(0.00012, 10);
  expect((values(answer)[1] ?? 0) / ap).toBeCloseTo(1, 6);
  expect(answer.constraints.map(({ binding }) => binding)).toEqual([true, true]);
  expect(answer.givens[0]).toMatchObject({ content: '0.12 mm', unit: 'mm' });
});

test('whole numbers stay whole: teeth of a cutter', () => {
  // 0.1 mm a tooth at 1000 1/min: 7 teeth give 700 mm/min, 8 would pass 780. Fewer than 2.5 teeth are not to be had.
  const answer = searched(
    {
      A1: '4',
      A2: '0.05 mm',
      B1: { content: '=CUT.FEED_RATE(A1;A2;1000 1/min)', unit: 'mm/min' },
      B2: '=B1*1',
    },
    {
      aim: 'largest',
      givens: [given('A1', '2.5', '12'), given('A2', '0.01 mm', '0.1 mm')],
      constraints: [atMost('B2', '780 mm/min'), atLeast('A2', '0.1 mm')],
    },
  );
  expect(answer.outcome).toBe('found');
  expect(values(answer)).toEqual([7, expect.closeTo(0.0001, 10)]);
});

test('no point keeps the limits: the least passing is told', () => {
  const answer = searched(
    { A1: '0.5', A2: '0.5', B1: '=A1-A2', B2: '=A1+A2' },
    {
      aim: 'largest',
      givens: [given('A1', '0', '1'), given('A2', '0', '1')],
      constraints: [atLeast('B2', '5')],
    },
  );
  expect(answer.outcome).toBe('noPoint');
  values(answer).forEach((value) => expect(value).toBeCloseTo(1, 8));
  expect(answer.constraints[0]?.violation).toBeCloseTo(3, 7);
});

test('no number anywhere is said', () => {
  const answer = searched(
    { A1: '0.5', B1: '=SQRT(-1-A1)' },
    { aim: 'largest', givens: [given('A1', '0', '1')], constraints: [] },
  );
  expect(answer).toMatchObject({ outcome: 'noNumber', givens: [], result: { value: null } });
});

test('holes without numbers do not stop the search', () => {
  // SQRT(1 - x^2 - y^2) + x is largest at x = y0 = 1/sqrt(2), y = 0: sqrt(2), by hand.
  const answer = searched(
    { A1: '0', A2: '0', B1: '=SQRT(1-A1^2-A2^2)+A1' },
    { aim: 'largest', givens: [given('A1', '-3', '3'), given('A2', '-3', '3')], constraints: [] },
  );
  expect(answer.result.value).toBeCloseTo(Math.SQRT2, 9);
});
