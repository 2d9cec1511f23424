/** Opens a shipped notebook, computes it, and reads or changes cells by worksheet and name. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { functionTable } from '../../src/catalogue.ts';
import { apply, enter, isRefusal, resolveName, type Notebook } from '../../src/document/index.ts';
import { createEngine, type Engine } from '../../src/engine/index.ts';
import { readNotebook, type StoredResults } from '../../src/exchange/index.ts';
import type { CellAddress, CellResult } from '../../src/calculation/index.ts';

const FUNCTIONS = functionTable();

export interface ComputedSheet {
  readonly notebook: Notebook;
  readonly recorded: StoredResults;
  readonly engine: Engine;
  /** Result of a named cell, as seen from the first worksheet. */
  named(name: string): CellResult;
  /** Types a content into a named cell and computes. */
  type(name: string, content: string): void;
}

export function computedSheet(file: string): ComputedSheet {
  const text = readFileSync(join(import.meta.dirname, '../../sheets', file), 'utf8');
  const read = readNotebook(text);
  if (isRefusal(read)) throw new Error(`${file}: ${read.message}`);
  const { results } = read;
  let { notebook } = read;
  const engine = createEngine({ functions: FUNCTIONS });
  engine.open(notebook);
  const first = notebook.worksheets[0]?.id ?? '';
  const addressOf = (name: string): CellAddress => {
    const found = resolveName(notebook, first, name);
    if (!found) throw new Error(`${file} has no name ${name}`);
    const { row, column } = found.defined.target;
    return { worksheet: found.worksheet.id, row, column };
  };
  return {
    notebook,
    recorded: results,
    engine,
    named: (name) => engine.result(addressOf(name)),
    type(name, content) {
      const done = enter(notebook, { ...addressOf(name), typed: content });
      if (isRefusal(done)) throw new Error(done.message);
      notebook = apply(notebook, done.changes);
      engine.apply(done.changes);
    },
  };
}
