/** What a cell carries besides its content: role, format, limits, label, note, source, choices, place at the machine, acknowledgements. */

import { cellAt, checkBlock, worksheetOf } from '../cells.ts';
import type { CellPlace, CellWrite } from '../cells.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { readContent } from '../content.ts';
import { addressOf, blockText } from '../formula-references.ts';
import type {
  Acknowledgement,
  Block,
  Cell,
  Limits,
  MachinePlace,
  Notebook,
  NumberFormat,
  Role,
} from '../notebook.ts';
import type { Refusal } from '../refusal.ts';
import { tidyCell } from '../tidy-cell.ts';
import { withWrites } from '../with-worksheet.ts';

export interface CellsArgs {
  /** Worksheet id. */
  readonly worksheet: string;
  readonly block: Block;
}

/** The cells of a block changed one by one; an empty cell comes as one with empty content. */
export function changeCells(
  notebook: Notebook,
  { worksheet, block }: CellsArgs,
  what: string,
  change: (cell: Cell, row: number, column: number) => Cell | Refusal,
): Transaction | Refusal {
  checkBlock(block);
  const sheet = worksheetOf(notebook, worksheet);
  const writes: CellWrite[] = [];
  for (let row = block.row; row < block.row + block.rows; row++) {
    for (let column = block.column; column < block.column + block.columns; column++) {
      const was = cellAt(sheet, row, column);
      const changed = change(was ?? { content: '' }, row, column);
      if ('message' in changed) return changed;
      const cell = tidyCell(changed);
      if (cell !== was && (cell || was)) writes.push({ row, column, cell });
    }
  }
  return transactionTo(notebook, withWrites(notebook, worksheet, writes), `${what} of ${blockText(block)}`);
}

type Property = Exclude<keyof Cell, 'content'>;

/** The cell with the property, or without it where the value is undefined. */
export function withProperty<K extends Property>(cell: Cell, key: K, value: Cell[K] | undefined): Cell {
  const changed = { ...cell };
  if (value === undefined) delete changed[key];
  else changed[key] = value;
  return changed;
}

function setProperty<K extends Property>(
  notebook: Notebook,
  args: CellsArgs,
  key: K,
  value: Cell[K] | undefined,
  what: string,
): Transaction | Refusal {
  return changeCells(notebook, args, what, (cell) => withProperty(cell, key, value));
}

const TEXT_LENGTH = 2000;

function setText(
  notebook: Notebook,
  args: CellsArgs,
  key: 'note' | 'label' | 'source',
  text: string | undefined,
): Transaction | Refusal {
  if (text && text.length > TEXT_LENGTH) {
    return { message: `A ${key} has at most ${TEXT_LENGTH} characters.` };
  }
  return setProperty(notebook, args, key, text === '' ? undefined : text, key);
}

/** Own label of the cells; undefined: the nearest text again. */
export const setLabel = (
  notebook: Notebook,
  args: CellsArgs & { readonly label?: string },
): Transaction | Refusal => setText(notebook, args, 'label', args.label);

export const setNote = (
  notebook: Notebook,
  args: CellsArgs & { readonly note?: string },
): Transaction | Refusal => setText(notebook, args, 'note', args.note);

/** Where the given value comes from. */
export const setSource = (
  notebook: Notebook,
  args: CellsArgs & { readonly source?: string },
): Transaction | Refusal => setText(notebook, args, 'source', args.source);

const FRACTIONS = [2, 4, 8, 16, 32, 64, 128];

/** How the numbers are written; undefined: as the kind has it. */
export function setFormat(
  notebook: Notebook,
  args: CellsArgs & { readonly format?: NumberFormat },
): Transaction | Refusal {
  const { format } = args;
  if (format?.type === 'fraction') {
    if (!FRACTIONS.includes(format.denominator)) {
      return { message: `The denominator of a fraction is one of ${FRACTIONS.join(', ')}.` };
    }
  } else if (format) {
    const least = format.type === 'significant' ? 1 : 0;
    if (!Number.isInteger(format.digits) || format.digits < least || format.digits > 15) {
      return { message: `The number of digits lies between ${least} and 15.` };
    }
  }
  return setProperty(notebook, args, 'format', format, 'format');
}

