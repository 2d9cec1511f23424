/** Typing into many single cells on any worksheet as one step; what can not be taken is left as it was, and named. */

import { parse } from '../../expression/index.ts';
import { canonicalContent } from '../canonical-content.ts';
import type { TypingLocale } from '../canonical-content.ts';
import { cellAt, worksheetOf } from '../cells.ts';
import type { CellPlace, CellWrite } from '../cells.ts';
import type { Transaction } from '../change.ts';
import { transactionTo } from '../changes-between.ts';
import { readContent } from '../content.ts';
import type { Notebook } from '../notebook.ts';
import { isRefusal } from '../refusal.ts';
import type { Refusal } from '../refusal.ts';
import { tidyCell } from '../tidy-cell.ts';
import { withWrites } from '../with-worksheet.ts';
import { choiceRefusal, filledCell } from './enter.ts';

export interface Typed extends CellPlace {
  readonly typed: string;
}

/** A place that was left as it was, with the reason in words. */
export interface LeftAsItWas extends CellPlace {
  readonly why: string;
}

export interface EnteredMany {
  readonly transaction: Transaction | Refusal;
  readonly left: readonly LeftAsItWas[];
}

/** Why new content would lose what the cell was: a formula that reads no more, a value that would be a text. */
function loss(was: string, content: string, currency: string): string | undefined {
  const before = readContent(was, currency).type;
  const after = readContent(content, currency).type;
  if (after === 'formula') {
    const { problem } = parse(content, { currency });
    const wasBroken = before === 'formula' && parse(was, { currency }).problem !== undefined;
    return problem && !wasBroken ? `the formula could not be read: ${problem.message}` : undefined;
  }
  if (before === 'formula' && after !== 'empty') return 'it would be a formula no more';
  if (after === 'unknownUnit' && before !== 'unknownUnit') return 'its unit would not be known';
  const isValue = before === 'quantity' || before === 'number' || before === 'date';
  return isValue && (after === 'text' || after === 'logical') ? 'it would be a text' : undefined;
}

/** One step for all of them, however many worksheets; `locale` says how they are written. */
export function enterMany(
  notebook: Notebook,
  entries: readonly Typed[],
  description: string,
  locale: Omit<TypingLocale, 'currency'> = {},
): EnteredMany {
  const writes = new Map<string, CellWrite[]>();
  const left: LeftAsItWas[] = [];
  const { currency } = notebook;
  for (const { worksheet, row, column, typed } of entries) {
    const was = cellAt(worksheetOf(notebook, worksheet), row, column);
    const canonical = canonicalContent(typed, { ...locale, currency }, was);
    const why = isRefusal(canonical)
      ? canonical.message
      : (choiceRefusal(was, canonical.content) ?? loss(was?.content ?? '', canonical.content, currency));
    if (why !== undefined || isRefusal(canonical)) {
      left.push({ worksheet, row, column, why: why ?? '' });
      continue;
    }
    const list = writes.get(worksheet) ?? [];
    list.push({ row, column, cell: tidyCell(filledCell(was, canonical, currency)) });
    writes.set(worksheet, list);
  }
  let after = notebook;
  for (const [worksheet, cells] of writes) after = withWrites(after, worksheet, cells);
  return { transaction: transactionTo(notebook, after, description), left };
}
