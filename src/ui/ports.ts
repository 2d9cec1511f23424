/** What the screen asks of the world outside it: the device's shelf of notebooks, files, the calculator, the catalogue. Implementations are injected by main.ts. */

import type { FromEngine, FromStudy, ToEngine, ToStudy } from '../calculation/index.ts';
import type { FunctionDefinition } from '../definition/index.ts';
import type { History, Notebook, Transaction } from '../document/index.ts';
import type { PassingResults, StoredResults } from '../exchange/index.ts';

/** One notebook kept on this device. */
export interface ShelfItem {
  readonly id: string;
  readonly title: string;
  /** Milliseconds since 1970, like the others. */
  readonly changedAt: number;
  readonly madeAt?: number;
  /** Of the last file copy. */
  readonly copiedAt?: number;
  /** Kept aside since then. */
  readonly removedAt?: number;
}

/** Results as they were computed last. */
export interface KeptResults {
  readonly results: StoredResults;
  /** Version of the program that computed them; "" where it is not known. */
  readonly program: string;
  /** They belong to the notebook exactly as it is, not to an earlier state. */
  readonly exact: boolean;
}

export interface Opened {
  readonly notebook: Notebook;
  /** The steps that can be taken back. */
  readonly history: History;
  readonly kept: KeptResults;
  /** Words for the user where something had to be restored. */
  readonly notices: readonly string[];
  /** Another tab of this browser holds the notebook. */
  readonly readOnly: boolean;
  /** Read only because a newer program wrote it. */
  readonly newer?: boolean;
}

/** What happens to the open notebook and to the list without this tab's doing. */
export interface ShelfEvents {
  /** Another tab edits now; this one only reads. */
  lost(): void;
  /** Another tab asks for the notebook: settles when the open edit is finished and written. */
  wanted(): Promise<void>;
  /** An edit of another tab. */
  edited(notebook: Notebook, transaction: Transaction): void;
  /** Edits of another tab were missed: the whole notebook anew. */
  reloaded(opened: Opened): void;
  /** The list has changed; `id` is the notebook concerned. */
  listed(id: string): void;
}

/** Where notebooks live on this device. Every promise settles only when the write is on the disk. */
export interface Shelf {
  /** Milliseconds for which a removed notebook can be brought back, at least. */
  readonly keptAside: number;
  /** Those that are kept aside too. */
  list(): Promise<readonly ShelfItem[]>;
  /** One of them. */
  item(id: string): Promise<ShelfItem | undefined>;
  open(id: string): Promise<Opened | undefined>;
  /** In a quiet moment after opening: looks over every place where the notebook is kept; gives words where something had to be restored. */
  check(): Promise<readonly string[]>;
  /** Puts a new notebook on the shelf, with the results it came with and the version that computed them. */
  add(notebook: Notebook, results?: StoredResults, program?: string): Promise<void>;
  /** Appends one committed edit; the notebook after it is kept for the next snapshot. */
  append(notebook: Notebook, transaction: Transaction): Promise<void>;
  /** Writes what could not be written before; false where there was nothing to write. */
  flush(): Promise<boolean>;
  /** Called when the user has been idle: writes a snapshot if there is something new. */
  settle(): Promise<void>;
  /** Keeps the results of the notebook as it is, to be painted at its next start. */
  keepResults(notebook: Notebook, results: PassingResults): Promise<void>;
  /** Lets the open notebook go. */
  close(): Promise<void>;
  /** Keeps it aside. */
  remove(id: string): Promise<void>;
  bringBack(id: string): Promise<void>;
  /** Removes for good; false while a tab has it open. */
  erase(id: string): Promise<boolean>;
  /** Erases what was kept aside long enough. */
  sweep(): Promise<void>;
  /** Words why not, where it can not be done now. */
  rename(id: string, title: string): Promise<string | undefined>;
  duplicate(id: string, newId: string, title: string): Promise<void>;
  markCopied(id: string): Promise<void>;
  /** Takes the notebook over from another tab, which finishes its edit first. */
  takeOver(id: string): Promise<void>;
  /** After sleep: opens dead connections again and reads what was missed. */
  wake(): Promise<void>;
  listen(events: ShelfEvents): void;
}

