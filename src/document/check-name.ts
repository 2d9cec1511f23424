/** What may be a name and what may be a title (F6, F6a), with a suggestion where it may not. */

import { isName, readAddress } from '../expression/index.ts';
import { LIMITS } from './notebook.ts';
import type { Notebook } from './notebook.ts';
import type { Refusal } from './refusal.ts';

const NAME_LENGTH = 60;

const isAddress = (text: string): boolean => readAddress(text) !== undefined;

function suggested(name: string): string | undefined {
  if (isAddress(name)) return name.replaceAll('$', '').replace(/(?=\d)/, '_');
  const tidy = name
    .normalize('NFC')
    .replaceAll(/\.(?!\d)|(?<!\d)\./gu, '_')
    .replaceAll(/[^\p{L}\p{M}\d_.]+/gu, '_')
    .replace(/^[^\p{L}]+/u, '')
    .replace(/_+$/, '');
  return isName(tidy) ? tidy : undefined;
}

function refused(message: string, suggestion: string | undefined): Refusal {
  return suggestion === undefined ? { message } : { message: `${message} Try ${suggestion}.`, suggestion };
}

/** Why a text can not be a name, with a suggestion; undefined where it can. */
export function checkName(name: string): Refusal | undefined {
  if (name === '') return { message: 'A name needs at least one letter.' };
  if (name.length > NAME_LENGTH) return { message: `A name has at most ${NAME_LENGTH} characters.` };
  if (isAddress(name))
    return refused(`${name} is the address of a cell, so it can not be a name.`, suggested(name));
  if (/^(?:true|false)$/i.test(name)) {
    return refused(`${name} is a constant, so it can not be a name.`, `${name}_1`);
  }
  if (isName(name)) return undefined;
  return refused(
    `"${name}" can not be a name: it starts with a letter and goes on with letters, digits and _; a dot stands only between two digits.`,
    suggested(name),
  );
}

/** Why a text can not be the title of a worksheet; `except` is the id of the one that is being renamed. */
export function checkTitle(notebook: Notebook, title: string, except?: string): Refusal | undefined {
  if (title.trim() === '') return { message: 'A worksheet needs a title.' };
  if (title !== title.trim()) return { message: 'A title neither starts nor ends with a space.' };
  if (title.length > LIMITS.titleLength) {
    return { message: `A title has at most ${LIMITS.titleLength} characters.` };
  }
  if (/\p{Cc}/u.test(title)) return { message: 'A title stands on one line.' };
  if (notebook.worksheets.some((each) => each.title === title && each.id !== except)) {
    const suggestion = freeTitle(notebook, title);
    return { message: `There is a worksheet "${title}" already. Try "${suggestion}".`, suggestion };
  }
  if (notebook.parts?.recordings?.some((each) => each.title === title)) {
    const suggestion = freeTitle(notebook, title);
    return {
      message: `There is a recording ${title}: formulas could not tell them apart. Try "${suggestion}".`,
      suggestion,
    };
  }
  return undefined;
}

/** The title itself, or with the first number behind it that is free: "Feeds 2". */
export function freeTitle(notebook: Notebook, title: string): string {
  const taken = new Set(
    [...notebook.worksheets, ...(notebook.parts?.recordings ?? [])].map((each) => each.title),
  );
  if (!taken.has(title)) return title;
  const base = title.replace(/ \d+$/, '').slice(0, LIMITS.titleLength - 5);
  let number = 2;
  while (taken.has(`${base} ${number}`)) number++;
  return `${base} ${number}`;
}
