/** The table of materials: one row a designation, found by any of its names however they are written; its cautions are said once. */

import { expect, test } from 'vitest';
import { functionTable } from '../../src/catalogue.ts';
import { emptyNotebook, resolveName } from '../../src/document/index.ts';
import { createEngine } from '../../src/engine/index.ts';
import { MATERIALS } from '../../src/functions/materials.table.ts';
import { computedSheet } from '../sheets/computed-sheet.ts';
import { calculated, numberIn } from './calculated.ts';

const plain = (name: string): string => name.toLowerCase().replaceAll(/[^a-z0-9%]/g, '');

test('every designation and alias stands in one row only', () => {
  const names = MATERIALS.flatMap((material) => material.names.map(plain));
  expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
});

test('every name finds its row in any case, without spaces, hyphens and brackets', () => {
  for (const { names, kc11, mc, density } of MATERIALS)
    for (const name of names)
      for (const typed of [
        name,
        name.toUpperCase(),
        name.toLowerCase(),
        ` ${name} `,
        `(${name})`,
        plain(name),
      ]) {
        if (kc11 !== undefined)
          expect(numberIn(`=MATERIAL.KC11("${typed}")`, 'MPa'), typed).toBeCloseTo(kc11, 9);
        if (mc !== undefined) expect(numberIn(`=MATERIAL.MC("${typed}")`), typed).toBe(mc);
        if (density !== undefined)
          expect(numberIn(`=MATERIAL.DENSITY("${typed}")`, 'kg/m3'), typed).toBeCloseTo(density, 9);
      }
});

test('what the table says of a row is said once in a cell that reads two columns of it', () => {
  const engine = createEngine({ functions: functionTable() });
  engine.open(emptyNotebook({ id: 'materials' }));
  const { cautions } = engine.preview(
    { worksheet: 'w1', row: 0, column: 0 },
    '=FORCE.SPECIFIC(MATERIAL.KC11("C45E"); MATERIAL.MC("C45E"); 0.1 mm)',
  );
  expect(cautions?.filter(({ text }) => text.startsWith('C45E'))).toHaveLength(1);
});

test('an unknown material is told with near ones', () => {
  expect(calculated('=MATERIAL.KC11("42CrMo5")').value).toMatchObject({
    failure: '#N/A',
    message: expect.stringContaining('"42CrMo4"'),
  });
});

test.each([
  ['pump-cover-boss.json', 'kc'],
  ['deep-holes-manifold.json', 'kc'],
])('choosing a material in %s fills what is given of it: %s follows every choice', (file, name) => {
  const sheet = computedSheet(file);
  const [first] = sheet.notebook.worksheets;
  const target = first && resolveName(sheet.notebook, first.id, 'material')?.defined.target;
  const choices = (target && first?.rows[target.row]?.[target.column]?.choices) ?? [];
  expect(choices.length).toBeGreaterThan(2);
  const values = choices.map((choice) => {
    sheet.type('material', choice);
    const { value, error } = sheet.named(name);
    expect(error, choice).toBeUndefined();
    return value;
  });
  expect(new Set(values).size).toBe(choices.length);
});
