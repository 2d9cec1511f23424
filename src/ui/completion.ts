/** What can stand at the caret: functions, names and units that begin with (or contain) what was typed. */

import { parseUnit, isUnknownUnit, UNITS } from '../quantity/index.ts';
import { tokenize, titleText } from '../expression/index.ts';
import { typing } from './number-locale.ts';
import type { Catalogue } from './ports.ts';
import type { Draft } from './session.ts';
import type { Notebook, Worksheet } from '../document/index.ts';

export interface Choice {
  readonly type: 'function' | 'name' | 'unit' | 'choice';
  readonly label: string;
  readonly detail: string;
  /** What replaces the span; the caret stands behind it. */
  readonly insert: string;
}

export interface Completion {
  readonly from: number;
  readonly to: number;
  readonly choices: readonly Choice[];
}

const MOST = 8;
const WORD = /[\p{L}\p{M}\d_.]+$/u;

export interface CompletionContext {
  readonly draft: Draft;
  readonly notebook: Notebook;
  readonly worksheet: Worksheet;
  readonly catalogue: Catalogue | undefined;
}

/** Undefined where nothing fits or the caret stands in a text. */
export function completionAt(context: CompletionContext): Completion | undefined {
  const { draft } = context;
  if (draft.from !== draft.to) return undefined;
  if (!draft.text.startsWith('=')) return unitsAfterNumber(draft, context.notebook);
  const before = draft.text.slice(0, draft.from);
  const tokens = tokenize(draft.text, typing());
  const at = tokens.find((token) => token.from < draft.from && token.to >= draft.from);
  if (at?.type === 'text') return undefined;
  const afterNumber = /(?:\d|\})[ \u00A0]+([^\s;()+*^&=<>]*)$/.exec(before);
  if (afterNumber && !/[\p{L}_]\d*[ ]+[^ ]*$/u.test(before)) return units(afterNumber[1] ?? '', draft.from);
  const word = WORD.exec(before)?.[0];
  if (!word || /^[\d.]/.test(word)) return undefined;
  const wanted = word.toLowerCase();
  const choices = [...names(context, word), ...functions(context.catalogue, wanted)].slice(0, MOST);
  if (choices.length === 1 && choices[0]?.insert === word) return undefined;
  return choices.length > 0 ? { from: draft.from - word.length, to: draft.from, choices } : undefined;
}

function unitsAfterNumber(draft: Draft, notebook: Notebook): Completion | undefined {
  const match = /^[-+−]?[\d\s./,]*\d[ \u00A0]+(\S*)$/.exec(draft.text.slice(0, draft.from));
  const typed = match?.[1];
  if (typed === undefined || typed === '') return undefined;
  const known = parseUnit(typed, notebook.currency);
  return isUnknownUnit(known) ? units(typed, draft.from) : undefined;
}

function units(typed: string, caret: number): Completion | undefined {
  if (typed === '') return undefined;
  const fitting = UNITS.filter((unit) =>
    [unit.symbol, ...unit.spellings].some((text) => text.startsWith(typed)),
  );
  if (fitting.length === 0 || fitting.some((unit) => unit.symbol === typed)) return undefined;
  const choices = fitting
    .slice(0, MOST)
    .map((unit): Choice => ({ type: 'unit', label: unit.symbol, detail: unit.plural, insert: unit.symbol }));
  return { from: caret - typed.length, to: caret, choices };
}

function names({ notebook, worksheet }: CompletionContext, word: string): Choice[] {
  const wanted = word.toLowerCase();
  const recorded = (notebook.parts?.recordings ?? []).flatMap(({ title, columns }) =>
    columns.flatMap(({ name, unit }): Choice[] => {
      const shown = `${title}.${name}`;
      const fits = shown.toLowerCase().startsWith(wanted) || name.toLowerCase().startsWith(wanted);
      const detail = `column of the recording${unit === undefined ? '' : `, ${unit}`}`;
      return fits ? [{ type: 'name', label: shown, detail, insert: shown }] : [];
    }),
  );
  const named = notebook.worksheets.flatMap((each) =>
    each.names.flatMap(({ name }): Choice[] => {
      const shown = each.id === worksheet.id || each.common ? name : `${titleText(each.title)}.${name}`;
      const fits = shown.toLowerCase().startsWith(wanted) || name.toLowerCase().startsWith(wanted);
      return fits ? [{ type: 'name', label: shown, detail: `name on ${each.title}`, insert: shown }] : [];
    }),
  );
  return [...named, ...recorded];
}

function functions(catalogue: Catalogue | undefined, wanted: string): Choice[] {
  if (!catalogue) return [];
  const all = [...catalogue.domain, ...catalogue.builtins];
  const rank = (name: string): number => {
    const lower = name.toLowerCase();
    if (lower.startsWith(wanted)) return 0;
    return lower.split('.')[1]?.startsWith(wanted) ? 1 : lower.includes(wanted) ? 2 : 3;
  };
  return all
    .map((each) => ({ each, rank: rank(each.name) }))
    .filter((each) => each.rank < 3)
    .sort((a, b) => a.rank - b.rank || a.each.name.localeCompare(b.each.name))
    .map(({ each }) => ({
      type: 'function',
      label: each.name,
      detail: each.summary,
      insert: `${each.name}(`,
    }));
}
