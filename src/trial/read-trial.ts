/** What a trial tells: wear curves, lives of the variants, how they compare, what speed does. */

import type { Trial, TrialPass } from '../document/index.ts';
import { generalKind, kindNamed, ONE_UNIT } from '../quantity/index.ts';
import type { Unit } from '../quantity/index.ts';
import { compareLives, readLife } from './compare-lives.ts';
import type { LifeReading, Lives, RatioReading } from './compare-lives.ts';
import { combinationsOf } from './plan-trial.ts';
import { readTaylor } from './taylor-reading.ts';
import type { TaylorReading } from './taylor-reading.ts';
import { cutUnitOf, quantityFrom, unitFrom } from './trial-quantity.ts';
import { readEdge } from './wear-curve.ts';
import type { EdgeReading } from './wear-curve.ts';

export interface VariantReading {
  /** Level of each factor, by its place. */
  readonly levels: readonly number[];
  /** "round, 150 m/min" */
  readonly title: string;
  /** Places in the list of edges. */
  readonly edges: readonly number[];
  readonly lives: Lives;
  readonly life: LifeReading;
}

export interface Comparison extends RatioReading {
  /** Places in the list of variants: B beside A. */
  readonly a: number;
  readonly b: number;
}

export interface TrialReading {
  /** In which cuts and lives are noted and shown. */
  readonly cutUnit: Unit;
  readonly edges: readonly EdgeReading[];
  readonly variants: readonly VariantReading[];
  /** Every level of the first factor that is no speed beside its first level, the other factors held. */
  readonly comparisons: readonly Comparison[];
  /** Present where a factor is a speed and the cut is a time. */
  readonly taylor: readonly TaylorReading[];
  readonly runsDone: number;
  readonly cautions: readonly string[];
}

export interface ReadingOptions {
  readonly currency?: string;
  /** 0.95 where left out. */
  readonly confidence?: number;
}

const keyOf = (levels: readonly number[]): string => levels.join(',');

function titleOf(trial: Trial, levels: readonly number[]): string {
  const words = trial.factors.map(({ levels: all }, index) => all[levels[index] ?? -1] ?? '?');
  return words.length === 0 ? 'all edges' : words.join(', ');
}

/** Passes by run and edge, in the order in which they were recorded. */
function passesByEdge({ passes }: Trial): Map<string, TrialPass[]> {
  const found = new Map<string, TrialPass[]>();
  for (const pass of passes) {
    const key = JSON.stringify([pass.run, pass.edge]);
    const list = found.get(key);
    if (list) list.push(pass);
    else found.set(key, [pass]);
  }
  return found;
}

function livesOf(title: string, edges: readonly EdgeReading[]): Lives {
  const some = (pick: (edge: EdgeReading) => number | undefined): number[] =>
    edges.flatMap((edge) => {
      const value = pick(edge);
      return value !== undefined && value > 0 ? [value] : [];
    });
  return {
    title,
    ended: some(({ life }) => life),
    running: some(({ moreThan }) => moreThan),
    early: some(({ lessThan }) => lessThan),
  };
}

/** Place of the first factor whose levels are all speeds. */
function speedFactor({ factors }: Trial, currency: string): number {
  const speed = kindNamed('cutting speed').dimension;
  return factors.findIndex(({ levels }) =>
    levels.every((level) => quantityFrom(level, currency)?.unit.kind.dimension === speed),
  );
}

function comparisonsOf(
  trial: Trial,
  variants: readonly VariantReading[],
  speed: number,
  { cutUnit, confidence }: { readonly cutUnit: Unit; readonly confidence: number },
): Comparison[] {
  const factor = trial.factors.findIndex((_, index) => index !== speed);
  const compared = factor < 0 ? speed : factor;
  if (compared < 0) return [];
  return variants.flatMap(({ levels, lives }, b): Comparison[] => {
    if ((levels[compared] ?? 0) === 0) return [];
    const beside = keyOf(levels.with(compared, 0));
    const a = variants.findIndex((each) => keyOf(each.levels) === beside);
    const other = variants[a];
    return other ? [{ a, b, ...compareLives(other.lives, lives, cutUnit, confidence) }] : [];
  });
}