/** How a file left: 'text' where the browser can do neither and the text has to be copied by hand. */
export type SavedHow = 'shared' | 'downloaded' | 'cancelled' | 'text';

export interface Files {
  /** Offers a text as a file of this name: share sheet where it takes files, else download. Called within a gesture. */
  save(name: string, content: string | Blob, type: string): Promise<SavedHow>;
  /** Asks for a file and gives its name and text; undefined where none was chosen. */
  pick(accept: string): Promise<{ readonly name: string; readonly text: string } | undefined>;
  /** Text of a file that was dropped or handed over; throws in words where it is too large. */
  read(file: File): Promise<{ readonly name: string; readonly text: string }>;
  /** Calls back with every file by which the system starts the program. */
  onLaunch(open: (file: File) => void): void;
  /** Calls back with a file that was sent from elsewhere: not without asking is it opened. */
  onReceived(take: (file: File) => void): Promise<void>;
}

/** State of the program itself on this device. */
export interface Installation {
  /** 'insecure': neither https nor localhost, so nothing here works without network. */
  readonly readiness: 'insecure' | 'unsupported' | 'loading' | 'ready';
  readonly updateWaiting: boolean;
  /** Whether the browser has promised to keep what is stored, now or at an earlier start; undefined while it has not been asked. */
  readonly persisted: boolean | undefined;
  /** Why what is kept here may go, as far as there are signs of it; undefined where there are none. */
  readonly risk: string | undefined;
  /** Asks for that promise, from a gesture; once a start at most, and not where the user has refused it lately. */
  askToKeep(): Promise<void>;
  onChange(changed: () => void): void;
  /** `finished` settles when the open edit is written: true if the page may be loaded again. Awaited before every reload. */
  beforeReload(finished: (waiting: boolean) => Promise<boolean>): void;
  /** Lets the waiting version take over once the open edit is written; the page reloads when it has. */
  acceptUpdate(): Promise<void>;
  /**
   * Settles when a newer version, if there is one, waits; false where the place it comes from could not be reached. A browser that
   * has just started may ask only when its first visible page is at rest, Chromium 3 minutes later at the latest.
   */
  checkForUpdate(): Promise<boolean>;
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
  /** Designations of the work materials that the library knows. */
  readonly materials: readonly string[];
}

/** A shipped template: its title is known at once, its text when asked for. */
export interface Template {
  readonly key: string;
  readonly title: string;
  /** What it decides, in one sentence. */
  readonly question: string;
  load(): Promise<string>;
}

export interface Clock {
  /** Milliseconds since 1970. */
  now(): number;
  /** A new notebook's id. */
  newId(): string;
}

/** States of notebooks that left this device or came to it. */
export interface HandedOver {
  /** `text` is the notebook's file. Never rejects. */
  remember(notebook: string, state: { readonly at: number; readonly text: string }): Promise<void>;
  /** The last one first; empty where nothing can be remembered. */
  of(notebook: string): Promise<readonly { readonly at: number; readonly text: string }[]>;
}

export interface World {
  readonly shelf: Shelf;
  readonly files: Files;
  readonly installation: Installation;
  /** Version of the program. */
  readonly version: string;
  /** Which build this page belongs to: workers of another one are refused. */
  readonly build: string;
  readonly startCalculator: StartCalculator;
  readonly startStudy: StartStudy;
  readonly clock: Clock;
  readonly handed: HandedOver;
  readonly templates: readonly Template[];
  loadCatalogue(): Promise<Catalogue>;
  /** Marks text as markup for the parser; our own words only. */
  trustedMarkup(text: string): string;
}
