/** What is bought against what flies: the stock as a block, the part at its foot, to scale by volume. */

import { rectangle, type Drawing, type Point, type Shape } from '../drawing.ts';
import { refuse, valueIfAny, valueOf, type Sketch } from '../sketch.ts';

export const STOCK_PART: Sketch = {
  key: 'stock-part',
  title: 'Stock against part (buy to fly)',
  purpose: 'How much of the bought metal leaves as chips.',
  parameters: [
    { key: 'm_b', symbol: 'm_b', words: 'mass bought', kind: 'mass' },
    { key: 'm_f', symbol: 'm_f', words: 'mass flying', kind: 'mass' },
    { key: 'rho', symbol: 'rho', words: 'density', kind: 'density', optional: true },
  ],
  draw(values, say) {
    const bought = valueOf(values, 'm_b');
    const flying = valueOf(values, 'm_f');
    const density = valueIfAny(values, 'rho');
    const mass = (value: number): string => say(value, 'mass');
    if (flying > bought)
      return refuse('m_f', `the part ${mass(flying)} is heavier than the stock ${mass(bought)}`);
    const side = (bought / (density ?? 8000)) ** (1 / 3);
    const share = flying / bought;
    const foot = side * share;
    // A cube in cabinet projection: depth at half length under 45 degrees.
    const away = (side / 2) * Math.SQRT1_2;
    const back = ([x, y]: Point): Point => [x + away, y + away];
    const edges = (low: number, high: number, fill: 'finished' | 'removed'): Shape[] => [
      { type: 'line', points: rectangle(0, low, side, high), stroke: 'outline', fill, closed: true },
      {
        type: 'line',
        points: [[side, low], [side, high], back([side, high]), back([side, low])],
        stroke: 'outline',
        fill,
        closed: true,
      },
    ];
    return {
      views: [
        {
          title: 'One block of the bought volume',
          note:
            density === undefined
              ? 'density not given: the shares are to scale, the block is not'
              : 'the block is a cube of the same volume',
          shapes: [
            ...edges(0, foot, 'finished'),
            ...edges(foot, side, 'removed'),
            {
              type: 'line',
              points: [[0, side], [side, side], back([side, side]), back([0, side])],
              stroke: 'outline',
              fill: 'removed',
              closed: true,
            },
            {
              type: 'dimension',
              from: [0, 0],
              to: [0, foot],
              side: 'left',
              level: 1,
              caption: { text: `flies ${mass(flying)}` },
            },
            {
              type: 'dimension',
              from: [0, foot],
              to: [0, side],
              side: 'left',
              caption: { text: `chips ${mass(bought - flying)}` },
            },
            ...(density === undefined
              ? []
              : [
                  {
                    type: 'dimension',
                    from: [0, 0],
                    to: [side, 0],
                    side: 'below',
                    caption: { text: say(side, 'length') },
                  } as const,
                ]),
            {
              type: 'label',
              at: [side / 2, (foot + side) / 2],
              caption: { text: `${say(1 - share, 'share')} to chips` },
            },
          ],
        },
      ],
      words: `${mass(bought)} are bought and ${mass(flying)} fly, one part in ${say(bought / flying, 'ratio')}: ${mass(bought - flying)}, ${say(1 - share, 'share')} of the stock, leave as chips.`,
    } satisfies Drawing;
  },
};
