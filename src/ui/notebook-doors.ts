/** Ways of whole notebooks into the program and out of it: files chosen, dropped or handed over, templates, file copies. */

import { readNotebook, writeNotebook } from '../exchange/index.ts';
import type { StoredResults } from '../exchange/index.ts';
import { EMPTY_HISTORY, isRefusal } from '../document/index.ts';
import type { Notebook } from '../document/index.ts';
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
}

const wordsOf = (reason: unknown): string => (reason instanceof Error ? reason.message : String(reason));

/** `fresh`: a template, which becomes a notebook of its own. The results it came with are shown until they are confirmed. */
export async function openText(world: World, doors: Doors, text: string, fresh: boolean): Promise<void> {
  const read = readNotebook(text);
  if (isRefusal(read)) return doors.tell(read.message);
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
  const known = fresh || (await world.shelf.list()).some((item) => item.id === notebook.id);
  await doors.begin(known ? { ...notebook, id: world.clock.newId() } : notebook, results, program);
}

/** A file dropped on the page, or by which the system started the program. */
export async function openGivenFile(world: World, doors: Doors, file: File): Promise<void> {
  try {
    await openText(world, doors, (await world.files.read(file)).text, false);
  } catch (reason) {
    doors.tell(wordsOf(reason));
  }
}

export async function openPickedFile(world: World, doors: Doors): Promise<void> {
  try {
    const picked = await world.files.pick('.json,application/json');
    if (picked) await openText(world, doors, picked.text, false);
  } catch (reason) {
    doors.tell(wordsOf(reason));
  }
}

const fileName = (title: string): string => title.replaceAll(/[^\p{L}\p{N}\-_ ]+/gu, '').trim() || 'notebook';

/** Offers a file copy with its results; its date is kept where it went out. `from` takes the leaf with the text where the browser takes no file. */
export async function saveCopy(world: World, session: Session, from: EventTarget): Promise<void> {
  const { notebook } = session;
  const name = `${fileName(notebook.title)}.json`;
  const text = writeNotebook(notebook, resultsFor(session), world.build);
  const how = await world.files.save(name, text, 'application/json');
  if (how === 'cancelled') return;
  if (how === 'text') return openLeaf(from, 'text', { name, text });
  session.copiedAt = world.clock.now();
  session.changed();
  await world.shelf.markCopied(notebook.id).catch(() => undefined);
}
