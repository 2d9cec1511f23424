/** What the better variant is worth: parts of an edge, whole shifts, cost of a part, what it saves a year and from how many parts on. */

import { readContent } from '../document/index.ts';
import type { Refusal } from '../document/index.ts';
import type { Unit } from '../quantity/index.ts';
import { compareLives } from './compare-lives.ts';
import type { TrialReading } from './read-trial.ts';
import { inWords, quantityFrom } from './trial-quantity.ts';

/** A set of edges and what it costs to run; quantities as typed. */
export interface VariantCosts {
  /** Money: one set of edges. */
  readonly edgeSet: string;
  /** What one part takes of the edge's life, in the dimension in which the trial notes its cut. */
  readonly cutPerPart: string;
  /** Machine time of one part without tool changes; the cut itself where that is a time. */
  readonly timePerPart?: string;
  /** Money paid once: tool body, program, approval. */
  readonly once?: string;
}

export interface DecisionArgs {
  /** Places in the list of variants. */
  readonly a: number;
  readonly b: number;
  readonly costs: { readonly a: VariantCosts; readonly b: VariantCosts };
  /** Money an hour. */
  readonly machineRate: string;
  /** Time of one tool change. */
  readonly changeTime: string;
  readonly partsPerYear: number;
  /** Where edges are changed at the end of a shift only. */
  readonly partsPerShift?: number;
  readonly currency?: string;
}

export interface VariantCost {
  /** Whole parts that one edge makes, 0 where it does not last one part. */
  readonly partsPerEdge: number;
  /** Whole shifts that it lasts; absent where no shift was stated. */
  readonly shifts?: number;
  /** Parts after which it is changed: of whole shifts where it lasts one. */
  readonly changedAfter: number;
  /** Money for one part; Infinity where the edge does not last one. */
  readonly perPart: number;
}

export interface Decision {
  readonly a: VariantCost;
  readonly b: VariantCost;
  /** B at the ends of the interval of the ratio of lives, A as measured. */
  readonly bLow?: VariantCost;
  readonly bHigh?: VariantCost;
  /** Money a year, A less B; what is paid once is not in it. */
  readonly savesAYear: number;
  readonly savesLow?: number;
  readonly savesHigh?: number;
  /** Parts from which on B has paid for what it costs once; Infinity: never; absent ends are not known. */
  readonly paysFrom: number;
  readonly paysFromLow?: number;
  readonly paysFromHigh?: number;
  /** Money spent up to so many parts: for the figure. */
  readonly curve: readonly {
    readonly parts: number;
    readonly a: number;
    readonly b: number;
    readonly bLow?: number;
    readonly bHigh?: number;
  }[];
  readonly sentence: string;
  readonly cautions: readonly string[];
}

interface ReadCosts {
  readonly edgeSet: number;
  readonly cutPerPart: number;
  readonly timePerPart: number;
  readonly once: number;
}

interface Shared {
  readonly rate: number;
  readonly change: number;
  readonly partsPerShift: number | undefined;
}

const money = (text: string, currency: string): number | undefined => {
  const read = quantityFrom(text, currency);
  const { dimension } = read?.unit.kind ?? {};
  const isMoney = dimension?.money === 1 && dimension.time === 0;
  const plain = readContent(text, currency).type === 'number';
  return read && (isMoney || plain) && read.si >= 0 ? read.si : undefined;
};

function readCosts(costs: VariantCosts, which: string, cutUnit: Unit, currency: string): ReadCosts | Refusal {
  const edgeSet = money(costs.edgeSet, currency);
  if (edgeSet === undefined)
    return { message: `${which}: a set of edges costs money, such as 12 ${currency}.` };
  const once = money(costs.once ?? `0 ${currency}`, currency);
  if (once === undefined)
    return { message: `${which}: what is paid once is money, such as 400 ${currency}.` };
  const cut = quantityFrom(costs.cutPerPart, currency);
  if (!cut || cut.unit.kind.dimension !== cutUnit.kind.dimension || !(cut.si > 0))
    return { message: `${which}: the cut of one part is given in ${cutUnit.symbol} or a like unit.` };
  const time = costs.timePerPart === undefined ? cut : quantityFrom(costs.timePerPart, currency);
  if (!time || time.unit.kind.dimension.time !== 1 || time.unit.kind.dimension.length !== 0 || !(time.si > 0))
    return { message: `${which}: the machine time of one part is a time, such as 3.2 min.` };
  return { edgeSet, once, cutPerPart: cut.si, timePerPart: time.si };
}

