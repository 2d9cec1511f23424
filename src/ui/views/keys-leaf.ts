/** The keys: those of the page, those while a text is open, and those that the menu names. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { EDITING_KEYS, PAGE_KEYS, PROGRAM_KEYS, type KeyRow } from '../key-words.ts';
import { PROGRAM_COMMANDS } from '../program-commands.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { leafStyles } from './leaf.styles.ts';

const SHIFTED = 'Ctrl Shift ';

export class KeysLeaf extends LitElement {
  static override styles = [shared, leafStyles];
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  override render(): TemplateResult {
    return html`<div class="columns">
      ${this.#group('On the page', PAGE_KEYS)} ${this.#group('While a text is open', EDITING_KEYS)}
      ${this.#group('Everywhere', PROGRAM_KEYS)} ${this.#menu()}
      <section>
        <h3>By touch</h3>
        <p>
          The first tap selects a cell, the second one edits it; dragging scrolls. The round handles at the
          corners extend the selection; More… holds what can be done with it.
        </p>
        <p>While a formula is open a tap puts the cell into it, and the handles make a range of it.</p>
        <p>
          Values and formulas have a keypad of their own, with the units that fit; “letters” brings the
          device’s own keyboard.
        </p>
      </section>
    </div>`;
  }

  #group(title: string, rows: readonly Omit<KeyRow, 'presses'>[]): TemplateResult {
    return html`<section>
      <h3>${title}</h3>
      <dl class="keys">
        ${rows.map(
          ({ keys, words }) =>
            html`<dt><kbd>${keys}</kbd></dt>
              <dd>${words}</dd>`,
        )}
      </dl>
    </section>`;
  }

  /** What the menu offers with a key; its words may depend on the open notebook. */
  #menu(): TemplateResult | typeof nothing {
    const { session } = this;
    const rows = PROGRAM_COMMANDS.flatMap(({ key, words }) => {
      if (key === undefined) return [];
      const said = typeof words === 'string' ? words : session ? words(session) : '';
      const held = key === key.toLowerCase() ? 'Ctrl ' : SHIFTED;
      return said === '' ? [] : [{ keys: held + key.toUpperCase(), words: said.replace(/…$/, '') }];
    });
    return rows.length === 0 ? nothing : this.#group('From the menu, with a notebook open', rows);
  }
}
customElements.define('keys-leaf', KeysLeaf);
