/** The engine over edits: what is computed again, what is told, what heals. */

import { expect, test } from 'vitest';
import { unpackAddress } from '../../src/calculation/index.ts';
import { at, notebookOf, opened, openedPages, typed, worksheet } from './notebook.ts';

test('editing a given tells the numbers that follow as columns; the edited cell alone is an object', () => {
  const engine = opened({ A1: '2 mm', A2: '=A1*3', A3: '=A2*2', B1: '=1+1' });
  const { numbers, results } = engine.apply([typed('A1', '4 mm')]);
  const told = [...numbers.addresses].map((packed, index) => {
    const { row, column } = unpackAddress(packed);
    return [row, column, numbers.values[index]];
  });
  expect(told).toEqual([
    [1, 0, 0.012],
    [2, 0, 0.024],
  ]);
  expect(results.map(({ address }) => address)).toEqual([at('A1')]);
});

test('F12 a number that takes another unit infers its dependents anew', () => {
  const engine = opened({ A1: '2 mm', A2: '=A1+1 mm', A3: '=A2*2' });
  engine.apply([typed('A1', '2 min')]);
  expect(engine.result(at('A2')).error?.code).toBe('#UNIT!');
  expect(engine.result(at('A3')).error).toMatchObject({ code: '#UNIT!', root: at('A2') });
  engine.apply([typed('A1', '5 mm')]);
  expect(engine.result(at('A3'))).toMatchObject({ kind: 'length', value: 0.012 });
});

test('F17 an exponent in a cell takes part in the dimension', () => {
  const engine = opened({ A1: '2', A2: '=(3 mm)^A1' });
  expect(engine.result(at('A2')).kind).toBe('area');
  engine.apply([typed('A1', '3')]);
  expect(engine.result(at('A2')).kind).toBe('volume');
});

test('a cycle names its path and heals', () => {
  const engine = opened({ A1: '=B1+1', B1: '=C1', C1: '=A1', D1: '=A1', E1: '=1' });
  for (const address of ['A1', 'B1', 'C1']) {
    const { error } = engine.result(at(address));
    expect(error?.code).toBe('#CIRCLE!');
    expect(error?.path).toHaveLength(3);
    expect(error?.message).toMatch(/A1/);
  }
  expect(engine.result(at('D1')).error?.code).toBe('#CIRCLE!');
  expect(engine.result(at('E1')).value).toBe(1);
  engine.apply([typed('C1', '5')]);
  expect(engine.result(at('D1')).value).toBe(6);
  engine.apply([typed('C1', '=SUM(A1:B1)')]);
  expect(engine.result(at('A1')).error?.code).toBe('#CIRCLE!');
});

test('a cell that refers to itself is a cycle of one', () => {
  const { error } = opened({ A1: '=IF(FALSE;A1;5)' }).result(at('A1'));
  expect(error).toMatchObject({ code: '#CIRCLE!', path: [at('A1')] });
});

test('an error at run time is passed on with the cell in which it began, and IFERROR catches it', () => {
  const engine = opened({ A1: '0', A2: '=1/A1', A3: '=A2+1', A4: '=IFERROR(A3;7)' });
  expect(engine.result(at('A2')).error?.root).toBeUndefined();
  expect(engine.result(at('A3')).error).toMatchObject({ code: '#DIV/0!', root: at('A2') });
  expect(engine.result(at('A4')).value).toBe(7);
  engine.apply([typed('A1', '4')]);
  expect(engine.result(at('A3')).value).toBe(1.25);
  expect(engine.result(at('A4')).value).toBe(1.25);
});

test('F6a names of the own worksheet come first, then those of common worksheets; other worksheets by title', () => {
  const engine = openedPages([
    {
      title: 'Feeds',
      cells: { A1: '=fz*2', A2: "='Shop data'.hours", A3: '=kc1.1', B1: '0.1 mm' },
      names: { fz: 'B1' },
    },
    {
      title: 'Shop data',
      cells: { A1: '80 EUR/h', A2: '8 h', A3: '1500 MPa', B1: '0.2 mm', C1: '=Feeds.B1+fz' },
      names: { hours: 'A2', 'kc1.1': 'A3', fz: 'B1' },
      common: true,
    },
  ]);
  expect(engine.result(at('A1')).value).toBeCloseTo(0.0002, 18);
  expect(engine.result(at('A2'))).toMatchObject({ kind: 'time', value: 28_800 });
  expect(engine.result(at('A3'))).toMatchObject({ value: 1.5e9 });
  expect(engine.result(at('C1', 'w2')).value).toBeCloseTo(0.0003, 18);
});

