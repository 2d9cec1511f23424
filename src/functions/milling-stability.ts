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

/** Frequencies evenly on a logarithm, and close together about every mode, rising. */
function frequencies(modes: readonly Mode[]): Float64Array {
  const own = modes.map(({ frequency }) => frequency);
  const [low, high] = [0.2 * Math.min(...own), 3 * Math.max(...own)];
  const near = modes
    .flatMap(({ frequency, damping }) =>
      Array.from({ length: AROUND }, (_, i) => {
        const s = (2 * i) / (AROUND - 1) - 1;
        return frequency * (1 + damping * 20 * s * Math.abs(s));
      }),
    )
    .filter((f) => f > low && f < high)
    .sort((a, b) => a - b);
  const grid = new Float64Array(GRID + near.length);
  const step = Math.log(high / low) / (GRID - 1);
  let taken = 0;
  for (let i = 0; i < GRID; i += 1) {
    const even = i === GRID - 1 ? high : low * Math.exp(i * step);
    while (taken < near.length && (near[taken] ?? 0) < even) {
      grid[i + taken] = near[taken] ?? 0;
      taken += 1;
    }
    grid[i + taken] = even;
  }
  return grid;
}

/** Both eigenvalues at a frequency; the object is used again and again. */
interface Eigenvalues {
  re1: number;
  im1: number;
  re2: number;
  im2: number;
}

/** Eigenvalues of the mean directed receptance: -2 / (a1 +- sqrt(a1^2 - 4 a0)), a form that holds where a0 is near 0. */
function eigenvaluesOf(system: MillingSystem): (frequency: number) => Eigenvalues {
  const [axx, axy, ayx, ayy] = directionFactors(system.from, system.to, system.radialRatio);
  const cross = axx * ayy - axy * ayx;
  const all = [...system.x, ...system.y];
  const along = system.x.length;
  const own = Float64Array.from(all, ({ frequency }) => frequency);
  const doubled = Float64Array.from(all, ({ damping }) => 2 * damping);
  const give = Float64Array.from(all, ({ stiffness }) => 1 / stiffness);
  const found: Eigenvalues = { re1: 0, im1: 0, re2: 0, im2: 0 };
  return (frequency) => {
    // Receptances: displacement for a force; those of the modes add.
    let [xr, xi, yr, yi] = [0, 0, 0, 0];
    for (let j = 0; j < own.length; j += 1) {
      const r = frequency / own[j]!;
      const a = 1 - r * r;
      const b = doubled[j]! * r;
      const share = give[j]! / (a * a + b * b);
      if (j < along) {
        xr += a * share;
        xi -= b * share;
      } else {
        yr += a * share;
        yi -= b * share;
      }
    }
    const ar = axx * xr + ayy * yr;
    const ai = axx * xi + ayy * yi;
    const sr = ar * ar - ai * ai - 4 * cross * (xr * yr - xi * yi);
    const si = 2 * ar * ai - 4 * cross * (xr * yi + xi * yr);
    const size = Math.sqrt(sr * sr + si * si);
    const rr = Math.sqrt(Math.max(0, (size + sr) / 2));
    const ri = si < 0 ? -Math.sqrt(Math.max(0, (size - sr) / 2)) : Math.sqrt(Math.max(0, (size - sr) / 2));
    const one = -2 / ((ar + rr) ** 2 + (ai + ri) ** 2);
    const two = -2 / ((ar - rr) ** 2 + (ai - ri) ** 2);
    found.re1 = one * (ar + rr);
    found.im1 = -one * (ai + ri);
    found.re2 = two * (ar - rr);
    found.im2 = -two * (ai - ri);
    return found;
  };
}

export interface Sweep {
  /** Least positive limit over all frequencies, in m; undefined where nothing limits the depth. */
  floor(): number | undefined;
  /** Limit at a spindle speed in 1/s; undefined where nothing limits the depth. */
  limit(speed: number): number | undefined;
}

/** Phase between the waves of two teeth over 2 pi, in 0 .. 1. */
const phase = (re: number, im: number): number => 0.5 - Math.atan(im / re) / Math.PI;

const apart = (re1: number, im1: number, re2: number, im2: number): number =>
  Math.sqrt((re1 - re2) ** 2 + (im1 - im2) ** 2);

/** One eigenvalue followed over the frequencies: itself, its phase and its depth; the depth is infinite where it limits nothing. */
interface Branch {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly phase: Float64Array;
  readonly depth: Float64Array;
}

