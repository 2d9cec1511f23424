/** Cell addresses: exactly columns A to BL and rows 1 to 2000, in either case (F6). */

import type { Corner } from './tree.ts';

export const LAST_COLUMN = 63;
export const LAST_ROW = 1999;

/** Letters of a column counted from 0: 0 is A, 63 is BL. */
export function columnLetters(column: number): string {
  if (!Number.isInteger(column) || column < 0)
    throw new RangeError(`column ${column}: 0 or a whole number above`);
  return (
    (column >= 26 ? columnLetters(Math.floor(column / 26) - 1) : '') +
    String.fromCodePoint(65 + (column % 26))
  );
}

/** "B3" for column 1, row 2. */
export const addressText = (column: number, row: number): string => `${columnLetters(column)}${row + 1}`;

/** "$B$3": the dollar signs as the corner has them. */
export const cornerText = ({ column, row, columnFixed, rowFixed }: Corner): string =>
  `${columnFixed ? '$' : ''}${columnLetters(column)}${rowFixed ? '$' : ''}${row + 1}`;

const ADDRESS = /^(\$?)([A-Za-z]{1,2})(\$?)([1-9]\d{0,3})$/;

/** Reads "b3" or "$B$3"; undefined for anything that is no address of a worksheet ("BM1", "A2001", "kc11"). */
export function readAddress(text: string): Corner | undefined {
  const parts = ADDRESS.exec(text);
  if (!parts) return undefined;
  const [, columnFixed, letters = '', rowFixed, digits] = parts;
  let column = -1;
  for (const letter of letters.toUpperCase()) column = (column + 1) * 26 + letter.charCodeAt(0) - 65;
  const row = Number(digits) - 1;
  if (column > LAST_COLUMN || row > LAST_ROW) return undefined;
  return { column, row, columnFixed: columnFixed === '$', rowFixed: rowFixed === '$' };
}

const PLAIN_TITLE = /^\p{L}[\p{L}\p{M}\d_]*$/u;

/** A worksheet's title as it stands before the dot: Feeds, 'Tool trial', 'Smith''s'. */
export const titleText = (title: string): string =>
  PLAIN_TITLE.test(title) ? title : `'${title.replaceAll("'", "''")}'`;

const NAME = /^\p{L}[\p{L}\p{M}\d_]*(?:(?<=\d)\.(?=\d)[\p{L}\p{M}\d_]*)*$/u;

/** Whether a text can be a name (F6a): a letter, then letters, digits and _, a dot only between two digits, no address, no constant. */
export const isName = (text: string): boolean =>
  NAME.test(text) && readAddress(text) === undefined && !/^(?:true|false)$/i.test(text);

/** Why a text can not be a name, in words with a proposal; undefined where it can (F6a). */
export function nameRefusal(text: string): string | undefined {
  if (isName(text)) return undefined;
  if (readAddress(text)) return `${text} is a cell; ${text.replace(/\d/, '_$&')} would be a name`;
  if (/^(?:true|false)$/i.test(text)) return `${text} is a constant; ${text}_ would be a name`;
  const tidy = text
    .trim()
    .replaceAll(/[^\p{L}\p{M}\d_.]+/gu, '_')
    .replaceAll(/(?<!\d)\.|\.(?!\d)/g, '_')
    .replace(/^[\d_.]+/, '');
  const proposal = isName(tidy) ? `; ${tidy} would be one` : '';
  return `${text === '' ? 'an empty text' : text} is no name: a letter first, then letters, digits and _, a dot only between digits${proposal}`;
}
