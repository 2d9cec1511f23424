/** What else can be done at the machine: undo, the values as received, screen, who, keypad. */

import { html, type TemplateResult } from 'lit';
import type { WakeState } from '../wake-lock.ts';
import { whoNow } from '../who.ts';

const WAKE_WORDS: Record<WakeState, string> = {
  on: 'Screen stays on ✓',
  off: 'Keep screen on',
  refused: 'Screen may sleep: device refuses',
  none: 'Screen may sleep: set in device',
};

export interface BarHands {
  readonly canUndo: boolean;
  undo(): void;
  /** A value is another than it was received. */
  readonly canRestore: boolean;
  restore(): void;
  readonly wake: WakeState;
  keepOn(wanted: boolean): void;
  readonly keypad: boolean;
  useKeypad(wanted: boolean): void;
  askWho(): void;
}

export function machineBar(hands: BarHands): TemplateResult {
  const { wake, keypad } = hands;
  const who = whoNow();
  return html`<div class="bar" role="group" aria-label="what else can be done here">
    <button ?disabled=${!hands.canUndo} @click=${() => hands.undo()}>Undo</button>
    <button ?disabled=${!hands.canRestore} @click=${() => hands.restore()}>Values as received</button>
    <button
      aria-pressed=${wake === 'on' ? 'true' : 'false'}
      ?disabled=${wake === 'none'}
      @click=${() => hands.keepOn(wake !== 'on')}
    >
      ${WAKE_WORDS[wake]}
    </button>
    <button
      class="who"
      aria-label="Who is at the machine: ${who ?? 'not said yet'}"
      @click=${() => hands.askWho()}
    >
      ${who ?? 'Who?'}
    </button>
    <button aria-pressed=${keypad ? 'true' : 'false'} @click=${() => hands.useKeypad(!keypad)}>
      ${keypad ? 'Keypad ✓' : 'Keypad'}
    </button>
  </div>`;
}
