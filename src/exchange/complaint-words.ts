/** Why a value of a file can not be read, in words for its reader; what came from the file is shown short and on one line. */

import type { BaseIssue } from 'valibot';

const NOUNS: ReadonlyMap<string, string> = new Map([
  ['string', 'a text'],
  ['number', 'a number'],
  ['boolean', 'true or false'],
  ['array', 'a list'],
  ['object', 'a group of entries'],
  ['strict_object', 'a group of entries'],
  ['loose_object', 'a group of entries'],
]);

const NOT_SHOWN = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** The text on one line, with a mark for what can not be shown and dots where it is cut. */
export function shownShort(text: string, most: number): string {
  const cut = text.length > most ? `${text.slice(0, most)} ...` : text;
  return cut.replaceAll(NOT_SHOWN, '\ufffd');
}

const isMissing = ({ type, expected, received }: BaseIssue<unknown>): boolean =>
  /object$|^variant$/.test(type) && received === 'undefined' && expected !== 'Object';

/** "at most 200 characters are possible". */
export function complaintWords(issue: BaseIssue<unknown>): string {
  const { type, expected, input, requirement, message } = issue;
  if (expected === 'never') return 'this entry is not known';
  if (isMissing(issue)) return 'this entry is missing';
  const what = typeof input === 'string' ? 'characters' : 'entries';
  switch (type) {
    case 'regex':
      return message;
    case 'min_length':
      return 'it is empty';
    case 'max_length':
      return `at most ${String(requirement)} ${what} are possible`;
    case 'min_value':
      return `the number is smaller than ${String(requirement)}, the least`;
    case 'max_value':
      return `the number is larger than ${String(requirement)}, the most`;
    case 'integer':
      return 'it is no whole number';
    default: {
      const noun = NOUNS.get(type);
      if (noun !== undefined) return `it is not ${noun}`;
      const choices = (expected ?? '').replaceAll(/[()"]/g, '').replaceAll(' | ', ', ');
      return `it is none of ${choices}`;
    }
  }
}
