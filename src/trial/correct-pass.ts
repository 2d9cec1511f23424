/** Correcting a recorded pass: what stood there first stays beside it, with who and when. */

import { isRefusal, partsOf, transactionTo, withPart } from '../document/index.ts';
import type {
  Notebook,
  Photograph,
  Refusal,
  Transaction,
  Trial,
  TrialPass,
  TypingLocale,
} from '../document/index.ts';
import { isShortLine, passText, trialOf, withPhotograph } from './trial-commands.ts';

interface PassPlace {
  readonly trial: string;
  readonly pass: string;
}

interface Signed {
  readonly by: string;
  /** ISO 8601. */
  readonly at: string;
}

function placed(
  notebook: Notebook,
  { trial: id, pass: passId }: PassPlace,
): { trial: Trial; pass: TrialPass } | Refusal {
  const trial = trialOf(notebook, id);
  const pass = trial?.passes.find((each) => each.id === passId);
  return trial && pass ? { trial, pass } : { message: 'This pass is not in the record.' };
}

/** What stands in a pass under "cut", "edge", "note", "withdrawn" or a measurand's name; "" where nothing does. */
export function passValue(pass: TrialPass, what: string): string {
  if (what === 'cut') return pass.cut;
  if (what === 'edge') return pass.edge;
  if (what === 'note') return pass.note ?? '';
  if (what === 'withdrawn') return pass.withdrawn ?? '';
  return pass.values.find(({ measurand }) => measurand === what)?.content ?? '';
}

/** What stood there first; undefined where it was never corrected. */
export function firstValue({ corrections }: TrialPass, what: string): string | undefined {
  return corrections?.find((each) => each.what === what)?.was;
}

function withValue(pass: TrialPass, what: string, value: string): TrialPass {
  if (what === 'cut') return { ...pass, cut: value };
  if (what === 'edge') return { ...pass, edge: value };
  if (what === 'note' || what === 'withdrawn') {
    const { [what]: _was, ...rest } = pass;
    return value === '' ? rest : { ...rest, [what]: value };
  }
  const others = pass.values.filter(({ measurand }) => measurand !== what);
  if (value === '') return { ...pass, values: others };
  const at = pass.values.findIndex(({ measurand }) => measurand === what);
  const entry = { measurand: what, content: value };
  return { ...pass, values: at < 0 ? [...others, entry] : pass.values.with(at, entry) };
}

function corrected(
  notebook: Notebook,
  { trial, pass }: { trial: Trial; pass: TrialPass },
  { what, value, by, at }: { readonly what: string; readonly value: string } & Signed,
  description: string,
): Transaction | Refusal {
  if (!isShortLine(by)) return { message: 'Say who corrects: initials will do.' };
  const was = passValue(pass, what);
  if (was === value) return { changes: [], description, origin: 'user' };
  const corrections = [...(pass.corrections ?? []), { at, by: by.trim(), what, was }];
  if (corrections.length > 1000) return { message: 'A pass keeps at most 1000 corrections.' };
  const next = { ...withValue(pass, what, value), corrections };
  const passes = trial.passes.map((each) => (each.id === pass.id ? next : each));
  return transactionTo(notebook, withPart(notebook, 'trials', { ...trial, passes }), description);
}

export interface CorrectionArgs extends PassPlace, Signed {
  /** "cut", "edge", "note" or a measurand's name. */
  readonly what: string;
  /** As typed; empty takes a reading or a note away (its first value stays in the corrections). */
  readonly typed: string;
  readonly locale?: Omit<TypingLocale, 'currency'>;
}

/** Corrects one entry of a pass. What stood there goes to the corrections. */
export function correctPass(notebook: Notebook, args: CorrectionArgs): Transaction | Refusal {
  const place = placed(notebook, args);
  if (isRefusal(place)) return place;
  const { what, typed, by, at } = args;
  const description = `correct ${what} of a pass of ${place.trial.title}`;
  const sign = { what, by, at };
  if (what === 'note') return corrected(notebook, place, { ...sign, value: typed.trim() }, description);
  if (what === 'withdrawn') return { message: 'A pass is withdrawn with a reason.' };
  if (what === 'edge') {
    if (!isShortLine(typed)) return { message: 'Say which edge was cutting, as it is marked.' };
    return corrected(notebook, place, { ...sign, value: typed.trim() }, description);
  }
  if (typed.trim() === '' && what !== 'cut')
    return corrected(notebook, place, { ...sign, value: '' }, description);
  const value = passText(place.trial, what, typed, { ...args.locale, currency: notebook.currency });
  if (typeof value !== 'string') return value;
  return corrected(notebook, place, { ...sign, value }, description);
}

/** Strikes a pass through with a reason: it stays in the record and no longer counts. An empty reason takes the strike back. */
export function withdrawPass(
  notebook: Notebook,
  args: PassPlace & Signed & { readonly reason: string },
): Transaction | Refusal {
  const place = placed(notebook, args);
  if (isRefusal(place)) return place;
  const reason = args.reason.trim();
  if (reason === '' && place.pass.withdrawn === undefined)
    return { message: 'A pass is withdrawn with a reason, such as "wrong insert".' };
  const words = reason === '' ? 'take back the withdrawal of' : 'withdraw';
  const { by, at } = args;
  return corrected(
    notebook,
    place,
    { what: 'withdrawn', value: reason, by, at },
    `${words} a pass of ${place.trial.title}`,
  );
}

/** Adds a photograph to a pass that has none. */
export function attachPhotograph(
  notebook: Notebook,
  { photograph, ...where }: PassPlace & { readonly photograph: Omit<Photograph, 'id'> },
): Transaction | Refusal {
  const place = placed(notebook, where);
  if (isRefusal(place)) return place;
  const { trial, pass } = place;
  const known = partsOf(notebook, 'photographs').some(({ id }) => id === pass.photograph);
  if (known) return { message: 'This pass has a photograph already; record another pass for the next one.' };
  const added = withPhotograph(notebook, photograph);
  if (isRefusal(added)) return added;
  const passes = trial.passes.map((each) => (each.id === pass.id ? { ...each, photograph: added.id } : each));
  const after = withPart(added.notebook, 'trials', { ...trial, passes });
  return transactionTo(notebook, after, `photograph for a pass of ${trial.title}`);
}
