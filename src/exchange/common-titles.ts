/** Worksheets, names and records called alike on both sides before they are merged: what one side renamed is renamed on the other, what both made under one id is told apart. */

import {
  apply,
  findWorksheet,
  freeTitle,
  isRefusal,
  isSame,
  PART_NAMES,
  freeRecordingTitle,
  renameName,
  renameRecording,
  renameWorksheet,
  withWorksheetId,
} from '../document/index.ts';
import type { AnyPart, Notebook, PartName, Parts, Refusal, Transaction } from '../document/index.ts';
import type { Three } from './common-lines.ts';
import type { Difference } from './compare-notebooks.ts';

const carriedOut = (notebook: Notebook, answer: Transaction | Refusal): Notebook =>
  isRefusal(answer) ? notebook : apply(notebook, answer.changes);

const numberOf = (id: string): number => Number(/\d+$/.exec(id)?.[0] ?? 0);

/** Worksheets that they added get ids and titles that ours has not. */
function toldApart({ base, ours, theirs }: Three): Notebook {
  let so = theirs;
  let next = Math.max(...[...ours.worksheets, ...theirs.worksheets].map(({ id }) => numberOf(id))) + 1;
  for (const { id, title } of theirs.worksheets) {
    if (findWorksheet(base, id)) continue;
    const same = findWorksheet(ours, id);
    if (same && isSame(same, findWorksheet(theirs, id))) continue;
    let own = id;
    if (same) {
      own = `w${next}`;
      next += 1;
      so = withWorksheetId(so, id, own);
    }
    const taken = ours.worksheets.some((each) => each.title === title && each.id !== own);
    if (taken) {
      const both = { ...so, worksheets: [...so.worksheets, ...ours.worksheets] };
      so = carriedOut(so, renameWorksheet(so, { worksheet: own, title: freeTitle(both, title) }));
    }
  }
  return so;
}

export interface Titled extends Three {
  /** Titles that they changed and we took over. */
  readonly taken: readonly Difference[];
  /** Titles that we changed and they did not. */
  readonly kept: readonly Difference[];
  /** Titles that both changed, each in another way: ours holds on both sides from here on. */
  readonly conflicts: readonly Difference[];
}

function withTitles(three: Three): Titled {
  let { base, ours, theirs } = three;
  const taken: Difference[] = [];
  const conflicts: Difference[] = [];
  const kept: Difference[] = [];
  for (const { id, title: was, common } of three.base.worksheets) {
    const [here, there] = [findWorksheet(three.ours, id), findWorksheet(three.theirs, id)];
    if (!here || !there || (here.title === was && there.title === was)) continue;
    const rename = (notebook: Notebook, title: string): Notebook =>
      carriedOut(notebook, renameWorksheet(notebook, { worksheet: id, title }));
    const difference: Difference = {
      type: 'mark',
      worksheet: id,
      ours: { title: here.title, common },
      theirs: { title: there.title, common },
    };
    if (here.title === was) {
      const renamed = rename(ours, there.title);
      if (findWorksheet(renamed, id)?.title !== there.title) continue;
      ours = renamed;
      base = rename(base, there.title);
      taken.push(difference);
    } else {
      if (there.title !== here.title) (there.title === was ? kept : conflicts).push(difference);
      theirs = rename(theirs, here.title);
      base = rename(base, here.title);
    }
  }
  return { base, ours, theirs, taken, conflicts, kept };
}

/** Names that one side gave another word for the same block are called so on the other side too. */
export function withNames(three: Three): Three {
  let { base, ours, theirs } = three;
  for (const { id } of three.base.worksheets) {
    const sheets = () => [base, ours, theirs].map((notebook) => findWorksheet(notebook, id));
    for (const { name, target } of findWorksheet(base, id)?.names ?? []) {
      const [before, here, there] = sheets();
      if (!before || !here || !there) break;
      const renamedIn = (side: typeof here, other: typeof here): string | undefined => {
        if (side.names.some((each) => each.name === name) || !other.names.some((each) => each.name === name))
          return undefined;
        const now = side.names.find(
          (each) => isSame(each.target, target) && !before.names.some((known) => known.name === each.name),
        )?.name;
        return now !== undefined && !other.names.some((each) => each.name === now) ? now : undefined;
      };
      const rename = (notebook: Notebook, to: string): Notebook =>
        carriedOut(notebook, renameName(notebook, { worksheet: id, name, to }));
      const [byUs, byThem] = [renamedIn(here, there), renamedIn(there, here)];
      if (byUs !== undefined) {
        theirs = rename(theirs, byUs);
        base = rename(base, byUs);
      } else if (byThem !== undefined) {
        ours = rename(ours, byThem);
        base = rename(base, byThem);
      }
    }
  }
  return { base, ours, theirs };
}

const recordsOf = (notebook: Notebook, part: PartName): readonly AnyPart[] => notebook.parts?.[part] ?? [];

/** Records that they added under an id that ours has given to something else get another id, and passes follow their photographs. */
function withRecordIds({ base, ours, theirs }: Three): Notebook {
  if (!theirs.parts) return theirs;
  const photographs = new Map<string, string>();
  const lists = PART_NAMES.flatMap((part): [string, readonly AnyPart[]][] => {
    const list = recordsOf(theirs, part);
    if (list.length === 0) return [];
    const known = new Set(recordsOf(base, part).map(({ id }) => id));
    const own = new Map(recordsOf(ours, part).map((record) => [record.id, record]));
    let next = Math.max(0, ...[...list, ...own.values()].map(({ id }) => numberOf(id))) + 1;
    const records = list.map((record) => {
      const twin = own.get(record.id);
      if (known.has(record.id) || !twin || isSame(twin, record)) return record;
      const id = `${part.charAt(0)}${next}`;
      next += 1;
      if (part === 'photographs') photographs.set(record.id, id);
      return Object.freeze({ ...record, id });
    });
    return [[part, records]];
  });
  const parts: Parts = { ...theirs.parts, ...Object.fromEntries(lists) };
  if (photographs.size === 0) return { ...theirs, parts };
  const trials = parts.trials?.map((trial) => ({
    ...trial,
    passes: trial.passes.map((pass) => {
      const to = pass.photograph === undefined ? undefined : photographs.get(pass.photograph);
      return to === undefined ? pass : { ...pass, photograph: to };
    }),
  }));
  return { ...theirs, parts: { ...parts, ...(trials && { trials }) } };
}

/** Recordings of theirs whose title is ours' for another one get a title of their own; their formulas follow. */
function withRecordingTitles(ours: Notebook, theirs: Notebook): Notebook {
  const own = new Map(recordsOf(ours, 'recordings').map((record) => [record.id, record]));
  let so = theirs;
  for (const { id, title } of theirs.parts?.recordings ?? []) {
    if (own.has(id)) continue;
    const taken = [...ours.worksheets, ...(ours.parts?.recordings ?? [])].some(
      (each) => each.title === title,
    );
    if (!taken) continue;
    const both = {
      ...so,
      worksheets: [...so.worksheets, ...ours.worksheets],
      parts: {
        ...so.parts,
        recordings: [...(so.parts?.recordings ?? []), ...(ours.parts?.recordings ?? [])],
      },
    };
    so = carriedOut(so, renameRecording(so, { recording: id, title: freeRecordingTitle(both, title) }));
  }
  return so;
}

/** Base, ours and theirs with worksheets and records called alike. */
export function titled(three: Three): Titled {
  const apart = withRecordIds({ ...three, theirs: toldApart(three) });
  return withTitles({ ...three, theirs: withRecordingTitles(three.ours, apart) });
}
