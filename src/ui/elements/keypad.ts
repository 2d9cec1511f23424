/**
 * Keypad on the screen for fingers: digits, sign, point, exponent, fraction bar, units that fit, next field.
 * Sends one event, "keypad", whose detail is a KeypadPress; `pressed` of keypad-press.ts carries it out on a text.
 */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { PLAIN, isKindName, kindNamed, speakUnit, unitsOfKind } from '../../quantity/index.ts';
import type { Unit } from '../../quantity/index.ts';
import type { KeypadPress } from '../keypad-press.ts';
import { shared } from '../shared.styles.ts';
import { unitText } from '../value-text.ts';
import { keypadStyles } from './keypad.styles.ts';

/** Begins with what stands on the key (WCAG 2.5.3). */
const nameOf = (unit: Unit): string => {
  const face = unitText(unit.symbol);
  return face === '' ? 'plain, no unit' : `${face}, ${speakUnit(unit)}`;
};

/** More units than these are typed by name. */
const MOST_UNITS = 8;

const BACKSPACE = html`<svg viewBox="0 0 30 24" aria-hidden="true">
  <path d="M10 3h17v18H10L2 12z M14 8l8 8 M22 8l-8 8" />
</svg>`;

export class Keypad extends LitElement {
  static override styles = [shared, keypadStyles];
  static override properties = {
    kind: {},
    currency: {},
    unit: {},
    for: {},
    decimalMark: {},
    last: { type: Boolean },
    withoutUnits: { type: Boolean },
  };
  /** Name of the quantity kind whose units are offered. */
  declare kind: string;
  declare currency: string;
  /** Symbol of the unit that stands behind the number now. */
  declare unit: string;
  /** What is being typed, for screen readers. */
  declare for: string;
  declare decimalMark: '.' | ',';
  /** There is no next field. */
  declare last: boolean;
  /** The units are offered elsewhere, or none are. */
  declare withoutUnits: boolean;

  constructor() {
    super();
    this.kind = PLAIN.name;
    this.currency = '';
    this.unit = '';
    this.for = '';
    this.decimalMark = '.';
    this.last = false;
    this.withoutUnits = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('pointerdown', this.#keepFocus);
    this.addEventListener('mousedown', this.#keepFocus);
  }

  /** A press by finger leaves the focus and the caret in the field. */
  readonly #keepFocus = (event: Event): void => event.preventDefault();

  get #units(): readonly Unit[] {
    const kind = isKindName(this.kind) ? kindNamed(this.kind) : PLAIN;
    const units = unitsOfKind(kind, this.currency === '' ? undefined : this.currency);
    const [usual] = units;
    const distance = ({ scale }: Unit): number => Math.abs(Math.log10(scale / (usual?.scale ?? 1)));
    const [first, others] = [units.slice(0, 2), units.slice(2)];
    const foreign = (unit: Unit): number => (unit.kind === kind ? 0 : 1);
    const near = [
      ...first,
      ...others.toSorted((a, b) => foreign(a) - foreign(b) || distance(a) - distance(b)),
    ];
    const own = near.findIndex(({ symbol }) => symbol === this.unit);
    // In one order, whichever stands behind the number: a key never moves under the thumb.
    return near.filter((_, k) => k < MOST_UNITS - 1 || k === Math.max(own, MOST_UNITS - 1));
  }

  override render(): TemplateResult {
    const units = this.#units;
    return html`<slot></slot>
      <div role="group" aria-label="keypad${this.for === '' ? '' : ` for ${this.for}`}">
        ${
          this.withoutUnits || units.length < 2
            ? nothing
            : html`<div class="units" role="group" aria-label="units">
                ${units.map((unit) =>
                  this.#key(
                    unitText(unit.symbol) || 'plain',
                    nameOf(unit),
                    {
                      type: 'unit',
                      unit: unit.symbol,
                    },
                    '',
                    unit.symbol === this.unit,
                  ),
                )}
              </div>`
        }
        <div class="keys">
          ${this.#digits('7', '8', '9')}
          ${this.#key(BACKSPACE, 'delete the character before', { type: 'backspace' }, 'act')}
          ${this.#key('Clear', 'clear the field', { type: 'clear' }, 'act')} ${this.#digits('4', '5', '6')}
          ${this.#key('+/−', 'change the sign', { type: 'sign' })}
          ${this.#key(html`×10<sup>n</sup>`, '×10n, exponent of ten', { type: 'insert', text: 'E' })}
          ${this.#digits('1', '2', '3')}
          ${this.#key('a/b', 'a/b, fraction bar', { type: 'insert', text: '/' })}
          ${this.#key(html`space`, 'space, between a whole number and its fraction', { type: 'insert', text: ' ' }, 'act')}
          ${this.#digits('0')}
          ${this.#key(this.decimalMark, this.decimalMark === ',' ? 'decimal comma' : 'decimal point', { type: 'insert', text: this.decimalMark }, 'digit')}
          ${this.#key('Leave it', 'Leave it: the value stays as it was', { type: 'leave' }, 'act')}
          ${this.#key('Next', 'take it and go to the next field', { type: 'next' }, 'act', undefined, this.last)}
          ${this.#key('Done', 'Done: take it and put the keypad away', { type: 'done' }, 'primary')}
        </div>
      </div>`;
  }

  #digits(...digits: string[]): TemplateResult[] {
    return digits.map((digit) => this.#key(digit, digit, { type: 'insert', text: digit }, 'digit'));
  }

  #key(
    face: unknown,
    name: string,
    press: KeypadPress,
    look = '',
    on?: boolean,
    disabled = false,
  ): TemplateResult {
    return html`<button
      type="button"
      class=${look}
      aria-label=${name}
      aria-pressed=${on === undefined ? nothing : on ? 'true' : 'false'}
      ?disabled=${disabled}
      @click=${() => this.dispatchEvent(new CustomEvent('keypad', { detail: press, bubbles: true, composed: true }))}
    >
      ${face}
    </button>`;
  }
}

customElements.define('on-screen-keypad', Keypad);
