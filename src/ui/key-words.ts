/** The keys of the page in words: what the keymap does, a row each, for the leaf that lists them. */

import type { KeyLike } from './keymap.ts';

export interface KeyRow {
  /** As printed on the keys; several ways are parted by "or". */
  readonly keys: string;
  readonly words: string;
  /** Presses that the row speaks of. */
  readonly presses: readonly KeyLike[];
}

const press = (key: string, held: Partial<Record<'ctrl' | 'shift' | 'alt', true>> = {}): KeyLike => ({
  key,
  ctrlKey: held.ctrl === true,
  shiftKey: held.shift === true,
  altKey: held.alt === true,
  metaKey: false,
});
const ARROWS = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'] as const;
const CTRL = { ctrl: true } as const;
const SHIFT = { shift: true } as const;
const ALT = { alt: true } as const;

/** While no text is being edited. */
export const PAGE_KEYS: readonly KeyRow[] = [
  { keys: 'Arrows', words: 'one cell on', presses: ARROWS.map((key) => press(key)) },
  {
    keys: 'Ctrl Arrow',
    words: 'to the edge of the filled cells',
    presses: ARROWS.map((key) => press(key, CTRL)),
  },
  { keys: 'Home, End', words: 'first and last cell of the row', presses: [press('Home'), press('End')] },
  {
    keys: 'Ctrl Home, Ctrl End',
    words: 'first and last cell of the worksheet',
    presses: [press('Home', CTRL), press('End', CTRL)],
  },
  { keys: 'Page Up, Page Down', words: '20 rows on', presses: [press('PageUp'), press('PageDown')] },
  {
    keys: 'Alt Page Up, Alt Page Down',
    words: 'to the worksheet before, after',
    presses: [press('PageUp', ALT), press('PageDown', ALT)],
  },
  {
    keys: 'Shift with these',
    words: 'extends the selection',
    presses: [...ARROWS, 'Home', 'End', 'PageUp', 'PageDown'].map((key) => press(key, SHIFT)),
  },
  {
    keys: 'Shift Space, Ctrl Space',
    words: 'selects whole rows, whole columns',
    presses: [press(' ', SHIFT), press(' ', CTRL)],
  },
  { keys: 'Ctrl A', words: 'selects the worksheet', presses: [press('a', CTRL)] },
  { keys: 'any character', words: 'begins a new text in the cell', presses: [] },
  {
    keys: 'Enter or F2 or Alt Down',
    words: 'edits the text of the cell',
    presses: [press('Enter'), press('F2'), press('ArrowDown', ALT)],
  },
  {
    keys: 'Delete or Backspace',
    words: 'empties the selection',
    presses: [press('Delete'), press('Backspace')],
  },
  { keys: 'Ctrl C, Ctrl X, Ctrl V', words: 'copies, cuts, pastes', presses: [] },
  {
    keys: 'Ctrl D, Ctrl R',
    words: 'fills the selection down, to the right',
    presses: [press('d', CTRL), press('r', CTRL)],
  },
  {
    keys: 'Ctrl Shift D, Ctrl Shift R',
    words: 'fills the selection up, to the left',
    presses: [press('D', { ctrl: true, shift: true }), press('R', { ctrl: true, shift: true })],
  },
  { keys: 'Ctrl Z', words: 'takes the last step back', presses: [press('z', CTRL)] },
  {
    keys: 'Ctrl Y or Ctrl Shift Z',
    words: 'does it again',
    presses: [press('y', CTRL), press('Z', { ctrl: true, shift: true })],
  },
  {
    keys: 'Alt Shift Arrow',
    words: 'moves the selected rows or columns',
    presses: ARROWS.map((key) => press(key, { alt: true, shift: true })),
  },
  {
    keys: 'Alt Left, Alt Right',
    words: 'makes the columns narrower, wider',
    presses: [press('ArrowLeft', ALT), press('ArrowRight', ALT)],
  },
  {
    keys: 'F3, Shift F3',
    words: 'next and previous find',
    presses: [press('F3'), press('F3', SHIFT)],
  },
  {
    keys: 'Menu key or Shift F10',
    words: 'what can be done with the selection',
    presses: [press('ContextMenu'), press('F10', SHIFT)],
  },
];

/** While a text is being edited, in the cell or on the line under the page. */
export const EDITING_KEYS: readonly Omit<KeyRow, 'presses'>[] = [
  { keys: 'Enter, Shift Enter', words: 'takes it, goes down, up' },
  { keys: 'Tab, Shift Tab', words: 'takes it, goes right, left' },
  { keys: 'Escape', words: 'leaves the cell as it was' },
  {
    keys: 'Arrows',
    words: 'take a freshly typed value and move on; in a text opened with Enter or F2 they move the caret',
  },
  {
    keys: 'Down, Up, then Tab',
    words: 'choose from the list of functions, names and units and take what is marked',
  },
  {
    keys: 'Arrows in a formula',
    words:
      'put the cell they reach into it where a reference may stand; with Shift a range; F2 gives the arrows to the caret',
  },
  {
    keys: 'Alt Page Up, Alt Page Down in a formula',
    words:
      'show another worksheet, so that the arrows point there; Enter takes the formula and Escape leaves it, back where it began',
  },
  { keys: 'Ctrl G in a formula', words: 'put a cell into it by its address or name, or show a worksheet' },
  { keys: 'Down, Up, Enter in a choice cell', words: 'pick from its list' },
];

/** Everywhere in the program. */
export const PROGRAM_KEYS: readonly Omit<KeyRow, 'presses'>[] = [
  { keys: 'F1', words: 'help' },
  { keys: 'Tab, Shift Tab', words: 'from one part of the screen to the next, and back' },
  { keys: 'Left, Right on a tab of the margin', words: 'the tab beside it' },
];
