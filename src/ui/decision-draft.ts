/** What a decision is asked with: texts as typed, kept on this device for each trial. */

import type { Notebook } from '../document/index.ts';
import type { DecisionArgs, TrialReading, VariantCosts } from '../trial/index.ts';
import { storedText, editedText } from './number-locale.ts';

export interface CostDraft {
  readonly edgeSet: string;
  readonly cutPerPart: string;
  readonly timePerPart: string;
  readonly once: string;
}

export interface DecisionDraft {
  readonly a: string;
  readonly b: string;
  readonly costsA: CostDraft;
  readonly costsB: CostDraft;
  readonly machineRate: string;
  readonly changeTime: string;
  readonly partsPerYear: string;
  readonly partsPerShift: string;
}

const NO_COST: CostDraft = { edgeSet: '', cutPerPart: '', timePerPart: '', once: '' };

const keyOf = ({ id }: Notebook, trial: string): string => `decision ${id} ${trial}`;

const isDraft = (value: unknown): value is DecisionDraft =>
  typeof value === 'object' &&
  value !== null &&
  'costsA' in value &&
  'costsB' in value &&
  'machineRate' in value;

/** Empty but for what most shops would type: a change takes one minute (common practice, no source). */
export function decisionDraft(
  notebook: Notebook,
  trial: string,
  { comparisons }: Pick<TrialReading, 'comparisons'>,
): DecisionDraft {
  const [first] = comparisons;
  const fresh: DecisionDraft = {
    a: String(first?.a ?? 0),
    b: String(first?.b ?? 1),
    costsA: NO_COST,
    costsB: NO_COST,
    machineRate: '',
    changeTime: editedText('1 min', notebook.currency),
    partsPerYear: '',
    partsPerShift: '',
  };
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(notebook, trial)) ?? 'null');
    return isDraft(kept) ? { ...fresh, ...kept } : fresh;
  } catch {
    return fresh;
  }
}

export function keepDecision(notebook: Notebook, trial: string, draft: DecisionDraft): void {
  try {
    localStorage.setItem(keyOf(notebook, trial), JSON.stringify(draft));
  } catch {
    // A window without storage keeps it until the leaf is closed.
  }
}

/** True while what is needed at least has not been typed. */
export const isEmpty = ({ machineRate, partsPerYear, costsA, costsB }: DecisionDraft): boolean =>
  [machineRate, partsPerYear, costsA.edgeSet, costsB.edgeSet, costsA.cutPerPart].some(
    (text) => text.trim() === '',
  );

export function decisionArgs(draft: DecisionDraft, { currency }: Pick<Notebook, 'currency'>): DecisionArgs {
  const stored = (typed: string): string => storedText(typed.trim(), currency);
  const number = (typed: string): number => Number(stored(typed));
  const costs = (own: CostDraft, other: CostDraft): VariantCosts => ({
    edgeSet: stored(own.edgeSet),
    // What is left out is as with the other one.
    cutPerPart: stored(own.cutPerPart.trim() === '' ? other.cutPerPart : own.cutPerPart),
    ...(own.timePerPart.trim() !== '' && { timePerPart: stored(own.timePerPart) }),
    ...(own.once.trim() !== '' && { once: stored(own.once) }),
  });
  return {
    a: Number(draft.a),
    b: Number(draft.b),
    costs: { a: costs(draft.costsA, draft.costsB), b: costs(draft.costsB, draft.costsA) },
    machineRate: stored(draft.machineRate),
    changeTime: stored(draft.changeTime),
    partsPerYear: number(draft.partsPerYear),
    ...(draft.partsPerShift.trim() !== '' && { partsPerShift: number(draft.partsPerShift) }),
    currency,
  };
}
