/** The committee's own test cases of OpenFormula, run through parse, inference and evaluation; no engine takes part. */

import { expect, test } from 'vitest';
import { builtinTable } from '../../src/builtins/index.ts';
import { callsOf, isFailure, isGrid, parse } from '../../src/expression/index.ts';
import type { Scalar, Value } from '../../src/expression/index.ts';
import {
  CASES,
  DATA_CELLS,
  DATA_NAMES,
  formulaOf,
  near,
  unbracketed,
  type Case,
} from './openformula-cases.ts';
import { NOT_ON_THE_LIST, NOT_REPRODUCED, REFUSED, REWRITTEN } from './openformula.table.ts';
import { SmallGrid } from './small-grid.ts';

const sheetOfData = () => new SmallGrid(DATA_CELLS, DATA_NAMES);

const first = (value: Value): Scalar =>
  !isFailure(value) && isGrid(value) ? (value.grid[0]?.[0] ?? null) : value;

function agrees(one: Case, sheet: SmallGrid, value: Value): boolean {
  const single = first(value);
  switch (one.type) {
    case 'number':
      return typeof single === 'number' && near(single, one.value as number, one.tolerance);
    case 'text':
    case 'logical':
      return single === (one.value ?? '');
    case 'error':
      return isFailure(single) && (one.value === 'any' || single.failure === one.value);
    case 'array': {
      const wanted = one.value as Scalar[][];
      const rows = !isFailure(value) && isGrid(value) ? value.grid : [[single]];
      return (
        rows.length === wanted.length &&
        rows.every((row, i) =>
          row.every(
            (cell, j) => typeof cell === 'number' && near(cell, wanted[i]?.[j] as number, one.tolerance),
          ),
        )
      );
    }
    case 'formula': {
      const wanted = first(
        sheet.compute(unbracketed(String(one.value).replace(/^=\[\.(\w+):\.\w+\]$/, '=$1'))).value,
      );
      return typeof wanted === 'number' && typeof single === 'number'
        ? near(single, wanted, one.tolerance ?? 1e-9)
        : wanted === single;
    }
  }
}

const table = builtinTable();
const unlisted = (formula: string): string[] => {
  const { tree } = parse(formula, { separator: 'both' });
  return tree
    ? callsOf(tree)
        .map(({ name }) => name)
        .filter((name) => !table.has(name))
    : [];
};

const counted = { agree: 0, refused: 0, notReproduced: 0, unlisted: 0, deviating: 0 };
const offenders: string[] = [];
const outside = new Map<string, number>();
const surplus: string[] = [];
const sheet = sheetOfData();
for (const one of CASES) {
  const formula = formulaOf(one);
  const missing = unlisted(formula);
  if (missing.length > 0) {
    counted.unlisted += 1;
    for (const name of new Set(missing)) outside.set(name, (outside.get(name) ?? 0) + 1);
    continue;
  }
  const { value } = sheet.compute(formula);
  const same = agrees(one, sheet, value);
  const reason = REFUSED.get(one.id) ?? NOT_REPRODUCED.get(one.id);
  if (same) counted.agree += 1;
  if (same && reason) surplus.push(`${one.id} agrees, yet is listed: ${reason}`);
  if (!same && reason) counted[REFUSED.has(one.id) ? 'refused' : 'notReproduced'] += 1;
  if (!same && !reason) {
    counted.deviating += 1;
    offenders.push(
      `${one.id} ${formula} wants ${one.type} ${JSON.stringify(one.value)}, is ${JSON.stringify(value)}`,
    );
  }
}

test(`the published cases of allowed functions agree: ${counted.agree} of ${CASES.length} agree, ${counted.refused} are refused by a rule, ${counted.notReproduced} do not reproduce, ${counted.unlisted} use functions that are not on the list`, () => {
  expect(offenders).toEqual([]);
});

test('every case listed as refused is there and does differ', () => {
  expect(surplus).toEqual([]);
  const ids = new Set(CASES.map(({ id }) => id));
  expect(
    [...REFUSED.keys(), ...NOT_REPRODUCED.keys(), ...REWRITTEN.keys()].filter((id) => !ids.has(id)),
  ).toEqual([]);
});

test('the functions that are not on the list are counted in one place', () => {
  expect(Object.fromEntries([...outside].sort())).toEqual(
    Object.fromEntries([...NOT_ON_THE_LIST].map(([name, { cases }]) => [name, cases]).sort()),
  );
});
