/** Answers what-if questions piece by piece. */

import type { FromStudy, StudyAnswer, StudyQuestion, ToStudy } from '../calculation/index.ts';
import type { Notebook } from '../document/index.ts';
import type { FunctionTable } from '../expression/index.ts';
import { influences } from './influences.ts';
import { Refused } from './refused.ts';
import { search } from './search.ts';
import { solve } from './solve.ts';
import { spread } from './spread.ts';
import { StudyBook } from './study-book.ts';
import type { Clock } from './study-book.ts';
import { sweep } from './sweep.ts';
import { variants } from './variants.ts';

/** Works a question through; yields the share that is done (0 to 1). Throws Refused for what can not be worked on. */
export function* study(book: StudyBook, question: StudyQuestion): Generator<number, StudyAnswer> {
  yield 0;
  switch (question.type) {
    case 'influences':
      return { type: 'influences', givens: yield* influences(book, question.results) };
    case 'variants':
      return { type: 'variants', rows: yield* variants(book, question.variants, question.watched) };
    case 'solve':
      return yield* solve(book, question);
    case 'search':
      return yield* search(book, question);
    case 'sweep':
      return { type: 'sweep', ...(yield* sweep(book, question.axes, question.results)) };
    case 'spread':
      return yield* spread(book, question);
  }
}

export interface StudyOptions {
  readonly functions: FunctionTable;
  readonly post: (message: FromStudy) => void;
  /** Rests between two pieces of work, so that messages are heard. */
  readonly rest: () => Promise<void>;
  readonly now?: Clock;
}

/** Carries questions out one after the other; each can be cancelled while it waits or is worked on. */
export class StudyDesk {
  readonly #options: StudyOptions;
  readonly #waiting: Extract<ToStudy, { type: 'ask' }>[] = [];
  readonly #cancelled = new Set<number>();
  #isAtWork = false;
  /** The notebook of the last question, computed: the next one is often about the same. */
  #last: { readonly text: string; readonly book: StudyBook } | undefined;

  constructor(options: StudyOptions) {
    this.#options = options;
  }

  take(message: ToStudy): void {
    if (message.type === 'cancel') {
      this.#cancelled.add(message.request);
      return;
    }
    this.#waiting.push(message);
    if (!this.#isAtWork) void this.#work();
  }

  async #work(): Promise<void> {
    this.#isAtWork = true;
    for (let next = this.#waiting.shift(); next; next = this.#waiting.shift()) await this.#answer(next);
    this.#isAtWork = false;
    this.#cancelled.clear();
  }

  async #answer({ request, notebook, question }: Extract<ToStudy, { type: 'ask' }>): Promise<void> {
    const { post, rest } = this.#options;
    let told = -1;
    try {
      const work = study(this.#bookOf(notebook), question);
      for (;;) {
        if (this.#cancelled.has(request)) {
          post({ type: 'cancelled', request });
          return;
        }
        const { done, value } = work.next();
        if (done) {
          post({ type: 'answered', request, answer: value });
          return;
        }
        // The share never goes back, and is told in steps that can be seen.
        if (value >= told + 0.01) {
          told = value;
          post({ type: 'progress', request, done: Math.min(1, value) });
        }
        await rest();
      }
    } catch (error) {
      if (!(error instanceof Refused)) this.#last = undefined;
      const cell = error instanceof Refused ? error.cell : undefined;
      const message = error instanceof Error ? error.message : String(error);
      post({ type: 'refused', request, message, ...(cell && { cell }) });
    }
  }

  /** What decides the values is compared as text; pictures, trials and kept questions do not. */
  #bookOf(notebook: Notebook): StudyBook {
    const { parts, ...rest } = notebook;
    const text = JSON.stringify([rest, parts?.recordings]);
    if (this.#last?.text !== text) {
      const { functions, now } = this.#options;
      this.#last = { text, book: new StudyBook(notebook, functions, now) };
    }
    return this.#last.book;
  }
}
