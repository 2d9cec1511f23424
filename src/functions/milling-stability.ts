/**
 * Stability of milling with the mean of the direction factors (A2): x along the feed, y across. One sweep over the chatter
 * frequency serves every speed.
 */

export interface Mode {
  /** Hz */
  readonly frequency: number;
  readonly damping: number;
  /** N/m */
  readonly stiffness: number;
}

export interface MillingSystem {
  readonly teeth: number;
  /** Entry and exit of the arc in rad, h = 0 at 0 (up) and pi (down). */
  readonly from: number;
  readonly to: number;
  /** Tangential coefficient in Pa. */
  readonly tangential: number;
  readonly radialRatio: number;
  readonly x: readonly Mode[];
  readonly y: readonly Mode[];
}

type Complex = readonly [re: number, im: number];

const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];

function inverse([a, b]: Complex): Complex {
  const size = a * a + b * b;
  return [a / size, -b / size];
}

function rooted([a, b]: Complex): Complex {
  const size = Math.hypot(a, b);
  const re = Math.sqrt(Math.max(0, (size + a) / 2));
  const im = Math.sqrt(Math.max(0, (size - a) / 2));
  return [re, b < 0 ? -im : im];
}

/** Displacement for a force at a frequency: the receptances of the modes add. */
function receptance(modes: readonly Mode[], frequency: number): Complex {
  let [re, im] = [0, 0];
  for (const { frequency: own, damping, stiffness } of modes) {
    const r = frequency / own;
    const [a, b] = inverse([1 - r * r, 2 * damping * r]);
    re += a / stiffness;
    im += b / stiffness;
  }
  return [re, im];
}

/** Mean direction factors axx, axy, ayx, ayy over the arc. */
export function directionFactors(
  from: number,
  to: number,
  cr: number,
): readonly [number, number, number, number] {
  const at = (p: number): readonly [number, number, number, number] => [
    (Math.cos(2 * p) - 2 * cr * p + cr * Math.sin(2 * p)) / 2,
    (-Math.sin(2 * p) - 2 * p + cr * Math.cos(2 * p)) / 2,
    (-Math.sin(2 * p) + 2 * p + cr * Math.cos(2 * p)) / 2,
    (-Math.cos(2 * p) - 2 * cr * p - cr * Math.sin(2 * p)) / 2,
  ];
  const [a, b] = [at(from), at(to)];
  return [b[0] - a[0], b[1] - a[1], b[2] - a[2], b[3] - a[3]];
}

/** Arc of side milling. */
export function sideArc(
  diameter: number,
  engagement: number,
  sense: 'up' | 'down',
): readonly [from: number, to: number] {
  const arc = 2 * Math.asin(Math.sqrt(Math.min(1, engagement / diameter)));
  return sense === 'up' ? [0, arc] : [Math.PI - arc, Math.PI];
}

const GRID = 20_001;
const AROUND = 401;

/** Frequencies evenly on a logarithm, and close together about every mode. */
function frequencies(modes: readonly Mode[]): number[] {
  const own = modes.map(({ frequency }) => frequency);
  const [low, high] = [0.2 * Math.min(...own), 3 * Math.max(...own)];
  const even = Array.from({ length: GRID }, (_, i) => low * (high / low) ** (i / (GRID - 1)));
  const near = modes.flatMap(({ frequency, damping }) =>
    Array.from({ length: AROUND }, (_, i) => {
      const s = (2 * i) / (AROUND - 1) - 1;
      return frequency * (1 + damping * 20 * s * Math.abs(s));
    }),
  );
  return [...even, ...near.filter((f) => f > low && f < high)].sort((a, b) => a - b);
}

export interface Sweep {
  /** Least positive limit over all frequencies, in m; undefined where nothing limits the depth. */
  floor(): number | undefined;
  /** Limit at a spindle speed in 1/s; undefined where nothing limits the depth. */
  limit(speed: number): number | undefined;
}

