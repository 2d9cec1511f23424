/** The calculator: messages in, results out, one notebook at a time. */

import { apply } from '../document/index.ts';
import type { CellChange, Change, Notebook, WorksheetChange } from '../document/index.ts';
import type { FunctionTable } from '../expression/index.ts';
import type {
  Calculator,
  CellAddress,
  CellResult,
  Explanation,
  FromEngine,
  ToEngine,
} from '../calculation/index.ts';
import { explain } from './explanation.ts';
import { inPieces } from './in-pieces.ts';
import { addressOf, guarded, Workbook } from '../workbook/index.ts';
import { LibrarySchedule } from './library-schedule.ts';
import { changesMessage, completeMessage, differencesMessage, fullResult, toldBy } from './result-message.ts';
import type { FullResult, ResultsMessage } from './result-message.ts';
import { tryOut } from './try-out.ts';
import type { TriedOut } from './try-out.ts';

export interface EngineOptions {
  readonly functions: FunctionTable;
  /** Functions that may take long: each of their calls is announced by 'started'. */
  readonly heavy?: ReadonlySet<string>;
  /** Hears which cell is about to call a heavy function, before it does. */
  readonly onStarted?: (address: CellAddress) => void;
}

/** Beyond so many changed cells building anew is quicker than changing one by one. */
const REBUILD_FROM = 3_000;

const BLANK: CellResult = Object.freeze({ value: null, kind: 'blank', unit: '', cautions: [] });

/** Cells that differ between two states of a worksheet; undefined where more than cells differ that formulas could notice. */
function cellChangesOf({ from, to }: WorksheetChange): readonly CellChange[] | undefined {
  if (!from || !to || from.title !== to.title || from.common !== to.common) return undefined;
  if (from.names !== to.names && JSON.stringify(from.names) !== JSON.stringify(to.names)) return undefined;
  const changes: CellChange[] = [];
  for (let row = 0; row < Math.max(from.rows.length, to.rows.length); row++) {
    const [before, after] = [from.rows[row], to.rows[row]];
    if (before === after) continue;
    for (let column = 0; column < Math.max(before?.length ?? 0, after?.length ?? 0); column++) {
      const [was, is] = [before?.[column], after?.[column]];
      if (was === is) continue;
      changes.push({
        type: 'cell',
        worksheet: to.id,
        row,
        column,
        ...(was && { from: was }),
        ...(is && { to: is }),
      });
    }
  }
  return changes;
}

/** The changes as cells alone; undefined where the workbook has to be built anew. */
function asCellChanges(changes: readonly Change[]): readonly CellChange[] | undefined {
  const all: CellChange[] = [];
  for (const change of changes) {
    if (change.type === 'cell') all.push(change);
    else if (change.type === 'settings') {
      if (change.from.currency !== change.to.currency) return undefined;
    } else if (change.type === 'part') {
      if (change.part === 'recordings') return undefined;
    } else if (change.type === 'order') return undefined;
    else {
      const cells = cellChangesOf(change);
      if (!cells) return undefined;
      all.push(...cells);
    }
    if (all.length > REBUILD_FROM) return undefined;
  }
  return all;
}

export class Engine implements Calculator {
  readonly #functions: FunctionTable;
  #workbook: Workbook | undefined;
  #aside = new Set<string>();

  constructor({ functions, heavy = new Set(), onStarted }: EngineOptions) {
    this.#functions = guarded(functions, heavy, () => {
      const workbook = this.#workbook;
      const running = workbook?.running;
      if (workbook && running) onStarted?.(addressOf(workbook.cells, running));
    });
  }

  /** Computes a notebook and gives the results of all its cells. */
  open(notebook: Notebook, aside: readonly CellAddress[] = [], revision = 0): ResultsMessage {
    this.#aside = new Set(
      aside.map(({ worksheet, row, column }) => Workbook.asideKey(worksheet, row, column)),
    );
    return completeMessage(this.#build(notebook), revision);
  }

  /** Carries changes out and gives what changed in the results. */
  apply(changes: readonly Change[], revision = 0): ResultsMessage {
    const workbook = this.#opened();
    const notebook = apply(workbook.notebook, changes);
    const cellChanges = asCellChanges(changes);
    if (!cellChanges) {
      const told = toldBy(workbook);
      return differencesMessage(this.#build(notebook), told, revision);
    }
    const shownDifferently = notebook.display !== workbook.notebook.display;
    workbook.apply(notebook, cellChanges);
    if (shownDifferently) this.#tellAgain(workbook);
    return changesMessage(workbook, revision);
  }

  /** A cell's result; blank where nothing stands. */
  result({ worksheet, row, column }: CellAddress): FullResult {
    const workbook = this.#opened();
    const state = workbook.cells.find(workbook.cells.sheetNumber(worksheet) ?? -1, row, column);
    return state ? fullResult(workbook, state) : BLANK;
  }

  /** What the content would give in the cell. */
  preview(address: CellAddress, content: string): CellResult {
    return this.tryOut(address, content).result;
  }

  /** The same with all values of a formula that gives several. */
  tryOut(address: CellAddress, content: string): Pick<TriedOut, 'result' | 'items'> {
    const { result, items } = tryOut(this.#opened(), address, content);
    return { result, ...(items && { items }) };
  }

  explain(address: CellAddress): Explanation {
    return explain(this.#opened(), address);
  }

  handle(message: ToEngine, post: (message: FromEngine) => void): void {
    try {
      for (const piece of inPieces(this.#answer(message))) post(piece);
    } catch (error) {
      const revision = 'revision' in message ? message.revision : -1;
      post({ type: 'failed', revision, message: error instanceof Error ? error.message : String(error) });
    }
  }

  #answer(message: ToEngine): FromEngine {
    switch (message.type) {
      case 'open':
        return this.open(message.notebook, message.aside, message.revision);
      case 'apply':
        return this.apply(message.changes, message.revision);
      case 'preview':
        return {
          type: 'previewed',
          request: message.request,
          result: this.preview(message.address, message.content),
        };
      case 'explain':
        return { type: 'explained', request: message.request, explanation: this.explain(message.address) };
    }
  }

  #build(notebook: Notebook): Workbook {
    this.#workbook?.destroy();
    this.#workbook = new Workbook(
      notebook,
      this.#functions,
      (cells, evaluate) => new LibrarySchedule(cells.sheets.length, evaluate),
      this.#aside,
    );
    return this.#workbook;
  }

  #opened(): Workbook {
    if (!this.#workbook) throw new Error('no notebook is open');
    return this.#workbook;
  }

  /** The display system changed: units may differ, values do not. */
  #tellAgain(workbook: Workbook): void {
    for (const state of workbook.cells.filled()) {
      if (state.type.type !== 'number') continue;
      if (state.sent) state.sent = { ...state.sent, plainOf: undefined };
      workbook.list(state);
    }
  }
}

export function createEngine(options: EngineOptions): Engine {
  return new Engine(options);
}
