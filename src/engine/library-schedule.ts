/** The one place that knows HyperFormula: it keeps the graph of dependencies and the order of recalculation; values and arithmetic are ours. */

import { FunctionArgumentType, FunctionPlugin, HyperFormula } from 'hyperformula';
import type { ConfigParams, RawCellContent } from 'hyperformula';
import type { Corner } from '../expression/index.ts';
import type { Evaluate, Place, Precedent, Schedule } from '../workbook/index.ts';

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
export class LibrarySchedule implements Schedule {
  readonly #sheets: RawCellContent[][][];
  readonly #evaluate: Evaluate;
  /** Absent until the first run, which builds it with everything that was set. */
  #library: HyperFormula | undefined;
  #formulasSet = 0;

  constructor(sheets: number, evaluate: Evaluate) {
    this.#sheets = Array.from({ length: sheets }, () => []);
    this.#evaluate = evaluate;
  }

  /** True when so many formulas were set since it was built that a new one is cheaper to keep. */
  get isWorn(): boolean {
    return this.#formulasSet > FORMULAS_BEFORE_RENEWAL;
  }

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

  setValue(place: Place, token: number | string): void {
    this.#set(place, typeof token === 'string' ? `'${token}` : token);
  }

  setBlank(place: Place): void {
    this.#set(place, null);
  }

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
