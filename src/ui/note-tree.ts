/**
 * Notes in a small subset of Markdown, read to a tree: paragraphs, lists, emphasis, strong, code, links. No HTML, no
 * images; a link goes to https: or inside the notebook (#B7, #fz, #Feeds.B7, #Feeds), anything else stays text.
 * Knows no screen; time grows with the length of the text alone.
 */

export type NoteInline =
  | { readonly type: 'text' | 'code'; readonly text: string }
  | { readonly type: 'emphasis' | 'strong'; readonly parts: readonly NoteInline[] }
  | { readonly type: 'link'; readonly parts: readonly NoteInline[]; readonly to: NoteTarget };

export type NoteTarget =
  | { readonly type: 'https'; readonly address: string }
  /** As it is typed to go there. */
  | { readonly type: 'inside'; readonly place: string };

export type NoteBlock =
  | { readonly type: 'paragraph'; readonly parts: readonly NoteInline[] }
  | {
      readonly type: 'list';
      readonly ordered: boolean;
      /** Number of the first item of an ordered list. */
      readonly start: number;
      readonly items: readonly (readonly NoteInline[])[];
    };

/** Longer notes are shown as plain text. */
const LONGEST = 20_000;
/** Marks within marks: deeper ones stay as they are written. */
const DEEPEST = 6;

const ITEM = /^ {0,3}(?:([-*+])|(\d{1,9})[.)])[ \t]+(\S.*)$/;

/** Paragraphs and lists; never throws. */
export function readNote(text: string): readonly NoteBlock[] {
  if (text.length > LONGEST) return [{ type: 'paragraph', parts: [{ type: 'text', text }] }];
  const blocks: NoteBlock[] = [];
  let lines: string[] = [];
  let list: { ordered: boolean; start: number; items: string[] } | undefined;
  const finish = (): void => {
    if (list) blocks.push({ ...list, type: 'list', items: list.items.map((item) => readInline(item)) });
    else if (lines.length > 0) blocks.push({ type: 'paragraph', parts: readInline(lines.join('\n')) });
    list = undefined;
    lines = [];
  };
  for (const line of text.split(/\r\n?|\n/)) {
    if (line.trim() === '') {
      finish();
      continue;
    }
    const [, bullet, number, rest] = ITEM.exec(line) ?? [];
    if (rest !== undefined) {
      const ordered = bullet === undefined;
      if (lines.length > 0 || (list && list.ordered !== ordered)) finish();
      list ??= { ordered, start: Number(number ?? 1), items: [] };
      list.items.push(rest);
    } else if (list && /^[ \t]/.test(line)) {
      // An indented line goes on with the item above it.
      list.items.push(`${list.items.pop() ?? ''}\n${line.trim()}`);
    } else {
      if (list) finish();
      lines.push(line.trim());
    }
  }
  finish();
  return blocks;
}

/** True where the text says more than its letters. */
export const hasMarks = (parts: readonly NoteInline[]): boolean => parts.some(({ type }) => type !== 'text');

/** The letters alone. */
export const plainText = (parts: readonly NoteInline[]): string =>
  parts.map((part) => ('text' in part ? part.text : plainText(part.parts))).join('');

/** Marks within one paragraph, item or cell. */
export function readInline(text: string): readonly NoteInline[] {
  return text.length > LONGEST ? [{ type: 'text', text }] : new InlineReader(text).read(0, text.length, 0);
}

