/** How each cell of a worksheet looks: from its text, role and result to a face the grid can paint. */

import { columnLetters, readSymbol } from '../expression/index.ts';
import { cellAt, forEachCell, namesOn, roleOf } from '../document/index.ts';
import type { Cell, Notebook, Worksheet } from '../document/index.ts';
import type { Face } from './elements/cell-face.ts';
import type { GridModel } from './elements/grid-body.ts';
import type { KnownResult, ResultRow, Results } from './results.ts';
import { hasMarks, plainText, readInline } from './note-tree.ts';
import { decimalMark, editedText, inWords, markedDigits } from './number-locale.ts';
import { contentOf, resultText, numberText } from './value-text.ts';

const EMPTY: Face = Object.freeze({ type: 'empty', text: '' });
const FIRST_WIDTH = 220;
const DEFAULT_WIDTH = 132;
const HEADING_LENGTH = 60;
/** Longer texts are broken over lines within the empty cells they cover: as wide as a tablet held upright shows. */
const WRAP_AT = 746;
/** A text without any of these has no marks in it. */
const MARKS = /[*_`[\\]/;
/** Pixels around a number and of a caution's sign. */
const NUMBER_PADDING = 25;
const SIGN_WIDTH = 18;
const FACE = "'Atkinson Hyperlegible Next', sans-serif";
const MONO = "15px 'Atkinson Hyperlegible Mono', monospace";

/** How one cell looks: what it depends on besides the settings is its row's contents and its own result. */
interface Made {
  readonly cells: readonly (Cell | undefined)[] | undefined;
  readonly result: KnownResult | undefined;
  readonly face: Face;
}

/** What the looks of a row depend on, and the mark by which the page knows that it has painted them. */
interface MarkedRow {
  readonly cells: readonly (Cell | undefined)[] | undefined;
  readonly results: ResultRow | undefined;
  readonly mark: object;
}

/** Faces without lists in them are compared field by field. */
const isSame = (a: Face, b: Face): boolean => {
  const names = Object.keys(a) as (keyof Face)[];
  return names.length === Object.keys(b).length && names.every((name) => a[name] === b[name]);
};

/** Letter and index of a symbol (F24). */
export function symbolParts(symbol: string): readonly [string, string] {
  const { base, index } = readSymbol(symbol);
  return [base, index ?? ''];
}

/** The faces of one worksheet, each made once as long as nothing about it changes. */
export class Faces implements GridModel {
  readonly #made = new Map<number, Made>();
  readonly #rows = new Map<number, MarkedRow>();
  #notebook: Notebook | undefined;
  #worksheet: Worksheet | undefined;
  #results: Results | undefined;
  #formulas = false;
  #mark = '';
  #pen: CanvasRenderingContext2D | null | undefined;
  #symbols = new Set<string>();
  #formulaWidths: { readonly rows: Worksheet['rows'] | undefined; readonly widths: readonly number[] } = {
    rows: undefined,
    widths: [],
  };

  /** Points the faces at a worksheet; true if it is another one than before. */
  show(notebook: Notebook, worksheet: Worksheet, results: Results, formulas: boolean): boolean {
    const other = worksheet.id !== this.#worksheet?.id || notebook.id !== this.#notebook?.id;
    const mark = decimalMark();
    if (
      other ||
      mark !== this.#mark ||
      formulas !== this.#formulas ||
      notebook.display !== this.#notebook?.display ||
      worksheet.widths !== this.#worksheet?.widths ||
      worksheet.columnCount !== this.#worksheet.columnCount
    )
      this.#forget();
    if (this.#worksheet?.names !== worksheet.names) {
      this.#symbols = new Set(
        [...namesOn(worksheet).values()].flatMap((name) => [name.name, name.symbol ?? '']),
      );
      this.#forget();
    }
    this.#mark = mark;
    this.#notebook = notebook;
    this.#worksheet = worksheet;
    this.#results = results;
    this.#formulas = formulas;
    return other;
  }

  #forget(): void {
    this.#made.clear();
    this.#rows.clear();
  }

  get rows(): number {
    return this.#worksheet?.rowCount ?? 0;
  }

  get columns(): number {
    return this.#worksheet?.columnCount ?? 0;
  }

  get headRow(): boolean {
    return this.#worksheet?.headRow === true;
  }

  get widths(): readonly number[] {
    return Array.from({ length: this.columns }, (_, column) => this.width(column));
  }

  /** As set, else usual; wider where formulas stand in place of values. */
  width(column: number): number {
    const usual = this.#worksheet?.widths[column] ?? (column === 0 ? FIRST_WIDTH : DEFAULT_WIDTH);
    if (!this.#formulas || !this.#worksheet) return usual;
    if (this.#formulaWidths.rows !== this.#worksheet.rows)
      this.#formulaWidths = { rows: this.#worksheet.rows, widths: formulaWidths(this.#worksheet) };
    return Math.max(usual, this.#formulaWidths.widths[column] ?? 0);
  }

  columnName(column: number): string {
    return columnLetters(column);
  }

  /** The same object as long as no cell of the row looks otherwise. */
  rowMark(row: number): object {
    const cells = this.#worksheet?.rows[row];
    const results = this.#worksheet && this.#results?.row(this.#worksheet.id, row);
    const known = this.#rows.get(row);
    if (known && known.cells === cells && known.results === results) return known.mark;
    const mark = {};
    this.#rows.set(row, { cells, results, mark });
    return mark;
  }

  face(row: number, column: number): Face {
    const worksheet = this.#worksheet;
    const notebook = this.#notebook;
    if (!worksheet || !notebook) return EMPTY;
    const cells = worksheet.rows[row];
    const cell = cells?.[column];
    const result = this.#results?.at(worksheet.id, row, column);
    if (!cell && !result) return EMPTY;
    const key = row * 64 + column;
    const made = this.#made.get(key);
    if (made && made.cells === cells && made.result === result) return made.face;
    const fresh = this.#make(notebook, worksheet, row, column, cell, result);
    const face = made && isSame(made.face, fresh) ? made.face : fresh;
    this.#made.set(key, { cells, result, face });
    return face;
  }

  #make(
    notebook: Notebook,
    worksheet: Worksheet,
    row: number,
    column: number,
    cell: Cell | undefined,
    result: KnownResult | undefined,
  ): Face {
    const marks = { ...this.#marks(result), ...(cell?.note !== undefined && { noted: true as const }) };
    if (cell && this.#formulas && cell.content.startsWith('='))
      return { type: 'text', text: editedText(cell.content, notebook.currency), formula: true, ...marks };
    if (result?.error)
      return {
        type: 'error',
        text: result.error.code,
        title: inWords(result.error.message),
        ...marks,
        role: 'worked',
      };
    const content = cell ? contentOf(cell, notebook) : undefined;
    const role = cell ? roleOf(cell) : 'worked';
    if (content && 'formula' === content.type && !result) return { type: 'text', text: '…', stale: true };
    if (content?.type === 'unknownUnit' && !result)
      return {
        type: 'error',
        text: editedText(cell?.content ?? '', notebook.currency),
        title: 'unknown unit',
      };
    const value = result ? result.value : undefined;
    if (typeof value === 'number' && result && result.kind !== 'date') {
      const typed = this.#asTyped(content, cell, result.unit);
      const { number, unit } = numberText(value, result.unit, notebook, cell?.format);
      const room =
        this.width(column) -
        NUMBER_PADDING -
        (marks.caution ? SIGN_WIDTH : 0) -
        (role === 'measured' ? SIGN_WIDTH : 0);
      const fits = (text: string): boolean =>
        this.#measure(text, MONO) + this.#measure(unit, `13px ${FACE}`) <= room;
      const face = { type: 'number', unit, role, ...marks } as const;
      const whole = typed ?? number;
      if (fits(whole)) return { ...face, text: whole };
      const title = [`${whole} ${unit}`.trim(), marks.title ?? ''].filter(Boolean).join('\n');
      for (let digits = 5; digits >= (cell?.format ? 6 : 3); digits -= 1) {
        const rounded = numberText(value, result.unit, notebook, { type: 'significant', digits }).number;
        if (rounded.length < whole.length && fits(rounded)) return { ...face, text: rounded, title };
      }
      return { ...face, text: '↔', title: `the column is too narrow for ${title}` };
    }
    if (!result && content && (content.type === 'quantity' || content.type === 'number')) {
      const unit = content.type === 'quantity' ? content.unit : '';
      const shown = typeof unit === 'string' ? unit : unit.symbol;
      return { type: 'number', text: grouped(content.digits), unit: shown, role, ...marks };
    }
    if (typeof value === 'boolean' || typeof value === 'number')
      return { type: 'number', text: result ? resultText(result, notebook) : '', unit: '', role, ...marks };
    const text =
      typeof value === 'string' ? value : content?.type === 'text' ? content.text : (cell?.content ?? '');
    const own = role === 'given' || role === 'measured' || role === 'choice' ? { role } : {};
    return this.#text(worksheet, row, column, text, { ...marks, ...own });
  }

  /** A given value in its own unit keeps the digits that were typed. */
  #asTyped(
    content: ReturnType<typeof contentOf> | undefined,
    cell: Cell | undefined,
    unit: string,
  ): string | undefined {
    if (!content || cell?.format) return undefined;
    if (content.type === 'number') return unit === '' ? grouped(content.digits) : undefined;
    if (content.type !== 'quantity') return undefined;
    const symbol = typeof content.unit === 'string' ? content.unit : content.unit.symbol;
    return symbol === unit ? grouped(content.digits) : undefined;
  }

  #marks(result: KnownResult | undefined): Partial<Face> {
    const marked = (result?.cautions ?? []).filter((caution) => caution.type !== 'assumed');
    const stale = result && this.#results?.fromLastTime ? { stale: true } : {};
    if (marked.length === 0) return stale;
    const open = marked.filter((caution) => caution.acknowledged === undefined);
    const breach = open.some(({ type }) => type === 'breach');
    return {
      ...stale,
      caution: breach ? 'breach' : open.length > 0 ? 'open' : 'acknowledged',
      title: marked.map((caution) => inWords(caution.text)).join('\n'),
    };
  }

  #text(worksheet: Worksheet, row: number, column: number, written: string, more: Partial<Face>): Face {
    const read = more.role === undefined && MARKS.test(written) ? readInline(written) : [];
    const parts = hasMarks(read) ? read : undefined;
    const text = parts ? plainText(parts) : written;
    const cells = worksheet.rows[row] ?? [];
    const alone = cells.every((each, k) => !each || k === column);
    if (!alone && column > 0 && (this.#symbols.has(text) || this.#isSymbol(worksheet, row, column, text)))
      return { type: 'text', text, symbol: symbolParts(text), ...more };
    const heading = alone && column === 0 && text.length <= HEADING_LENGTH && !/[.!?]$/.test(text);
    const note = !heading && (alone || column > 2);
    const width = this.#measure(text, heading ? `600 16px ${FACE}` : `15px ${FACE}`) + 20;
    let over = 0;
    let room = this.width(column);
    while (
      room < Math.min(width, WRAP_AT) &&
      !cells[column + 1 + over] &&
      column + 1 + over < worksheet.columnCount
    ) {
      room += this.width(column + 1 + over);
      over += 1;
    }
    const line = Math.min(room, WRAP_AT);
    return {
      type: 'text',
      text,
      ...(heading && { heading }),
      ...(note && { role: 'note' as const }),
      ...(over > 0 && { over }),
      ...(over > 0 && line < width && { wrap: line }),
      ...(parts && { parts }),
      ...more,
    };
  }

  /** A single letter, with or without an index, right before a value is that value's symbol. */
  #isSymbol(worksheet: Worksheet, row: number, column: number, text: string): boolean {
    const value = cellAt(worksheet, row, column + 1);
    if (!value || column === 0 || !/^[\p{L}\p{M}\d_.]{1,12}$/u.test(text)) return false;
    const type = contentOf(value, this.#notebook ?? { currency: '' }).type;
    return ['formula', 'quantity', 'number'].includes(type) && readSymbol(text).base.length === 1;
  }

  #measure(text: string, font: string): number {
    if (this.#pen === undefined) this.#pen = document.createElement('canvas').getContext('2d');
    if (!this.#pen) return text.length * 7.5;
    this.#pen.font = font;
    return this.#pen.measureText(text).width;
  }
}

/** Widest formula of each column in pixels; longer ones are broken over lines. */
const WIDEST_FORMULA = 440;

function formulaWidths(worksheet: Worksheet): readonly number[] {
  const widths: number[] = [];
  forEachCell(worksheet, ({ content }, _row, column) => {
    if (!content.startsWith('=')) return;
    const width = Math.min(WIDEST_FORMULA, content.length * 8.5 + 24);
    widths[column] = Math.max(widths[column] ?? 0, width);
  });
  return widths;
}

const grouped = (digits: string): string => {
  const [whole = '', part] = digits.split('.');
  if (!/^[-−]?\d{5,}$/.test(whole) || /[eE]/.test(digits)) return markedDigits(digits);
  const parted = whole.replaceAll(/\B(?=(\d{3})+$)/g, '\u202f');
  return part === undefined ? parted : `${parted}${decimalMark()}${part}`;
};