test('names differ by case: f and F stand side by side', () => {
  const engine = opened({ A1: '0.2 mm', B1: '900 N', C1: '=f*2', D1: '=F*2' }, {}, { f: 'A1', F: 'B1' });
  expect(engine.result(at('C1'))).toMatchObject({ kind: 'length' });
  expect(engine.result(at('D1'))).toMatchObject({ kind: 'force', value: 1800 });
});

test('an unknown name, function or worksheet is named in the error', () => {
  const engine = opened({ A1: '=speeed*2', A2: '=NO.SUCH(1)', A3: '=Nowhere.A1', A4: '=1+' });
  expect(engine.result(at('A1')).error).toMatchObject({ code: '#NAME?' });
  expect(engine.result(at('A1')).error?.message).toMatch(/speeed/);
  expect(engine.result(at('A2')).error).toMatchObject({ code: '#NAME?' });
  expect(engine.result(at('A3')).error?.message).toMatch(/Nowhere/);
  expect(engine.result(at('A4')).error?.code).toBeDefined();
});

test('defining a name, renaming a worksheet and adding one are noticed', () => {
  const page = { title: 'Sheet', cells: { A1: '=pitch*2', A2: '=New.A1', B1: '1.5 mm' } };
  const engine = openedPages([page]);
  expect(engine.result(at('A1')).error?.code).toBe('#NAME?');
  const from = worksheet('w1', page);
  const to = worksheet('w1', { ...page, names: { pitch: 'B1' } });
  const named = engine.apply([{ type: 'worksheet', index: 0, from, to }]);
  expect(engine.result(at('A1')).value).toBeCloseTo(0.003, 18);
  expect(named.results.map(({ address }) => address)).toEqual([at('A1')]);
  engine.apply([{ type: 'worksheet', index: 1, to: worksheet('w2', { title: 'New', cells: { A1: '7' } }) }]);
  expect(engine.result(at('A2')).value).toBe(7);
});

test('empty is not zero: with quantities a value is missing, among plain numbers it counts as 0 with a caution', () => {
  const engine = opened({ A1: '=B4+1 mm', A2: '=B4+1' });
  expect(engine.result(at('A1')).error?.message).toMatch(/value missing: B4/);
  const plain = engine.result(at('A2'));
  expect(plain.value).toBe(1);
  expect(plain.cautions[0]?.text).toMatch(/B4 is empty, counted as 0/);
  engine.apply([typed('B4', '2 mm')]);
  expect(engine.result(at('A1')).value).toBe(0.003);
  engine.apply([typed('B4', '')]);
  expect(engine.result(at('A1')).error?.message).toMatch(/value missing: B4/);
});

test('F13b a range has a dimension a column, and a column that mixes two clashes', () => {
  const engine = opened({
    A1: '1 mm',
    A2: '2 mm',
    A3: 'note',
    B1: '3 min',
    B2: '=A1',
    C1: '=SUM(A1:A3)',
    C2: '=SUM(B1:B2)',
  });
  expect(engine.result(at('C1'))).toMatchObject({ kind: 'length', value: 0.003 });
  expect(engine.result(at('C2')).error?.code).toBe('#UNIT!');
});

test('limits of a cell mark a value beyond them with their own words', () => {
  const limits = { high: '30 mm', highText: 'longest tool in the drawer' };
  const engine = opened({ A1: '10 mm', A2: { content: '=A1*2', limits } });
  expect(engine.result(at('A2')).cautions).toEqual([]);
  engine.apply([typed('A1', '20 mm')]);
  expect(engine.result(at('A2')).cautions).toMatchObject([
    { type: 'breach', text: expect.stringMatching(/30 mm.*longest tool/) },
  ]);
  engine.apply([typed('A1', '15 mm')]);
  expect(engine.result(at('A2')).cautions).toEqual([]);
});

test('F23 an acknowledged caution stays acknowledged until its words or the formula change', () => {
  const content = '=CUT.FEED_RATE(4; 0.1 mm/rev; 1000 1/min)';
  const caution = opened({ A1: content }).result(at('A1')).cautions[0];
  const acknowledged = [
    { key: caution?.key ?? '', text: caution?.text ?? '', reason: 'drill, meant so', content },
  ];
  const engine = opened({ A1: { content, acknowledged } });
  expect(engine.result(at('A1')).cautions[0]?.acknowledged).toBe('drill, meant so');
  engine.apply([typed('A1', { content: '=CUT.FEED_RATE(5; 0.1 mm/rev; 1000 1/min)', acknowledged })]);
  expect(engine.result(at('A1')).cautions[0]?.acknowledged).toBeUndefined();
});

