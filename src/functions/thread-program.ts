/** Writes the program of a milled internal thread in blocks of ISO 6983-1. Lengths in metres, rates per second. */

export interface ThreadMilling {
  readonly cutter: number;
  readonly major: number;
  readonly pitch: number;
  readonly length: number;
  readonly safeHeight: number;
  /** Turns per second. */
  readonly speed: number;
  /** Feed rate of the cutter axis along its path. */
  readonly feed: number;
  readonly hand: 'right' | 'left';
  readonly sense: 'down' | 'up';
}

const PER_METRE = 1e3;
const PER_MINUTE = 60;
const DECIMALS = 4;

const rounded = (value: number, decimals = DECIMALS): number => Number(value.toFixed(decimals)) || 0;

/** Whole numbers from 10 up, below that three digits. */
const rate = (value: number): number => (value >= 10 ? Math.round(value) : Number(value.toPrecision(3)));

/**
 * The blocks, or words of what can not be programmed. Climb milling runs against the clock (G3), conventional with it
 * (G2); a right-hand thread rises against the clock. Going down is the same path backwards, so the cutter ends at the
 * same depth.
 */
export function threadMillProgram(milling: ThreadMilling): string[] | string {
  const { cutter, major, pitch, length, safeHeight, speed, feed, hand, sense } = milling;
  // The radius is rounded by halves, so that both arcs end where they should to the last digit.
  const half = rounded((PER_METRE * (major - cutter)) / 4);
  const P = pitch * PER_METRE;
  const depth = length * PER_METRE;
  const S = rate(speed * PER_MINUTE);
  const F = rate(feed * PER_METRE * PER_MINUTE);
  if (half < 0.01 || P < 0.01) return 'the path is too small for a program in 0.0001 mm';
  if (S < 1 || F < 0.1)
    return `a spindle speed of ${S} and a feed of ${F} mm/min are too small for a program`;
  const rises = (hand === 'right') === (sense === 'down');
  const heights = [-depth - P / 4, -depth, -depth + P, -depth + (5 * P) / 4].map((height) => rounded(height));
  const [start, wall, top, end] = rises ? heights : heights.toReversed();
  const arc = sense === 'down' ? 'G3' : 'G2';
  const radius = rounded(2 * half);
  const safe = rounded(safeHeight * PER_METRE);
  if (safe <= Math.max(...heights))
    return `safe height ${safe} mm must be above the end of the path, ${Math.max(...heights)} mm`;
  return [
    `(INTERNAL THREAD ${rounded(major * PER_METRE)}X${rounded(P)}, ${hand.toUpperCase()} HAND, ${sense === 'down' ? 'CLIMB' : 'CONVENTIONAL'}, UNITS MM)`,
    '(PROVE OUT ABOVE THE PART)',
    'G21 G17 G90 G94 G40',
    `S${S} M3`,
    `G0 X0 Y0 Z${safe}`,
    `G0 Z${start}`,
    `${arc} X${radius} Y0 Z${wall} I${half} J0 F${F}`,
    `${arc} X${radius} Y0 Z${top} I${-radius} J0`,
    `${arc} X0 Y0 Z${end} I${-half} J0`,
    `G0 Z${safe}`,
  ];
}
