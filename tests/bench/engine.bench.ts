/**
 * What the engine costs beside the bare library with the same arithmetic, as ratios measured in one run:
 * processor time, the best of several turns taken in alternation, after a warm-up.
 */

import { HyperFormula } from 'hyperformula';
import { beforeAll, expect, test } from 'vitest';
import { addressText } from '../../src/expression/index.ts';
import type { CellResult, FromEngine } from '../../src/calculation/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import type { Engine } from '../../src/engine/index.ts';
import { functionTable } from '../../src/catalogue.ts';
import { at, notebookOf, typed } from '../engine/notebook.ts';
import type { Notebook } from '../../src/document/index.ts';

const COLUMNS = 16;
const LIBRARY = { licenseKey: 'gpl-v3', undoLimit: 0, useArrayArithmetic: true } as const;
const TURNS = 9;

/** Milliseconds of processor time. */
function cost(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** Best of alternating turns, so that both sides meet the same machine. */
function compared(
  ours: (turn: number) => void,
  bare: (turn: number) => void,
  turns = TURNS,
): [number, number] {
  const best: [number, number] = [Infinity, Infinity];
  for (let turn = 0; turn < turns; turn++) {
    const costs = [cost(() => ours(turn)), cost(() => bare(turn))] as const;
    if (turn === 0) continue;
    best[0] = Math.min(best[0], costs[0]);
    best[1] = Math.min(best[1], costs[1]);
  }
  return best;
}

function report(what: string, [ours, bare]: [number, number], aim: number): void {
  const ratio = ours / bare;
  console.log(
    `${what}: ${ours.toFixed(1)} ms, bare ${bare.toFixed(1)} ms, ratio ${ratio.toFixed(2)} (aim ${aim})`,
  );
  expect(ratio).toBeGreaterThan(0);
}

type Sheet = readonly (readonly string[])[];

/** A given in A1 and a block of formulas below it. */
function sheetOf(count: number, given: string, formula: (row: number, column: number) => string): Sheet {
  const rows: string[][] = [[given]];
  for (let row = 1; row <= count / COLUMNS; row++) {
    rows.push(Array.from({ length: COLUMNS }, (_, column) => formula(row, column)));
  }
  return rows;
}

function notebook(sheet: Sheet): Notebook {
  const cells = new Map<string, string>();
  sheet.forEach((row, r) => row.forEach((content, c) => cells.set(addressText(c, r), content)));
  return notebookOf([{ title: 'Sheet', cells: Object.fromEntries(cells) }]);
}

/** Commas for the library, decimal point in both. */
const bareSheet = (sheet: Sheet): string[][] =>
  sheet.map((row) => row.map((content) => content.replaceAll(';', ',')));

const bareEngine = (sheet: Sheet): HyperFormula =>
  HyperFormula.buildFromSheets({ S1: bareSheet(sheet) }, LIBRARY);

function engineWith(sheet: Sheet): Engine {
  const engine = createEngine({ functions: functionTable() });
  engine.open(notebook(sheet));
  return engine;
}

/** The answer as the page gets it: copied across, its columns handed over. */
function transferred(message: FromEngine): FromEngine {
  const transfer =
    message.type === 'results' ? [message.numbers.addresses.buffer, message.numbers.values.buffer] : [];
  return structuredClone(message, { transfer });
}

const edit = (engine: Engine, value: string): void => {
  engine.handle(
    { type: 'apply', changes: [typed('A1', value)], revision: 1 },
    (message) => void transferred(message),
  );
};
const bareEdit = (library: HyperFormula, value: number): void => {
  structuredClone(
    library.setCellContents({ sheet: 0, row: 0, col: 0 }, value).map((change) => ({ ...change })),
  );
};

beforeAll(() => {
  engineWith(sheetOf(2000, '3', (row, column) => `=A$1*${row + 1}+${column}`));
});

test('an edit of one given on which 10 000 formula cells depend', () => {
  const sheet = sheetOf(10_000, '3', (row, column) => `=A$1*${row % 50}+${column}`);
  const [engine, library] = [engineWith(sheet), bareEngine(sheet)];
  const costs = compared(
    (turn) => edit(engine, String(turn + 4)),
    (turn) => bareEdit(library, turn + 4),
    40,
  );
  report('edit with 10 000 dependents, transfer included', costs, 1.3);
  const last = library.getCellValue({ sheet: 0, row: 7, col: 3 });
  expect(engine.result(at('D8')).value).toBe(last);
});

test('a domain function in a cell beside a formula of the same arithmetic', () => {
  const call = (row: number): string => `=MILL.CHIP_MAX(A$1; ${0.0001 + row / 1e9} m; 0.002 m)`;
  // The same quotient and root, the angle 90 deg and the cases of its equation included.
  const arithmetic = (row: number): string =>
    `=${0.0001 + row / 1e9}*SIN(1.5707963267948966)*IF(2*ABS((A$1-0.002)/2)<=0.002;1;SQRT(1-((2*ABS((A$1-0.002)/2)-0.002)/A$1)^2))`;
  const domain = sheetOf(10_000, '0.02 m', call);
  const plain = sheetOf(10_000, '0.02', arithmetic);
  const [engine, library] = [engineWith(domain), bareEngine(plain)];
  const costs = compared(
    (turn) => edit(engine, `${0.021 + turn / 1000} m`),
    (turn) => bareEdit(library, 0.021 + turn / 1000),
    40,
  );
  report('domain function against its arithmetic', costs, 0.7);
  const ours: CellResult = engine.result(at('D8'));
  expect(ours.value).toBeCloseTo(Number(library.getCellValue({ sheet: 0, row: 7, col: 3 })), 12);
});

test('opening a notebook of 20 000 formula cells', () => {
  const sheet = sheetOf(20_000, '3', (row, column) =>
    row === 1 ? `=A1+${column}` : `=A$1*${row % 50}+${addressText(column, row - 1)}`,
  );
  const open = notebook(sheet);
  const functions = functionTable();
  const costs = compared(
    () => createEngine({ functions }).handle({ type: 'open', notebook: open, revision: 1 }, () => undefined),
    () => bareEngine(sheet).destroy(),
    6,
  );
  report('opening 20 000 formula cells', costs, 2.5);
});
