/** Ways of whole notebooks into the program and out of it: files chosen, dropped or handed over, templates, file copies. */

import { writeNotebook } from '../exchange/index.ts';
import type { ReadNotebook, StoredResults } from '../exchange/index.ts';
import { EMPTY_HISTORY, isRefusal } from '../document/index.ts';
import type { Notebook, Refusal } from '../document/index.ts';
import { unpacked } from '../storage/index.ts';
import { resultsFor } from './export-results.ts';
import { openLeaf } from './open-leaf.ts';
import type { Opened, World } from './ports.ts';
import type { Session } from './session.ts';

/** What the screen does with what comes in. */
export interface Doors {
  /** Puts a notebook on the shelf and goes to it. */
  begin(notebook: Notebook, results?: StoredResults, program?: string): Promise<void>;
  /** Shows a notebook that is not on the shelf. */
  show(opened: Opened): Promise<void>;
  tell(words: string): void;
  /** True where the notebook that is open came back and is laid beside it. */
  cameBack?(received: ReadNotebook): boolean;
}

/** Notebook files and reports. */
const ACCEPTED = '.json,application/json,.html,.htm,text/html';

const fetchReading = (): Promise<typeof import('./reading-notebooks.ts')> => import('./reading-notebooks.ts');

const wordsOf = (reason: unknown): string => (reason instanceof Error ? reason.message : String(reason));

/** `fresh`: a template, which becomes a notebook of its own. The results it came with are shown until they are confirmed. */
export async function openText(world: World, doors: Doors, text: string, fresh: boolean): Promise<void> {
  const { readAnyNotebook } = await fetchReading();
  await openRead(world, doors, readAnyNotebook(text), fresh);
}

/** What stands behind the # of a link. */
export async function openLink(world: World, doors: Doors, fragment: string): Promise<void> {
  const { readLink } = await fetchReading();
  await openRead(world, doors, await readLink(fragment, unpacked), false);
}

async function openRead(
  world: World,
  doors: Doors,
  read: ReadNotebook | Refusal,
  fresh: boolean,
): Promise<void> {
  if (isRefusal(read)) return doors.tell(read.message);
  if (!fresh && !read.newer && doors.cameBack?.(read)) return;
  const { notebook, results, program = '' } = read;
  if (read.newer)
    return doors.show({
      notebook,
      history: EMPTY_HISTORY,
      kept: { results, program, exact: true },
      notices: ['This file was written by a newer version of the program: it can be read here, not changed.'],
      readOnly: true,
      newer: true,
    });
  if (!fresh)
    void world.handed.remember(notebook.id, { at: world.clock.now(), text: writeNotebook(notebook) });
  const known = fresh || (await world.shelf.list()).some((item) => item.id === notebook.id);
  await doors.begin(known ? { ...notebook, id: world.clock.newId() } : notebook, results, program);
}

/** What came back, as a notebook of its own beside the one it came from. `event` carries it. */
export async function openApart(world: World | undefined, doors: Doors, event: Event): Promise<void> {
  if (!world || !(event instanceof CustomEvent)) return;
  const { notebook, results, program = '' } = event.detail as ReadNotebook;
  await doors.begin({ ...notebook, id: world.clock.newId() }, results, program);
}

/** A file dropped on the page, or by which the system started the program. */
export async function openGivenFile(world: World, doors: Doors, file: File): Promise<void> {
  try {
    await openText(world, doors, (await world.files.read(file)).text, false);
  } catch (reason) {
    doors.tell(wordsOf(reason));
  }
}

/** The question before a file is opened that anyone may have sent; the event that asks it. */
export function consentToOpen(world: World, doors: Doors, file: File): Event {
  const detail = {
    title: `Open ${file.name}?`,
    words: 'This file was sent to the program from elsewhere. It becomes a notebook of its own.',
    action: 'Open it',
    done: () => void openGivenFile(world, doors, file),
  };
  return new CustomEvent('ask-consent', { detail });
}

export async function openPickedFile(world: World, doors: Doors): Promise<void> {
  try {
    const picked = await world.files.pick(ACCEPTED);
    if (picked) await openText(world, doors, picked.text, false);
  } catch (reason) {
    doors.tell(wordsOf(reason));
  }
}

/** A title as a file's name, without its ending. */
export const fileName = (title: string): string =>
  title.replaceAll(/[^\p{L}\p{N}\-_ ]+/gu, '').trim() || 'notebook';

/** Offers a file copy with its results; its date is kept where it went out. `from` takes the leaf with the text where the browser takes no file. */
export async function saveCopy(world: World, session: Session, from: EventTarget): Promise<void> {
  const { notebook } = session;
  const name = `${fileName(notebook.title)}.json`;
  const text = writeNotebook(notebook, resultsFor(session), world.build);
  const how = await world.files.save(name, text, 'application/json');
  if (how === 'cancelled') return;
  if (how === 'text') return openLeaf(from, 'text', { name, text });
  void world.handed.remember(notebook.id, { at: world.clock.now(), text: writeNotebook(notebook) });
  session.copiedAt = world.clock.now();
  session.changed();
  await world.shelf.markCopied(notebook.id).catch(() => undefined);
}
