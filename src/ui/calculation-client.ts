/** The page's side of the calculator: sends changes, keeps the watchdog, starts the worker again when it gives no sign of life. */

import type { CellAddress, CellResult, Explanation, FromEngine, ToEngine } from '../calculation/index.ts';
import type { Change, Notebook } from '../document/index.ts';
import type { CalculatorWorker, StartCalculator } from './ports.ts';

/** Milliseconds until "still computing" is shown, and until a silent worker is started again. */
const PATIENCE = 2_000;
const LIMIT = 10_000;

export type ResultsMessage = Extract<FromEngine, { type: 'results' }>;

export interface ClientEvents {
  results(message: ResultsMessage): void;
  /** 'slow' after two seconds, 'idle' when answered; 'restarted' with the words why. */
  state(state: 'idle' | 'busy' | 'slow' | 'restarted', words: string, suspect?: CellAddress): void;
}

export class CalculationClient {
  #worker: CalculatorWorker | undefined;
  #notebook: Notebook | undefined;
  #revision = 0;
  #answered = 0;
  #request = 0;
  #slow: ReturnType<typeof setTimeout> | undefined;
  #limit: ReturnType<typeof setTimeout> | undefined;
  #suspect: CellAddress | undefined;
  #setAside = false;
  readonly #previews = new Map<number, (result: CellResult) => void>();
  readonly #explanations = new Map<number, (explanation: Explanation) => void>();

  constructor(
    private readonly start: StartCalculator,
    private readonly events: ClientEvents,
  ) {}

  get revision(): number {
    return this.#revision;
  }

  open(notebook: Notebook): void {
    this.#notebook = notebook;
    this.#setAside = false;
    this.#revision += 1;
    this.#send({ type: 'open', notebook, revision: this.#revision });
    this.#watch();
  }

  /** `notebook` is the one after the changes: a restarted worker opens it. */
  apply(notebook: Notebook, changes: readonly Change[]): void {
    this.#notebook = notebook;
    if (this.#setAside) return this.open(notebook);
    this.#revision += 1;
    this.#send({ type: 'apply', changes, revision: this.#revision });
    this.#watch();
  }

  preview(address: CellAddress, content: string): Promise<CellResult> {
    const request = (this.#request += 1);
    this.#previews.clear();
    return new Promise((resolve) => {
      this.#previews.set(request, resolve);
      this.#send({ type: 'preview', request, address, content });
    });
  }

  explain(address: CellAddress): Promise<Explanation> {
    const request = (this.#request += 1);
    this.#explanations.clear();
    return new Promise((resolve) => {
      this.#explanations.set(request, resolve);
      this.#send({ type: 'explain', request, address });
    });
  }

  /** Stops what is running; the next edit starts again with everything. */
  stop(words = 'stopped: values are those from before; the next edit computes again'): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#setAside = true;
    this.#quiet();
    this.events.state('restarted', words, this.#suspect);
  }

  close(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#quiet();
  }

  #send(message: ToEngine): void {
    if (!this.#worker) {
      this.#worker = this.start(
        (answer) => this.#receive(answer),
        (words) => this.stop(`the calculator stopped: ${words}`),
      );
      if (message.type !== 'open' && this.#notebook)
        this.#worker.post({ type: 'open', notebook: this.#notebook, revision: this.#revision });
      if (message.type === 'apply') return;
    }
    this.#worker.post(message);
  }

  #receive(message: FromEngine): void {
    if (message.type === 'started') this.#suspect = message.address;
    if (message.type === 'previewed') {
      this.#previews.get(message.request)?.(message.result);
      this.#previews.delete(message.request);
    }
    if (message.type === 'explained') {
      this.#explanations.get(message.request)?.(message.explanation);
      this.#explanations.delete(message.request);
    }
    if (message.type === 'results') {
      this.#answered = message.revision;
      if (this.#answered >= this.#revision) {
        this.#quiet();
        this.events.state('idle', '');
      }
      this.events.results(message);
    } else if (this.#limit !== undefined) this.#armLimit();
  }

  #watch(): void {
    this.events.state('busy', '');
    clearTimeout(this.#slow);
    this.#slow = setTimeout(() => this.events.state('slow', 'still computing'), PATIENCE);
    this.#armLimit();
  }

  #armLimit(): void {
    clearTimeout(this.#limit);
    this.#limit = setTimeout(
      () => this.stop('the calculator gave no sign for 10 s and was stopped; the next edit computes again'),
      LIMIT,
    );
  }

  #quiet(): void {
    clearTimeout(this.#slow);
    clearTimeout(this.#limit);
    this.#slow = undefined;
    this.#limit = undefined;
  }
}
