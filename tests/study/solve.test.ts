/** Solve: functions with none, one and many answers; touching, jumps, gaps, whole numbers. */

import { expect, test } from 'vitest';
import { at, notebookOf } from '../engine/notebook.ts';
import { answerTo } from './asking.ts';
import type { Cells } from '../engine/notebook.ts';

const solved = (cells: Cells, wanted: string, low: string, high: string) =>
  answerTo(notebookOf([{ title: 'Sheet', cells }]), {
    type: 'solve',
    result: at('B1'),
    wanted,
    given: { cell: at('A1'), low, high },
  });

const roots = (answer: ReturnType<typeof solved>): number[] => answer.answers.map(({ given }) => given.value);

test('one answer: the cubic of Wallis', () => {
  // x^3 - 2x - 5 = 0, J. Wallis 1685, root 2.0945514815423265 (OEIS A007493).
  const answer = solved({ A1: '2', B1: '=A1^3-2*A1-5' }, '0', '0', '10');
  expect(answer.outcome).toBe('reached');
  expect(roots(answer)[0]).toBeCloseTo(2.0945514815423265, 12);
  expect(answer.answers[0]?.given.content).toBe('2.09455148154');
});

test('one answer: the fixed point of the cosine', () => {
  // Dottie number 0.7390851332151607 (OEIS A003957).
  const answer = solved({ A1: '1', B1: '=COS(A1)-A1' }, '0', '0', '3');
  expect(answer.outcome).toBe('reached');
  expect(roots(answer)[0]).toBeCloseTo(0.7390851332151607, 13);
});

test('several answers: the sine reaches one half six times up to 20', () => {
  // sin x = 1/2 at pi/6 + 2 pi k and 5 pi/6 + 2 pi k.
  const answer = solved({ A1: '1', B1: '=SIN(A1)' }, '0.5', '0', '20');
  expect(answer.outcome).toBe('several');
  const expected = [0, 1, 2, 3].flatMap((k) =>
    [Math.PI / 6, (5 * Math.PI) / 6].map((x) => x + 2 * Math.PI * k),
  );
  const inside = expected.filter((x) => x < 20);
  expect(roots(answer)).toHaveLength(inside.length);
  roots(answer).forEach((root, index) => expect(root).toBeCloseTo(inside[index] ?? NaN, 11));
});

test('none: the nearest is told, also where it lies inside', () => {
  const answer = solved({ A1: '2', B1: '=A1^2+1' }, '0', '-3', '4');
  expect(answer).toMatchObject({ outcome: 'notReached', answers: [] });
  expect(answer.nearest?.given.value).toBeCloseTo(0, 7);
  expect(answer.nearest?.result).toBeCloseTo(1, 12);
});

test('none: the nearest may be a bound', () => {
  const answer = solved({ A1: '2', B1: '=EXP(A1)' }, '20', '0', '2');
  expect(answer.nearest?.given).toMatchObject({ value: 2, at: 'high', content: '2' });
});

test('a touching answer is found and said to touch', () => {
  const answer = solved({ A1: '0', B1: '=(A1-1)^2*(A1-4)' }, '0', '-1.23', '6');
  expect(answer.outcome).toBe('several');
  expect(roots(answer)[0]).toBeCloseTo(1, 5);
  expect(answer.answers[0]?.touching).toBe(true);
  expect(roots(answer)[1]).toBeCloseTo(4, 12);
  expect(answer.answers[1]?.touching).toBeUndefined();
});

test('two answers that lie closer than the grid are told apart', () => {
  // (x - pi)^2 = 1e-6 at pi - 0.001 and pi + 0.001.
  const answer = solved({ A1: '0', B1: '=(A1-3.14159265358979)^2-0.000001' }, '0', '0', '10');
  expect(roots(answer)).toHaveLength(2);
  expect(roots(answer)[0]).toBeCloseTo(Math.PI - 0.001, 9);
  expect(roots(answer)[1]).toBeCloseTo(Math.PI + 0.001, 9);
});

