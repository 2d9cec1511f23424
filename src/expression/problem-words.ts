/** The form of every syntax message: the place, what was read there, and what would be right. */

/** "Character 6, “)”: ...": places count from 1, the leading = included. */
export const atToken = (from: number, read: string, words: string): string =>
  `Character ${from + 1}, “${read.length > 24 ? `${read.slice(0, 23)}…` : read}”: ${words}.`;

export const atEnd = (words: string): string => `At the end: ${words}.`;

export const OUTSIDE = 'it is outside the worksheet: columns go from A to BL, rows from 1 to 2000';
