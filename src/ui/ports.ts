/** What the screen asks of the world outside it: the device's shelf of notebooks, files, the calculator, the catalogue. Implementations are injected by main.ts. */

import type { FromEngine, FromStudy, ToEngine, ToStudy } from '../calculation/index.ts';
import type { FunctionDefinition } from '../definition/index.ts';
import type { Notebook, Transaction } from '../document/index.ts';

/** One notebook kept on this device. */
export interface ShelfItem {
  readonly id: string;
  readonly title: string;
  /** Milliseconds since 1970. */
  readonly changedAt: number;
  readonly copiedAt?: number;
}

export interface Opened {
  readonly notebook: Notebook;
  /** Words for the user where something had to be restored. */
  readonly notices: readonly string[];
  /** Another tab of this browser holds the notebook. */
  readonly readOnly: boolean;
}

/** Where notebooks live on this device. Every promise settles only when the write is on the disk. */
export interface Shelf {
  list(): Promise<readonly ShelfItem[]>;
  open(id: string): Promise<Opened | undefined>;
  /** Puts a new notebook on the shelf and opens it. */
  add(notebook: Notebook): Promise<void>;
  /** Appends one committed edit; the notebook after it is kept for the next snapshot. */
  append(notebook: Notebook, transaction: Transaction): Promise<void>;
  /** Called when the user has been idle: writes a snapshot if there is something new. */
  settle(): Promise<void>;
  remove(id: string): Promise<void>;
  markCopied(id: string): Promise<void>;
  /** Takes the notebook over from another tab. */
  takeOver(id: string): Promise<void>;
  /** Calls back when another tab has taken the notebook over. */
  onLost(lost: () => void): void;
}

export interface Files {
  /** Offers a text as a file of this name: share sheet where it takes files, else download. */
  save(name: string, text: string, type: string): Promise<void>;
  /** Asks for a file and gives its name and text; undefined where none was chosen. */
  pick(accept: string): Promise<{ readonly name: string; readonly text: string } | undefined>;
}

/** State of the program itself on this device. */
export interface Installation {
  /** 'insecure': neither https nor localhost, so nothing here works without network. */
  readonly readiness: 'insecure' | 'unsupported' | 'loading' | 'ready';
  readonly updateWaiting: boolean;
  /** Whether the browser has promised to keep what is stored; undefined while it has not been asked. */
  readonly persisted: boolean | undefined;
  askToKeep(): Promise<void>;
  onChange(changed: () => void): void;
  /** Lets the waiting version take over; the page reloads when it has. */
  acceptUpdate(finished: () => Promise<void>): Promise<void>;
  checkForUpdate(): Promise<void>;
}

/** A worker seen from the page. */
export interface CalculatorWorker {
  post(message: ToEngine): void;
  terminate(): void;
}
export type StartCalculator = (
  receive: (message: FromEngine) => void,
  failed: (words: string) => void,
) => CalculatorWorker;

/** The what-if worker seen from the page; it is started when the first question is asked. */
export interface StudyWorker {
  post(message: ToStudy): void;
  terminate(): void;
}
export type StartStudy = (
  receive: (message: FromStudy) => void,
  failed: (words: string) => void,
) => StudyWorker;

/** A built-in function as the help shows it. */
export interface BuiltinPage {
  readonly name: string;
  readonly summary: string;
  readonly searchWords: readonly string[];
  readonly parameters: string;
  readonly section: string;
  readonly examples: readonly { readonly given: string; readonly gives: string }[];
}

/** The texts of all functions. */
export interface Catalogue {
  readonly domain: readonly FunctionDefinition[];
  readonly builtins: readonly BuiltinPage[];
  readonly sources: ReadonlyMap<string, string>;
}

/** A shipped template: its title is known at once, its text when asked for. */
export interface Template {
  readonly key: string;
  readonly title: string;
  load(): Promise<string>;
}

export interface Clock {
  /** Milliseconds since 1970. */
  now(): number;
  /** A new notebook's id. */
  newId(): string;
}

export interface World {
  readonly shelf: Shelf;
  readonly files: Files;
  readonly installation: Installation;
  /** Version and build of the program. */
  readonly version: string;
  readonly startCalculator: StartCalculator;
  readonly clock: Clock;
  readonly templates: readonly Template[];
  loadCatalogue(): Promise<Catalogue>;
  /** Marks text as markup for the parser; our own words only. */
  trustedMarkup(text: string): string;
}