test("F19 the display unit is the cell's own, else as typed, else the default of the kind", () => {
  const engine = opened({
    A1: '2 in',
    A2: '=A1',
    A3: { content: '=A1', unit: 'um' },
    A4: { content: '=A1', unit: 'min' },
    A5: '5 %',
    A6: '=2*3',
  });
  expect(['A1', 'A2', 'A3', 'A4', 'A5', 'A6'].map((address) => engine.result(at(address)).unit)).toEqual([
    'in',
    'mm',
    'um',
    'mm',
    '%',
    '',
  ]);
});

test('F22 money shows the currency of the notebook', () => {
  const engine = opened({ A1: '80 money/h', A2: '=A1*2 h', A3: '=80 USD/h*1 h' }, { currency: 'USD' });
  expect(engine.result(at('A2'))).toMatchObject({ kind: 'money', value: 160, unit: 'USD' });
  expect(engine.result(at('A3')).value).toBe(80);
});

test('a preview changes nothing and sees cycles', () => {
  const engine = opened({ A1: '2 mm', A2: '=A1*2' });
  expect(engine.preview(at('A3'), '=A2+1 mm')).toMatchObject({ kind: 'length', value: 0.005 });
  expect(engine.preview(at('A1'), '=A2').error?.code).toBe('#CIRCLE!');
  expect(engine.preview(at('A1'), '7 min')).toMatchObject({ kind: 'time', value: 420 });
  expect(engine.result(at('A3')).kind).toBe('blank');
  expect(engine.apply([typed('A1', '3 mm')]).results.map(({ address }) => address)).toEqual([at('A1')]);
  expect(engine.result(at('A2')).value).toBe(0.006);
});

test('an explanation lists calls with steps, operands, precedents and dependents', () => {
  const engine = opened({ A1: '20 mm', A2: '=MILL.CHIP_MAX(A1; 0.1 mm; 2 mm)', A3: '=A2*2' });
  const { calls, operands, precedents, dependents } = engine.explain(at('A2'));
  expect(calls.at(-1)?.function).toBe('MILL.CHIP_MAX');
  expect(calls.at(-1)?.result).toBeCloseTo(0.00006, 16);
  expect(calls.at(-1)?.steps.length).toBeGreaterThan(0);
  expect(operands).toMatchObject([{ text: 'A1', kind: 'length', unit: 'mm', value: 0.02 }]);
  expect(precedents).toEqual([at('A1')]);
  expect(dependents).toEqual([at('A3')]);
});

test('a cell that was set aside is not computed until its formula is edited', () => {
  const engine = opened({});
  engine.open(notebookOf([{ title: 'Sheet', cells: { A1: '=1+1', A2: '=A1*2', A3: '=2+2' } }]), [at('A1')]);
  expect(engine.result(at('A1')).error?.code).toBe('#LIMIT!');
  expect(engine.result(at('A2')).error?.root).toEqual(at('A1'));
  expect(engine.result(at('A3')).value).toBe(4);
  engine.apply([typed('A1', '=1+2')]);
  expect(engine.result(at('A2')).value).toBe(6);
});

test('messages are answered with plain data that survives a structured clone', () => {
  const engine = opened({});
  const posted: unknown[] = [];
  const notebook = notebookOf([{ title: 'Sheet', cells: { A1: '=1/0', A2: '=MILL.CHIP_MAX(20;0.1;2)' } }]);
  engine.handle({ type: 'open', notebook, revision: 3 }, (message) => posted.push(message));
  engine.handle({ type: 'apply', changes: [typed('A3', '=A2')], revision: 4 }, (message) =>
    posted.push(message),
  );
  engine.handle({ type: 'preview', request: 1, address: at('A4'), content: '=A3' }, (message) =>
    posted.push(message),
  );
  engine.handle({ type: 'explain', request: 2, address: at('A2') }, (message) => posted.push(message));
  expect(posted).toMatchObject([
    { type: 'results', revision: 3, complete: true, worksheets: ['w1'] },
    { type: 'results', revision: 4, complete: false },
    { type: 'previewed', request: 1 },
    { type: 'explained', request: 2 },
  ]);
  expect(structuredClone(posted)).toEqual(posted);
});

test('a single cell given to SUM is a reference of one cell: a text in it is passed over', () => {
  // OpenFormula 6.3.10 and 6.16.61: text in a reference is ignored, text given directly is not.
  const engine = opened({ A1: 'note', A2: '3', B1: '=SUM(A1;A2)', B2: '=SUM("note";A2)', B3: '=SUM(A4)+1' });
  expect(engine.result(at('B1')).value).toBe(3);
  expect(engine.result(at('B2')).error?.code).toBe('#VALUE!');
  expect(engine.result(at('B3')).value).toBe(1);
  engine.apply([typed('A1', '4')]);
  expect(engine.result(at('B1')).value).toBe(7);
});
