/**
 * Variants of the given values. The page shows one set of contents at a time: the base, or a variant, whose own
 * contents then stand in the cells while the record with the id "base" keeps what stood there before.
 */

import { cellAt, findWorksheet } from '../cells.ts';
import { canonicalContent } from '../canonical-content.ts';
import type { TypingLocale } from '../canonical-content.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { addressOf } from '../formula-references.ts';
import type { Notebook } from '../notebook.ts';
import { withPartList } from '../part-lists.ts';
import type { Variant } from '../parts.ts';
import type { CellPlace } from '../place.ts';
import { isRefusal } from '../refusal.ts';
import type { Refusal } from '../refusal.ts';
import { tidyCell } from '../tidy-cell.ts';
import { withWrites } from '../with-worksheet.ts';
import { choiceRefusal, filledCell } from './enter.ts';
import { freshPartId, partsOf } from './part-commands.ts';

/** Id of the record that keeps the base's contents while a variant is shown. */
export const BASE = 'base';

type Values = Variant['values'];

const isAt = (a: CellPlace, b: CellPlace): boolean =>
  a.worksheet === b.worksheet && a.row === b.row && a.column === b.column;

const contentAt = (notebook: Notebook, { worksheet, row, column }: CellPlace): string => {
  const sheet = findWorksheet(notebook, worksheet);
  return (sheet && cellAt(sheet, row, column)?.content) ?? '';
};

/** The variants, without the base's record. */
export const variantsOf = (notebook: Notebook): readonly Variant[] =>
  partsOf(notebook, 'variants').filter(({ id }) => id !== BASE);

/** The variant whose contents stand in the cells; undefined while the base does. */
export const shownVariant = (notebook: Notebook): Variant | undefined =>
  variantsOf(notebook).find(({ shown }) => shown);

function withVariants(notebook: Notebook, list: readonly Variant[]): Notebook {
  const { parts: before, ...rest } = notebook;
  const parts = withPartList(
    before,
    'variants',
    list.map((each) => Object.freeze(each)),
  );
  return parts ? { ...rest, parts } : rest;
}

/** The notebook with these contents in its cells; each cell keeps its unit, format, limits and role. */
function withContents(notebook: Notebook, values: Values): Notebook {
  let after = notebook;
  for (const { place, content } of values) {
    const sheet = findWorksheet(after, place.worksheet);
    if (!sheet) continue;
    const was = cellAt(sheet, place.row, place.column);
    const cell = tidyCell(filledCell(was, { content }, after.currency));
    after = withWrites(after, place.worksheet, [{ row: place.row, column: place.column, cell }]);
  }
  return after;
}

const standing = (notebook: Notebook, values: Values): Values =>
  values.map(({ place }) => ({ place, content: contentAt(notebook, place) }));

/** The notebook with the base's contents in its cells. A shown variant takes with it what was typed into its own cells. */
export function baseNotebook(notebook: Notebook): Notebook {
  const shown = shownVariant(notebook);
  if (!shown) return notebook;
  const base = partsOf(notebook, 'variants').find(({ id }) => id === BASE);
  const { shown: _shown, ...kept } = { ...shown, values: standing(notebook, shown.values) };
  const list = variantsOf(notebook).map((each) => (each.id === shown.id ? kept : each));
  return withContents(withVariants(notebook, list), base?.values ?? []);
}

/** The contents a variant has where it differs, whether it is shown or not. */
export function ownValues(notebook: Notebook, variant: Variant): Values {
  return variant.shown ? standing(notebook, variant.values) : variant.values;
}

function showing(base: Notebook, id: string): Notebook {
  const variant = variantsOf(base).find((each) => each.id === id);
  if (!variant) return base;
  const record: Variant = { id: BASE, title: 'Base', values: standing(base, variant.values) };
  const list = variantsOf(base).map((each): Variant => (each.id === id ? { ...each, shown: true } : each));
  return withContents(withVariants(base, [...list, record]), variant.values);
}

/** A new variant without differences yet, or with these; its title must be free. */
export function addVariant(
  notebook: Notebook,
  { title, values = [] }: { readonly title: string; readonly values?: Values },
): Transaction | Refusal {
  const refusal = titleRefusal(notebook, title);
  if (refusal) return refusal;
  const made: Variant = { id: freshPartId(notebook, 'variants'), title: title.trim(), values };
  const list = [...partsOf(notebook, 'variants'), made];
  return transactionTo(notebook, withVariants(notebook, list), `add the variant ${title}`);
}

