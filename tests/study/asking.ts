/** Running studies to their end. */

import { functionTable } from '../../src/catalogue.ts';
import type { StudyAnswer, StudyQuestion } from '../../src/calculation/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import { study, StudyBook } from '../../src/study/index.ts';

/** What a piecewise computation gives in the end. */
export function finished<T>(work: Generator<unknown, T>): T {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}

const functions = functionTable();

/** The answer of the question's own kind; throws what the study refuses. */
export function answerTo<Q extends StudyQuestion>(
  notebook: Notebook,
  question: Q,
): Extract<StudyAnswer, { type: Q['type'] }> {
  return finished(study(new StudyBook(notebook, functions), question)) as Extract<
    StudyAnswer,
    { type: Q['type'] }
  >;
}
