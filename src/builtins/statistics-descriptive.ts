/** Averages, spreads and shapes of samples. Averages and spreads keep the dimension, variances square it. */

import { failure } from '../expression/index.ts';
import { ascending } from '../numeric/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { list, number, plain } from './parameter.ts';
import { numbersOf, sequence, sequenceWithTexts } from './sequence.ts';
import { DESCRIPTIVE_ROWS, average, pure } from './statistics-descriptive.table.ts';
import type { DescriptiveRow } from './statistics-descriptive.table.ts';
import { sharedOrPlain } from './type-rules.ts';

const described = (row: DescriptiveRow): BuiltinDefinition =>
  builtin({
    name: row.name,
    group: 'statistics',
    section: row.section,
    summary: row.summary,
    searchWords: row.words,
    takes: [],
    rest: (row.withTexts ? sequenceWithTexts : sequence)('values'),
    leastRest: 1,
    cellsAsRanges: true,
    gives: (args) => row.rule(row.name, args),
    evaluate: (_, lists) => row.f(lists.flat(), row.name),
    examples: [example(row.given, row.gives, row.source)],
  });

export const DESCRIPTIVE: readonly BuiltinDefinition[] = [
  ...DESCRIPTIVE_ROWS.map(described),
  builtin({
    name: 'TRIMMEAN',
    group: 'statistics',
    section: '6.18.80',
    summary: 'The mean without a share of the smallest and largest values',
    searchWords: ['mean', 'outliers', 'trimmed'],
    takes: [list('values'), plain('share left out')],
    gives: (args) => sharedOrPlain('TRIMMEAN', args.slice(0, 1)),
    evaluate([{ grid }, share]) {
      if (share < 0 || share >= 1) return failure('#NUM!', 'the share left out lies from 0 to below 1');
      const sorted = ascending(numbersOf(grid));
      const cut = Math.floor((sorted.length * share) / 2 + 1e-9);
      return average(sorted.slice(cut, sorted.length - cut), 'TRIMMEAN');
    },
    examples: [example('TRIMMEAN({1;2;3;4;100}; 0.4)', '3', 'by hand: 1 and 100 left out')],
  }),
  builtin({
    name: 'STANDARDIZE',
    group: 'statistics',
    section: '6.18.71',
    summary: 'How many standard deviations a value lies from the mean',
    searchWords: ['z', 'standard score', 'normalize'],
    takes: [number('value'), number('mean'), number('standard deviation')],
    gives: (args) => pure('STANDARDIZE', args),
    evaluate: ([x, centre, s]) =>
      s > 0 ? (x - centre) / s : failure('#NUM!', 'the standard deviation must be above 0'),
    examples: [example('STANDARDIZE(-1; -2; 2)', '0.5')],
  }),
];
