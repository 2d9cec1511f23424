/** The page's side of the calculator: sends changes, keeps the watchdog, starts the worker again when it gives no sign of life. */

import type { CellAddress, CellResult, Explanation, FromEngine, ToEngine } from '../calculation/index.ts';
import { apply, cellAt, findWorksheet } from '../document/index.ts';
import type { Change, Notebook } from '../document/index.ts';
import type { CalculatorWorker, StartCalculator } from './ports.ts';

/** Milliseconds until "still computing" is shown, and until a silent worker is started again. */
const PATIENCE = 2_000;
const LIMIT = 10_000;

export type ResultsMessage = Extract<FromEngine, { type: 'results' }>;

export interface ClientEvents {
  results(message: ResultsMessage): void;
  /**
   * 'slow' after two seconds, 'idle' when answered; 'restarted' with the words why, while nothing is computed; 'foreign'
   * where the worker is of another build than the page.
   */
  state(state: 'idle' | 'busy' | 'slow' | 'restarted' | 'foreign', words: string): void;
}

const key = ({ worksheet, row, column }: CellAddress): string => `${worksheet} ${row} ${column}`;
const placeOf = ({ worksheet, row, column }: CellAddress): CellAddress => ({ worksheet, row, column });

export class CalculationClient {
  #worker: CalculatorWorker | undefined;
  #notebook: Notebook | undefined;
  #revision = 0;
  #answered = 0;
  #request = 0;
  #slow: ReturnType<typeof setTimeout> | undefined;
  #limit: ReturnType<typeof setTimeout> | undefined;
  #suspect: CellAddress | undefined;
  /** Stopped with nothing to set aside: nothing is computed until the next edit. */
  #resting = false;
  /** Cells that took too long: the calculator does not see their contents until they are edited. */
  readonly #aside = new Map<string, CellAddress>();
  #lastEdit: CellAddress | undefined;
  readonly #previews = new Map<number, (result: CellResult) => void>();
  readonly #explanations = new Map<number, (explanation: Explanation) => void>();

  constructor(
    private readonly start: StartCalculator,
    /** Which build the page belongs to: a worker of another one is refused. */
    private readonly build: string,
    private readonly events: ClientEvents,
  ) {}

  get revision(): number {
    return this.#revision;
  }

  open(notebook: Notebook): void {
    this.#notebook = notebook;
    this.#resting = false;
    this.#revision += 1;
    this.#send({ type: 'open', notebook: this.#seen(notebook), revision: this.#revision });
    this.#watch();
  }

  /** `notebook` is the one after the changes: a restarted worker opens it. */
  apply(notebook: Notebook, changes: readonly Change[]): void {
    const [first] = changes;
    this.#lastEdit = first?.type === 'cell' ? placeOf(first) : undefined;
    const touched = changes.filter(
      (change) => change.type === 'cell' && this.#aside.delete(key(placeOf(change))),
    );
    const whole =
      this.#aside.size > 0 && changes.some((change) => change.type !== 'cell' && change.type !== 'part');
    // Rows may have moved: the cells set aside are not where they were.
    if (whole) this.#aside.clear();
    if (this.#resting || touched.length > 0 || whole) return this.open(notebook);
    this.#notebook = notebook;
    this.#revision += 1;
    this.#send({ type: 'apply', changes, revision: this.#revision });
    this.#watch();
  }

  /** The notebook without the contents of the cells that are set aside. */
  #seen(notebook: Notebook): Notebook {
    const changes = [...this.#aside.values()].flatMap((place): Change[] => {
      const worksheet = findWorksheet(notebook, place.worksheet);
      const from = worksheet && cellAt(worksheet, place.row, place.column);
      return from ? [{ type: 'cell', ...place, from }] : [];
    });
    return changes.length > 0 ? apply(notebook, changes) : notebook;
  }

  preview(address: CellAddress, content: string): Promise<CellResult> {
    if (this.#resting) return new Promise(() => undefined);
    const request = (this.#request += 1);
    this.#previews.clear();
    return new Promise((resolve) => {
      this.#previews.set(request, resolve);
      this.#send({ type: 'preview', request, address, content });
    });
  }

  explain(address: CellAddress): Promise<Explanation> {
    if (this.#resting) return new Promise(() => undefined);
    const request = (this.#request += 1);
    return new Promise((resolve) => {
      this.#explanations.set(request, resolve);
      this.#send({ type: 'explain', request, address });
    });
  }

  /** Stops what is running, sets the cell aside in which it was, and computes the rest. */
  stop(why = 'stopped'): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#quiet();
    const suspect = this.#suspect ?? this.#lastEdit;
    this.#suspect = undefined;
    this.#lastEdit = undefined;
    if (!suspect || !this.#notebook || this.#aside.has(key(suspect))) {
      this.#resting = true;
      this.events.state('restarted', `${why}; values are those from before, the next edit computes again`);
      return;
    }
    this.#aside.set(key(suspect), suspect);
    this.open(this.#notebook);
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
        this.#worker.post({ type: 'open', notebook: this.#seen(this.#notebook), revision: this.#revision });
      if (message.type === 'apply') return;
    }
    this.#worker.post(message);
  }

  #receive(message: FromEngine): void {
    if (message.type === 'ready' && message.build !== this.build) return this.#refuse(message.build);
    if (message.type === 'started') this.#suspect = message.address;
    if (message.type === 'previewed') {
      this.#previews.get(message.request)?.(message.result);
      this.#previews.delete(message.request);
    }
    if (message.type === 'explained') {
      this.#explanations.get(message.request)?.(message.explanation);
      this.#explanations.delete(message.request);
    }
    if (message.type === 'results' && message.more) {
      this.#armLimit();
      this.events.results(message);
    } else if (message.type === 'results') {
      this.#answered = message.revision;
      if (this.#answered >= this.#revision) {
        this.#quiet();
        this.#suspect = undefined;
        this.events.state('idle', '');
      }
      this.events.results(this.#withAside(message));
    } else if (this.#limit !== undefined) this.#armLimit();
  }

  #refuse(build: string): void {
    this.close();
    this.#resting = true;
    this.events.state(
      'foreign',
      `page and calculator are of different versions (${this.build} and ${build}): nothing is computed until the page is loaded again`,
    );
  }

  /** The cells that are set aside say so. */
  #withAside(message: ResultsMessage): ResultsMessage {
    if (this.#aside.size === 0) return message;
    const error = { code: '#LIMIT!', message: 'took too long and was set aside; edit it to try again' };
    const results = [...this.#aside.values()].map((address) => ({
      address,
      result: { value: null, kind: 'error', unit: '', error, cautions: [] },
    }));
    return { ...message, results: [...message.results, ...results] };
  }

  #watch(): void {
    this.events.state('busy', '');
    clearTimeout(this.#slow);
    this.#slow = setTimeout(() => this.events.state('slow', 'still computing'), PATIENCE);
    this.#armLimit();
  }

  #armLimit(): void {
    clearTimeout(this.#limit);
    this.#limit = setTimeout(() => this.stop('the calculator gave no sign for 10 s'), LIMIT);
  }

  #quiet(): void {
    clearTimeout(this.#slow);
    clearTimeout(this.#limit);
    this.#slow = undefined;
    this.#limit = undefined;
  }
}
