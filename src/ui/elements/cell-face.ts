/** How one cell looks, and the painting of it: nothing that was typed becomes markup. */

import type { NoteInline } from '../note-tree.ts';

/** How one cell looks; equal objects are painted once. */
export interface Face {
  readonly type: 'empty' | 'text' | 'number' | 'error';
  readonly text: string;
  /** Symbol parts: [letter, index]; drawn in italics with a lowered index. */
  readonly symbol?: readonly [string, string];
  readonly unit?: string;
  readonly role?: 'given' | 'worked' | 'measured' | 'choice' | 'note';
  readonly heading?: boolean;
  /** The text of a formula in place of its value. */
  readonly formula?: boolean;
  readonly caution?: 'open' | 'acknowledged' | 'breach';
  /** The cell has a note. */
  readonly noted?: true;
  /** Marks within the text. */
  readonly parts?: readonly NoteInline[];
  readonly stale?: boolean;
  readonly title?: string;
  /** Text may run over the empty cells to its right: how many columns it may cover. */
  readonly over?: number;
  /** Width in pixels of all of them together, within which the text is broken over lines. */
  readonly wrap?: number;
}

const EMPTY: Face = Object.freeze({ type: 'empty', text: '' });

/** Classes that do not belong to the face of a cell. */
const KEPT = ['active', 'chosen', 'covered', 'corner', 'ref', 'ref-t', 'ref-b', 'ref-l', 'ref-r'];

const MARKED = { emphasis: 'em', strong: 'strong' } as const;

/** A part of a text as it is drawn: nothing of it becomes markup. */
function marked(part: NoteInline): Node {
  switch (part.type) {
    case 'text':
      return document.createTextNode(part.text);
    case 'code':
      return element('code', '', part.text);
    case 'link': {
      const { to } = part;
      const made = element('span', 'leads');
      const place = to.type === 'https' ? to.address : to.place;
      made.title = `${place} (Ctrl and click)`;
      made.dataset['leads'] = to.type === 'https' ? place : `#${place}`;
      made.append(...part.parts.map(marked));
      return made;
    }
    default: {
      const made = element(MARKED[part.type], '');
      made.append(...part.parts.map(marked));
      return made;
    }
  }
}

/** Sign and words of a caution. */
const SIGNS = {
  open: ['▲', 'caution'],
  acknowledged: ['△', 'caution, acknowledged'],
  breach: ['◆', 'limit passed'],
} as const;

export const element = (name: string, className: string, text = ''): HTMLElement => {
  const made = document.createElement(name);
  if (className) made.className = className;
  if (text) made.textContent = text;
  return made;
};

/** What may differ between two looks of a number that is only written anew. */
const WRITTEN: ReadonlySet<string> = new Set(['text', 'unit', 'title']);

/** A number that differs only in its digits, unit or title, as after most edits. */
function differsInText(before: Face, face: Face): boolean {
  if (before.type !== 'number' || face.type !== 'number' || !before.text || !face.text) return false;
  const names = new Set([...Object.keys(before), ...Object.keys(face)]) as Set<keyof Face>;
  return [...names].every((name) => WRITTEN.has(name) || before[name] === face[name]);
}

/** Puts digits and unit into what stands there: nothing is made anew. */
function rewrite(td: HTMLElement, { text, unit = '', title }: Face): void {
  const box = td.firstElementChild;
  const [value, behind] = [box?.lastElementChild?.previousElementSibling, box?.lastElementChild];
  if (value?.firstChild) value.firstChild.nodeValue = text;
  if (behind && behind.textContent !== unit) behind.textContent = unit;
  showTitle(td, title);
}

function showTitle(td: HTMLElement, title: string | undefined): void {
  if (title) td.title = title;
  else if (td.title) td.removeAttribute('title');
}

/** Paints a cell that looked like `before` until now. */
export function paintFace(td: HTMLElement, face: Face, before: Face = EMPTY): void {
  if (before.type === 'empty' && face.type === 'empty') return;
  if (differsInText(before, face)) rewrite(td, face);
  else draw(td, face);
}

function draw(td: HTMLElement, face: Face): void {
  const kept = KEPT.filter((name) => td.classList.contains(name));
  td.className = [
    ...kept,
    face.type,
    face.role ? `role-${face.role}` : '',
    face.heading ? 'heading' : '',
    face.formula ? 'formula' : '',
    face.over ? 'over' : '',
    face.wrap ? 'wrapped' : '',
    face.noted ? 'noted' : '',
    face.stale ? 'stale' : '',
  ]
    .filter(Boolean)
    .join(' ');
  const box = td.firstElementChild;
  if (!box) return;
  const parts: Node[] = [];
  if (face.caution) {
    const [letter, words] = SIGNS[face.caution];
    const sign = element('span', `sign ${face.caution}`, letter);
    sign.setAttribute('role', 'img');
    sign.setAttribute('aria-label', words);
    parts.push(sign);
  }
  if (face.role === 'measured') {
    const sign = element('span', 'clock', '◷');
    sign.setAttribute('role', 'img');
    sign.setAttribute('aria-label', 'measured');
    parts.push(sign);
  }
  const value = element('span', 'value', face.symbol || face.parts ? '' : face.text);
  if (face.parts) value.append(...face.parts.map(marked));
  if (face.wrap) value.style.setProperty('--wrap', `${face.wrap}px`);
  if (face.symbol) {
    value.append(element('i', '', face.symbol[0]));
    if (face.symbol[1]) value.append(element('sub', '', face.symbol[1]));
  }
  parts.push(value);
  if (face.type === 'number')
    parts.push(document.createTextNode(' '), element('span', 'unit', face.unit ?? ''));
  box.replaceChildren(...parts);
  showTitle(td, face.title);
}
