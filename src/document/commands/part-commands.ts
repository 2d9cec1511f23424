/** Adding, replacing and removing records of the notebook's lists. */

import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import type { Notebook } from '../notebook.ts';
import { withPartList } from '../part-lists.ts';
import { mostRecords } from '../parts.ts';
import type { AnyPart, PartName, PartOf } from '../parts.ts';
import type { Refusal } from '../refusal.ts';

/** The records of one list, oldest first. */
export function partsOf<Name extends PartName>(notebook: Notebook, part: Name): readonly PartOf<Name>[] {
  return (notebook.parts?.[part] ?? []) as readonly PartOf<Name>[];
}

/** An id that no record of the list has: the part's first letter and a number, such as "v3". */
export function freshPartId(notebook: Notebook, part: PartName): string {
  const numbers = partsOf(notebook, part).map(({ id }) => Number(/\d+$/.exec(id)?.[0] ?? 0));
  return `${part.charAt(0)}${Math.max(0, ...numbers) + 1}`;
}

/** The notebook with a record in its list: in the place of the one with its id, else at the end. For commands that change several lists. */
export function withPart<Name extends PartName>(
  notebook: Notebook,
  part: Name,
  record: PartOf<Name>,
): Notebook {
  const list: readonly AnyPart[] = partsOf(notebook, part);
  const at = list.findIndex(({ id }) => id === record.id);
  const frozen = Object.freeze<AnyPart>(record);
  return withList(notebook, part, at < 0 ? [...list, frozen] : list.with(at, frozen));
}

function withList(notebook: Notebook, part: PartName, list: readonly AnyPart[]): Notebook {
  const { parts: _before, ...rest } = notebook;
  const parts = withPartList(notebook.parts, part, list);
  return parts ? { ...rest, parts } : rest;
}

/** Puts records into their list as one step: each in the place of the one with its id, else at the end. */
export function putParts<Name extends PartName>(
  notebook: Notebook,
  {
    part,
    records,
    description,
  }: {
    readonly part: Name;
    readonly records: readonly PartOf<Name>[];
    /** Words for the history: "add the variant five teeth". */
    readonly description: string;
  },
): Transaction | Refusal {
  const list: AnyPart[] = [...partsOf(notebook, part)];
  const most = mostRecords(part);
  for (const record of records) {
    const at = list.findIndex(({ id }) => id === record.id);
    const frozen = Object.freeze<AnyPart>(record);
    if (at < 0) list.push(frozen);
    else list[at] = frozen;
  }
  if (list.length > most)
    return { message: `The notebook would have ${list.length} ${part}; ${most} is the most.` };
  return transactionTo(notebook, withList(notebook, part, list), description);
}

/** Puts one record into its list. */
export function putPart<Name extends PartName>(
  notebook: Notebook,
  { record, ...rest }: { readonly part: Name; readonly record: PartOf<Name>; readonly description: string },
): Transaction | Refusal {
  return putParts(notebook, { ...rest, records: [record] });
}

/** Takes records out of their list; what is not there is passed over. */
export function removeParts(
  notebook: Notebook,
  {
    part,
    ids,
    description,
  }: {
    readonly part: PartName;
    readonly ids: readonly string[];
    readonly description: string;
  },
): Transaction | Refusal {
  const list = partsOf(notebook, part).filter(({ id }) => !ids.includes(id));
  return transactionTo(notebook, withList(notebook, part, list), description);
}
