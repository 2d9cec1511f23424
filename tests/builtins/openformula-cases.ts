/** The committee's own test cases of OpenFormula with their data, as this project reads them. */

import { readFileSync } from 'node:fs';
import { REWRITTEN } from './openformula.table.ts';

export interface Case {
  readonly id: string;
  readonly section: string;
  readonly expression: string;
  readonly type: 'number' | 'text' | 'logical' | 'error' | 'array' | 'formula';
  readonly value: unknown;
  readonly tolerance: number | null;
}

const file = JSON.parse(readFileSync(new URL('../references/openformula.json', import.meta.url), 'utf8')) as {
  data: {
    cells: Record<string, string>;
    namedExpressions: Record<string, string>;
    notPrinted: { cells: Record<string, number> };
  };
  cases: Case[];
};

/** The data prints its references in brackets with a leading dot. */
export const unbracketed = (text: string): string =>
  text.replaceAll(/\[\.([A-Z]+\d+)(?::\.([A-Z]+\d+))?\]/g, (_, a, b) => (b ? `${a}:${b}` : a));

/** Contents of the test data by address. */
export const DATA_CELLS: ReadonlyMap<string, string> = new Map(
  Object.entries({ ...file.data.cells, ...file.data.notPrinted.cells }).map(([address, text]) => [
    address,
    unbracketed(String(text)),
  ]),
);

/** Named cells and ranges of the test data. */
export const DATA_NAMES: ReadonlyMap<string, string> = new Map(Object.entries(file.data.namedExpressions));

export const CASES: readonly Case[] = file.cases;

/** Curly quotation marks are the printer's; a formula without its = sign is one. */
export const formulaOf = ({ id, expression }: Case): string => {
  const text = (REWRITTEN.get(id) ?? expression).replaceAll(/[“”]/g, '"').trim();
  return text.startsWith('=') ? text : `=${text}`;
};

export const near = (actual: number, wanted: number, tolerance: number | null): boolean =>
  Math.abs(actual - wanted) <= (tolerance ?? 1e-12 * Math.max(1, Math.abs(wanted)));
