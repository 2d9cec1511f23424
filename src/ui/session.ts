/** The open notebook as the screen sees it: document, history, selection, results and the text being edited. Knows no element. */

import type { CellAddress, CellResult, Explanation } from '../calculation/index.ts';
import {
  EMPTY_HISTORY,
  apply,
  cellAt,
  findWorksheet,
  isRefusal,
  recorded,
  redo,
  undo,
} from '../document/index.ts';
import type {
  Cell,
  History,
  Notebook,
  Refusal,
  Selection,
  Transaction,
  Worksheet,
} from '../document/index.ts';
import { CalculationClient } from './calculation-client.ts';
import type { Move } from './keymap.ts';
import { CELL_GONE, notTaken } from './not-taken.ts';
import { canonicalText } from './number-locale.ts';
import { resultsAsTheyAre } from './export-results.ts';
import type { Catalogue, Opened, World } from './ports.ts';
import { Results } from './results.ts';
import type { KnownResult } from './results.ts';
import { Saving, type SaveState } from './saving.ts';
import { jumped, kept, moved } from './selection-moves.ts';
import { storedDifferences, type StoredDifferences } from './stored-differences.ts';
import { Watchers, type Turn } from './watchers.ts';

/** A text being edited: in its cell and on the entry line at once. */
export interface Draft {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  /** Typed over: arrows commit. Opened with Enter or F2: arrows move the caret. */
  readonly typedOver: boolean;
  /** What the cell held when the text was begun. */
  readonly over?: string;
  /** Where the hands are. */
  readonly where: 'cell' | 'line';
  /** Id of another worksheet that is in sight meanwhile, so that a formula can point there. */
  readonly elsewhere?: string;
}

/** What a session begins with, as the shelf or a file gives it. */
export type Beginning = Pick<Opened, 'notebook'> & Partial<Opened>;

export interface ComputeState {
  /** 'foreign': the calculator belongs to another version of the program; only loading the page again helps. */
  readonly state: 'idle' | 'busy' | 'slow' | 'restarted' | 'foreign';
  readonly words: string;
}

const PREVIEW_AFTER = 120;

export class Session {
  notebook: Notebook;
  history: History = EMPTY_HISTORY;
  selection: Selection;
  draft: Draft | undefined;
  preview: CellResult | undefined;
  explanation: Explanation | undefined;
  computing: ComputeState = { state: 'busy', words: '' };
  readOnly = false;
  /** Why an edit is not possible on this device, in words; undefined where it is. */
  refuses: ((transaction: Transaction) => string | undefined) | undefined;
  /** Read only because a newer program wrote it. */
  readonly newer: boolean;
  copiedAt: number | undefined;
  madeAt: number | undefined;
  /** What the last command could not do, or what was restored. */
  notice: { readonly words: string; readonly refused: boolean } | undefined;
  catalogue: Catalogue | undefined;
  /** Key of the margin's panel in sight. */
  margin = 'working';
  /** Which function's page is open in the margin. */
  functionPage: string | undefined;
  /** Formulas in place of values. */
  showFormulas = false;
  /** What the calculator finds otherwise than the results the notebook came with. */
  differences: StoredDifferences | undefined;
  /** Takes the open draft into its cell before the selection goes elsewhere; false where it is refused. */
  leaveDraft: (() => boolean) | undefined;
  /** What else ends with the session. */
  readonly closing = new Set<() => void>();
  readonly results = new Results();
  /** Rises with every change of notebook or results: what was worked out from them can be kept until then. */
  version = 0;

  readonly saving: Saving;
  readonly #client: CalculationClient;
  /** Who is told of changes, and when. */
  readonly watchers = new Watchers();
  #previewTimer: ReturnType<typeof setTimeout> | undefined;
  #explained = '';