test('neither a jump nor a pole is an answer', () => {
  expect(solved({ A1: '0', B1: '=IF(A1<2;-1;1)' }, '0', '0', '5').outcome).toBe('notReached');
  expect(solved({ A1: '0', B1: '=1/(A1-2)' }, '0', '1', '3.3').outcome).toBe('notReached');
  expect(solved({ A1: '0', B1: '=TAN(A1)' }, '1', '1', '4')).toMatchObject({ outcome: 'reached' });
});

test('points without a number are passed over and counted, and an answer at their edge is found', () => {
  const answer = solved({ A1: '2', B1: '=SQRT(A1)-2' }, '0', '-5', '10');
  expect(roots(answer)[0]).toBeCloseTo(4, 12);
  expect(answer.failures).toBeGreaterThan(30);
  expect(answer.failureWords).toMatch(/./);
  const edge = solved({ A1: '2', B1: '=SQRT(A1-1)' }, '0', '0', '5');
  expect(roots(edge)[0]).toBeCloseTo(1, 9);
});

test('nowhere a number: not reached, and no nearest', () => {
  const answer = solved({ A1: '2', B1: '=SQRT(-1-A1^2)' }, '0', '0', '1');
  expect(answer.outcome).toBe('notReached');
  expect(answer.nearest).toBeUndefined();
  expect(answer.failures).toBe(answer.points);
});

test('quantities: the cutting speed for a spindle speed, in the units of the cells', () => {
  // n = vc/(pi D): 1500 1/min at 50 mm is 235.619 m/min, by hand.
  const cells: Cells = {
    A1: '200 m/min',
    A2: '50 mm',
    B1: { content: '=CUT.SPINDLE_SPEED(A2;A1)', unit: '1/min' },
  };
  const answer = solved(cells, '1500', '100', '6 m/s');
  expect(answer.outcome).toBe('reached');
  expect((roots(answer)[0] ?? 0) * 60).toBeCloseTo(235.6194490192345, 9);
  expect(answer.answers[0]?.given).toMatchObject({ unit: 'm/min', content: '235.619449019 m/min' });
  expect(answer.result).toMatchObject({ kind: 'rotational speed', unit: '1/min' });
});

test('teeth are whole: reached or not, and the nearest number of them', () => {
  const cells: Cells = {
    A1: '4',
    A2: '0.1 mm',
    A3: '1000 1/min',
    B1: { content: '=CUT.FEED_RATE(A1;A2;A3)', unit: 'mm/min' },
  };
  const answer = solved(cells, '700 mm/min', '1', '12.5');
  expect(answer).toMatchObject({ outcome: 'reached', points: 12 });
  expect(answer.answers[0]?.given.content).toBe('7');
  const between = solved(cells, '680', '1', '12');
  expect(between).toMatchObject({ outcome: 'notReached', nearest: { given: { value: 7 } } });
});

test('the list of values from another power is computed cell by cell: A1 decides the dimension', () => {
  const answer = solved({ A1: '1', A2: '3 mm', B1: '=A2^A1' }, '4 mm', '1', '3');
  expect(answer.outcome).toBe('notReached');
});

test('what can not be asked is refused in words', () => {
  const cells: Cells = { A1: '1', B1: '=A1*2', C1: 'text' };
  const ask = (part: object) => () =>
    answerTo(notebookOf([{ title: 'Sheet', cells }]), {
      type: 'solve',
      result: at('B1'),
      wanted: '3',
      given: { cell: at('A1'), low: '0', high: '5' },
      ...part,
    });
  expect(ask({ given: { cell: at('B1'), low: '0', high: '1' } })).toThrow(/computed: only given numbers/);
  expect(ask({ result: at('C1') })).toThrow(/no number/);
  expect(ask({ wanted: '3 mm' })).toThrow(/wanted value/);
  expect(ask({ given: { cell: at('A1'), low: '2', high: '2' } })).toThrow(/same/);
  expect(ask({ given: { cell: at('A1'), low: 'many', high: '2' } })).toThrow(/no quantity/);
  expect(ask({ given: { cell: at('A1', 'w9'), low: '0', high: '2' } })).toThrow(/worksheet/);
});
