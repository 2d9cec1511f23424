/** Adding, replacing and removing records of the notebook's lists. */

import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import type { Notebook } from '../notebook.ts';
import { withPartList } from '../part-lists.ts';
import { PART_LIMITS } from '../parts.ts';
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

/** Puts a record into its list: in the place of the one with its id, else at the end. */
export function putPart<Name extends PartName>(
  notebook: Notebook,
  {
    part,
    record,
    description,
  }: {
    readonly part: Name;
    readonly record: PartOf<Name>;
    /** Words for the history: "add the variant five teeth". */
    readonly description: string;
  },
): Transaction | Refusal {
  const list: readonly AnyPart[] = partsOf(notebook, part);
  const at = list.findIndex(({ id }) => id === record.id);
  const most = part === 'photographs' ? PART_LIMITS.photographs : PART_LIMITS.records;
  if (at < 0 && list.length >= most) {
    return { message: `The notebook has ${list.length} ${part}; ${most} is the most.` };
  }
  return transactionTo(notebook, withPart(notebook, part, record), description);
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
