/** A pass being written down, and the one committed edit that takes it into the record. */

import { apply, isRefusal, transactionTo } from '../document/index.ts';
import type { Notebook, Photograph, Refusal, Transaction, Trial, TrialPass } from '../document/index.ts';
import { attachPhotograph, correctPass, cutUnitOf, passValue, recordPass } from '../trial/index.ts';
import type { EditedText } from './keypad-press.ts';
import { editedText, typing } from './number-locale.ts';
import { cutSoFar, nextPass } from './trial-passes.ts';

/** Key of the field that takes what was cut; the others are "edge", "note" and the measurands' names. */
export const CUT = 'cut';

export interface PassDraft {
  /** Id of its trial. */
  readonly trial: string;
  /** Present: this pass is corrected. */
  readonly pass: TrialPass | undefined;
  readonly run: string;
  /** Why the edge before was ended, in words. */
  readonly ended: string | undefined;
  readonly texts: ReadonlyMap<string, string>;
  readonly photograph: Omit<Photograph, 'id'> | undefined;
  /** The number field in hand. */
  readonly open: { readonly key: string; readonly edited: EditedText } | undefined;
  readonly refusal: { readonly key: string; readonly words: string } | undefined;
}

/** A field that takes a number: the cut, or what is measured. */
export interface NumberField {
  readonly key: string;
  readonly label: string;
  readonly about: string;
  readonly unit: string;
}

const measurandNames = ({ measurands }: Trial): readonly string[] => measurands.map(({ name }) => name);

/** The draft of the pass that comes next, or of one that is to be corrected. */
export function passDraft(trial: Trial, pass: TrialPass | undefined, currency: string): PassDraft {
  const next = pass ? { run: pass.run, edge: pass.edge } : nextPass(trial, currency);
  const texts = new Map([['edge', next.edge]]);
  if (pass)
    for (const key of [CUT, 'note', ...measurandNames(trial)])
      texts.set(key, editedText(passValue(pass, key), currency));
  return {
    trial: trial.id,
    pass,
    run: next.run,
    ended: 'ended' in next ? next.ended : undefined,
    texts,
    photograph: undefined,
    open: undefined,
    refusal: undefined,
  };
}

export function numberFields(trial: Trial, draft: PassDraft, currency: string): readonly NumberField[] {
  const so = cutSoFar(trial, draft.run, draft.texts.get('edge') ?? '', currency);
  const about = draft.pass ? '' : `this edge so far ${so}`;
  return [
    { key: CUT, label: 'Cut in this pass', about, unit: cutUnitOf(trial) },
    ...trial.measurands.map(({ name, unit, limit, when }) => ({
      key: name,
      label: name,
      about: [limit === undefined ? '' : `stop at ${editedText(limit, currency)}`, when ?? '']
        .filter((text) => text !== '')
        .join(' · '),
      unit,
    })),
  ];
}

/** The draft with another text in a field; what was wrong with it is forgotten. */
export function withText(draft: PassDraft, key: string, text: string): PassDraft {
  const refusal = draft.refusal?.key === key ? undefined : draft.refusal;
  return { ...draft, texts: new Map([...draft.texts, [key, text]]), refusal };
}

interface Signed {
  readonly by: string;
  /** ISO 8601. */
  readonly at: string;
}

/** The edit, or why not, with the field that is to blame. */
export interface PassAnswer {
  readonly answer: Transaction | Refusal;
  readonly key: string;
}

export function passAnswer(notebook: Notebook, trial: Trial, draft: PassDraft, signed: Signed): PassAnswer {
  if (draft.pass) return correction(notebook, trial, draft.pass, draft, signed);
  const { texts, run, photograph } = draft;
  const answer = recordPass(notebook, {
    trial: trial.id,
    run,
    edge: texts.get('edge') ?? '',
    cut: texts.get(CUT) ?? '',
    values: measurandNames(trial).map((name) => ({ measurand: name, content: texts.get(name) ?? '' })),
    note: texts.get('note') ?? '',
    ...signed,
    ...(photograph && { photograph }),
    locale: typing(),
  });
  return { answer, key: isRefusal(answer) ? keyOf(answer.message, trial) : CUT };
}

/** The field a refusal is about: its name stands at the beginning of the sentence. */
const keyOf = (words: string, trial: Trial): string =>
  measurandNames(trial).find((name) => words.startsWith(`${name}:`)) ??
  (words.startsWith('Say which edge') ? 'edge' : CUT);

function correction(
  notebook: Notebook,
  trial: Trial,
  pass: TrialPass,
  { texts, photograph }: PassDraft,
  signed: Signed,
): PassAnswer {
  let after = notebook;
  const place = { trial: trial.id, pass: pass.id };
  for (const what of ['edge', CUT, 'note', ...measurandNames(trial)]) {
    const typed = texts.get(what) ?? '';
    if (typed === editedText(passValue(pass, what), notebook.currency)) continue;
    const answer = correctPass(after, { ...place, ...signed, what, typed, locale: typing() });
    if (isRefusal(answer)) return { answer, key: what };
    after = apply(after, answer.changes);
  }
  if (photograph) {
    const answer = attachPhotograph(after, { ...place, photograph });
    if (isRefusal(answer)) return { answer, key: 'photograph' };
    after = apply(after, answer.changes);
  }
  return { answer: transactionTo(notebook, after, `correct a pass of ${trial.title}`), key: CUT };
}
