/** Where intervals and lists of rows go: held against a list that is really spliced. */

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { movedInterval, movedList } from '../../src/document/movement.ts';
import type { Movement } from '../../src/document/movement.ts';

const RUNS = { seed: 20_260_309, numRuns: 5000 };

const numbered = Array.from({ length: 60 }, (_, index) => index);

/** The oracle: numbered lines in a list that is really spliced; new ones are -1. */
function spliced(movement: Movement): number[] {
  const lines = [...numbered];
  const { at, count } = movement;
  if (movement.type === 'insert') lines.splice(at, 0, ...Array.from({ length: count }, () => -1));
  if (movement.type === 'delete') lines.splice(at, count);
  if (movement.type === 'move') {
    const taken = lines.splice(at, count);
    lines.splice(movement.to > at ? movement.to - count : movement.to, 0, ...taken);
  }
  return lines;
}

const movements: fc.Arbitrary<Movement> = fc
  .tuple(
    fc.constantFrom('insert', 'delete', 'move' as const),
    fc.nat(30),
    fc.integer({ min: 1, max: 9 }),
    fc.nat(40),
  )
  .map(([type, at, count, place]): Movement => {
    if (type !== 'move') return { type, at, count };
    return { type, at, count, to: place >= at ? place + count : place };
  });

test('intervals go where a spliced list takes them; one that a move tears apart stays on the worksheet', () => {
  fc.assert(
    fc.property(movements, fc.nat(40), fc.nat(12), (movement, first, more) => {
      const last = first + more;
      const places = spliced(movement)
        .map((line, index) => (line >= first && line <= last ? index : -1))
        .filter((index) => index >= 0);
      const after = movedInterval({ first, last }, movement);
      const [start, stop] = [places[0], places.at(-1)];
      const ends = start === undefined || stop === undefined ? undefined : { first: start, last: stop };
      const together = ends && ends.last === ends.first + places.length - 1;
      if (movement.type !== 'move' || together) expect(after).toEqual(ends);
      else {
        expect(after?.first).toBeGreaterThanOrEqual(0);
        expect(after?.last).toBeGreaterThanOrEqual(after?.first ?? 0);
        expect(after?.last).toBeLessThan(numbered.length);
      }
    }),
    RUNS,
  );
});

test('a list goes where a spliced list takes it', () => {
  fc.assert(
    fc.property(movements, (movement) => {
      expect(movedList(numbered, movement).map((line) => line ?? -1)).toEqual(spliced(movement));
    }),
    RUNS,
  );
});

function inverse(movement: Movement): Movement {
  const { at, count } = movement;
  if (movement.type === 'insert') return { type: 'delete', at, count };
  if (movement.type === 'delete') return { type: 'insert', at, count };
  const forward = movement.to > at;
  return {
    type: 'move',
    count,
    at: forward ? movement.to - count : movement.to,
    to: forward ? at : at + count,
  };
}

test('an insert and a move, each with its inverse, give every interval and the list back', () => {
  fc.assert(
    fc.property(movements, fc.nat(40), fc.nat(12), (movement, first, more) => {
      fc.pre(movement.type !== 'delete');
      expect(movedList(movedList(numbered, movement), inverse(movement))).toEqual(numbered);
      const interval = { first, last: movement.type === 'move' ? first : first + more };
      const there = movedInterval(interval, movement);
      expect(there && movedInterval(there, inverse(movement))).toEqual(interval);
    }),
    RUNS,
  );
});
