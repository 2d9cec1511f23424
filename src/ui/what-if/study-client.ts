/** Questions to the what-if worker: started with the first one, one answer each, progress and cancel on the way. */

import type { FromStudy, StudyAnswer, StudyQuestion } from '../../calculation/index.ts';
import type { CellAddress } from '../../calculation/index.ts';
import type { Notebook } from '../../document/index.ts';
import type { StartStudy, StudyWorker } from '../ports.ts';

export type Outcome =
  | { readonly type: 'answered'; readonly answer: StudyAnswer }
  | { readonly type: 'refused'; readonly message: string; readonly cell?: CellAddress }
  | { readonly type: 'cancelled' };

export interface Asked {
  readonly outcome: Promise<Outcome>;
  cancel(): void;
}

interface Waiting {
  settle(outcome: Outcome): void;
  progress(done: number): void;
}

export class StudyClient {
  #worker: StudyWorker | undefined;
  #request = 0;
  readonly #waiting = new Map<number, Waiting>();

  constructor(
    private readonly start: StartStudy,
    /** Which build the page belongs to: a worker of another one is refused. */
    private readonly build: string,
  ) {}

  ask(notebook: Notebook, question: StudyQuestion, progress: (done: number) => void = () => {}): Asked {
    this.#worker ??= this.start(
      (message) => this.#take(message),
      (words) => this.#fail(words),
    );
    const worker = this.#worker;
    const request = ++this.#request;
    const outcome = new Promise<Outcome>((settle) => this.#waiting.set(request, { settle, progress }));
    worker.post({ type: 'ask', request, notebook, question });
    return { outcome, cancel: () => worker.post({ type: 'cancel', request }) };
  }

  #take(message: FromStudy): void {
    if (message.type === 'ready') {
      if (message.build !== this.build)
        this.#fail('it belongs to another version of the program; load the page again');
      return;
    }
    const waiting = this.#waiting.get(message.request);
    if (!waiting) return;
    if (message.type === 'progress') return waiting.progress(message.done);
    this.#waiting.delete(message.request);
    if (message.type === 'answered') waiting.settle({ type: 'answered', answer: message.answer });
    else if (message.type === 'cancelled') waiting.settle({ type: 'cancelled' });
    else {
      const { message: words, cell } = message;
      waiting.settle({ type: 'refused', message: words, ...(cell && { cell }) });
    }
  }

  /** The worker is gone: everything that waits is told so, the next question starts another. */
  #fail(words: string): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    for (const { settle } of this.#waiting.values())
      settle({ type: 'refused', message: `the what-if computation stopped: ${words}` });
    this.#waiting.clear();
  }

  close(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    for (const { settle } of this.#waiting.values()) settle({ type: 'cancelled' });
    this.#waiting.clear();
  }
}
