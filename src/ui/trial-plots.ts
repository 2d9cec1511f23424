/** The plots of a trial as plain data: wear over cut with the limit, money over parts with the interval. */

import type { Measurand, Notebook } from '../document/index.ts';
import { fromSI, isUnknownUnit, ONE_UNIT, parseUnit, unitLabel } from '../quantity/index.ts';
import type { Unit } from '../quantity/index.ts';
import type { Decision, TrialReading } from '../trial/index.ts';
import type { PlotData } from './figures/plot-data.ts';

const unitOf = (text: string, currency: string): Unit => {
  const unit = parseUnit(text === '' ? '1' : text, currency);
  return isUnknownUnit(unit) ? ONE_UNIT : unit;
};

/** Curves of one measurand, an edge each, ordered by variant; undefined where nothing was read. */
export function wearPlot(
  reading: TrialReading,
  { name, unit: text }: Measurand,
  { currency }: Pick<Notebook, 'currency'>,
): PlotData | undefined {
  const unit = unitOf(text, currency);
  const { cutUnit, variants } = reading;
  const edges = reading.edges.toSorted((a, b) => a.variant - b.variant);
  const curves = edges.flatMap((edge) => {
    const curve = edge.curves.find(({ measurand }) => measurand === name);
    return curve && curve.cuts.length > 0 ? [{ edge, curve }] : [];
  });
  if (curves.length === 0) return undefined;
  const limit = curves.find(({ curve }) => curve.limit !== undefined)?.curve.limit;
  return {
    x: { label: 'cut', unit: unitLabel(cutUnit), logarithmic: false },
    y: { label: name, unit: unitLabel(unit), logarithmic: false },
    series: curves.map(({ edge, curve }) => ({
      label: `${variants[edge.variant]?.title ?? ''}, edge ${edge.edge}`,
      mark: 'line',
      points: curve.cuts.map((cut, k) => ({
        x: fromSI(cut, cutUnit),
        y: fromSI(curve.values[k] ?? 0, unit),
      })),
    })),
    levels: limit === undefined ? [] : [{ words: `limit of ${name}`, value: fromSI(limit, unit), axis: 'y' }],
    troubles: [],
  };
}

/** What was spent up to so many parts, of both variants; B with its interval. */
export function costPlot(
  { curve, paysFrom }: Decision,
  titles: { readonly a: string; readonly b: string },
  currency: string,
): PlotData {
  const band = curve.flatMap(({ parts, bLow, bHigh }) =>
    bLow === undefined || bHigh === undefined ? [] : [{ x: parts, y: bLow, to: bHigh }],
  );
  const last = curve.at(-1)?.parts ?? 0;
  return {
    x: { label: 'parts', unit: '', logarithmic: false },
    y: { label: 'spent', unit: currency, logarithmic: false },
    series: [
      ...(band.length > 0 ? [{ label: `${titles.b}, 95 %`, mark: 'band' as const, points: band }] : []),
      { label: titles.a, mark: 'line', points: curve.map(({ parts, a }) => ({ x: parts, y: a })) },
      { label: titles.b, mark: 'line', points: curve.map(({ parts, b }) => ({ x: parts, y: b })) },
    ],
    levels:
      paysFrom > 0 && paysFrom <= last ? [{ words: 'it pays from here on', value: paysFrom, axis: 'x' }] : [],
    troubles: [],
  };
}
