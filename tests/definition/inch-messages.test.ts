import { expect, test } from 'vitest';
import { functionTable } from '../../src/catalogue.ts';
import { emptyNotebook } from '../../src/document/index.ts';
import { createEngine } from '../../src/engine/index.ts';

const message = (reading: 'metric' | 'inch', formula: string): string | undefined => {
  const engine = createEngine({ functions: functionTable() });
  engine.open(emptyNotebook({ id: 'messages', reading }));
  const { error, cautions } = engine.preview({ worksheet: 'w1', row: 0, column: 0 }, formula);
  return error?.message ?? cautions.find(({ type }) => type === 'caution')?.text;
};

test('a message tells values in the units of the notebook that reads them', () => {
  const formula = '=MILL.CHIP_MAX(2 in; 0.004 in; 3 in)';
  expect(message('inch', formula)).toBe(
    'radial engagement 3 in is above the largest allowed, the cutter diameter 2 in',
  );
  expect(message('metric', formula)).toBe(
    'radial engagement 76.2 mm is above the largest allowed, the cutter diameter 50.8 mm',
  );
});

test('a caution does so too', () => {
  expect(message('inch', '=CUT.SPEED(500 in; 100 1/min)')).toMatch(/^diameter 500 in is unusual/);
});