/** The sweep of a system: all limits that it can have. */
export function sweepOf(system: MillingSystem): Sweep {
  const { teeth, tangential } = system;
  const eigenvalues = eigenvaluesOf(system);
  const grid = frequencies([...system.x, ...system.y]);
  const count = grid.length;
  const depthOf = (re: number, im: number): number =>
    (-2 * Math.PI * re * (1 + (im / re) ** 2)) / (teeth * tangential);

  const branch = (): Branch => ({
    re: new Float64Array(count),
    im: new Float64Array(count),
    phase: new Float64Array(count),
    depth: new Float64Array(count).fill(Infinity),
  });
  const branches = [branch(), branch()] as const;
  const [first, second] = branches;
  for (let i = 0; i < count; i += 1) {
    const { re1, im1, re2, im2 } = eigenvalues(grid[i]!);
    const [r1, i1, r2, i2] = [
      first.re[i - 1] ?? re1,
      first.im[i - 1] ?? im1,
      second.re[i - 1] ?? re2,
      second.im[i - 1] ?? im2,
    ];
    const kept =
      apart(re1, im1, r1, i1) + apart(re2, im2, r2, i2) <= apart(re2, im2, r1, i1) + apart(re1, im1, r2, i2);
    first.re[i] = kept ? re1 : re2;
    first.im[i] = kept ? im1 : im2;
    second.re[i] = kept ? re2 : re1;
    second.im[i] = kept ? im2 : im1;
  }
  for (const { re, im, phase: phases, depth } of branches)
    for (let i = 0; i < count; i += 1) {
      if (!(re[i]! < 0)) continue;
      phases[i] = phase(re[i]!, im[i]!);
      depth[i] = depthOf(re[i]!, im[i]!);
    }

  /** Whether the branch limits the depth between places i and i + 1. */
  const usable = ({ depth }: Branch, i: number): boolean =>
    depth[i]! < Infinity && depth[i + 1]! < Infinity && grid[i + 1]! > grid[i]!;

  /** The eigenvalue of a branch at a frequency between places i and i + 1. */
  function within({ re, im }: Branch, i: number, frequency: number): readonly [re: number, im: number] {
    const t = (frequency - grid[i]!) / (grid[i + 1]! - grid[i]!);
    const r = re[i]! + t * (re[i + 1]! - re[i]!);
    const m = im[i]! + t * (im[i + 1]! - im[i]!);
    const { re1, im1, re2, im2 } = eigenvalues(frequency);
    return apart(re1, im1, r, m) <= apart(re2, im2, r, m) ? [re1, im1] : [re2, im2];
  }

  /** Depth where a whole number of waves fits the tooth period, between places i and i + 1. */
  function crossing(each: Branch, i: number, period: number, whole: number): number {
    let [low, high] = [grid[i]!, grid[i + 1]!];
    const rising = low * period - each.phase[i]! < high * period - each.phase[i + 1]!;
    for (let round = 0; round < 60 && high - low > 1e-15 * high; round += 1) {
      const middle = (low + high) / 2;
      if (middle * period - phase(...within(each, i, middle)) < whole === rising) low = middle;
      else high = middle;
    }
    return depthOf(...within(each, i, (low + high) / 2));
  }

  function leastWithin(each: Branch, i: number): number {
    let [low, high] = [grid[i]!, grid[i + 1]!];
    const at = (frequency: number): number => depthOf(...within(each, i, frequency));
    for (let round = 0; round < 60 && high - low > 1e-12 * high; round += 1) {
      const [a, b] = [low + (high - low) * 0.382, low + (high - low) * 0.618];
      if (at(a) < at(b)) high = b;
      else low = a;
    }
    return Math.min(each.depth[i]!, each.depth[i + 1]!, at((low + high) / 2));
  }

  return {
    floor() {
      let [place, least] = [-1, Infinity];
      for (const each of branches)
        for (let i = 0; i + 1 < count; i += 1) {
          if (!usable(each, i)) continue;
          const here = Math.min(each.depth[i]!, each.depth[i + 1]!);
          if (here < least) [place, least] = [i, here];
        }
      if (place < 0) return undefined;
      for (const each of branches)
        for (let i = Math.max(0, place - 2); i < Math.min(count - 1, place + 3); i += 1)
          if (usable(each, i)) least = Math.min(least, leastWithin(each, i));
      return least;
    },
    limit(speed) {
      const period = 1 / (speed * teeth);
      let least = Infinity;
      for (const each of branches)
        for (let i = 0; i + 1 < count; i += 1) {
          const here = Math.min(each.depth[i]!, each.depth[i + 1]!);
          if (!(here < least * 1.001) || !usable(each, i)) continue;
          const g0 = grid[i]! * period - each.phase[i]!;
          const g1 = grid[i + 1]! * period - each.phase[i + 1]!;
          const from = Math.max(0, Math.ceil(Math.min(g0, g1)));
          const to = Math.floor(Math.max(g0, g1));
          if (to - from > 2) least = Math.min(least, here);
          else
            for (let whole = from; whole <= to; whole += 1)
              least = Math.min(least, crossing(each, i, period, whole));
        }
      return least < Infinity ? least : undefined;
    },
  };
}