/** The sweep of a system: all limits that it can have. */
export function sweepOf(system: MillingSystem): Sweep {
  const { teeth, tangential } = system;
  const [axx, axy, ayx, ayy] = directionFactors(system.from, system.to, system.radialRatio);
  const cross = axx * ayy - axy * ayx;

  /** Both eigenvalues: Re 1, Im 1, Re 2, Im 2. */
  function eigenvalues(frequency: number): readonly [Complex, Complex] {
    const gx = receptance(system.x, frequency);
    const gy = receptance(system.y, frequency);
    const [pr, pi] = times(gx, gy);
    const a1: Complex = [axx * gx[0] + ayy * gy[0], axx * gx[1] + ayy * gy[1]];
    const square = times(a1, a1);
    const root = rooted([square[0] - 4 * cross * pr, square[1] - 4 * cross * pi]);
    const one = inverse([a1[0] + root[0], a1[1] + root[1]]);
    const two = inverse([a1[0] - root[0], a1[1] - root[1]]);
    return [
      [-2 * one[0], -2 * one[1]],
      [-2 * two[0], -2 * two[1]],
    ];
  }

  const depth = ([re, im]: Complex): number =>
    (-2 * Math.PI * re * (1 + (im / re) ** 2)) / (teeth * tangential);
  /** Phase between the waves of two teeth over 2 pi, in 0 .. 1. */
  const phase = ([re, im]: Complex): number => 0.5 - Math.atan(im / re) / Math.PI;

  const away = (a: Complex, b: Complex): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const nearest = (frequency: number, to: Complex): Complex => {
    const [one, two] = eigenvalues(frequency);
    return away(one, to) <= away(two, to) ? one : two;
  };

  const grid = frequencies([...system.x, ...system.y]);
  const branches: Complex[][] = [[], []];
  for (const frequency of grid) {
    const [one, two] = eigenvalues(frequency);
    const [lastOne, lastTwo] = [branches[0]?.at(-1), branches[1]?.at(-1)];
    const kept =
      !lastOne ||
      !lastTwo ||
      away(one, lastOne) + away(two, lastTwo) <= away(two, lastOne) + away(one, lastTwo);
    branches[0]?.push(kept ? one : two);
    branches[1]?.push(kept ? two : one);
  }
  /** Pieces of the sweep on which the depth is positive. */
  const pieces = branches.flatMap((values) =>
    values.slice(1).flatMap((b, i) => {
      const a = values[i];
      const [f0, f1] = [grid[i] ?? 0, grid[i + 1] ?? 0];
      const usable = a && a[0] < 0 && b[0] < 0 && f1 > f0;
      return usable
        ? [{ f0, f1, a, b, p0: phase(a), p1: phase(b), least: Math.min(depth(a), depth(b)) }]
        : [];
    }),
  );
  type Piece = (typeof pieces)[number];

  const within = ({ f0, f1, a, b }: Piece, frequency: number): Complex => {
    const t = (frequency - f0) / (f1 - f0);
    return nearest(frequency, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
  };

  function crossing(piece: Piece, period: number, whole: number): number {
    let [low, high] = [piece.f0, piece.f1];
    const rising = low * period - piece.p0 < high * period - piece.p1;
    for (let i = 0; i < 60; i += 1) {
      const middle = (low + high) / 2;
      const value = middle * period - phase(within(piece, middle));
      if (value < whole === rising) low = middle;
      else high = middle;
    }
    return depth(within(piece, (low + high) / 2));
  }

  return {
    floor() {
      let best: Piece | undefined;
      for (const piece of pieces) if (!best || piece.least < best.least) best = piece;
      if (!best) return undefined;
      const size = best.f1 - best.f0;
      const around = pieces.filter(
        (piece) => piece.f1 >= (best?.f0 ?? 0) - size && piece.f0 <= (best?.f1 ?? 0) + size,
      );
      return Math.min(...around.map((piece) => leastWithin(piece)));
    },
    limit(speed) {
      const period = 1 / (speed * teeth);
      let least = Number.POSITIVE_INFINITY;
      for (const piece of pieces) {
        if (piece.least >= least * 1.001) continue;
        const [g0, g1] = [piece.f0 * period - piece.p0, piece.f1 * period - piece.p1];
        const first = Math.max(0, Math.ceil(Math.min(g0, g1)));
        const last = Math.floor(Math.max(g0, g1));
        if (last - first > 2) least = Math.min(least, piece.least);
        else
          for (let whole = first; whole <= last; whole += 1)
            least = Math.min(least, crossing(piece, period, whole));
      }
      return Number.isFinite(least) ? least : undefined;
    },
  };

  function leastWithin(piece: Piece): number {
    let [low, high] = [piece.f0, piece.f1];
    const at = (frequency: number): number => depth(within(piece, frequency));
    for (let i = 0; i < 60; i += 1) {
      const [a, b] = [low + (high - low) * 0.382, low + (high - low) * 0.618];
      if (at(a) < at(b)) high = b;
      else low = a;
    }
    return Math.min(piece.least, at((low + high) / 2));
  }
}
