/** What the keys of the on-screen keypad write. */

import { expect, test } from 'vitest';
import { pressed } from '../../src/ui/keypad-press.ts';
import type { EditedText, KeypadPress } from '../../src/ui/keypad-press.ts';

const KEYS: Readonly<Record<string, KeypadPress>> = {
  '±': { type: 'sign' },
  '⌫': { type: 'backspace' },
  C: { type: 'clear' },
};
const at = (text: string): EditedText => ({ text, from: text.length, to: text.length });
const whole = (text: string): EditedText => ({ text, from: 0, to: text.length });

function typed(start: EditedText, ...keys: string[]): string {
  return keys.reduce((now, key) => {
    const unit = /^\[(.+)\]$/.exec(key)?.[1];
    const press = unit === undefined ? (KEYS[key] ?? { type: 'insert', text: key }) : { type: 'unit', unit };
    return pressed(now, press as KeypadPress);
  }, start).text;
}

test('digits replace the whole selected value, then follow each other', () => {
  expect(typed(whole('260'), '2', '7', '5', '.', '5')).toBe('275.5');
});

test('the sign turns the number, or its exponent once there is one', () => {
  expect(typed(at('12'), '±')).toBe('-12');
  expect(typed(at('12'), '±', '±', '5')).toBe('125');
  expect(typed(at('1.5'), 'E', '±', '3')).toBe('1.5E-3');
  expect(typed(whole('12'), '±')).toBe('-12');
  expect(typed(at('=A1'), '±', '2')).toBe('=A1-2');
});

test('a unit stands behind the number and takes the place of another', () => {
  expect(typed(at('3/8'), '[in]')).toBe('3/8 in');
  expect(typed(at('1.5'), '[mm]', '[um]')).toBe('1.5 um');
  expect(typed(at('1 1/2'), '[in]')).toBe('1 1/2 in');
  expect(typed(at('1.5'), '[mm]', '2')).toBe('1.52 mm');
  expect(typed(at(''), '[mm]')).toBe('');
  expect(typed(whole('260'), '[m/min]')).toBe('260 m/min');
});

test('backspace takes the character before or the selection, clear takes everything', () => {
  expect(typed(at('12'), '⌫')).toBe('1');
  expect(typed(whole('12'), '⌫', '3')).toBe('3');
  expect(typed(at(''), '⌫')).toBe('');
  expect(typed(at('12 mm'), 'C', '4')).toBe('4');
});
