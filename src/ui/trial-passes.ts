/** A trial's record as the screen reads it: which run is cut now, on which edge, how far it is. */

import { readContent } from '../document/index.ts';
import type { Measurand, Notebook, Trial, TrialPass, TrialRun } from '../document/index.ts';
import { fromSI, isUnknownUnit, parseUnit } from '../quantity/index.ts';
import { cutUnitOf } from '../trial/index.ts';
import { quantityText } from './machine-cells.ts';

/** "2 · B, 260 m/min": place in the order of cutting, then its levels. */
export function runWords(trial: Trial, run: TrialRun): string {
  const levels = trial.factors.map(({ levels: all }, k) => all[run.levels[k] ?? 0] ?? '');
  return [`Run ${trial.runs.indexOf(run) + 1}`, levels.join(', ')].filter((text) => text !== '').join(' · ');
}

export const runOf = (trial: Trial, id: string): TrialRun | undefined =>
  trial.runs.find((run) => run.id === id);

const counting = ({ passes }: Trial): readonly TrialPass[] =>
  passes.filter(({ withdrawn }) => withdrawn === undefined);

const siOf = (text: string, currency: string): number | undefined => {
  const read = readContent(text, currency);
  return read.type === 'quantity' || read.type === 'number' ? read.si : undefined;
};

/** A reading of this pass is at its limit or beyond. */
export function passesLimit({ name, limit }: Measurand, pass: TrialPass, currency: string): boolean {
  const content = pass.values.find(({ measurand }) => measurand === name)?.content;
  const [most, value] = [limit, content].map((text) =>
    text === undefined ? undefined : siOf(text, currency),
  );
  return most !== undefined && value !== undefined && value >= most;
}

/** The measurand that has reached its limit on this edge, in words; undefined while it may go on. */
export function limitReached(trial: Trial, run: string, edge: string, currency: string): string | undefined {
  const passes = counting(trial).filter((pass) => pass.run === run && pass.edge === edge);
  const reached = trial.measurands.find((each) => passes.some((pass) => passesLimit(each, pass, currency)));
  return reached && `${reached.name} has reached ${reached.limit}`;
}

/** How long an edge has cut so far, in the trial's unit: "18 min". */
export function cutSoFar(trial: Trial, run: string, edge: string, currency: string): string {
  const unit = parseUnit(cutUnitOf(trial), currency);
  if (isUnknownUnit(unit)) return '';
  const sum = counting(trial)
    .filter((pass) => pass.run === run && pass.edge === edge)
    .reduce((total, { cut }) => total + (siOf(cut, currency) ?? 0), 0);
  const { number, unit: shown } = quantityText(
    `${Number(fromSI(sum, unit).toPrecision(6))} ${unit.symbol}`,
    currency,
  );
  return `${number} ${shown}`;
}

/** Run and edge of the pass that comes next: the edge in hand until a limit is reached, then the next run of the order. */
export function nextPass(
  trial: Trial,
  currency: string,
): { readonly run: string; readonly edge: string; readonly ended?: string } {
  const last = counting(trial).at(-1);
  const ended = last && limitReached(trial, last.run, last.edge, currency);
  if (last && ended === undefined) return { run: last.run, edge: last.edge };
  const cut = new Set(counting(trial).map(({ run }) => run));
  const at = last ? trial.runs.findIndex(({ id }) => id === last.run) : -1;
  const order = [...trial.runs.slice(at + 1), ...trial.runs.slice(0, at + 1)];
  const next = order.find(({ id }) => !cut.has(id)) ?? order[0];
  const run = next?.id ?? '';
  const edge = last ? freshEdge(trial) : '1';
  return { run, edge, ...(last && ended !== undefined && { ended: `Edge ${last.edge}: ${ended}` }) };
}

/** A number no edge of the record has. */
function freshEdge({ passes }: Trial): string {
  const used = new Set(passes.map(({ edge }) => edge));
  let number = used.size + 1;
  while (used.has(String(number))) number += 1;
  return String(number);
}

/** Runs that have a pass. */
export const runsBegun = (trial: Trial): number => new Set(counting(trial).map(({ run }) => run)).size;

/** Name of the kind whose units the keypad offers. */
export function kindNameOf(unit: string, { currency }: Pick<Notebook, 'currency'>): string {
  const parsed = parseUnit(unit === '' ? '1' : unit, currency);
  return isUnknownUnit(parsed) ? 'number' : parsed.kind.name;
}
