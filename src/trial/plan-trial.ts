/** The plan of a trial: every combination of levels, repeated, in an order of chance; and whether the stock lasts for it. */

import { isRefusal, readContent } from '../document/index.ts';
import type { Measurand, Refusal, Trial, TrialFactor, TrialRun } from '../document/index.ts';
import { randomOrder } from '../numeric/index.ts';
import { ONE_UNIT } from '../quantity/index.ts';
import { cutUnitOf, quantityFrom, quantityText, unitFrom } from './trial-quantity.ts';

/** More runs than this are no trial any more. */
export const MOST_RUNS = 1000;

export interface PlanArgs {
  readonly title: string;
  /** None: one variant, repeated. */
  readonly factors: readonly TrialFactor[];
  /** Edges for each combination of levels. */
  readonly repeats: number;
  /** Whole number from 0 on: the same seed gives the same order (TRIAL.ORDER). */
  readonly seed: number;
  /** In the unit in which the cut is noted or any other one unit: how much there is, and what one run takes of it. */
  readonly stock?: { readonly atHand: string; readonly perRun: string };
  readonly cutUnit?: string;
  readonly measurands: readonly Measurand[];
  readonly currency?: string;
}

export interface TrialPlan {
  /** Everything of the trial but its id; without passes. */
  readonly trial: Omit<Trial, 'id'>;
  readonly combinations: number;
  readonly runs: number;
  /** What the stock gives; absent where none was stated. */
  readonly stock?: StockReading;
  /** When an edge is stopped, a sentence a measurand. */
  readonly stops: readonly string[];
  /** When what is measured, a sentence a measurand. */
  readonly measured: readonly string[];
  /** What weakens the plan, in plain words. */
  readonly cautions: readonly string[];
}

export interface StockReading {
  /** Whole runs that can be cut from it. */
  readonly runs: number;
  readonly fits: boolean;
  /** Repeats of every combination that it lasts for. */
  readonly repeats: number;
  readonly words: string;
}

function isLine(text: string): boolean {
  return text.trim() !== '' && text.length <= 200 && !/\p{Cc}/u.test(text);
}

const RESERVED: ReadonlySet<string> = new Set(['cut', 'edge', 'note', 'withdrawn']);

function twice(texts: readonly string[]): string | undefined {
  return texts.find((text, index) => texts.indexOf(text) !== index);
}

function wrongFactors(factors: readonly TrialFactor[]): Refusal | undefined {
  const double = twice(factors.map(({ name }) => name));
  if (double !== undefined) return { message: `The factor ${double} stands twice.` };
  if (factors.length > 20) return { message: 'A trial has at most 20 factors.' };
  for (const { name, levels } of factors) {
    if (!isLine(name)) return { message: 'Every factor needs a name of one line.' };
    if (levels.length === 0) return { message: `The factor ${name} has no level.` };
    if (levels.length > 100) return { message: `The factor ${name} has more than 100 levels.` };
    if (!levels.every(isLine)) return { message: `A level of ${name} is empty.` };
    const same = twice(levels);
    if (same !== undefined) return { message: `${name}: the level ${same} stands twice.` };
  }
  return undefined;
}

/** Measurands with their limits written out in full; a plain limit takes the measurand's unit. */
function readMeasurands(
  measurands: readonly Measurand[],
  currency: string | undefined,
): readonly Measurand[] | Refusal {
  if (measurands.length === 0) return { message: 'A trial measures at least one thing.' };
  if (measurands.length > 100) return { message: 'A trial measures at most 100 things.' };
  const double = twice(measurands.map(({ name }) => name));
  if (double !== undefined) return { message: `${double} is measured twice.` };
  const read: Measurand[] = [];
  for (const each of measurands) {
    const { name, unit, limit } = each;
    if (!isLine(name)) return { message: 'Every measured thing needs a name of one line.' };
    if (RESERVED.has(name))
      return { message: `"${name}" is a word of the record itself: choose another name.` };
    if (!unitFrom(unit, currency)) return { message: `${name}: the unit ${unit} is not known.` };
    if (limit === undefined || limit.trim() === '') {
      const { limit: _none, ...rest } = each;
      read.push(rest);
      continue;
    }
    const text = quantityText(
      limit,
      { what: `Limit of ${name}`, unit },
      currency === undefined ? {} : { currency },
    );
    if (typeof text !== 'string') return text;
    read.push({ ...each, limit: text });
  }
  return read;
}

/** Every combination of levels, the last factor running fastest. */
export function combinationsOf(factors: readonly TrialFactor[]): readonly (readonly number[])[] {
  return factors.reduce<readonly (readonly number[])[]>(
    (so, { levels }) => so.flatMap((each) => levels.map((_, level) => [...each, level])),
    [[]],
  );
}

