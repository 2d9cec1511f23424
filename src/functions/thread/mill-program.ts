/** THREAD.MILL_PROGRAM: program of a milled internal thread, one turn of a full-form cutter. */

import type { FunctionDefinition } from '../../definition/index.ts';
import { failure } from '../../expression/index.ts';
import { optional, parameter } from '../parameter.ts';
import { MAJOR, MILL_IN_HOLE, MILL_TOO_LARGE, PITCH, THREAD_LENGTH } from '../thread-profile.ts';
import { threadMillProgram } from '../thread-program.ts';

export default {
  name: 'THREAD.MILL_PROGRAM',
  family: 'THREAD',
  summary: 'Program of a milled internal thread: one turn of a full-form cutter',
  searchWords: ['thread milling', 'G-code', 'NC program', 'G2', 'G3', 'helical interpolation'],
  parameters: [
    parameter('cutter_diameter', { usual: { from: '0.5 mm', to: '120 mm' } }),
    parameter('teeth'),
    parameter('feed_per_tooth'),
    parameter('cutting_speed'),
    MAJOR,
    PITCH,
    THREAD_LENGTH,
    {
      name: 'safe_height',
      symbol: 'Z_s',
      kind: 'length',
      metric: 'mm',
      inch: 'in',
      hard: { above: '0' },
      usual: { from: '0.5 mm', to: '100 mm' },
      meaning: 'height above the face of the part at which the program begins and ends',
    },
    {
      name: 'hand',
      symbol: 'hand',
      kind: 'text',
      words: ['right', 'left'],
      default: { value: '"right"' },
      meaning: '"right" or "left" hand thread',
    },
    optional('milling_sense', '"down"'),
    {
      name: 'units',
      symbol: 'units',
      kind: 'text',
      words: ['mm', 'inch'],
      default: { value: '"mm"' },
      meaning: 'units of the program: "mm" (G21) or "inch" (G20)',
    },
  ],
  result: {
    kind: 'text',
    symbol: 'block',
    meaning: 'blocks of the program, one below the other',
    list: true,
  },
  steps: [
    { symbol: 'n', meaning: 'spindle speed', kind: 'rotational speed', equation: 'vc / (PI() * Dc)' },
    {
      symbol: 'vf',
      meaning: 'feed rate of the axis',
      kind: 'feed rate',
      equation: 'fz * z * n * (d - Dc) / d',
    },
  ],
  reading:
    'half circle from the middle to the wall over a quarter of the pitch, one turn over the pitch, half circle back over a quarter',
  compute({ Dc, d, P, L, Z_s, n, vf, hand, sense, units }) {
    if (
      typeof Dc !== 'number' ||
      typeof d !== 'number' ||
      typeof P !== 'number' ||
      typeof L !== 'number' ||
      typeof Z_s !== 'number' ||
      typeof n !== 'number' ||
      typeof vf !== 'number'
    )
      return failure('#VALUE!', 'value missing');
    const blocks = threadMillProgram({
      cutter: Dc,
      major: d,
      pitch: P,
      length: L,
      safeHeight: Z_s,
      speed: n,
      feed: vf,
      hand: hand === 'left' ? 'left' : 'right',
      sense: sense === 'up' ? 'up' : 'down',
      units: units === 'inch' ? 'inch' : 'mm',
    });
    return typeof blocks === 'string' ? failure('#NUM!', blocks) : { grid: blocks.map((block) => [block]) };
  },
  scaling: 'text',
  refuses: [MILL_IN_HOLE],
  cautions: [MILL_TOO_LARGE],
  remarks: [
    'Prove out above the part, by someone who knows the machine. The machine, its control and the rules of the shop have the last word.',
    'The blocks are the thread alone: tool call, work offset, coolant and end of program are the own ones of the shop.',
    'Zero lies in the middle of the hole on the face of the part; the cutter must be longer than the thread and set to its real diameter.',
    'A blind hole needs a quarter of the pitch and the corner of the cutter below the thread.',
    'Left hand and conventional milling run the same path in the other direction: between the same two heights.',
  ],
  sources: ['ISO 6983', 'derived'],
  examples: [
    {
      given: ['8 mm', '4', '0.05 mm', '120 m/min', '10 mm', '1.5 mm', '15 mm', '2 mm'],
      gives: [
        '"(INTERNAL THREAD 10X1.5, RIGHT HAND, CLIMB, UNITS MM)"',
        '"(FULL-FORM CUTTER 8, LONGER THAN THE THREAD; ZERO IN THE MIDDLE OF THE HOLE, ON THE FACE)"',
        '"(PROVE OUT ABOVE THE PART)"',
        '"G21 G17 G90 G94 G40"',
        '"S4775 M3"',
        '"G0 X0 Y0 Z2"',
        '"G0 Z-15.375"',
        '"G3 X1 Y0 Z-15 I0.5 J0 F191"',
        '"G3 X1 Y0 Z-13.5 I-1 J0"',
        '"G3 X0 Y0 Z-13.125 I-0.5 J0"',
        '"G0 Z2"',
      ],
      origin: 'byHand',
      how: 'written out by hand from the radius of the path 1 mm, the pitch and the length; read back move by move in the tests',
    },
    {
      given: [
        '0.36 in',
        '4',
        '0.002 in',
        '400 ft/min',
        '0.5 in',
        '1 in / 13',
        '0.75 in',
        '0.1 in',
        '"right"',
        '"down"',
        '"inch"',
      ],
      gives: [
        '"(INTERNAL THREAD 0.5X0.0769, RIGHT HAND, CLIMB, UNITS INCH)"',
        '"(FULL-FORM CUTTER 0.36, LONGER THAN THE THREAD; ZERO IN THE MIDDLE OF THE HOLE, ON THE FACE)"',
        '"(PROVE OUT ABOVE THE PART)"',
        '"G20 G17 G90 G94 G40"',
        '"S4244 M3"',
        '"G0 X0 Y0 Z0.1"',
        '"G0 Z-0.7692"',
        '"G3 X0.07 Y0 Z-0.75 I0.035 J0 F9.51"',
        '"G3 X0.07 Y0 Z-0.6731 I-0.07 J0"',
        '"G3 X0 Y0 Z-0.6538 I-0.035 J0"',
        '"G0 Z0.1"',
      ],
      origin: 'byHand',
      how: '1/2-13: radius of the path (0.5 - 0.36)/2 = 0.07 in; 400 ft/min over pi 0.36 in is 4244 1/min; 0.002 times 4 times 4244 times 0.14/0.5 is 9.51 in/min; a quarter of the pitch is 0.0192 in',
    },
  ],
  since: '0.1',
} satisfies FunctionDefinition;
