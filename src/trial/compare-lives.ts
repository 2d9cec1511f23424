/** Tool lives of variants and their ratio, with intervals and in plain words: never more certain than the readings. */

import { fitWeibull, mean, meanMargin, weibullLife, welchInterval } from '../numeric/index.ts';
import type { WeibullFit } from '../numeric/index.ts';
import type { Unit } from '../quantity/index.ts';
import { inWords } from './trial-quantity.ts';

/** Edges from which a Weibull distribution is fitted: with fewer its shape reads high (5 edges: 1.43 times on average, simulated). */
export const WEIBULL_FROM = 10;

/** Lives of one variant's edges, in SI of the cut. */
export interface Lives {
  readonly title: string;
  readonly ended: readonly number[];
  /** Cuts at which edges were stopped short of every limit. */
  readonly running: readonly number[];
  /** Edges that were past the limit at their first reading: the life is less than this cut. */
  readonly early: readonly number[];
}

export interface LifeReading {
  /** Half of the edges last longer; absent where the readings can not say. In SI. */
  readonly life?: number;
  /** 95 % interval of it (or at the confidence asked for). */
  readonly low?: number;
  readonly high?: number;
  /** 'logarithms': mean of the logarithms and Student's t; 'Weibull': maximum likelihood. */
  readonly method?: 'logarithms' | 'Weibull';
  readonly weibull?: {
    readonly shape: number;
    readonly scale: number;
    /** Cut by which one edge in ten has ended. */
    readonly tenPercent: { readonly life: number; readonly low: number; readonly high: number };
  };
  readonly words: string;
}

const edges = (count: number): string => `${count} ${count === 1 ? 'edge' : 'edges'}`;
const percent = (confidence: number): string => `${Number((confidence * 100).toPrecision(4))} %`;

function weibullOf({ ended, running }: Lives): WeibullFit | undefined {
  // As many lives that really ended: those still running add little to the shape.
  return ended.length >= WEIBULL_FROM ? fitWeibull(ended, running) : undefined;
}

const countsOf = ({ ended, running }: Lives): { readonly ended: number; readonly all: number } => ({
  ended: ended.length,
  all: ended.length + running.length,
});

function uncounted({ running, early }: Lives, cutUnit: Unit): string {
  const words: string[] = [];
  if (running.length > 0)
    words.push(
      `${edges(running.length)} had not reached a limit after ${running.map((cut) => inWords(cut, cutUnit)).join(', ')}`,
    );
  if (early.length > 0) words.push(`${edges(early.length)} passed a limit before the first reading`);
  return words.join('; ');
}

/** The life of a variant, as far as its edges tell. */
export function readLife(lives: Lives, cutUnit: Unit, confidence = 0.95): LifeReading {
  const { ended, running, early } = lives;
  const fit = weibullOf(lives);
  const weibull = fit && {
    shape: fit.shape,
    scale: fit.scale,
    tenPercent: weibullLife(fit, 0.1, confidence, countsOf(lives)),
  };
  const span = (low: number, high: number): string =>
    `${inWords(low, cutUnit)} to ${inWords(high, cutUnit)}, ${percent(confidence)}`;
  if (fit && weibull && running.length > 0 && early.length === 0) {
    const { life, low, high } = weibullLife(fit, 0.5, confidence, countsOf(lives));
    const words = `${inWords(life, cutUnit)} (${span(low, high)}), by a Weibull distribution over ${edges(ended.length + running.length)}, ${running.length} of them still running`;
    return { life, low, high, method: 'Weibull', weibull, words };
  }
  if (ended.length === 0) {
    const rest = uncounted(lives, cutUnit);
    return { words: rest === '' ? 'no edge was read to its end' : `no life can be stated: ${rest}` };
  }
  const logs = ended.map(Math.log);
  const life = Math.exp(mean(logs));
  if (running.length + early.length > 0) {
    // Leaving them out would bias the mean, and taking them as lives would make the interval a fiction.
    const words = `${edges(ended.length)} lasted ${ended.map((each) => inWords(each, cutUnit)).join(', ')}; ${uncounted(lives, cutUnit)}: no interval follows from that`;
    return { words, ...(weibull && { weibull }) };
  }
  if (ended.length === 1)
    return { life, words: `${inWords(life, cutUnit)} from one edge: how far lives scatter is not known` };
  const margin = meanMargin(logs, confidence);
  if (!(margin > 1e-12))
    return {
      life,
      words: `${inWords(life, cutUnit)} from ${edges(ended.length)} that all read the same: no scatter, no interval`,
    };
  const [low, high] = [life * Math.exp(-margin), life * Math.exp(margin)];
  const few = ended.length < 3 ? `; ${edges(ended.length)} are too few to say more` : '';
  return {
    life,
    low,
    high,
    method: 'logarithms',
    ...(weibull && { weibull }),
    words: `${inWords(life, cutUnit)} (${span(low, high)}) from ${edges(ended.length)}${few}`,
  };
}

