/** The page while a formula points into it from another worksheet. */

import { css } from 'lit';

export const pointingStyles = css`
  /* The text field has the keys, and shows nothing: what is typed stands on the entry line. */
  .editor.away {
    inset: auto;
    inline-size: 1px;
    block-size: 1px;
    padding: 0;
    overflow: hidden;
    opacity: 0;
    pointer-events: none;
  }
`;
