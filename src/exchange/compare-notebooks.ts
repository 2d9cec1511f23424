/** What differs between two states of a notebook, and taking chosen differences over: what came back from another device. */

import {
  apply,
  isRefusal,
  PART_NAMES,
  renameWorksheet,
  withPartList,
  findWorksheet,
  freeTitle,
  freshWorksheetId,
  isSame,
  transactionTo,
  withWorksheet,
  withWrites,
  worksheetOf,
  worksheetTitled,
} from '../document/index.ts';
import type {
  AnyPart,
  Cell,
  DefinedName,
  Notebook,
  PartName,
  Refusal,
  Settings,
  Transaction,
  Worksheet,
} from '../document/index.ts';

/** What a worksheet is called, and whether its names are common. */
export type Marks = Pick<Worksheet, 'title' | 'common'>;

/** Worksheets are named by their ids in our notebook; what is absent on a side is not there. */
export type Difference =
  | {
      readonly type: 'cell';
      readonly worksheet: string;
      readonly row: number;
      readonly column: number;
      readonly ours?: Cell;
      readonly theirs?: Cell;
    }
  | {
      readonly type: 'name';
      readonly worksheet: string;
      readonly name: string;
      readonly ours?: DefinedName;
      readonly theirs?: DefinedName;
    }
  | {
      readonly type: 'mark';
      readonly worksheet: string;
      readonly ours: Marks;
      readonly theirs: Marks;
    }
  | { readonly type: 'worksheet'; readonly ours?: Worksheet; readonly theirs?: Worksheet }
  /** A record of one of the lists beside the worksheets. */
  | {
      readonly type: 'part';
      readonly part: PartName;
      readonly id: string;
      readonly ours?: AnyPart;
      readonly theirs?: AnyPart;
    }
  | {
      readonly type: 'setting';
      readonly key: keyof Settings;
      readonly ours: string;
      readonly theirs: string;
    };

const SETTINGS = ['title', 'display', 'currency'] as const;

/** The other notebook's worksheet that is the same as ours: by id within one notebook, else by title. */
function counterpart(ours: Notebook, theirs: Notebook, worksheet: Worksheet): Worksheet | undefined {
  const sameId = ours.id === theirs.id ? findWorksheet(theirs, worksheet.id) : undefined;
  return sameId ?? worksheetTitled(theirs, worksheet.title);
}

const marksOf = ({ title, common }: Worksheet): Marks => ({ title, common });

function markDifferences(ours: Worksheet, theirs: Worksheet): Difference[] {
  const [own, other] = [marksOf(ours), marksOf(theirs)];
  return isSame(own, other) ? [] : [{ type: 'mark', worksheet: ours.id, ours: own, theirs: other }];
}

function cellDifferences(ours: Worksheet, theirs: Worksheet): Difference[] {
  const found: Difference[] = [];
  for (let row = 0; row < Math.max(ours.rows.length, theirs.rows.length); row++) {
    const [here, there] = [ours.rows[row], theirs.rows[row]];
    if (here === there) continue;
    for (let column = 0; column < Math.max(here?.length ?? 0, there?.length ?? 0); column++) {
      const [own, other] = [here?.[column], there?.[column]];
      if (isSame(own, other)) continue;
      const place = { worksheet: ours.id, row, column };
      found.push({ type: 'cell', ...place, ...(own && { ours: own }), ...(other && { theirs: other }) });
    }
  }
  return found;
}

function nameDifferences(ours: Worksheet, theirs: Worksheet): Difference[] {
  const own = new Map(ours.names.map((each) => [each.name, each]));
  const other = new Map(theirs.names.map((each) => [each.name, each]));
  return [...new Set([...own.keys(), ...other.keys()])].flatMap((name): Difference[] => {
    const [here, there] = [own.get(name), other.get(name)];
    if (isSame(here, there)) return [];
    const place = { worksheet: ours.id, name };
    return [{ type: 'name', ...place, ...(here && { ours: here }), ...(there && { theirs: there }) }];
  });
}

