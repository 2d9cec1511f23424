/**
 * Forces of a helical end mill over one tooth period, without slices: the law of the specific force integrated along each
 * tooth exactly. Altintas, Manufacturing Automation, 2nd ed. 2012, ch. 2 (memory); law of Kienzle 1952.
 */

/** Everything in coherent SI. */
export interface EndMillCut {
  readonly cutterDiameter: number;
  readonly teeth: number;
  readonly helix: number;
  readonly feed: number;
  readonly axialDepth: number;
  /** Engagement angle of side milling. */
  readonly arc: number;
  readonly kc11: number;
  readonly mc: number;
  /** The chip thickness of 1 mm for which kc11 holds. */
  readonly referenceChip: number;
  readonly radialRatio: number;
  readonly sense: 'up' | 'down';
}

/** At one position of the cutter: tangential sum, along the feed, square to the wall (N). */
export interface CutForces {
  readonly tangential: number;
  readonly x: number;
  readonly y: number;
}

const TERMS = 26;

/** Coefficients of (sin x / x)^power in x^2: the power of a power series; it converges up to pi and is used up to pi/2. */
function seriesOfPower(power: number): number[] {
  const sinc = [1];
  for (let k = 1; k < TERMS; k += 1) sinc.push(-(sinc[k - 1] ?? 0) / (2 * k * (2 * k + 1)));
  const series = [1];
  for (let n = 1; n < TERMS; n += 1) {
    let sum = 0;
    for (let k = 1; k <= n; k += 1) sum += (k * (power + 1) - n) * (sinc[k] ?? 0) * (series[n - k] ?? 0);
    series.push(sum / n);
  }
  return series;
}

/** Integral of sin^power from 0 to an angle in 0 .. pi, to the last digits of a double. */
export function sinePowerIntegral(power: number): (angle: number) => number {
  const terms = seriesOfPower(power).map((coefficient, k) => coefficient / (power + 1 + 2 * k));
  const lower = (angle: number): number => {
    const square = angle * angle;
    let sum = 0;
    for (let k = TERMS - 1; k >= 0; k -= 1) sum = sum * square + (terms[k] ?? 0);
    return angle <= 0 ? 0 : sum * angle ** (power + 1);
  };
  const half = lower(Math.PI / 2);
  return (angle) => (angle <= Math.PI / 2 ? lower(angle) : 2 * half - lower(Math.max(0, Math.PI - angle)));
}

/** Force on the width of one metre at a feed of sin = 1, N/m. */
const forcePerWidth = ({ kc11, mc, referenceChip, feed }: EndMillCut): number =>
  kc11 * referenceChip ** mc * feed ** (1 - mc);

const turned = (angle: number, full: number): number => ((angle % full) + full) % full;

/** Forces as a function of the angle of the first tooth's tip. */
export function endMillForces(cut: EndMillCut): (angle: number) => CutForces {
  const { teeth, helix, axialDepth, cutterDiameter, arc, mc, radialRatio, sense } = cut;
  const power = 1 - mc;
  const [start, end] = sense === 'up' ? [0, arc] : [Math.PI - arc, Math.PI];
  const lag = (2 * axialDepth * Math.tan(helix)) / cutterDiameter;
  const width = forcePerWidth(cut);
  const plain = sinePowerIntegral(power);
  const withSine = sinePowerIntegral(power + 1);
  const withCosine = (angle: number): number => Math.max(0, Math.sin(angle)) ** (power + 1) / (power + 1);
  const alongAngle = lag > 0 ? (width * cutterDiameter) / (2 * Math.tan(helix)) : 0;
  const [plainStart, cosineStart, sineStart] = [plain(start), withCosine(start), withSine(start)];
  const [plainArc, cosineArc, sineArc] = [
    plain(end) - plainStart,
    withCosine(end) - cosineStart,
    withSine(end) - sineStart,
  ];
  return (angle) => {
    let [w, cosine, sine] = [0, 0, 0];
    /** Adds so many times the integrals from the start of the arc to an angle, which counts up to the ends of the arc only. */
    const add = (to: number, times: number): void => {
      if (to <= start) return;
      const inside = to < end;
      w += times * (inside ? plain(to) - plainStart : plainArc);
      cosine += times * (inside ? withCosine(to) - cosineStart : cosineArc);
      sine += times * (inside ? withSine(to) - sineStart : sineArc);
    };
    for (let tooth = 0; tooth < teeth; tooth += 1) {
      const tip = turned(angle + (2 * Math.PI * tooth) / teeth, 2 * Math.PI);
      if (lag === 0) {
        if (tip < start || tip > end) continue;
        const force = Math.max(0, Math.sin(tip)) ** power;
        w += force;
        cosine += force * Math.cos(tip);
        sine += force * Math.sin(tip);
        continue;
      }
      // A tooth that lags by more than a turn passes the arc again: whole passes are counted, the last is cut off.
      const whole = Math.max(0, Math.floor((lag + start - tip) / (2 * Math.PI)));
      add(tip, 1);
      add(tip - lag, -1);
      if (lag <= tip + 2 * Math.PI - end) continue;
      add(end, whole + 1);
      add(tip + 2 * Math.PI * (whole + 1) - lag, -1);
    }
    const scale = lag > 0 ? alongAngle : width * axialDepth;
    return {
      tangential: scale * w,
      x: scale * (-cosine - radialRatio * sine),
      y: scale * (sine - radialRatio * cosine),
    };
  };
}

const STEPS = 2001;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const NARROWINGS = 45;

/** The value of largest size of a quantity over one tooth period: stepped, then narrowed around the largest. */
export function extremeOf(cut: EndMillCut, quantity: (forces: CutForces) => number): number {
  const forces = endMillForces(cut);
  const pitch = (2 * Math.PI) / cut.teeth;
  const at = (angle: number): number => quantity(forces(angle));
  const size = (angle: number): number => Math.abs(at(angle));
  const [start, end] = cut.sense === 'up' ? [0, cut.arc] : [Math.PI - cut.arc, Math.PI];
  const lag = (2 * cut.axialDepth * Math.tan(cut.helix)) / cut.cutterDiameter;
  const corners = [start, end, start + lag, end + lag].map((angle) => turned(angle, pitch));
  const angles = Array.from({ length: STEPS }, (_, i) => (pitch * i) / STEPS).concat(corners);
  let [best, largest] = [0, -1];
  for (const angle of angles) {
    const value = size(angle);
    if (value > largest) [best, largest] = [angle, value];
  }
  let [low, high] = [best - pitch / STEPS, best + pitch / STEPS];
  for (let i = 0; i < NARROWINGS; i += 1) {
    const a = high - GOLDEN * (high - low);
    const b = low + GOLDEN * (high - low);
    if (size(a) >= size(b)) high = b;
    else low = a;
  }
  const narrowed = (low + high) / 2;
  return size(narrowed) > largest ? at(narrowed) : at(best);
}

/** Mean of the sum of tangential forces times the radius (N·m), from the integral over the arc. */
export function meanTorque(cut: EndMillCut): number {
  const { axialDepth, teeth, cutterDiameter, arc, mc } = cut;
  return (
    (forcePerWidth(cut) * sinePowerIntegral(1 - mc)(arc) * axialDepth * teeth * cutterDiameter) /
    (4 * Math.PI)
  );
}
