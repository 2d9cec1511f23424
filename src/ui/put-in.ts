/** The values that a formula's references have now: put into its text, and in words for a list. Numbers alone know no context. */

import { cellAt, contentOf } from '../document/index.ts';
import type { Cell, Worksheet } from '../document/index.ts';
import { referenceMarks, type ReferenceMark } from './reference-marks.ts';
import type { KnownResult } from './results.ts';
import type { Session } from './session.ts';
import { numberText, resultText } from './value-text.ts';

/** A range of more cells than these stays a range. */
const LISTED = 6;

/** The worksheet a cell stands on; the one in sight where it is none of the notebook's. */
function homeOf({ notebook, worksheet }: Session, cell: Cell): Worksheet {
  const holds = (each: Worksheet): boolean => each.rows.some((row) => row?.includes(cell) === true);
  return holds(worksheet) ? worksheet : (notebook.worksheets.find(holds) ?? worksheet);
}

/** A number as it is written into a formula; undefined where it can not be. */
export function valueText(session: Session, value: unknown, unit: string): string | undefined {
  const plain = digitsText(session, value, unit);
  if (plain === undefined) return undefined;
  const text = unit ? `${plain} ${unit}` : plain;
  return plain.startsWith('-') ? `(${text})` : text;
}

function digitsText(session: Session, value: unknown, unit: string): string | undefined {
  if (typeof value !== 'number') return undefined;
  const { number } = numberText(value, unit, session.notebook, { type: 'significant', digits: 5 });
  const plain = number
    .replaceAll(/[\u202f\u00a0 ]/g, '')
    .replace('−', '-')
    .replace(',', '.')
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
  return /^-?\d+(\.\d+)?(E-?\d+)?$/.test(plain) ? plain : undefined;
}

/** A value set so that what stands behind it goes on meaning the whole of it: a power, a quotient. */
export function beforeRest(value: string, rest: string): string {
  if (/^\s*[\^%]/.test(rest) && !value.startsWith('(')) return `(${value})`;
  return /^[*/&<>=+-]/.test(rest) ? `${value} ` : value;
}

interface Seen {
  readonly result: KnownResult | undefined;
  readonly cell: Cell | undefined;
}

function seenIn(session: Session, { worksheet, block }: ReferenceMark): readonly Seen[] {
  const home = session.notebook.worksheets.find(({ id }) => id === worksheet);
  if (!home) return [];
  const seen: Seen[] = [];
  for (let row = block.row; row < block.row + block.rows; row += 1)
    for (let column = block.column; column < block.column + block.columns; column += 1)
      seen.push({ result: session.results.at(worksheet, row, column), cell: cellAt(home, row, column) });
  return seen;
}

/** Text of a single cell's value for a formula: a number with its unit, a text in quotation marks. */
function single(session: Session, { result, cell }: Seen): string | undefined {
  const value = result?.value ?? (cell && textOf(session, cell));
  if (typeof value === 'string') return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return result && !result.error ? valueText(session, value, result.unit) : undefined;
}

function textOf({ notebook }: Session, cell: Cell): string | undefined {
  const content = contentOf(cell, notebook.currency);
  return content.type === 'text' ? content.text : undefined;
}

/** A short range of numbers of one unit as an inline array: {50;4} mm. */
function several(session: Session, mark: ReferenceMark, seen: readonly Seen[]): string | undefined {
  if (seen.length > LISTED) return undefined;
  const unit = seen[0]?.result?.unit ?? '';
  const digits = seen.map(({ result }) =>
    result && !result.error && result.unit === unit ? digitsText(session, result.value, unit) : undefined,
  );
  if (digits.some((each) => each === undefined)) return undefined;
  const { columns } = mark.block;
  const rows = Array.from({ length: mark.block.rows }, (_, row) =>
    digits.slice(row * columns, (row + 1) * columns).join(';'),
  );
  return `{${rows.join('|')}}${unit ? ` ${unit}` : ''}`;
}

/** The formula of a cell with the values of its references in their places; undefined where none could be put in. */
export function putIn(session: Session, cell: Cell): string | undefined {
  const { content } = cell;
  let text = '';
  let at = 0;
  for (const mark of referenceMarks(session.notebook, homeOf(session, cell).id, content)) {
    const seen = seenIn(session, mark);
    const [only] = seen;
    const value = seen.length === 1 && only ? single(session, only) : several(session, mark, seen);
    if (value === undefined) continue;
    text += content.slice(at, mark.from) + beforeRest(value, content.slice(mark.to));
    at = mark.to;
  }
  return at === 0 ? undefined : text + content.slice(at);
}

/** What a reference of a cell's formula stands for, for a list: one value, or the first ones of a range and how many there are. */
export function operandWords(session: Session, cell: Cell, reference: string): string {
  const [mark] = referenceMarks(session.notebook, homeOf(session, cell).id, `=${reference}`);
  const seen = mark ? seenIn(session, mark) : [];
  const words = seen
    .slice(0, LISTED)
    .map(({ result, cell: one }) =>
      result ? resultText(result, session.notebook) : ((one && textOf(session, one)) ?? 'empty'),
    );
  const more = seen.length > LISTED ? ` … ${seen.length} cells` : '';
  return words.join('; ') + more;
}
