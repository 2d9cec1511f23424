import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { isRefusal } from '../../src/document/index.ts';
import { readNotebook, writeNotebook } from '../../src/exchange/index.ts';
import { readAddress } from '../../src/expression/index.ts';
import { computedSheet } from './computed-sheet.ts';

const folder = join(import.meta.dirname, '../../sheets');
const SHEETS = readdirSync(folder).filter((file) => file.endsWith('.json'));

/** Equal within the last digits of a double: recorded results come from another run, maybe another processor. */
const CLOSE = 1e-12;

test('the shipped notebooks are there', () => {
  expect(SHEETS).toEqual(
    expect.arrayContaining(['crank-line-cutters.json', 'hinge-fitting-stock.json', 'pump-cover-boss.json']),
  );
});

test.each(SHEETS)('%s computes without an error and gives its recorded results', (file) => {
  const { engine, recorded } = computedSheet(file);
  const offenders: string[] = [];
  let compared = 0;
  for (const [worksheet, results] of recorded) {
    for (const [address, stored] of results) {
      const place = readAddress(address);
      if (!place) throw new Error(`${file}: ${address} is no address`);
      const now = engine.result({ worksheet, row: place.row, column: place.column });
      const same =
        typeof now.value === 'number' && typeof stored.value === 'number'
          ? Math.abs(now.value - stored.value) <= CLOSE * Math.abs(stored.value)
          : now.value === stored.value;
      if (!same || now.error || now.kind !== stored.kind)
        offenders.push(`${address}: ${now.value} ${now.error?.message ?? ''}, recorded ${stored.value}`);
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(8);
  expect(offenders).toEqual([]);
});

test.each(SHEETS)('%s is written back byte for byte', (file) => {
  const text = readFileSync(join(folder, file), 'utf8');
  const read = readNotebook(text);
  if (isRefusal(read)) throw new Error(read.message);
  expect(writeNotebook(read.notebook, read.results)).toBe(text);
});

test.each(SHEETS)('%s is marked as invented and begins with a question', (file) => {
  const first = computedSheet(file).notebook.worksheets[0];
  expect(first?.rows[0]?.[0]?.content).toMatch(/\?$/);
  expect(JSON.stringify(first?.rows)).toMatch(/[Ii]nvented/);
});

/** A given that is changed, and how the decision reads before and after. */
const FLIPS = [
  ['pump-cover-boss.json', 'h', '0.02 mm', /^yes/, /^no: the chip is thinner/],
  ['pump-cover-boss.json', 'load_max', '15 %', /^yes/, /^no: the spindle is loaded/],
  ['hinge-fitting-stock.json', 'Q_b', '90 cm3/min', /^no/, /^yes/],
  ['hinge-fitting-stock.json', 'batch', '2000 parts', /^no/, /^yes/],
  ['crank-line-cutters.json', 'i_m', '84 inserts', /^no: the mains .* 84 inserts/, /^yes/],
  ['crank-line-cutters.json', 'wanted', '36 parts/h', /^no/, /^yes/],
  ['tool-life-spread.json', 'u_T', '25 min', /^yes/, /^no: only 67 min/],
  ['tool-life-spread.json', 'vc', '220 m/min', /^yes/, /^no: only 64 min/],
] as const;

test.each(FLIPS)('%s: the decision turns when %s becomes %s', (file, name, content, before, after) => {
  const sheet = computedSheet(file);
  expect(sheet.named('decision').value).toMatch(before);
  sheet.type(name, content);
  expect(sheet.named('decision').value).toMatch(after);
});

/**
 * Worked by hand from the geometry and the power law, without this program: two circles for the equivalent engagement,
 * h = fz sin(phi) for the chip, kc = 1160 MPa (h/1 mm)^-0.26 times 1.3 for the worn edge, P = Q kc; masses over densities; facets
 * as fj^2/4 (1/Dm + 1/Dc). Coherent SI.
 */
const BY_HAND = [
  ['pump-cover-boss.json', 'a_eq', 1.015e-3],
  ['pump-cover-boss.json', 'fz', 0.283638655680374e-3],
  ['pump-cover-boss.json', 'vf', 2816.89163205664e-3 / 60],
  ['pump-cover-boss.json', 'excess', 0.240050402201458],
  ['pump-cover-boss.json', 'hm', 0.0402747648415081e-3],
  ['pump-cover-boss.json', 'P', 1987.73706337444],
  ['pump-cover-boss.json', 'load', 0.155900946147015],
  ['pump-cover-boss.json', 'M', 11.4677138271602],
  ['hinge-fitting-stock.json', 'ratio', 42 / 3.1],
  ['hinge-fitting-stock.json', 'chips', 8.78103837471783e-3],
  ['hinge-fitting-stock.json', 'lost', 38.9 * (45 - 0.8 * 4)],
  ['hinge-fitting-stock.json', 't_a', 4.64605205011526 * 3600],
  ['hinge-fitting-stock.json', 'cost_a', 2361.58572551268],
  ['hinge-fitting-stock.json', 'cost_b', 2358.81929413451],
  ['crank-line-cutters.json', 't_p', (4 / 0.15 + (Math.PI * 50 * (1 + 5 / 360)) / 0.6) / (24 * (65 / 60))],
  ['crank-line-cutters.json', 'need_p', 90],
  ['crank-line-cutters.json', 'need_m', 84],
  ['crank-line-cutters.json', 'facet_p', (0.6e-3 ** 2 / 4) * (1 / 0.05 + 1 / 0.7)],
  ['crank-line-cutters.json', 'facet_m', (0.6e-3 ** 2 / 4) * (1 / 0.06 - 1 / 0.2)],
  // Law of Taylor, propagation to the first order (JCGM 100:2008, 5.1.2), normal quantile 1.64485363 (tables).
  ['tool-life-spread.json', 'T', 88 * 60 * 1.05 ** 4],
  ['tool-life-spread.json', 'T_need', 71.8078320820524 * 60],
  ['tool-life-spread.json', 'r', 0.08382037239339307],
  ['tool-life-spread.json', 'T_low', 93.18858425100375 * 60],
  ['tool-life-spread.json', 'cost', 3.73239981465813],
] as const;

test.each(BY_HAND)('%s: %s agrees with the value worked by hand', (file, name, expected) => {
  const { value } = computedSheet(file).named(name);
  expect(Math.abs(Number(value) / expected - 1)).toBeLessThan(1e-12);
});
