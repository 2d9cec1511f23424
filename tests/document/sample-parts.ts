/** A notebook with a record in every list beside its worksheets (invented). */

import type { Notebook, Parts } from '../../src/document/index.ts';
import { sample } from './sample.ts';

const at = (row: number, column = 1) => ({ worksheet: 'w1', row, column });
const block = (row: number, rows: number) => ({
  worksheet: 'w1',
  block: { row, column: 1, rows, columns: 1 },
});

export const ALL_PARTS: Parts = {
  variants: [
    {
      id: 'v1',
      title: 'five teeth',
      note: 'as ordered',
      values: [
        { place: at(1), content: '5' },
        { place: at(2), content: '=B1*2' },
      ],
    },
    { id: 'v2', title: 'six teeth', values: [{ place: at(1), content: '6' }] },
  ],
  watched: [{ id: 'w1', place: at(3), best: 'largest' }],
  spreads: [
    { id: 's1', place: at(0), distribution: { type: 'normal', uncertainty: '0.1 mm', degrees: 9 } },
    { id: 's2', place: at(1), distribution: { type: 'sample', from: block(0, 3) } },
  ],
  studies: [
    {
      id: 's1',
      title: 'speed',
      study: { type: 'solve', result: at(3), wanted: '5 mm', given: at(0), low: '1 mm', high: '9 mm' },
    },
    {
      id: 's2',
      title: 'grid',
      study: {
        type: 'sweep',
        givens: [{ place: at(0), range: { type: 'linear', from: '1 mm', to: '2 mm', count: 5 } }],
        results: [at(3)],
      },
    },
  ],
  figures: [
    {
      id: 'f1',
      title: 'wear',
      content: {
        type: 'plot',
        x: block(0, 3),
        series: [{ mark: 'line', y: block(1, 3) }],
        levels: [{ place: at(4) }],
      },
    },
  ],
  recordings: [
    {
      id: 'r1',
      title: 'Log',
      columns: [{ name: 'force', unit: 'N', values: [1.5, null, -0.25] }],
      source: 'force plate',
    },
  ],
  photographs: [
    {
      id: 'p1',
      type: 'image/jpeg',
      data: 'AAEC',
      width: 3,
      height: 2,
      words: 'edge 1',
      at: '2026-03-09T08:00:00Z',
    },
  ],
  trials: [
    {
      id: 't1',
      title: 'Round against sharp',
      factors: [{ name: 'geometry', levels: ['sharp', 'round'] }],
      repeats: 1,
      seed: 7,
      runs: [
        { id: 'r1', levels: [1] },
        { id: 'r2', levels: [0] },
      ],
      measurands: [{ name: 'VB', unit: 'mm', limit: '0.3 mm' }],
      passes: [
        {
          id: 'p1',
          run: 'r1',
          edge: '1',
          cut: '3 min',
          values: [{ measurand: 'VB', content: '0.12 mm' }],
          by: 'ab',
          at: '2026-03-09T08:00:00Z',
          photograph: 'p1',
          corrections: [{ at: '2026-03-09T08:05:00Z', by: 'ab', what: 'VB', was: '0.21 mm' }],
        },
      ],
    },
  ],
  reviews: [{ id: 'r1', place: at(3), content: '=B1*B2', unit: 'mm', initials: 'cd', at: '2026-03-09' }],
};

/** Cells B1 to B5, and every list. */
export const withAllParts = (): Notebook => ({
  ...sample({ B1: '2 mm', B2: '4', B3: '7 mm', B4: '=B1*B2', B5: '0.3 mm', A1: 'feed' }),
  parts: ALL_PARTS,
});