function partDifferences(ours: Notebook, theirs: Notebook): Difference[] {
  return PART_NAMES.flatMap((part) => {
    const byId = ({ parts }: Notebook): Map<string, AnyPart> =>
      new Map((parts?.[part] ?? []).map((record: AnyPart) => [record.id, record]));
    const [own, other] = [byId(ours), byId(theirs)];
    return [...new Set([...own.keys(), ...other.keys()])].flatMap((id): Difference[] => {
      const [here, there] = [own.get(id), other.get(id)];
      if (isSame(here, there)) return [];
      return [{ type: 'part', part, id, ...(here && { ours: here }), ...(there && { theirs: there }) }];
    });
  });
}

/** All differences of content, in the order of our worksheets; widths and the order of worksheets are not compared. */
export function compareNotebooks(ours: Notebook, theirs: Notebook): readonly Difference[] {
  const found: Difference[] = SETTINGS.flatMap((key): Difference[] =>
    ours[key] === theirs[key] ? [] : [{ type: 'setting', key, ours: ours[key], theirs: theirs[key] }],
  );
  const matched = new Set<string>();
  for (const worksheet of ours.worksheets) {
    const other = counterpart(ours, theirs, worksheet);
    if (!other || matched.has(other.id)) found.push({ type: 'worksheet', ours: worksheet });
    else {
      matched.add(other.id);
      found.push(
        ...markDifferences(worksheet, other),
        ...nameDifferences(worksheet, other),
        ...cellDifferences(worksheet, other),
      );
    }
  }
  for (const worksheet of theirs.worksheets) {
    if (!matched.has(worksheet.id)) found.push({ type: 'worksheet', theirs: worksheet });
  }
  found.push(...partDifferences(ours, theirs));
  return found;
}

function taken(notebook: Notebook, difference: Difference): Notebook {
  switch (difference.type) {
    case 'setting':
      return { ...notebook, [difference.key]: difference.theirs };
    case 'cell': {
      const { worksheet, row, column, theirs } = difference;
      return withWrites(notebook, worksheet, [{ row, column, cell: theirs }]);
    }
    case 'mark': {
      const { title, common } = difference.theirs;
      const { id, title: own } = worksheetOf(notebook, difference.worksheet);
      // By the command, so that formulas follow the title.
      const renamed =
        title === own
          ? undefined
          : renameWorksheet(notebook, { worksheet: id, title: freeTitle(notebook, title) });
      const after = renamed && !isRefusal(renamed) ? apply(notebook, renamed.changes) : notebook;
      return withWorksheet(after, { ...worksheetOf(after, id), common });
    }
    case 'part': {
      const { part, id, theirs } = difference;
      const list: readonly AnyPart[] = notebook.parts?.[part] ?? [];
      const at = list.findIndex((record) => record.id === id);
      const rest = at < 0 ? list : list.toSpliced(at, 1);
      const records = theirs ? (at < 0 ? [...list, theirs] : list.with(at, theirs)) : rest;
      const { parts: _before, ...without } = notebook;
      const parts = withPartList(notebook.parts, part, records);
      return parts ? { ...without, parts } : without;
    }
    case 'name': {
      const worksheet = worksheetOf(notebook, difference.worksheet);
      const { theirs } = difference;
      const known = worksheet.names.some(({ name }) => name === difference.name);
      const names = worksheet.names.flatMap((each) =>
        each.name === difference.name ? (theirs ? [theirs] : []) : [each],
      );
      return withWorksheet(notebook, { ...worksheet, names: known || !theirs ? names : [...names, theirs] });
    }
    case 'worksheet': {
      const { ours, theirs } = difference;
      if (ours) {
        return { ...notebook, worksheets: notebook.worksheets.filter(({ id }) => id !== ours.id) };
      }
      if (!theirs) return notebook;
      const title = freeTitle(notebook, theirs.title);
      const id = findWorksheet(notebook, theirs.id) ? freshWorksheetId(notebook) : theirs.id;
      return { ...notebook, worksheets: [...notebook.worksheets, { ...theirs, id, title }] };
    }
  }
}

/** One step that takes over what the other notebook has in the chosen places. */
export function takeDifferences(ours: Notebook, chosen: readonly Difference[]): Transaction | Refusal {
  const after = chosen.reduce(taken, ours);
  if (after.worksheets.length === 0) return { message: 'A notebook keeps at least one worksheet.' };
  const count = chosen.length === 1 ? 'a difference' : `${chosen.length} differences`;
  return transactionTo(ours, after, `take over ${count}`);
}