const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;

/** What the stock gives for runs planned; refused where its two quantities do not belong together. */
export function readStock(
  { atHand, perRun }: { readonly atHand: string; readonly perRun: string },
  { runs, combinations }: { readonly runs: number; readonly combinations: number },
  currency?: string,
): StockReading | Refusal {
  const [all, one] = [quantityFrom(atHand, currency), quantityFrom(perRun, currency)];
  if (!all || !one)
    return { message: 'The stock at hand and what one run takes are quantities, such as 5.6 dm3.' };
  if (all.unit.kind.dimension !== one.unit.kind.dimension)
    return { message: `The stock, ${atHand}, and what one run takes, ${perRun}, are not of one dimension.` };
  if (!(one.si > 0) || !(all.si >= 0)) return { message: 'What one run takes is more than nothing.' };
  const possible = Math.min(Math.floor((all.si / one.si) * (1 + 1e-12)), 1e9);
  const fits = possible >= runs;
  const repeats = Math.floor(possible / combinations);
  const gives = `${atHand} at ${perRun} a run gives ${counted(possible, 'run')}`;
  const words = fits
    ? `${gives}; ${runs} are planned: it fits.`
    : `${gives}; ${runs} are planned: ${counted(runs - possible, 'run')} too many. ${
        repeats > 0
          ? `It lasts for ${counted(repeats, 'repeat')} of everything.`
          : 'It does not last for every combination once.'
      }`;
  return { runs: possible, fits, repeats, words };
}

function planCautions({ factors, repeats, measurands, currency }: PlanArgs): string[] {
  const found: string[] = [];
  if (repeats === 1)
    found.push('One edge each shows no scatter: no interval and no proven difference can follow from it.');
  else if (repeats === 2) found.push('Two edges each give a very wide interval; three or more say far more.');
  if (!measurands.some(({ limit }) => limit !== undefined))
    found.push('Nothing measured has a limit: an edge has no end, and no tool life can be read.');
  for (const { name, levels } of factors) {
    const kinds = new Set(levels.map((level) => readContent(level, currency).type === 'quantity'));
    if (kinds.size > 1) found.push(`${name}: some levels are quantities and some are texts.`);
  }
  return found;
}

/** Plans a trial. Refused in words: empty or doubled factors, unknown units, more than 1000 runs, a seed that is none. */
export function planTrial(args: PlanArgs): TrialPlan | Refusal {
  const { title, factors, repeats, seed, stock, cutUnit, currency } = args;
  if (!isLine(title)) return { message: 'A trial needs a title of one line.' };
  const wrong = wrongFactors(factors);
  if (wrong) return wrong;
  if (!Number.isInteger(repeats) || repeats < 1)
    return { message: 'Every combination is cut at least once.' };
  if (!Number.isInteger(seed) || seed < 0 || seed > 0xffffffff)
    return { message: 'The seed is a whole number from 0 to 4294967295, such as a date: 20260309.' };
  const measurands = readMeasurands(args.measurands, currency);
  if (isRefusal(measurands)) return measurands;
  const cut = unitFrom(cutUnitOf({ ...(cutUnit !== undefined && { cutUnit }) }), currency);
  if (!cut || cut === ONE_UNIT)
    return { message: `The cut is noted in a unit of time, length or volume; "${cutUnit}" is none.` };
  const count = factors.reduce((product, { levels }) => product * levels.length, repeats);
  if (count > MOST_RUNS) return { message: `That makes ${count} runs; ${MOST_RUNS} is the most.` };
  const combinations = combinationsOf(factors);
  const all = Array.from({ length: repeats }, () => combinations).flat();
  const runs = randomOrder(all.length, seed).map((place, index): TrialRun => ({
    id: `r${index + 1}`,
    levels: all[place] ?? [],
  }));
  const reading =
    stock && readStock(stock, { runs: runs.length, combinations: combinations.length }, currency);
  if (reading && isRefusal(reading)) return reading;
  return {
    trial: {
      title,
      factors,
      repeats,
      seed,
      runs,
      ...(stock && { stock }),
      ...(cutUnit !== undefined && { cutUnit }),
      measurands,
      passes: [],
    },
    combinations: combinations.length,
    runs: runs.length,
    ...(reading && { stock: reading }),
    stops: measurands.flatMap(({ name, limit }) =>
      limit === undefined ? [] : [`Stop the edge when ${name} reaches ${limit}.`],
    ),
    measured: measurands.map(
      ({ name, unit, when }) => `${name}${unit === '' ? '' : ` in ${unit}`}: ${when ?? 'after every pass'}`,
    ),
    cautions: [...(reading && !reading.fits ? [reading.words] : []), ...planCautions(args)],
  };
}