function taylorOf(
  trial: Trial,
  variants: readonly VariantReading[],
  speed: number,
  { currency, confidence }: { readonly currency: string; readonly confidence: number },
): TaylorReading[] {
  const groups = new Map<string, { title: string; speeds: number[]; lives: number[] }>();
  for (const { levels, lives } of variants) {
    const others = trial.factors.flatMap(({ levels: all }, index) =>
      index === speed ? [] : [all[levels[index] ?? -1] ?? '?'],
    );
    const title = others.length === 0 ? 'all edges' : others.join(', ');
    const group = groups.get(title) ?? { title, speeds: [], lives: [] };
    groups.set(title, group);
    const value = quantityFrom(trial.factors[speed]?.levels[levels[speed] ?? -1] ?? '', currency)?.si;
    if (value === undefined || !(value > 0)) continue;
    for (const life of lives.ended) {
      group.speeds.push(value);
      group.lives.push(life);
    }
  }
  return [...groups.values()].flatMap((group) =>
    group.lives.length < 2 ? [] : [readTaylor(group.title, group.speeds, group.lives, confidence)],
  );
}

function trialCautions(
  trial: Trial,
  done: readonly string[],
  comparisons: readonly Comparison[],
  confidence: number,
): string[] {
  const found: string[] = [];
  const planned = trial.runs.length;
  if (done.length < planned)
    found.push(`${done.length} of ${planned} runs are cut: what follows may still change.`);
  const order = trial.runs.map(({ id }) => id).filter((id) => done.includes(id));
  if (order.some((id, index) => id !== done[index]))
    found.push('The runs were not cut in the planned order: what drifts may hide in the differences.');
  if (comparisons.length > 1) {
    const chance = Math.round((1 - confidence) * 100);
    found.push(
      `${comparisons.length} comparisons, each of which misleads ${chance} times in 100: a single proven one among many may be chance.`,
    );
  }
  const withdrawn = trial.passes.filter((pass) => pass.withdrawn !== undefined).length;
  if (withdrawn > 0)
    found.push(`${withdrawn} withdrawn ${withdrawn === 1 ? 'pass does' : 'passes do'} not count.`);
  return found;
}

/** Reads a trial as far as it was cut. */
export function readTrial(trial: Trial, options: ReadingOptions = {}): TrialReading {
  const { currency = 'EUR', confidence = 0.95 } = options;
  const cutUnit = unitFrom(cutUnitOf(trial), currency) ?? ONE_UNIT;
  const combinations = combinationsOf(trial.factors);
  const place = new Map(combinations.map((levels, index) => [keyOf(levels), index]));
  const runs = new Map(trial.runs.map((run) => [run.id, run]));
  const edges: EdgeReading[] = [];
  for (const passes of passesByEdge(trial).values()) {
    if (passes.every(({ withdrawn }) => withdrawn !== undefined)) continue;
    const levels = runs.get(passes[0]?.run ?? '')?.levels ?? [];
    edges.push(readEdge(trial, passes, place.get(keyOf(levels)) ?? -1, { currency, cutUnit }));
  }
  const variants = combinations.map((levels, index): VariantReading => {
    const title = titleOf(trial, levels);
    const own = [...edges.keys()].filter((edge) => edges[edge]?.variant === index);
    const lives = livesOf(
      title,
      own.flatMap((edge) => edges[edge] ?? []),
    );
    return { levels, title, edges: own, lives, life: readLife(lives, cutUnit, confidence) };
  });
  const speed = speedFactor(trial, currency);
  const comparisons = comparisonsOf(trial, variants, speed, { cutUnit, confidence });
  const isTime = generalKind(cutUnit.kind.dimension) === generalKind(kindNamed('time').dimension);
  const done = [...new Set(edges.map(({ run }) => run))];
  return {
    cutUnit,
    edges,
    variants,
    comparisons,
    taylor: speed >= 0 && isTime ? taylorOf(trial, variants, speed, { currency, confidence }) : [],
    runsDone: done.length,
    cautions: trialCautions(trial, done, comparisons, confidence),
  };
}
