/** Homogeneity: with other base units every result scales by the dimension that inference gives it (F13a: no result depends on a unit). */

import { expect, test } from 'vitest';
import type { Kind } from '../../src/quantity/index.ts';
import { isFailure } from '../../src/expression/index.ts';
import { SmallGrid } from './small-grid.ts';

const cells = new Map(
  Object.entries({
    A1: '1.5 mm',
    A2: '0.25 mm',
    A3: '2 mm',
    A4: '0.75 mm',
    A5: '1.1 mm',
    B1: '10 min',
    B2: '20 min',
    B3: '40 min',
    B4: '70 min',
    B5: '95 min',
    C1: '20 N',
    C2: '30 N',
    C3: '50 N',
    C4: '20 N',
    C5: '90 N',
    D1: '1',
    D2: '2',
    D3: '3',
    D4: '5',
    D5: '8',
  }),
);

/** Base units by factors that are no round numbers. */
const factor = ({ dimension: d }: Kind): number => 1.7 ** d.length * 0.31 ** d.time * 2.3 ** d.mass;

const plainSheet = new SmallGrid(cells);
const scaledSheet = new SmallGrid(cells, new Map(), undefined, 'metric', factor);

test.each([
  'SUM(A1:A5)',
  'AVERAGE(A1:A5)',
  'MIN(A1:A5)',
  'MAX(B1:B5)',
  'MEDIAN(A1:A5)',
  'MODE(C1:C5)',
  'GEOMEAN(A1:A5)',
  'HARMEAN(B1:B5)',
  'TRIMMEAN(A1:A5; 0.4)',
  'AVEDEV(A1:A5)',
  'DEVSQ(A1:A5)',
  'STDEV(A1:A5)',
  'STDEVP(A1:A5)',
  'VAR(B1:B5)',
  'VARP(B1:B5)',
  'SKEW(A1:A5)',
  'SKEWP(A1:A5)',
  'KURT(A1:A5)',
  'LARGE(A1:A5; 2)',
  'SMALL(A1:A5; 2)',
  'PERCENTILE(A1:A5; 0.3)',
  'QUARTILE(A1:A5; 1)',
  'RANK(A2; A1:A5)',
  'PERCENTRANK(A1:A5; A2)',
  'STANDARDIZE(A1; A2; A3)',
  'SUMSQ(A1:A5)',
  'PRODUCT(A1:A5)',
  'PRODUCT(A1; B1; D3)',
  'SUMPRODUCT(A1:A5; C1:C5)',
  'SUMX2MY2(A1:A2; A3:A4)',
  'SUMX2PY2(A1:A2; A3:A4)',
  'SUMXMY2(A1:A2; A3:A4)',
  'SLOPE(A1:A5; B1:B5)',
  'INTERCEPT(A1:A5; B1:B5)',
  'STEYX(A1:A5; B1:B5)',
  'RSQ(A1:A5; B1:B5)',
  'CORREL(A1:A5; B1:B5)',
  'COVAR(A1:A5; C1:C5)',
  'FORECAST(B2; A1:A5; B1:B5)',
  'INDEX(LINEST(A1:A5; B1:C5); 1; 1)',
  'INDEX(LINEST(A1:A5; B1:C5); 1; 2)',
  'INDEX(LINEST(A1:A5; B1:C5); 1; 3)',
  'INDEX(LINEST(A1:A5; B1:B5; FALSE); 1; 1)',
  'INDEX(TREND(A1:A5; B1:B5); 2)',
  'INDEX(GROWTH(A1:A5; D1:D5); 2)',
  'INDEX(LOGEST(A1:A5; D1:D5); 1; 1)',
  'INDEX(LOGEST(A1:A5; D1:D5); 1; 2)',
  'ABS(A1)',
  'SIGN(A1)',
  'SQRT(A1)',
  'POWER(A1; 3)',
  'MOD(A1; A2)',
  'QUOTIENT(A3; A2)',
  'CEILING(A1; A2)',
  'FLOOR(A1; A2)',
  'MROUND(A1; A2)',
  'ATAN2(A1; A2)',
  'DELTA(A1; A2)',
  'GESTEP(A1; A2)',
  'COUNT(A1:A5)',
  'COUNTIF(A1:A5; A3)',
  'SUMIF(A1:A5; A3; B1:B5)',
  'AVERAGEIF(D1:D5; ">2"; A1:A5)',
  'SUMIFS(B1:B5; A1:A5; A2)',
  'MAXIFS(B1:B5; D1:D5; ">2")',
  'MATCH(B2; B1:B5)',
  'LOOKUP(B2; B1:B5; A1:A5)',
  'VLOOKUP(B2; B1:C5; 2)',
  'MDETERM(A1:A1)',
  'INDEX(MMULT(A1:A2; D1:D1); 2; 1)',
  'INDEX(TRANSPOSE(A1:A5); 1; 3)',
  'NORMDIST(A1; A2; A3; TRUE)',
  'NORMDIST(A1; A2; A3; FALSE)',
  'NORMINV(0.3; A1; A2)',
  'WEIBULL(B1; 2; B2; TRUE)',
  'WEIBULL(B1; 2; B2; FALSE)',
  'GAMMADIST(B1; 2; B2; FALSE)',
  'GAMMAINV(0.4; 2; B2)',
  'BETADIST(A1; 2; 3; A2; A3)',
  'BETAINV(0.4; 2; 3; A2; A3)',
  'EXPONDIST(B1; 1/B2; FALSE)',
  'CONFIDENCE(0.05; A1; 9)',
  'TTEST(A1:A5; A1:A4; 2; 3)',
  'FTEST(A1:A5; A1:A4)',
  'ZTEST(A1:A5; A2)',
  'IF(A1 > A2; A1; A2)',
  'CHOOSE(2; A1; A2)',
  'IFERROR(A1/0; A2)',
  'IFNA(A1; A2)',
  'N(A1)',
])('F13a %s scales by its dimension', (formula) => {
  const plain = plainSheet.compute(`=${formula}`);
  const scaled = scaledSheet.compute(`=${formula}`);
  const type = plain.inference?.type;
  if (type?.type !== 'number' || isFailure(plain.value))
    throw new Error(`${formula}: ${JSON.stringify(plain.value)}`);
  expect(typeof plain.value).toBe('number');
  const wanted = (plain.value as number) * factor(type.kind);
  expect(Math.abs((scaled.value as number) - wanted)).toBeLessThanOrEqual(1e-9 * Math.abs(wanted));
});
