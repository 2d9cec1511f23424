/** A native list that shows the whole of what is chosen, on as many lines as that takes. */

import { css, html, type TemplateResult } from 'lit';

export const wholeSelectStyles = css`
  .whole {
    display: inline-grid;
    min-inline-size: 0;
    max-inline-size: 100%;
  }
  .field .whole {
    display: grid;
  }
  /* The text itself gives the height; it is read and spoken from the list alone. */
  .whole::before {
    content: attr(data-chosen) / '';
    padding: 4px 30px 4px 9px;
    visibility: hidden;
  }
  .whole::before,
  .whole > select {
    grid-area: 1 / 1;
    min-inline-size: 0;
    overflow-wrap: anywhere;
    line-height: normal;
    white-space: normal;
  }
  .whole > select {
    inline-size: 100%;
    block-size: 100%;
  }
`;

/** `chosen` is the text of the option that is chosen in the list. */
export const whole = (chosen: string, list: TemplateResult): TemplateResult =>
  html`<span class="whole" data-chosen=${chosen}>${list}</span>`;
