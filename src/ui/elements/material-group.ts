/** The group of a work material by ISO 513: its letter, and beside it the colour that the standard gives the letter; never the colour alone. */

import { css, svg, html, type TemplateResult } from 'lit';

const GROUPS = 'PMKNSH';

/** Undefined where the text is no letter of a group. */
export function materialGroup(text: string): TemplateResult | undefined {
  if (text.length !== 1 || !GROUPS.includes(text)) return undefined;
  return html`<span class="material-group">
    <svg viewBox="0 0 16 16" aria-hidden="true">
      ${svg`<rect class="group-${text}" width="16" height="16" rx="2" />`}</svg
    >${text} <small>ISO 513</small>
  </span>`;
}

export const materialGroupStyles = css`
  .material-group svg {
    inline-size: 16px;
    block-size: 16px;
    margin-inline-end: 6px;
    vertical-align: -2px;
  }
  .group-P {
    fill: var(--iso-p);
  }
  .group-M {
    fill: var(--iso-m);
  }
  .group-K {
    fill: var(--iso-k);
  }
  .group-N {
    fill: var(--iso-n);
  }
  .group-S {
    fill: var(--iso-s);
  }
  .group-H {
    fill: var(--iso-h);
  }
`;
