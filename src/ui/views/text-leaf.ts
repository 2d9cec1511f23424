/** A file as text to be copied by hand, where the browser can neither share nor download. */

import { LitElement, css, html, type TemplateResult } from 'lit';
import { shared } from '../shared.styles.ts';
import { leafStyles } from './leaf.styles.ts';

export class TextLeaf extends LitElement {
  static override styles = [
    shared,
    leafStyles,
    css`
      textarea {
        inline-size: 100%;
        block-size: 50dvh;
        font-family: var(--mono);
        font-size: 13px;
      }
    `,
  ];
  static override properties = { file: { attribute: false }, copied: { state: true } };
  declare file: { readonly name: string; readonly text: string } | undefined;
  declare copied: boolean;

  override render(): TemplateResult {
    const { name = '', text = '' } = this.file ?? {};
    return html`<p>
        This browser hands out no files. Copy the text and keep it in a file named <b>${name}</b>, all of it
        and unchanged.
      </p>
      <textarea readonly aria-label="text of ${name}" .value=${text}></textarea>
      <p>
        <button class="primary" @click=${() => this.#copy(text)}>Copy the text</button>
        <span role="status">${this.copied ? 'Copied.' : ''}</span>
      </p>`;
  }

  #copy(text: string): void {
    this.renderRoot.querySelector('textarea')?.select();
    navigator.clipboard?.writeText(text).then(
      () => (this.copied = true),
      () => (this.copied = false),
    );
  }
}
customElements.define('text-leaf', TextLeaf);