/** Cost of one part with edges that last so long. Groover, Fundamentals of Modern Manufacturing, example 23.4, with whole parts. */
export function variantCost(
  life: number,
  costs: ReadCosts,
  { rate, change, partsPerShift }: Shared,
): VariantCost {
  const partsPerEdge = Math.floor((life / costs.cutPerPart) * (1 + 1e-9));
  const shifts = partsPerShift === undefined ? undefined : Math.floor(partsPerEdge / partsPerShift);
  const changedAfter = shifts && partsPerShift !== undefined ? shifts * partsPerShift : partsPerEdge;
  return {
    partsPerEdge,
    ...(shifts !== undefined && { shifts }),
    changedAfter,
    perPart:
      changedAfter < 1 ? Infinity : rate * costs.timePerPart + (rate * change + costs.edgeSet) / changedAfter,
  };
}

const three = (value: number): string => {
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.max(Math.abs(value), 1e-12))));
  return digits > 0 ? value.toFixed(Math.min(digits, 6)) : String(Number(value.toPrecision(3)));
};

function paysFrom(once: number, saving: number): number {
  if (once <= 0) return saving >= 0 ? 0 : Infinity;
  return saving > 0 ? Math.ceil(once / saving - 1e-9) : Infinity;
}

const partsWords = (parts: number): string => (parts === Infinity ? 'never' : String(parts));

function sentenceOf(
  decision: Omit<Decision, 'sentence' | 'cautions' | 'curve'>,
  titles: { readonly a: string; readonly b: string },
  partsPerYear: number,
  currency: string,
  confidence: string,
): string {
  const { savesAYear, savesLow, savesHigh, bLow } = decision;
  if (decision.b.perPart === Infinity) return `${titles.b} does not last one part.`;
  if (decision.a.perPart === Infinity) return `${titles.a} does not last one part, ${titles.b} does.`;
  const amount = `${three(Math.abs(savesAYear))} ${currency} a year at ${partsPerYear} parts`;
  const verb = savesAYear >= 0 ? 'saves' : 'costs';
  const more = savesAYear >= 0 ? '' : ' more';
  if (savesLow === undefined || savesHigh === undefined) {
    const why =
      bLow?.perPart === Infinity
        ? 'at the low end of its life it does not last one part'
        : 'how certain that is can not be said';
    return `As measured ${titles.b} ${verb} ${amount}${more}; ${why}.`;
  }
  const span = `${confidence}: ${three(savesLow)} to ${three(savesHigh)} ${currency}`;
  const start =
    savesLow < 0 && savesHigh > 0
      ? `It is not proven that ${titles.b} saves anything: as measured it ${verb}`
      : `${titles.b} ${verb}`;
  const { paysFrom: from, paysFromLow = from, paysFromHigh = from } = decision;
  const pays =
    from === 0
      ? ''
      : `; it pays from ${partsWords(from)} parts on (${partsWords(paysFromLow)} to ${partsWords(paysFromHigh)})`;
  return `${start} ${amount}${more} (${span})${from === Infinity ? '; it never pays for what it costs once' : pays}.`;
}

