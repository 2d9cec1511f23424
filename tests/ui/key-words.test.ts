/** The list of keys says what the keymap does: no row without a key that works, no key without a row. */

import { expect, test } from 'vitest';
import { PAGE_KEYS } from '../../src/ui/key-words.ts';
import { gridAction, type KeyLike } from '../../src/ui/keymap.ts';

const text = ({ key, ctrlKey, shiftKey, altKey }: KeyLike): string =>
  [ctrlKey && 'Ctrl', altKey && 'Alt', shiftKey && 'Shift', key.length === 1 ? key.toLowerCase() : key]
    .filter(Boolean)
    .join(' ');

const NAMED = [
  ...'ArrowUp ArrowDown ArrowLeft ArrowRight Home End PageUp PageDown Enter Tab Escape'.split(' '),
  ...'Delete Backspace Insert ContextMenu'.split(' '),
  ' ',
  ...Array.from({ length: 12 }, (_, k) => `F${k + 1}`),
];
const LETTERS = [...'abcdefghijklmnopqrstuvwxyz0123456789'];

test('every key named for the page does something there', () => {
  for (const { keys, presses } of PAGE_KEYS)
    for (const press of presses) expect(gridAction(press), `${keys}: ${text(press)}`).toBeDefined();
});

test('every key that does something on the page is named', () => {
  const named = new Set(PAGE_KEYS.flatMap(({ presses }) => presses.map(text)));
  const unnamed: string[] = [];
  for (const key of [...NAMED, ...LETTERS])
    for (let held = 0; held < 8; held += 1) {
      const [ctrlKey, shiftKey, altKey] = [(held & 1) > 0, (held & 2) > 0, (held & 4) > 0];
      const press = { key, ctrlKey, shiftKey, altKey, metaKey: false };
      const plain = { ...press, shiftKey: false };
      const action = gridAction(press);
      // Saving stands in the menu with its key.
      if (!action || action.type === 'save') continue;
      // One row says that Shift extends; where Shift makes no difference, the row without it speaks for both.
      const like = gridAction(plain);
      const spoken = like?.type === action.type && named.has(text(plain));
      if (!spoken && !named.has(text(press))) unnamed.push(text(press));
    }
  expect(unnamed).toEqual([]);
});
