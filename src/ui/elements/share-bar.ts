/** A bar as long as a share of one; its number stands beside it, so that it says nothing to a screen reader. */

import { LitElement, css, html, type PropertyValues, type TemplateResult } from 'lit';

export class ShareBar extends LitElement {
  static override properties = { share: { attribute: false } };
  declare share: number;

  static override styles = css`
    :host {
      display: block;
      block-size: 10px;
      margin-block: 2px 4px;
      border: 1px solid var(--button-edge);
    }
    div {
      block-size: 100%;
      inline-size: calc(var(--share, 0) * 100%);
      background: var(--accent);
    }
  `;

  override updated(_: PropertyValues): void {
    this.style.setProperty('--share', String(Math.min(1, Math.max(0, this.share || 0))));
  }

  override render(): TemplateResult {
    return html`<div aria-hidden="true"></div>`;
  }
}
customElements.define('share-bar', ShareBar);
