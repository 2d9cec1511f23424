/** Writes the program of a milled internal thread in blocks of ISO 6983-1, in mm or inches. Lengths in metres, rates per second. */

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
  /** Units of the program. */
  readonly units: 'mm' | 'inch';
}

const PER_METRE = { mm: 1e3, inch: 1 / 0.0254 } as const;
const PREPARATORY = { mm: 'G21', inch: 'G20' } as const;
const PER_MINUTE = 60;
const DECIMALS = 4;

const rounded = (value: number, decimals = DECIMALS): number => Number(value.toFixed(decimals)) || 0;

/** Whole numbers from `whole` up, below that three digits. */
const rate = (value: number, whole: number): number =>
  value >= whole ? Math.round(value) : Number(value.toPrecision(3));

/**
 * The blocks, or words of what can not be programmed. Climb milling runs against the clock (G3), conventional with it
 * (G2); a right-hand thread rises against the clock. Going down is the same path backwards, so the cutter ends at the
 * same depth.
 */
export function threadMillProgram(milling: ThreadMilling): string[] | string {
  const { cutter, major, pitch, length, safeHeight, speed, feed, hand, sense, units } = milling;
  const perMetre = PER_METRE[units];
  const word = units === 'mm' ? 'mm' : 'in';
  // The radius is rounded by halves, so that both arcs end where they should to the last digit.
  const half = rounded((perMetre * (major - cutter)) / 4);
  const P = pitch * perMetre;
  const depth = length * perMetre;
  const S = rate(speed * PER_MINUTE, 10);
  const F = rate(feed * perMetre * PER_MINUTE, units === 'mm' ? 10 : 100);
  if (half < 0.001 * (units === 'mm' ? 10 : 1) || P < 0.001 * (units === 'mm' ? 10 : 1))
    return `the path is too small for a program in 0.0001 ${word}`;
  if (S < 1 || F < (units === 'mm' ? 0.1 : 0.01))
    return `a spindle speed of ${S} and a feed of ${F} ${word}/min are too small for a program`;
  const rises = (hand === 'right') === (sense === 'down');
  const heights = [-depth - P / 4, -depth, -depth + P, -depth + (5 * P) / 4].map((height) => rounded(height));
  const [start, wall, top, end] = rises ? heights : heights.toReversed();
  const arc = sense === 'down' ? 'G3' : 'G2';
  const radius = rounded(2 * half);
  const safe = rounded(safeHeight * perMetre);
  if (safe <= Math.max(...heights))
    return `safe height ${safe} ${word} must be above the end of the path, ${Math.max(...heights)} ${word}`;
  return [
    `(INTERNAL THREAD ${rounded(major * perMetre)}X${rounded(P)}, ${hand.toUpperCase()} HAND, ${sense === 'down' ? 'CLIMB' : 'CONVENTIONAL'}, UNITS ${units.toUpperCase()})`,
    `(FULL-FORM CUTTER ${rounded(cutter * perMetre)}, LONGER THAN THE THREAD; ZERO IN THE MIDDLE OF THE HOLE, ON THE FACE)`,
    '(PROVE OUT ABOVE THE PART)',
    `${PREPARATORY[units]} G17 G90 G94 G40`,
    `S${S} M3`,
    `G0 X0 Y0 Z${safe}`,
    `G0 Z${start}`,
    `${arc} X${radius} Y0 Z${wall} I${half} J0 F${F}`,
    `${arc} X${radius} Y0 Z${top} I${-radius} J0`,
    `${arc} X0 Y0 Z${end} I${-half} J0`,
    `G0 Z${safe}`,
  ];
}
