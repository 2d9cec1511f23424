/** Defining, renaming and deleting names (F6a). */

import { checkBlock, forEachCell, worksheetOf } from '../cells.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { checkName } from '../check-name.ts';
import { followed } from '../follow-references.ts';
import { titleText } from '../../expression/index.ts';
import { addressOf, blockText, referencesIn } from '../formula-references.ts';
import type { Block, DefinedName, Notebook, Worksheet } from '../notebook.ts';
import type { Refusal } from '../refusal.ts';
import { namesOn, resolveName } from '../resolve-name.ts';
import { withWorksheet } from '../with-worksheet.ts';

export interface NameArgs {
  /** Worksheet id. */
  readonly worksheet: string;
  readonly name: string;
}

const unknown = (worksheet: Worksheet, name: string): Refusal => ({
  message: `There is no name ${name} on ${worksheet.title}.`,
});

const taken = (worksheet: Worksheet, defined: DefinedName): Refusal => ({
  message: `${defined.name} is already the name of ${blockText(defined.target)} on ${worksheet.title}.`,
});

/** Words about the cells of the worksheet that mean a common name of the same text: they go on meaning it. */
function hidingNotice(notebook: Notebook, worksheet: Worksheet, name: string): { notice?: string } {
  const common = resolveName(notebook, worksheet.id, name);
  if (!common) return {};
  const cells: string[] = [];
  forEachCell(worksheet, (cell, row, column) => {
    const uses = referencesIn(cell).some(
      (node) => node.type === 'name' && node.worksheet === undefined && node.name === name,
    );
    if (uses) cells.push(addressOf(row, column));
  });
  if (cells.length === 0) return {};
  return {
    notice: `${cells.slice(0, 5).join(', ')}${cells.length > 5 ? ' ...' : ''} still read ${name} of ${common.worksheet.title}, now written ${titleText(common.worksheet.title)}.${name}.`,
  };
}

/** A name for a block of its worksheet. */
export function defineName(
  notebook: Notebook,
  { worksheet, name, target, symbol }: NameArgs & { readonly target: Block; readonly symbol?: string },
): Transaction | Refusal {
  checkBlock(target);
  const before = worksheetOf(notebook, worksheet);
  const refusal = checkName(name);
  if (refusal) return refusal;
  const existing = namesOn(before).get(name);
  if (existing) return taken(before, existing);
  const defined = Object.freeze({ name, target, ...(symbol !== undefined && { symbol }) });
  // A common name that the new one hides is qualified where it was meant: no value changes in silence.
  const after = followed(
    notebook,
    withWorksheet(notebook, { ...before, names: [...before.names, defined] }),
    {},
  );
  const notice = hidingNotice(notebook, before, name);
  return transactionTo(notebook, after, `name ${blockText(target)} ${name}`, notice);
}

/** Formulas that use the name are rewritten, on every worksheet. */
export function renameName(
  notebook: Notebook,
  { worksheet, name, to }: NameArgs & { readonly to: string },
): Transaction | Refusal {
  const before = worksheetOf(notebook, worksheet);
  if (!namesOn(before).has(name)) return unknown(before, name);
  const refusal = checkName(to);
  if (refusal) return refusal;
  const existing = namesOn(before).get(to);
  if (existing && to !== name) return taken(before, existing);
  const names = before.names.map((each) => (each.name === name ? { ...each, name: to } : each));
  const after = followed(notebook, withWorksheet(notebook, { ...before, names }), {
    name: (id, old) => ({ worksheet: id, name: id === worksheet && old === name ? to : old }),
  });
  return transactionTo(notebook, after, `rename ${name} to ${to}`);
}

/** Formulas that used the name read #REF! (see `usersOf`). */
export function deleteName(notebook: Notebook, { worksheet, name }: NameArgs): Transaction | Refusal {
  const before = worksheetOf(notebook, worksheet);
  if (!namesOn(before).has(name)) return unknown(before, name);
  const names = before.names.filter((each) => each.name !== name);
  const after = followed(notebook, withWorksheet(notebook, { ...before, names }), {
    name: (id, old) => (id === worksheet && old === name ? undefined : { worksheet: id, name: old }),
  });
  return transactionTo(notebook, after, `delete the name ${name}`);
}

/** Where the name points, and how it is shown (F24); what is left out stays. */
export function changeName(
  notebook: Notebook,
  { worksheet, name, target, symbol }: NameArgs & { readonly target?: Block; readonly symbol?: string },
): Transaction | Refusal {
  if (target) checkBlock(target);
  const before = worksheetOf(notebook, worksheet);
  if (!namesOn(before).has(name)) return unknown(before, name);
  const names = before.names.map((each) =>
    each.name === name
      ? { ...each, ...(target && { target }), ...(symbol !== undefined && { symbol }) }
      : each,
  );
  return transactionTo(notebook, withWorksheet(notebook, { ...before, names }), `change the name ${name}`);
}
