/** A link that carries a small notebook behind its #: no server sees it. Packing is the browser's business and comes as an argument. */

import type { Notebook, Refusal } from '../document/index.ts';
import { fromBase64url, toBase64url } from './base64url.ts';
import { readNotebook } from './read-notebook.ts';
import type { ReadNotebook } from './read-notebook.ts';
import { writeNotebook } from './write-notebook.ts';

export const LINK_LIMITS = Object.freeze({
  /** Characters of a link that mail and chat programs still carry whole (common practice, no source). */
  link: 8000,
  /** Bytes of the notebook's text once unpacked. */
  unpacked: 1024 * 1024,
});

/** Raw DEFLATE (RFC 1951) of the UTF-8 bytes of a text. */
export type Pack = (text: string) => Promise<Uint8Array>;
/** The reverse; rejects where the bytes are no such thing or give more than `most` bytes. */
export type Unpack = (bytes: Uint8Array, most: number) => Promise<string>;

/** Version of the form of the link: stands before the packed text. */
const MARK = 'n1.';

/** True where the part of an address behind its # (with or without it) is meant to carry a notebook. */
export const carriesNotebook = (fragment: string): boolean => /^#?n\d+\./.test(fragment);

/** The link to `address` (what stands before #) with the notebook in it; refused where it grows too long. */
export async function writeLink(address: string, notebook: Notebook, pack: Pack): Promise<string | Refusal> {
  const { parts } = notebook;
  if (parts?.photographs || parts?.recordings)
    return { message: 'Photographs and recordings do not travel in a link: send the file.' };
  const text = JSON.stringify(JSON.parse(writeNotebook(notebook)));
  const link = `${address.replace(/#.*$/su, '')}#${MARK}${toBase64url(await pack(text))}`;
  if (link.length <= LINK_LIMITS.link) return link;
  return {
    message: `The link would have ${link.length} characters; ${LINK_LIMITS.link} is the most that mail programs carry whole: send the file.`,
  };
}

/** The notebook that a link's fragment carries; one sentence where there is none to be had. */
export async function readLink(fragment: string, unpack: Unpack): Promise<ReadNotebook | Refusal> {
  const text = fragment.replace(/^#/, '');
  if (!text.startsWith(MARK)) {
    return carriesNotebook(text)
      ? { message: 'The link was made by a newer version of the program: update the program to open it.' }
      : { message: 'The link carries no notebook.' };
  }
  const damaged = { message: 'The link is damaged or was cut short: ask for the file.' };
  if (text.length > LINK_LIMITS.link)
    return { message: 'The link is longer than what is read: ask for the file.' };
  const bytes = fromBase64url(text.slice(MARK.length));
  if (!bytes || bytes.length === 0) return damaged;
  try {
    return readNotebook(await unpack(bytes, LINK_LIMITS.unpacked));
  } catch {
    return damaged;
  }
}