export interface RatioReading {
  /** How many times as long B lasts as A; absent where that can not be stated. */
  readonly ratio?: number;
  readonly low?: number;
  readonly high?: number;
  /** True where the interval holds no 1. */
  readonly proven: boolean;
  readonly sentence: string;
}

/** To two significant digits, away from the middle, so that no interval looks narrower than it is. */
export function outward(value: number, up: boolean): number {
  const digits = Math.abs(value - 1) < 0.05 ? 2 : 1;
  const step = 10 ** (Math.floor(Math.log10(value)) - digits);
  const steps = value / step;
  const rounded = up ? Math.ceil(steps - 1e-9) : Math.floor(steps + 1e-9);
  return Number((rounded * step).toPrecision(digits + 1));
}

function tooFew(a: Lives, b: Lives): string {
  const [na, nb] = [a.ended.length, b.ended.length];
  if (Math.min(na, nb) >= 3) return '';
  return na === nb
    ? `; ${edges(na)} each are too few to say more`
    : `; ${edges(nb)} of ${b.title} and ${na} of ${a.title} are too few to say more`;
}

function ratioFrom(
  a: Lives,
  b: Lives,
  centre: number,
  [below, above]: readonly [number, number],
  confidence: number,
): RatioReading {
  const [ratio, low, high] = [centre, centre - below, centre + above].map(Math.exp) as [
    number,
    number,
    number,
  ];
  const proven = low > 1 || high < 1;
  const span = `${b.title} lasts ${outward(low, false)} to ${outward(high, true)} times as long as ${a.title} (${percent(confidence)})`;
  const sentence = `${proven ? span : `No difference is proven: ${span}`}${tooFew(a, b)}.`;
  return { ratio, low, high, proven, sentence };
}

/** How many times as long B lasts as A: Welch's interval on logarithms; by Weibull medians where many edges were still running. */
export function compareLives(a: Lives, b: Lives, cutUnit: Unit, confidence = 0.95): RatioReading {
  const incomplete = [a, b].filter(({ running, early }) => running.length + early.length > 0);
  if (incomplete.length > 0) {
    const [fitA, fitB] = [weibullOf(a), weibullOf(b)];
    if (fitA && fitB && a.early.length + b.early.length === 0) {
      const [lifeA, lifeB] = [
        weibullLife(fitA, 0.5, confidence, countsOf(a)),
        weibullLife(fitB, 0.5, confidence, countsOf(b)),
      ];
      // The interval of a difference from those of its terms (G. Y. Zou, A. Donner, Statistics in Medicine 27, 2008).
      const below = Math.hypot(Math.log(lifeB.life / lifeB.low), Math.log(lifeA.high / lifeA.life));
      const above = Math.hypot(Math.log(lifeB.high / lifeB.life), Math.log(lifeA.life / lifeA.low));
      return ratioFrom(a, b, Math.log(lifeB.life / lifeA.life), [below, above], confidence);
    }
    const which = incomplete.map((each) => `of ${each.title}, ${uncounted(each, cutUnit)}`).join('; ');
    return {
      proven: false,
      sentence: `How long ${b.title} lasts beside ${a.title} can not be stated: ${which}.`,
    };
  }
  for (const lives of [a, b])
    if (lives.ended.length === 0)
      return {
        proven: false,
        sentence: `Of ${lives.title} no edge was read to its end: nothing to compare.`,
      };
  const [logsA, logsB] = [a.ended.map(Math.log), b.ended.map(Math.log)];
  const centre = mean(logsB) - mean(logsA);
  const ratio = Math.exp(centre);
  const about = `${b.title} lasted ${Number(ratio.toPrecision(2))} times as long as ${a.title}`;
  for (const lives of [a, b])
    if (lives.ended.length < 2)
      return {
        ratio,
        proven: false,
        sentence: `${about}, but of ${lives.title} there is one edge only: whether that is more than scatter can not be said.`,
      };
  const welch = welchInterval(logsA, logsB, confidence);
  if (!welch)
    return {
      ratio,
      proven: false,
      sentence: `${about}, but neither shows any scatter: no interval follows from that.`,
    };
  if (Math.abs(centre) + welch.margin > 300)
    return { ratio, proven: false, sentence: `${about}, but the lives scatter beyond any number.` };
  return ratioFrom(a, b, centre, [welch.margin, welch.margin], confidence);
}
