/** Keeping a trial's record: runs planned, passes recorded. What was recorded is never lost: see correct-pass.ts. */

import {
  freshPartId,
  isRefusal,
  PART_LIMITS,
  partsOf,
  putPart,
  removeParts,
  transactionTo,
  withPart,
} from '../document/index.ts';
import type {
  Notebook,
  Photograph,
  Refusal,
  Transaction,
  Trial,
  TrialPass,
  TypingLocale,
} from '../document/index.ts';
import { planTrial } from './plan-trial.ts';
import type { PlanArgs } from './plan-trial.ts';
import { cutUnitOf, measurandNamed, quantityText } from './trial-quantity.ts';

export const MOST_PASSES = 10_000;

/** The trial with this id. */
export function trialOf(notebook: Notebook, id: string): Trial | undefined {
  return partsOf(notebook, 'trials').find((trial) => trial.id === id);
}

/** Puts a planned trial into the notebook. */
export function addTrial(notebook: Notebook, args: Omit<PlanArgs, 'currency'>): Transaction | Refusal {
  const plan = planTrial({ ...args, currency: notebook.currency });
  if (isRefusal(plan)) return plan;
  const record = { id: freshPartId(notebook, 'trials'), ...plan.trial };
  return putPart(notebook, { part: 'trials', record, description: `plan the trial ${record.title}` });
}

/** Plans a trial anew as long as nothing was recorded; after that only its title changes. */
export function changeTrial(
  notebook: Notebook,
  { trial: id, ...args }: Omit<PlanArgs, 'currency'> & { readonly trial: string },
): Transaction | Refusal {
  const trial = trialOf(notebook, id);
  if (!trial) return { message: 'This trial is not in the notebook.' };
  const plan = planTrial({ ...args, currency: notebook.currency });
  if (isRefusal(plan)) return plan;
  if (trial.passes.length > 0)
    return {
      message: `${trial.passes.length} passes are recorded: the plan stays. Plan another trial instead.`,
    };
  const record = { ...(trial.kept && { kept: trial.kept }), id, ...plan.trial };
  return putPart(notebook, { part: 'trials', record, description: `plan the trial ${args.title} anew` });
}

/** Removes a trial whole; undo brings it back. The description says how much goes. */
export function removeTrial(
  notebook: Notebook,
  { trial: id }: { readonly trial: string },
): Transaction | Refusal {
  const trial = trialOf(notebook, id);
  if (!trial) return { message: 'This trial is not in the notebook.' };
  const { length } = trial.passes;
  const passes = length === 0 ? '' : ` with ${length} recorded ${length === 1 ? 'pass' : 'passes'}`;
  const removed = removeParts(notebook, {
    part: 'trials',
    ids: [id],
    description: `remove the trial ${trial.title}${passes}`,
  });
  if (isRefusal(removed) || length === 0) return removed;
  return { ...removed, notice: `The trial ${trial.title} is removed${passes}; undo brings it back.` };
}

export interface PassArgs {
  readonly trial: string;
  /** Id of the run; undefined for a cut outside the plan is not possible: plan a run for it. */
  readonly run: string;
  /** As marked on the edge. */
  readonly edge: string;
  /** Of this pass alone, as typed; a plain number is in the trial's cut unit. */
  readonly cut: string;
  /** As typed; left out where nothing was measured. */
  readonly values: readonly { readonly measurand: string; readonly content: string }[];
  readonly note?: string;
  readonly by: string;
  /** ISO 8601. */
  readonly at: string;
  readonly photograph?: Omit<Photograph, 'id'>;
  /** How numbers are typed here. */
  readonly locale?: Omit<TypingLocale, 'currency'>;
}

/** The reading as the record keeps it, or why it can not be one. */
export function passText(trial: Trial, what: string, typed: string, locale: TypingLocale): string | Refusal {
  if (what === 'cut') {
    const text = quantityText(typed, { what: 'Cut', unit: cutUnitOf(trial) }, locale);
    return typeof text === 'string' && text.startsWith('-')
      ? { message: 'A cut is not less than nothing.' }
      : text;
  }
  const measurand = measurandNamed(trial, what);
  if (!measurand) return { message: `${what} is not measured in this trial.` };
  return quantityText(typed, { what, unit: measurand.unit }, locale);
}

export const isShortLine = (text: string): boolean =>
  text.trim() !== '' && text.length <= 200 && !/\p{Cc}/u.test(text);

function freshPassId({ passes }: Trial): string {
  return `p${Math.max(0, ...passes.map(({ id }) => Number(/^p(\d+)$/.exec(id)?.[1] ?? 0))) + 1}`;
}

/** The notebook with a photograph more, and its id. */
export function withPhotograph(
  notebook: Notebook,
  photograph: Omit<Photograph, 'id'>,
): { readonly notebook: Notebook; readonly id: string } | Refusal {
  if (partsOf(notebook, 'photographs').length >= PART_LIMITS.photographs)
    return { message: `The notebook has ${PART_LIMITS.photographs} photographs, the most it takes.` };
  if (photograph.data.length > PART_LIMITS.photographText)
    return { message: 'The photograph is too large: scale it down first.' };
  const id = freshPartId(notebook, 'photographs');
  return { notebook: withPart(notebook, 'photographs', { ...photograph, id }), id };
}

/** Records a pass. Refused in words: an unknown run, no edge, no cut, a reading that can not be read, nobody who cut it. */
export function recordPass(notebook: Notebook, args: PassArgs): Transaction | Refusal {
  const trial = trialOf(notebook, args.trial);
  if (!trial) return { message: 'This trial is not in the notebook.' };
  if (!trial.runs.some(({ id }) => id === args.run)) return { message: 'This run is not in the plan.' };
  if (!isShortLine(args.edge)) return { message: 'Say which edge was cutting, as it is marked.' };
  if (!isShortLine(args.by)) return { message: 'Say who cut: initials will do.' };
  if (trial.passes.length >= MOST_PASSES) return { message: `A trial keeps at most ${MOST_PASSES} passes.` };
  const locale = { ...args.locale, currency: notebook.currency };
  const cut = passText(trial, 'cut', args.cut, locale);
  if (typeof cut !== 'string') return cut;
  const values: { measurand: string; content: string }[] = [];
  for (const { measurand, content: typed } of args.values) {
    if (typed.trim() === '') continue;
    if (values.some((each) => each.measurand === measurand)) return { message: `${measurand} stands twice.` };
    const content = passText(trial, measurand, typed, locale);
    if (typeof content !== 'string') return content;
    values.push({ measurand, content });
  }
  const placed = args.photograph && withPhotograph(notebook, args.photograph);
  if (placed && isRefusal(placed)) return placed;
  const pass: TrialPass = {
    id: freshPassId(trial),
    run: args.run,
    edge: args.edge.trim(),
    cut,
    values,
    ...(args.note !== undefined && args.note.trim() !== '' && { note: args.note }),
    by: args.by.trim(),
    at: args.at,
    ...(placed && { photograph: placed.id }),
  };
  const after = withPart(placed?.notebook ?? notebook, 'trials', {
    ...trial,
    passes: [...trial.passes, pass],
  });
  const title = `record pass ${trial.passes.length + 1} of ${trial.title}`;
  return transactionTo(notebook, after, title);
}