const ESCAPED = /[\\`*_[\]()#+.!-]/;
const isSpace = (letter: string): boolean => letter === '' || /\s/.test(letter);
const isWord = (letter: string): boolean => /[\p{L}\p{N}]/u.test(letter);

class InlineReader {
  /** Where a mark was looked for from and not found: it is not looked for again before. */
  readonly #missing = new Map<string, number>();

  constructor(private readonly text: string) {}

  read(from: number, to: number, depth: number): readonly NoteInline[] {
    const parts: NoteInline[] = [];
    let plain = '';
    const flush = (): void => {
      if (plain !== '') parts.push({ type: 'text', text: plain });
      plain = '';
    };
    let at = from;
    while (at < to) {
      const letter = this.text.charAt(at);
      const next = this.text.charAt(at + 1);
      if (letter === '\\' && at + 1 < to && ESCAPED.test(next)) {
        plain += next;
        at += 2;
        continue;
      }
      const found = this.#markAt(at, to, depth);
      if (found) {
        flush();
        parts.push(found.part);
        at = found.to;
      } else {
        plain += letter;
        at += 1;
      }
    }
    flush();
    return parts;
  }

  #markAt(at: number, to: number, depth: number): { part: NoteInline; to: number } | undefined {
    const letter = this.text.charAt(at);
    if (letter === '`') return this.#code(at, to);
    if (depth >= DEEPEST) return undefined;
    if (letter === '[') return this.#link(at, to, depth);
    if (letter !== '*' && letter !== '_') return undefined;
    return (
      this.#marked(at, to, letter + letter, 'strong', depth) ??
      this.#marked(at, to, letter, 'emphasis', depth)
    );
  }

  /** Position of a text before `to`; the failure is remembered. */
  #find(wanted: string, from: number, to: number): number {
    const known = this.#missing.get(wanted);
    if (known !== undefined && from >= known) return -1;
    const found = this.text.indexOf(wanted, from);
    if (found < 0) this.#missing.set(wanted, from);
    return found >= 0 && found + wanted.length <= to ? found : -1;
  }

  #code(at: number, to: number): { part: NoteInline; to: number } | undefined {
    const end = this.#find('`', at + 1, to);
    if (end <= at + 1) return undefined;
    return { part: { type: 'code', text: this.text.slice(at + 1, end) }, to: end + 1 };
  }

  /** A mark opens before a letter at the beginning of a word and closes behind one at its end: D*L*W and a_e stay. */
  #marked(
    at: number,
    to: number,
    mark: string,
    type: 'emphasis' | 'strong',
    depth: number,
  ): { part: NoteInline; to: number } | undefined {
    const { text } = this;
    const inside = at + mark.length;
    if (!text.startsWith(mark, at) || isWord(text.charAt(at - 1)) || isSpace(text.charAt(inside)))
      return undefined;
    const key = `${mark}>`;
    const known = this.#missing.get(key);
    if (known !== undefined && inside >= known) return undefined;
    for (let end = text.indexOf(mark, inside + 1); end >= 0; end = text.indexOf(mark, end + 1)) {
      if (end + mark.length > to) return undefined;
      const after = text.charAt(end + mark.length);
      // "**" inside of "*...*" belongs to the strong part within it.
      const doubled = mark.length === 1 && (after === mark || text.charAt(end - 1) === mark);
      if (isSpace(text.charAt(end - 1)) || isWord(after) || text.charAt(end - 1) === '\\' || doubled)
        continue;
      return { part: { type, parts: this.read(inside, end, depth + 1) }, to: end + mark.length };
    }
    this.#missing.set(key, inside);
    return undefined;
  }

  #link(at: number, to: number, depth: number): { part: NoteInline; to: number } | undefined {
    const middle = this.#find('](', at + 1, to);
    if (middle <= at + 1) return undefined;
    const end = this.#find(')', middle + 2, to);
    if (end < 0) return undefined;
    const words = this.text.slice(at + 1, middle);
    const target = targetOf(this.text.slice(middle + 2, end));
    if (!target || words.includes('[')) return undefined;
    return { part: { type: 'link', parts: this.read(at + 1, middle, depth + 1), to: target }, to: end + 1 };
  }
}

/** Where a link leads; undefined for anything but https: and places of the notebook. */
function targetOf(written: string): NoteTarget | undefined {
  const text = written.trim();
  if (/[\s\p{Cc}<>"\\]/u.test(text.replaceAll(' ', text.startsWith('#') ? '' : ' '))) return undefined;
  if (text.startsWith('#')) {
    const place = text.slice(1);
    return place === '' || place.length > 200 ? undefined : { type: 'inside', place };
  }
  if (!/^https:\/\/[^/@\s]+(?:\/|$|\?|#)/i.test(text)) return undefined;
  try {
    const url = new URL(text);
    const good = url.protocol === 'https:' && url.username === '' && url.password === '';
    return good ? { type: 'https', address: url.href } : undefined;
  } catch {
    return undefined;
  }
}