  constructor(
    readonly world: World,
    { notebook, history = EMPTY_HISTORY, kept: keptResults, readOnly = false, newer = false }: Beginning,
  ) {
    this.notebook = notebook;
    this.history = history;
    this.readOnly = readOnly;
    this.newer = newer;
    if (keptResults) {
      const { results, exact } = keptResults;
      // Of an earlier state only formulas are shown: what they filled then may be empty now.
      const isFormula = (id: string, row: number, column: number): boolean => {
        const sheet = findWorksheet(notebook, id);
        return Boolean(sheet && cellAt(sheet, row, column)?.content.startsWith('='));
      };
      this.results.begin(results, exact ? () => true : isFormula);
    }
    this.selection = {
      worksheet: notebook.worksheets[0]?.id ?? '',
      row: 0,
      column: 0,
      toRow: 0,
      toColumn: 0,
    };
    this.saving = new Saving(world, () => this.changed());
    this.#client = new CalculationClient(world.startCalculator, world.build, {
      results: (message) => {
        const first = this.results.fromLastTime && message.complete;
        this.results.take(message);
        if (message.more) return;
        this.version += 1;
        if (first && keptResults)
          this.differences = storedDifferences(keptResults, this.results, this.notebook);
        // What differs stays to be seen at the next start, too, until somebody has taken note of it.
        if (this.computing.state === 'idle' && !this.differences) this.#keepResults();
        this.#explain(true);
        this.changed();
        if (this.computing.state === 'idle') this.watchers.release();
      },
      state: (state, words) => {
        this.computing = { state, words };
        this.changed();
      },
    });
    this.#client.open(notebook);
    world.loadCatalogue().then(
      (catalogue) => {
        this.catalogue = catalogue;
        this.version += 1;
        this.changed();
      },
      () => this.say('the texts of the functions could not be loaded; load the page again', true),
    );
  }

  subscribe(listener: () => void, turn?: Turn): () => void {
    return this.watchers.add(listener, turn);
  }

  changed(): void {
    this.watchers.tell();
  }

  /** The user has taken note of what is computed otherwise. */
  acceptDifferences(): void {
    this.differences = undefined;
    this.#keepResults();
    this.changed();
  }

  #keepResults(): void {
    const { notebook } = this;
    this.saving.keepResults(notebook, () =>
      this.notebook === notebook && this.computing.state === 'idle' ? resultsAsTheyAre(this) : undefined,
    );
  }

  get saved(): SaveState {
    return this.saving.state;
  }

  get worksheet(): Worksheet {
    const found = findWorksheet(this.notebook, this.selection.worksheet) ?? this.notebook.worksheets[0];
    if (!found) throw new RangeError('a notebook without worksheets');
    return found;
  }

  /** The worksheet the page shows: that of the active cell, or the one an open formula points into. */
  get inSight(): Worksheet {
    const { elsewhere } = this.draft ?? {};
    return (elsewhere !== undefined && findWorksheet(this.notebook, elsewhere)) || this.worksheet;
  }

  get address(): CellAddress {
    const { row, column } = this.selection;
    return { worksheet: this.worksheet.id, row, column };
  }

  get cell(): Cell | undefined {
    return cellAt(this.worksheet, this.selection.row, this.selection.column);
  }

  get result(): KnownResult | undefined {
    return this.results.at(this.worksheet.id, this.selection.row, this.selection.column);
  }

  /** Carries a command's answer out; a refusal is shown. True if something was done. */
  run(answer: Transaction | Refusal): boolean {
    if (isRefusal(answer)) {
      const words = answer.suggestion ? `${answer.message} (${answer.suggestion})` : answer.message;
      this.notice = { words, refused: true };
      this.changed();
      return false;
    }
    if (answer.changes.length === 0) return true;
    const refused = this.readOnly ? notTaken(this) : this.refuses?.(answer);
    if (refused !== undefined) {
      this.say(refused, true);
      return false;
    }
    this.notice = undefined;
    const stamped: Transaction = { ...answer, selectionBefore: answer.selectionBefore ?? this.selection };
    this.history = recorded(this.history, stamped);
    this.#carryOut(stamped);
    return true;
  }

  get canUndo(): boolean {
    return this.history.past.length > 0 && !this.readOnly;
  }

  get canRedo(): boolean {
    return this.history.future.length > 0 && !this.readOnly;
  }

  undo(): void {
    if (this.draft && !this.leaveDraft?.()) return;
    this.#step(undo(this.history));
  }

  redo(): void {
    this.#step(redo(this.history));
  }

  #step(step: { readonly history: History; readonly transaction: Transaction } | undefined): void {
    if (!step || this.readOnly || this.refuses?.(step.transaction) !== undefined) return;
    try {
      this.#carryOut(step.transaction);
      this.history = step.history;
      this.changed();
    } catch {
      this.history = EMPTY_HISTORY;
      this.say('what was done before does not fit this notebook: it can not be taken back', true);
    }
  }

  /** An edit of another tab, which holds the notebook. */
  follow(notebook: Notebook, transaction: Transaction): void {
    this.notebook = notebook;
    this.#client.apply(notebook, transaction.changes);
    this.#stay();
  }

  /** The notebook as it was read anew. */
  restart({ notebook, history }: Opened): void {
    this.notebook = notebook;
    this.history = history;
    this.#client.open(notebook);
    this.#stay();
  }

  /** After a change from elsewhere: what was being typed stays open, even where its worksheet is gone. */
  #stay(): void {
    this.version += 1;
    if (this.draft && this.worksheet.id !== this.selection.worksheet) this.say(CELL_GONE, true);
    this.selection = kept(this.selection, this.worksheet);
    this.#explain(false);
    this.changed();
  }

  #carryOut(transaction: Transaction): void {
    this.notebook = apply(this.notebook, transaction.changes);
    this.version += 1;
    // A calculator that is busy already will not be back within a frame.
    if (this.computing.state === 'idle') this.watchers.hold();
    this.#client.apply(this.notebook, transaction.changes);
    if (transaction.selectionAfter) this.selection = transaction.selectionAfter;
    this.selection = kept(this.selection, this.worksheet);
    this.saving.keep(this.notebook, transaction);
    this.#explain(false);
    this.changed();
  }

  /** Selects a cell; `extend` moves only the far corner. */
  select(row: number, column: number, extend = false, worksheet = this.worksheet.id): void {
    if (this.draft && !this.leaveDraft?.()) return;
    const target = findWorksheet(this.notebook, worksheet);
    if (!target) return;
    const toRow = Math.min(Math.max(row, 0), target.rowCount - 1);
    const toColumn = Math.min(Math.max(column, 0), target.columnCount - 1);
    this.selection =
      extend && worksheet === this.selection.worksheet
        ? { ...this.selection, toRow, toColumn }
        : { worksheet, row: toRow, column: toColumn, toRow, toColumn };
    this.notice = undefined;
    this.#explain(false);
    this.changed();
  }

  selectBlock(selection: Selection): void {
    if (this.draft && !this.leaveDraft?.()) return;
    this.selection = selection;
    this.selection = kept(selection, this.worksheet);
    this.#explain(false);
    this.changed();
  }

  move(move: Move, extend: boolean): void {
    this.select(...moved(this.selection, this.worksheet, move, extend), extend);
  }

  /** To the edge of the filled cells in a direction. */
  jump(move: 'up' | 'down' | 'left' | 'right', extend: boolean): void {
    this.select(...jumped(this.selection, this.worksheet, move, extend), extend);
  }

  setDraft(draft: Draft | undefined): void {
    const before = this.draft?.text;
    this.draft = draft;
    if (!draft) this.preview = undefined;
    else if (draft.text !== before) this.#askPreview(draft.text);
    this.changed();
  }

  #askPreview(text: string): void {
    this.notice = undefined;
    clearTimeout(this.#previewTimer);
    if (!text.startsWith('=') || text.length < 2) {
      this.preview = undefined;
      return;
    }
    this.#previewTimer = setTimeout(() => {
      const read = canonicalText(text, this.notebook.currency);
      if (read === undefined) return;
      void this.#client.preview(this.address, read).then((result) => {
        if (this.draft?.text !== text) return;
        this.preview = result;
        this.changed();
      });
    }, PREVIEW_AFTER);
  }

  #explain(again: boolean): void {
    const { worksheet, row, column } = this.address;
    const key = `${worksheet} ${row} ${column}`;
    if (!again && key === this.#explained) return;
    if (key !== this.#explained) this.explanation = undefined;
    this.#explained = key;
    // While something is computed the results bring the question up again.
    if (!this.cell || this.computing.state === 'busy' || this.computing.state === 'slow') return;
    void this.#client.explain({ worksheet, row, column }).then((explanation) => {
      if (this.#explained !== key) return;
      this.explanation = explanation;
      this.changed();
    });
  }

  openFunction(name: string | undefined): void {
    this.margin = 'functions';
    this.functionPage = name;
    this.changed();
  }

  showMargin(tab: string): void {
    this.margin = tab;
    this.changed();
  }

  say(words: string, refused = false): void {
    this.notice = { words, refused };
    this.changed();
  }

  /** How any cell was worked out, for print. */
  explain(address: CellAddress): Promise<Explanation> {
    return this.#client.explain(address);
  }

  stopComputing(): void {
    this.#client.stop();
  }

  async close(): Promise<void> {
    await this.saving.close();
    this.#client.close();
    for (const end of this.closing) end();
  }
}