function titleRefusal(notebook: Notebook, title: string, own?: string): Refusal | undefined {
  const text = title.trim();
  if (text === '') return { message: 'A variant needs a title.' };
  if (text.length > 60) return { message: 'A title of a variant has at most 60 characters.' };
  if (text.toLowerCase() === 'base') return { message: '"Base" is what the notebook itself is called.' };
  const taken = variantsOf(notebook).some((each) => each.id !== own && each.title === text);
  return taken ? { message: `There is a variant ${text} already.` } : undefined;
}

export function renameVariant(
  notebook: Notebook,
  { id, title }: { readonly id: string; readonly title: string },
): Transaction | Refusal {
  const refusal = titleRefusal(notebook, title, id);
  if (refusal) return refusal;
  const list = partsOf(notebook, 'variants').map((each) =>
    each.id === id ? { ...each, title: title.trim() } : each,
  );
  return transactionTo(notebook, withVariants(notebook, list), `rename a variant to ${title}`);
}

/** What a variant has in a cell, as typed; an empty text takes the difference back. Given values alone: a formula is refused. */
export function setVariantValue(
  notebook: Notebook,
  {
    id,
    place,
    typed,
    ...locale
  }: { readonly id: string; readonly place: CellPlace; readonly typed: string } & Omit<
    TypingLocale,
    'currency'
  >,
): Transaction | Refusal {
  const address = addressOf(place.row, place.column);
  const sheet = findWorksheet(notebook, place.worksheet);
  const cell = sheet && cellAt(sheet, place.row, place.column);
  if (!cell || cell.content === '')
    return { message: `${address} is empty: a variant changes given values.` };
  if (cell.content.startsWith('='))
    return { message: `${address} is worked out: a variant changes given values.` };
  const canonical = canonicalContent(typed, { ...locale, currency: notebook.currency }, cell);
  if (isRefusal(canonical)) return { ...canonical, message: `${address}: ${canonical.message}` };
  const { content } = canonical;
  if (content.startsWith('=')) return { message: `${address}: a variant has values, not formulas.` };
  const stranger = choiceRefusal(cell, content);
  if (stranger) return { message: `${address}: ${stranger}` };
  const shown = shownVariant(notebook);
  const base = baseNotebook(notebook);
  const list = variantsOf(base).map((each): Variant => {
    if (each.id !== id) return each;
    const others = each.values.filter((value) => !isAt(value.place, place));
    return { ...each, values: content === '' ? others : [...others, { place, content }] };
  });
  const changed = withVariants(base, list);
  const after = shown ? showing(changed, shown.id) : changed;
  return transactionTo(notebook, after, `${address} of a variant`);
}

/** Puts a variant's contents into the cells; `BASE` puts the base's back. */
export function showVariant(notebook: Notebook, { id }: { readonly id: string }): Transaction | Refusal {
  const base = baseNotebook(notebook);
  const variant = variantsOf(base).find((each) => each.id === id);
  const title = id === BASE ? 'the base' : variant?.title;
  if (title === undefined) return { message: 'There is no such variant.' };
  return transactionTo(notebook, id === BASE ? base : showing(base, id), `show ${title}`);
}

/** Makes a variant the base. What was the base stays as a variant, and every other variant keeps meaning what it meant. */
export function makeBase(notebook: Notebook, { id }: { readonly id: string }): Transaction | Refusal {
  const base = baseNotebook(notebook);
  const chosen = variantsOf(base).find((each) => each.id === id);
  if (!chosen) return { message: 'There is no such variant.' };
  const former = standing(base, chosen.values);
  const list = variantsOf(base).map((each): Variant => {
    if (each.id === id) return { ...each, title: freeTitle(base, id), values: former };
    const lacking = former.filter(({ place }) => !each.values.some((value) => isAt(value.place, place)));
    return { ...each, values: [...each.values, ...lacking] };
  });
  const after = withContents(withVariants(base, list), chosen.values);
  return transactionTo(notebook, after, `make ${chosen.title} the base`);
}

function freeTitle(notebook: Notebook, own: string): string {
  for (let number = 1; ; number += 1) {
    const title = number === 1 ? 'Former base' : `Former base ${number}`;
    if (!titleRefusal(notebook, title, own)) return title;
  }
}

/** Takes a variant away; where it is shown the base's contents come back. */
export function removeVariant(notebook: Notebook, { id }: { readonly id: string }): Transaction | Refusal {
  const shown = shownVariant(notebook);
  const from = shown?.id === id ? baseNotebook(notebook) : notebook;
  const gone = variantsOf(from).find((each) => each.id === id);
  const list = partsOf(from, 'variants').filter((each) => each.id !== id);
  return transactionTo(notebook, withVariants(from, list), `remove the variant ${gone?.title ?? ''}`);
}