/** Undefined: guessed from the content again. A formula can not be given or measured. */
export function setRole(
  notebook: Notebook,
  args: CellsArgs & { readonly role?: Role },
): Transaction | Refusal {
  const { role } = args;
  return changeCells(notebook, args, 'role', (cell, row, column) => {
    if (cell.content.startsWith('=') && (role === 'given' || role === 'measured' || role === 'choice')) {
      return { message: `${addressOf(row, column)} holds a formula: it is worked, not ${role}.` };
    }
    const { role: _old, ...rest } = cell;
    return role === undefined ? rest : { ...rest, role };
  });
}

const CHOICES = 200;

/** Texts to pick from; undefined or none: no longer a choice. */
export function setChoices(
  notebook: Notebook,
  args: CellsArgs & { readonly choices?: readonly string[] },
): Transaction | Refusal {
  const choices = args.choices?.map((choice) => choice.trim()).filter((choice) => choice !== '');
  if (choices && choices.length > CHOICES) return { message: `At most ${CHOICES} choices.` };
  return changeCells(notebook, args, 'choices', (cell) => {
    const { choices: _old, role, ...rest } = cell;
    if (!choices || choices.length === 0) {
      return role === undefined || role === 'choice' ? rest : { ...rest, role };
    }
    return { ...rest, role: 'choice', choices: Object.freeze([...new Set(choices)]) };
  });
}

/** Limits of the value, each a number or quantity as typed in canonical form. */
export function setLimits(
  notebook: Notebook,
  args: CellsArgs & { readonly limits?: Limits },
): Transaction | Refusal {
  const { limits } = args;
  const [low, high] = [limits?.low, limits?.high].map((text) =>
    text === undefined ? undefined : readContent(text, notebook.currency),
  );
  for (const [content, text] of [
    [low, limits?.low],
    [high, limits?.high],
  ] as const) {
    if (content && content.type !== 'quantity' && content.type !== 'number') {
      return { message: `A limit is a number or a quantity, not "${text}".` };
    }
  }
  if (low && high && 'si' in low && 'si' in high) {
    if (low.kind.dimension !== high.kind.dimension) {
      return { message: `The limits differ: ${limits?.low} and ${limits?.high}.` };
    }
    if (low.si > high.si) {
      return { message: `The low limit ${limits?.low} lies above the high one, ${limits?.high}.` };
    }
  }
  return setProperty(notebook, args, 'limits', limits, 'limits');
}

/** Place on the machine-side page; undefined: not there. Only a value that is not worked can be changed there. */
export function setMachinePlace(
  notebook: Notebook,
  args: CellsArgs & { readonly machine?: MachinePlace },
): Transaction | Refusal {
  const { machine } = args;
  return changeCells(notebook, args, 'place at the machine', (cell, row, column) => {
    if (machine?.place === 'changed' && cell.content.startsWith('=')) {
      return {
        message: `${addressOf(row, column)} holds a formula: at the machine it can be shown, not changed.`,
      };
    }
    const { machine: _old, ...rest } = cell;
    return machine === undefined ? rest : { ...rest, machine };
  });
}

/** Accepts a caution with a reason (F23); one with the same key is replaced. */
export function acknowledge(
  notebook: Notebook,
  { worksheet, row, column, ...caution }: CellPlace & Omit<Acknowledgement, 'content'>,
): Transaction | Refusal {
  if (caution.reason.trim() === '') return { message: 'An acknowledgement needs a reason.' };
  const block = { row, column, rows: 1, columns: 1 };
  return changeCells(notebook, { worksheet, block }, 'acknowledgement', (cell) => {
    const others = (cell.acknowledged ?? []).filter(({ key }) => key !== caution.key);
    return { ...cell, acknowledged: [...others, { ...caution, content: cell.content }] };
  });
}

/** Takes an acknowledgement back. */
export function withdrawAcknowledgement(
  notebook: Notebook,
  { worksheet, row, column, key }: CellPlace & { readonly key: string },
): Transaction | Refusal {
  const block = { row, column, rows: 1, columns: 1 };
  return changeCells(notebook, { worksheet, block }, 'acknowledgement', (cell) => ({
    ...cell,
    acknowledged: (cell.acknowledged ?? []).filter((each) => each.key !== key),
  }));
}