/** What B is worth beside A. Refused in words where a quantity is missing or of another dimension, or no life is known. */
export function decide(reading: TrialReading, args: DecisionArgs): Decision | Refusal {
  const { currency = 'EUR', partsPerYear, partsPerShift } = args;
  const [a, b] = [reading.variants[args.a], reading.variants[args.b]];
  if (!a || !b || args.a === args.b) return { message: 'Choose two variants.' };
  const rate = quantityFrom(args.machineRate, currency);
  if (
    !rate ||
    rate.unit.kind.dimension.money !== 1 ||
    rate.unit.kind.dimension.time !== -1 ||
    !(rate.si >= 0)
  )
    return { message: `The machine costs money an hour, such as 80 ${currency}/h.` };
  const change = quantityFrom(args.changeTime, currency);
  if (
    !change ||
    change.unit.kind.dimension.time !== 1 ||
    change.unit.kind.dimension.length !== 0 ||
    change.si < 0
  )
    return { message: 'A tool change takes a time, such as 1.5 min.' };
  if (!(partsPerYear > 0 && Number.isFinite(partsPerYear)))
    return { message: 'Say how many parts are made in a year.' };
  if (partsPerShift !== undefined && !(Number.isInteger(partsPerShift) && partsPerShift > 0))
    return { message: 'Parts a shift are a whole number.' };
  const costsA = readCosts(args.costs.a, a.title, reading.cutUnit, currency);
  if ('message' in costsA) return costsA;
  const costsB = readCosts(args.costs.b, b.title, reading.cutUnit, currency);
  if ('message' in costsB) return costsB;
  const [lifeA, lifeB] = [a.life.life, b.life.life];
  if (lifeA === undefined) return { message: `${a.title}: ${a.life.words}.` };
  if (lifeB === undefined) return { message: `${b.title}: ${b.life.words}.` };
  const shared: Shared = { rate: rate.si, change: change.si, partsPerShift };
  const { low, high } = compareLives(a.lives, b.lives, reading.cutUnit);
  const ratio = low !== undefined && high !== undefined && { low, high };
  const at = (life: number): VariantCost => variantCost(life, costsB, shared);
  const costA = variantCost(lifeA, costsA, shared);
  const costB = at(lifeB);
  const ends = ratio && { bLow: at(lifeA * ratio.low), bHigh: at(lifeA * ratio.high) };
  const saves = (cost: VariantCost): number => costA.perPart - cost.perPart;
  const known = ends && Number.isFinite(ends.bLow.perPart) && Number.isFinite(costA.perPart);
  const once = costsB.once - costsA.once;
  const result = {
    a: costA,
    b: costB,
    ...ends,
    savesAYear: saves(costB) * partsPerYear,
    paysFrom: paysFrom(once, saves(costB)),
    ...(known && {
      savesLow: saves(ends.bLow) * partsPerYear,
      savesHigh: saves(ends.bHigh) * partsPerYear,
      paysFromLow: paysFrom(once, saves(ends.bHigh)),
      paysFromHigh: paysFrom(once, saves(ends.bLow)),
    }),
  };
  const curve = Array.from({ length: 21 }, (_, step) => {
    const parts = (partsPerYear * step) / 20;
    return {
      parts,
      a: costsA.once + costA.perPart * parts,
      b: costsB.once + costB.perPart * parts,
      ...(known && {
        bLow: costsB.once + ends.bHigh.perPart * parts,
        bHigh: costsB.once + ends.bLow.perPart * parts,
      }),
    };
  });
  const cautions: string[] = [];
  for (const [title, life, cost] of [
    [a.title, lifeA, costA],
    [b.title, lifeB, costB],
  ] as const) {
    if (cost.shifts === 0)
      cautions.push(
        `${title} does not last a whole shift: ${inWords(life, reading.cutUnit)} is ${cost.partsPerEdge} parts.`,
      );
  }
  if (!ratio)
    cautions.push('How far the lives scatter is not known: the saving is one number without an interval.');
  else
    cautions.push(
      'The interval is that of the ratio of lives; prices, times and the life of the first variant are taken as they stand.',
    );
  return {
    ...result,
    curve,
    sentence: sentenceOf(result, { a: a.title, b: b.title }, partsPerYear, currency, '95 %'),
    cautions,
  };
}
