/** What one edge did: its readings over the cut it had behind it, where it reached a limit, how fast it wore in between. */

import type { Measurand, Trial, TrialPass } from '../document/index.ts';
import { firstCrossing, fittedLine } from '../numeric/index.ts';
import type { Unit } from '../quantity/index.ts';
import { inWords, quantityFrom, unitFrom } from './trial-quantity.ts';

/** Readings of one measurand on one edge, both in coherent SI, in the order in which they were taken. */
export interface Curve {
  readonly measurand: string;
  /** Cut behind the edge at each reading. */
  readonly cuts: readonly number[];
  readonly values: readonly number[];
  /** In SI; absent without one. */
  readonly limit?: number;
  /** Cut at which the limit is reached, by a straight line between the readings around it. */
  readonly crossing?: number;
  /** Slope of the steady part with the half width of its 95 % interval, in SI of value over cut. */
  readonly rate?: WearRate;
}

export interface WearRate {
  readonly slope: number;
  readonly margin: number;
  /** Cuts between which it was read. */
  readonly from: number;
  readonly to: number;
  readonly readings: number;
}

export interface EdgeReading {
  readonly run: string;
  /** As marked. */
  readonly edge: string;
  /** Place in the list of variants. */
  readonly variant: number;
  readonly curves: readonly Curve[];
  /** All that it cut, in SI. */
  readonly cut: number;
  /** Cut to the first limit that was reached. */
  readonly life?: number;
  /** The measurand whose limit ended it. */
  readonly endedBy?: string;
  /** No limit was reached up to this cut: the life is more. */
  readonly moreThan?: number;
  /** The first reading stood at the limit already: the life is less. */
  readonly lessThan?: number;
  /** In plain words. */
  readonly words: string;
  readonly cautions: readonly string[];
}

/** Readings between the first one (the edge runs in) and the limit that a steady part needs (common practice, no source). */
const STEADY_READINGS = 3;

function steadyRate(
  cuts: readonly number[],
  values: readonly number[],
  limit: number | undefined,
): WearRate | undefined {
  const end = limit === undefined ? -1 : values.findIndex((value) => value >= limit);
  const last = end < 0 ? values.length : end;
  const [x, y] = [cuts.slice(1, last), values.slice(1, last)];
  const line = x.length >= STEADY_READINGS ? fittedLine(x, y, 0.95) : undefined;
  if (!line) return undefined;
  return {
    slope: line.slope,
    margin: line.slopeMargin,
    from: x[0] ?? 0,
    to: x.at(-1) ?? 0,
    readings: x.length,
  };
}

function curveOf(
  { name, limit: text }: Measurand,
  passes: readonly TrialPass[],
  behind: readonly number[],
  currency: string,
): Curve {
  const cuts: number[] = [];
  const values: number[] = [];
  for (const [index, pass] of passes.entries()) {
    const content = pass.values.find(({ measurand }) => measurand === name)?.content;
    const read = content === undefined ? undefined : quantityFrom(content, currency);
    if (!read) continue;
    const cut = behind[index] ?? 0;
    // A second reading of the same state takes the place of the first.
    if (cuts.at(-1) === cut) values[values.length - 1] = read.si;
    else {
      cuts.push(cut);
      values.push(read.si);
    }
  }
  const limit = text === undefined ? undefined : quantityFrom(text, currency)?.si;
  const reached = limit === undefined ? undefined : firstCrossing(cuts, values, limit)?.x;
  const atOnce = limit !== undefined && (values[0] ?? -Infinity) >= limit;
  const rate = steadyRate(cuts, values, limit);
  return {
    measurand: name,
    cuts,
    values,
    ...(limit !== undefined && { limit }),
    ...(reached !== undefined && !atOnce && { crossing: reached }),
    ...(rate && { rate }),
  };
}

function curveCautions({ measurand, values, cuts, crossing }: Curve, cutUnit: Unit): string[] {
  const found: string[] = [];
  const falls = values.findIndex((value, i) => i > 0 && value < (values[i - 1] ?? 0));
  if (falls > 0)
    found.push(`reading ${falls + 1} of ${measurand} is smaller than the one before: a reading error?`);
  if (crossing !== undefined) {
    const after = cuts.findIndex((cut) => cut >= crossing);
    const gap = (cuts[after] ?? 0) - (cuts[after - 1] ?? 0);
    if (gap > 0.3 * crossing)
      found.push(
        `the readings of ${measurand} around the limit lie ${inWords(gap, cutUnit, 2)} apart, more than 30 % of the life: read more often`,
      );
  }
  return found;
}

