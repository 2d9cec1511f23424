/** A walk through every screen, panel, leaf and state of the program, for whoever looks at each of them. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { walkMachine } from './walk-machine.ts';
import { walkNotebook } from './walk-notebook.ts';
import { walkQuestions } from './walk-questions.ts';
import type { Walk } from './walk-steps.ts';
import { walkWorksheet } from './walk-worksheet.ts';

/** Each begins on the first page of a profile in which nothing is kept. */
export const CHAPTERS: readonly (readonly [string, (walk: Walk) => Promise<void>])[] = [
  ['worksheet', walkWorksheet],
  ['notebook', walkNotebook],
  ['questions', walkQuestions],
  ['machine', walkMachine],
];

const keysOf = (file: string): string[] =>
  [
    ...readFileSync(join(import.meta.dirname, '../../src/ui', file), 'utf8').matchAll(
      /^ {4}key: '([a-z-]+)'/gm,
    ),
  ].map(([, key = '']) => key);

/** Names under which the walk shows what stands in the program's lists of leaves and panels. */
export const EXPECTED: readonly string[] = [
  ...keysOf('leaves.ts').map((key) => `leaf ${key}`),
  ...keysOf('panels.ts').map((key) => `panel ${key}`),
];
