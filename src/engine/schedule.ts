/** The one place that knows HyperFormula: it keeps the graph of dependencies and the order of recalculation; values and arithmetic are ours. */

import { FunctionArgumentType, FunctionPlugin, HyperFormula } from 'hyperformula';
import type { ConfigParams, RawCellContent } from 'hyperformula';
import type { Corner } from '../expression/index.ts';

/** Where a cell stands in the schedule; sheet, row and column from 0. */
export interface Place {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
}

/** A block that a formula reads; a single cell has one row and one column. */
export interface PlaceBlock extends Place {
  readonly rows: number;
  readonly columns: number;
}

/**
 * Computes the formula of a cell, whose precedents are all up to date, and keeps its value. Must not throw.
 * Gives a token that differs whenever dependents have to be computed again.
 */
export type Evaluate = (sheet: number, row: number, column: number) => number | string;

/** The formula function of every computed cell: its arguments are the precedents and are never read by the library. */
const VALUE = 'VALUEOF';

interface Context {
  readonly evaluate: Evaluate;
}

const isContext = (context: unknown): context is Context =>
  typeof context === 'object' && context !== null && 'evaluate' in context;

/** Another instance of the library in the same process has no cells of ours: there the function is 0. */
const evaluatorOf = (context: unknown): Evaluate => (isContext(context) ? context.evaluate : () => 0);

class CellFunctions extends FunctionPlugin {
  static override implementedFunctions = {
    [VALUE]: {
      method: 'valueOf_',
      parameters: [{ argumentType: FunctionArgumentType.ANY, optionalArg: true }],
      repeatLastArgs: 1,
    },
  };

  readonly #evaluate: Evaluate = evaluatorOf(this.config.context);

  /** Called in dependency order with the address of the cell that is being computed. */
  valueOf_(_call: unknown, state: { readonly formulaAddress: { sheet: number; row: number; col: number } }) {
    const { sheet, row, col } = state.formulaAddress;
    return this.#evaluate(sheet, row, col);
  }
}

// Registration is global to the library and has to precede the first instance.
HyperFormula.registerFunctionPlugin(CellFunctions, { enGB: { [VALUE]: VALUE } });

/** Formulas set since the library was started after which it is started anew: it remembers every distinct text it has seen. */
export const FORMULAS_BEFORE_RENEWAL = 10_000;

const COLUMN_NAMES = Array.from({ length: 64 }, (_, column) =>
  column < 26
    ? String.fromCharCode(65 + column)
    : String.fromCharCode(64 + Math.floor(column / 26)) + String.fromCharCode(65 + (column % 26)),
);

/** A block as it is written in the formula: formulas that were filled down look the same to the library and are read once. */
export interface Precedent {
  readonly sheet: number;
  readonly start: Corner;
  /** Absent for a single cell. */
  readonly end?: Corner;
}

/** A block that stays where it is, whatever cell refers to it. */
export function fixedBlock({ sheet, row, column, rows, columns }: PlaceBlock): Precedent {
  const fixed = { rowFixed: true, columnFixed: true } as const;
  const start = { row, column, ...fixed };
  const end = { row: row + rows - 1, column: column + columns - 1, ...fixed };
  return rows === 1 && columns === 1 ? { sheet, start } : { sheet, start, end };
}

const cornerText = ({ row, column, rowFixed, columnFixed }: Corner): string =>
  `${columnFixed ? '$' : ''}${COLUMN_NAMES[column]}${rowFixed ? '$' : ''}${row + 1}`;

function precedentText(precedent: Precedent | undefined, own: number): string {
  if (!precedent) return '';
  const { sheet, start, end } = precedent;
  const first = cornerText(start);
  const block = end ? `${first}:${cornerText(end)}` : first;
  return sheet === own ? block : `S${sheet + 1}!${block}`;
}

/** Measured: nothing is read as a date or a currency, nothing is kept for undoing, no pattern runs wild. */
const SETTINGS = {
  licenseKey: 'gpl-v3',
  undoLimit: 0,
  precisionRounding: 12,
  smartRounding: true,
  evaluateNullToZero: false,
  useWildcards: false,
  useRegularExpressions: false,
  dateFormats: [],
  timeFormats: [],
  currencySymbol: [],
  parseDateTime: () => undefined,
  maxRows: 2000,
  maxColumns: 64,
} as const satisfies Partial<ConfigParams>;

/** Which formulas to compute after which changes, and in which order. Sheets are numbers, so that no title reaches the library. */
export class Schedule {
  readonly #sheets: RawCellContent[][][];
  readonly #evaluate: Evaluate;
  /** Absent until the first run, which builds it with everything that was set. */
  #library: HyperFormula | undefined;
  #formulasSet = 0;

  constructor(sheets: number, evaluate: Evaluate) {
    this.#sheets = Array.from({ length: sheets }, () => []);
    this.#evaluate = evaluate;
  }

  /** True when so many formulas were set since it was built that a new schedule is cheaper to keep than this one. */
  get isWorn(): boolean {
    return this.#formulasSet > FORMULAS_BEFORE_RENEWAL;
  }

  /** Makes the changes, then computes everything that depends on them, each cell once and after its precedents. */
  run(changes: () => void): void {
    if (!this.#library) {
      changes();
      this.#library = this.#built();
      this.#formulasSet = 0;
      return;
    }
    this.#library.suspendEvaluation();
    try {
      changes();
    } finally {
      this.#library.resumeEvaluation();
    }
  }

  /** The cell holds a value: a number or a token for anything else. Equal values start nothing. */
  setValue(place: Place, token: number | string): void {
    this.#set(place, typeof token === 'string' ? `'${token}` : token);
  }

  setBlank(place: Place): void {
    this.#set(place, null);
  }

  /** The cell is computed from these blocks. */
  setFormula(place: Place, precedents: readonly (Precedent | undefined)[]): void {
    this.#formulasSet++;
    const read = precedents.map((precedent) => precedentText(precedent, place.sheet)).join(',');
    this.#set(place, `=${VALUE}(${read})`);
  }

  destroy(): void {
    this.#library?.destroy();
  }

  #set({ sheet, row, column }: Place, content: RawCellContent): void {
    if (this.#library) {
      this.#library.setCellContents({ sheet, row, col: column }, content);
      return;
    }
    const rows = this.#sheets[sheet] ?? [];
    while (rows.length <= row) rows.push([]);
    const line = rows[row] ?? [];
    while (line.length <= column) line.push(null);
    line[column] = content;
  }

  #built(): HyperFormula {
    const sheets = this.#sheets.map((rows, index) => [`S${index + 1}`, rows] as const);
    const library = HyperFormula.buildFromSheets(Object.fromEntries(sheets), {
      ...SETTINGS,
      context: { evaluate: this.#evaluate } satisfies Context,
    });
    this.#sheets.length = 0;
    return library;
  }
}
