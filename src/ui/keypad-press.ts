/** What a key of the on-screen keypad does to a text with its caret; knows no element. */

import { readQuantity } from '../quantity/index.ts';
import { typing } from './number-locale.ts';

export type KeypadPress =
  | { readonly type: 'insert'; readonly text: string }
  /** Puts this unit behind the number, in place of the one that stands there. */
  | { readonly type: 'unit'; readonly unit: string }
  /** Turns the sign of the number, or of its exponent where the caret stands in it. */
  | { readonly type: 'sign' }
  | { readonly type: 'backspace' }
  | { readonly type: 'clear' }
  | { readonly type: 'next' }
  | { readonly type: 'done' }
  | { readonly type: 'leave' };

/** A text being edited with its selection. */
export interface EditedText {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

const at = (text: string, caret: number): EditedText => ({ text, from: caret, to: caret });

function replaced({ text, from, to }: EditedText, put: string): EditedText {
  return at(text.slice(0, from) + put + text.slice(to), from + put.length);
}

const NUMBER_BEFORE = /[-\d.,eE/ ]*$/;

function signTurned(edited: EditedText): EditedText {
  const { text, from, to } = edited;
  if (text.startsWith('=')) return replaced(edited, '-');
  if (from === 0 && to === text.length && to > 0) {
    const turned = text.startsWith('-') ? text.slice(1) : `-${text}`;
    return { text: turned, from: 0, to: turned.length };
  }
  const exponent = /[eE](?=[+-]?\d*$)/.exec(text.slice(0, to));
  const start = exponent ? exponent.index + 1 : 0;
  const has = text[start] === '-';
  const shift = has ? -1 : 1;
  const turned = text.slice(0, start) + (has ? '' : '-') + text.slice(start + (has ? 1 : 0));
  return { text: turned, from: Math.max(0, from + shift), to: Math.max(0, to + shift) };
}

function withUnit(edited: EditedText, unit: string): EditedText {
  const { text, from, to } = edited;
  if (text.startsWith('=')) {
    const before = text.slice(0, from);
    return replaced(edited, /[\d.,]$/.test(before) ? ` ${unit}` : unit);
  }
  const read = readQuantity(text, typing());
  const word = read && 'unitText' in read && read.unitText ? read.unitText : '';
  const number = (
    word === '' ? (NUMBER_BEFORE.exec(text.replace(/[^\d.]+$/, ''))?.[0] ?? '') : text.slice(0, -word.length)
  ).trim();
  if (number === '') return edited;
  const made = unit === '' || unit === '1' ? number : `${number} ${unit}`;
  const caret = Math.min(from === 0 && to === text.length ? number.length : to, number.length);
  return at(made, caret);
}

/** The text after a press; presses that do not write (next, done, leave) leave it as it is. */
export function pressed(edited: EditedText, press: KeypadPress): EditedText {
  const { text, from, to } = edited;
  switch (press.type) {
    case 'insert':
      return replaced(edited, press.text);
    case 'unit':
      return withUnit(edited, press.unit);
    case 'sign':
      return signTurned(edited);
    case 'backspace':
      if (from !== to) return replaced(edited, '');
      return from === 0 ? edited : at(text.slice(0, from - 1) + text.slice(from), from - 1);
    case 'clear':
      return at('', 0);
    default:
      return edited;
  }
}

/** A text that is chosen whole. */
export const chosenWhole = (text: string): EditedText => ({ text, from: 0, to: text.length });

/** The text with what is chosen in its field, while the field has the focus. */
export function caretIn(input: HTMLInputElement | null, edited: EditedText): EditedText {
  if (!input?.matches(':focus')) return edited;
  const { selectionStart, selectionEnd } = input;
  return { text: edited.text, from: selectionStart ?? edited.from, to: selectionEnd ?? edited.to };
}
