/** A trial's plan while it is written: texts of the fields, and what the planner makes of them. */

import type { Measurand, Notebook, Refusal, Trial } from '../document/index.ts';
import { isRefusal } from '../document/index.ts';
import { cutUnitOf, planTrial } from '../trial/index.ts';
import type { PlanArgs, TrialPlan } from '../trial/index.ts';
import { storedText, editedText } from './number-locale.ts';

export interface FactorDraft {
  readonly name: string;
  /** Parted by semicolons. */
  readonly levels: string;
}

export interface PlanDraft {
  readonly title: string;
  readonly factors: readonly FactorDraft[];
  readonly repeats: string;
  readonly seed: string;
  readonly cutUnit: string;
  readonly measurands: readonly Required<Measurand>[];
  readonly atHand: string;
  readonly perRun: string;
}

export const NO_FACTOR: FactorDraft = { name: '', levels: '' };
export const NO_MEASURAND: Required<Measurand> = { name: '', unit: 'mm', limit: '', when: '' };

/** Units in which the cut of a pass may be noted. */
export const CUT_UNITS = ['min', 's', 'm', 'mm', 'cm3'] as const;

/** A plan to begin with: two edges to be compared by their wear. Its limit is the usual one of ISO 3685. */
export function freshDraft(now: number): PlanDraft {
  const day = new Date(now).toISOString().slice(0, 10);
  return {
    title: `Trial ${day}`,
    factors: [{ name: 'geometry', levels: 'A; B' }],
    repeats: '3',
    seed: day.replaceAll('-', ''),
    cutUnit: 'min',
    measurands: [{ name: 'VB', unit: 'mm', limit: editedText('0.3 mm', ''), when: 'after every pass' }],
    atHand: '',
    perRun: '',
  };
}

export function draftOf(trial: Trial, currency: string): PlanDraft {
  const shown = (text: string): string => editedText(text, currency);
  return {
    title: trial.title,
    factors: trial.factors.map(({ name, levels }) => ({ name, levels: levels.map(shown).join('; ') })),
    repeats: String(trial.repeats),
    seed: String(trial.seed),
    cutUnit: cutUnitOf(trial),
    measurands: trial.measurands.map(({ name, unit, limit = '', when = '' }) => ({
      name,
      unit,
      limit: shown(limit),
      when,
    })),
    atHand: shown(trial.stock?.atHand ?? ''),
    perRun: shown(trial.stock?.perRun ?? ''),
  };
}

const whole = (text: string): number => (/^\s*\d{1,10}\s*$/.test(text) ? Number(text) : Number.NaN);

/** What the planner is asked; empty lines are passed over. */
export function planArgs(draft: PlanDraft, { currency }: Pick<Notebook, 'currency'>): PlanArgs {
  const stored = (typed: string): string => storedText(typed.trim(), currency);
  const { atHand, perRun } = draft;
  return {
    title: draft.title.trim(),
    factors: draft.factors
      .filter(({ name, levels }) => name.trim() !== '' || levels.trim() !== '')
      .map(({ name, levels }) => ({
        name: name.trim(),
        levels: levels
          .split(';')
          .map(stored)
          .filter((level) => level !== ''),
      })),
    repeats: whole(draft.repeats),
    seed: whole(draft.seed),
    cutUnit: draft.cutUnit,
    measurands: draft.measurands
      .filter(({ name }) => name.trim() !== '')
      .map(({ name, unit, limit, when }) => ({
        name: name.trim(),
        unit: unit.trim(),
        ...(limit.trim() !== '' && { limit: stored(limit) }),
        ...(when.trim() !== '' && { when: when.trim() }),
      })),
    ...((atHand.trim() !== '' || perRun.trim() !== '') && {
      stock: { atHand: stored(atHand), perRun: stored(perRun) },
    }),
    currency,
  };
}

/** The plan, or why there is none yet. */
export function planOf(draft: PlanDraft, notebook: Notebook): TrialPlan | Refusal {
  return planTrial(planArgs(draft, notebook));
}

export const isPlan = (plan: TrialPlan | Refusal): plan is TrialPlan => !isRefusal(plan);