/** How an edge ended, from its curves with a limit. */
function ending(curves: readonly Curve[]): Pick<EdgeReading, 'life' | 'endedBy' | 'moreThan' | 'lessThan'> {
  const limited = curves.filter(({ limit, values }) => limit !== undefined && values.length > 0);
  const atOnce = limited.filter(({ values, limit }) => (values[0] ?? 0) >= (limit ?? Infinity));
  const [earliest] = atOnce.sort((a, b) => (a.cuts[0] ?? 0) - (b.cuts[0] ?? 0));
  const [first] = limited
    .filter(({ crossing }) => crossing !== undefined)
    .sort((a, b) => (a.crossing ?? 0) - (b.crossing ?? 0));
  const firstCut = first?.crossing ?? Infinity;
  if (earliest && (earliest.cuts[0] ?? 0) <= firstCut)
    return { lessThan: earliest.cuts[0] ?? 0, endedBy: earliest.measurand };
  if (first && !earliest) return { life: firstCut, endedBy: first.measurand };
  if (first) return { life: firstCut, endedBy: first.measurand };
  if (limited.length === 0) return {};
  return { moreThan: Math.min(...limited.map(({ cuts }) => cuts.at(-1) ?? 0)) };
}

/** Reads the passes of one edge, oldest first; withdrawn ones do not count. */
export function readEdge(
  trial: Trial,
  passes: readonly TrialPass[],
  variant: number,
  { currency, cutUnit }: { readonly currency: string; readonly cutUnit: Unit },
): EdgeReading {
  const [first] = passes;
  const counting = passes.filter(({ withdrawn }) => withdrawn === undefined);
  let cut = 0;
  const behind: number[] = [];
  const cautions: string[] = [];
  for (const pass of counting) {
    const read = quantityFrom(pass.cut, currency);
    if (read && read.unit.kind.dimension === cutUnit.kind.dimension) cut += read.si;
    else cautions.push(`the cut of a pass, "${pass.cut}", can not be read`);
    behind.push(cut);
  }
  const curves = trial.measurands.map((each) => curveOf(each, counting, behind, currency));
  for (const curve of curves) cautions.push(...curveCautions(curve, cutUnit));
  for (const { measurand, limit, values } of curves)
    if (limit !== undefined && values.length === 0) cautions.push(`${measurand} was never read`);
  const end = ending(curves);
  return {
    run: first?.run ?? '',
    edge: first?.edge ?? '',
    variant,
    curves,
    cut,
    ...end,
    words: edgeWords(trial, end, cut, cutUnit),
    cautions,
  };
}

function edgeWords(trial: Trial, end: ReturnType<typeof ending>, cut: number, cutUnit: Unit): string {
  const { life, endedBy, moreThan, lessThan } = end;
  const limit = trial.measurands.find(({ name }) => name === endedBy)?.limit ?? '';
  if (life !== undefined) return `${endedBy} reached ${limit} after ${inWords(life, cutUnit)}`;
  if (lessThan !== undefined)
    return `${endedBy} stood above ${limit} at the first reading: the life is less than ${inWords(lessThan, cutUnit)}`;
  if (moreThan !== undefined) return `no limit reached: the life is more than ${inWords(moreThan, cutUnit)}`;
  return `cut ${inWords(cut, cutUnit)}; nothing read that has a limit`;
}

/** What a rate reads in words: "9.2 um/min ± 1.1 um/min". */
export function rateWords(rate: WearRate, unit: string, cutUnit: Unit, currency?: string): string {
  const one = unitFrom(unit, currency);
  if (!one) return '';
  const scale = one.scale / cutUnit.scale;
  const digits = (value: number): string => String(Number((value / scale).toPrecision(2)));
  return `${digits(rate.slope)} ${unit} a ${cutUnit.symbol} (${digits(rate.slope - rate.margin)} to ${digits(rate.slope + rate.margin)}, 95 %)`;
}
