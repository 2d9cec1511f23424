/** Which defined name a name in a formula means (F6a). */

import { worksheetOf } from './cells.ts';
import type { DefinedName, Notebook, Worksheet } from './notebook.ts';

export interface ResolvedName {
  readonly worksheet: Worksheet;
  readonly defined: DefinedName;
}

const tables = new WeakMap<readonly DefinedName[], ReadonlyMap<string, DefinedName>>();

/** The names of one worksheet by their text. */
export function namesOn(worksheet: Worksheet): ReadonlyMap<string, DefinedName> {
  let table = tables.get(worksheet.names);
  if (!table) {
    table = new Map(worksheet.names.map((defined) => [defined.name, defined]));
    tables.set(worksheet.names, table);
  }
  return table;
}

/** An unqualified name: looked for on its own worksheet, then on those marked common, in their order. */
export function resolveName(notebook: Notebook, worksheetId: string, name: string): ResolvedName | undefined {
  const own = worksheetOf(notebook, worksheetId);
  for (const worksheet of [own, ...notebook.worksheets.filter((each) => each.common)]) {
    const defined = namesOn(worksheet).get(name);
    if (defined) return { worksheet, defined };
  }
  return undefined;
}
