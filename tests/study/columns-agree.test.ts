/** On every shipped notebook the columns of a plan give what the engine gives, to 1e-12, for all formula cells. */

import { expect, test } from 'vitest';
import { functionTable } from '../../src/catalogue.ts';
import type { CellAddress } from '../../src/calculation/index.ts';
import { contentOf, forEachCell } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import { readNotebook } from '../../src/exchange/index.ts';
import { isFailure } from '../../src/expression/index.ts';
import type { Scalar } from '../../src/expression/index.ts';
import { Plan, StudyBook } from '../../src/study/index.ts';
import { finished } from './asking.ts';

const FILES = import.meta.glob<string>('../../sheets/*.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});
const functions = functionTable();

interface Found {
  readonly notebook: Notebook;
  readonly givens: readonly { readonly cell: CellAddress; readonly content: string }[];
  readonly formulas: readonly CellAddress[];
}

function read(text: string): Found {
  const { notebook } = readNotebook(text) as { notebook: Notebook };
  const givens: { cell: CellAddress; content: string }[] = [];
  const formulas: CellAddress[] = [];
  for (const worksheet of notebook.worksheets) {
    forEachCell(worksheet, (each, row, column) => {
      const cell = { worksheet: worksheet.id, row, column };
      const { type } = contentOf(each, notebook.currency);
      if (type === 'formula') formulas.push(cell);
      else if (type === 'number' || type === 'quantity') givens.push({ cell, content: each.content });
    });
  }
  return { notebook, givens, formulas };
}

/** The same content with another number: "12.5 mm" times 1.02 is "12.75 mm"; whole numbers stay whole. */
function scaled(content: string, factor: number): string {
  return content.replace(/^[-+]?\d[\d ]*(?:\.\d+)?(?![\d/])/, (digits) => {
    const value = Number(digits.replaceAll(' ', ''));
    if (/^\d+$/.test(digits.trim()) && value < 20) return digits;
    return String(Number((value * factor).toPrecision(9)));
  });
}

const FACTORS = [1, 1.02, 0.97];

test.each(Object.entries(FILES))('%s: columns and engine give the same values', (_, text) => {
  const { notebook, givens, formulas } = read(text);
  expect(formulas.length).toBeGreaterThan(0);
  const book = new StudyBook(notebook, functions);
  const engine = createEngine({ functions });
  const contents = FACTORS.map((factor) =>
    givens.map(({ content }) =>
      content.includes('/') && !/[a-z]/.test(content) ? content : scaled(content, factor),
    ),
  );
  const engines = contents.map((row) => {
    engine.open(notebook);
    engine.apply(
      givens.map(({ cell }, index) => {
        const worksheet = notebook.worksheets.find(({ id }) => id === cell.worksheet);
        const from = worksheet?.rows[cell.row]?.[cell.column];
        return { type: 'cell', ...cell, ...(from && { from, to: { ...from, content: row[index] ?? '' } }) };
      }),
    );
    return {
      values: formulas.map((cell) => engine.result(cell)),
      numbers: givens.map(({ cell }) => Number(engine.result(cell).value)),
    };
  });
  const plan = new Plan(
    book,
    givens.map(({ cell }) => book.state(cell)),
    formulas.map((cell) => book.state(cell)),
  );
  const samples = givens.map((__, index) =>
    Float64Array.from(engines, ({ numbers }) => numbers[index] ?? NaN),
  );
  const found: Scalar[][] = finished(plan.values(samples, FACTORS.length));
  const offences: unknown[] = [];
  let numbers = 0;
  formulas.forEach((cell, index) => {
    engines.forEach(({ values }, sample) => {
      const { value, error } = values[index] ?? { value: null };
      const own = found[index]?.[sample] ?? null;
      if (error) {
        if (!isFailure(own) || own.failure !== error.code || own.message !== error.message)
          offences.push({ cell, sample, error, own });
      } else if (typeof value === 'number' && typeof own === 'number') {
        numbers++;
        if (Math.abs(value - own) > 1e-12 * Math.max(Math.abs(value), Math.abs(own)))
          offences.push({ cell, sample, value, own });
      } else if (value !== own) offences.push({ cell, sample, value, own });
    });
  });
  expect(offences).toEqual([]);
  expect(numbers).toBeGreaterThan(10);
});
