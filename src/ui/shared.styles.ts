/** Styles that every view shares: buttons, fields, links, headings. */

import { css } from 'lit';

export const shared = css`
  :host {
    box-sizing: border-box;
    color: var(--ink);
    font: 15px/1.45 var(--face);
  }
  *,
  *::before,
  *::after {
    box-sizing: inherit;
  }
  [hidden] {
    display: none !important;
  }
  button,
  select,
  input,
  textarea {
    font: inherit;
    color: inherit;
  }
  button {
    min-block-size: 32px;
    padding: 3px 12px;
    border: 1px solid var(--button-edge);
    border-radius: 4px;
    background: var(--button);
    font-weight: 600;
    cursor: pointer;
  }
  button:hover:not(:disabled) {
    border-color: var(--ink-2);
    background: var(--paper);
  }
  button:disabled {
    color: var(--ink-2);
    opacity: 0.6;
    cursor: default;
  }
  button.quiet {
    border-color: transparent;
    background: none;
  }
  button.quiet:hover {
    border-color: var(--button-edge);
  }
  button.primary {
    border-color: var(--accent);
    background: var(--accent);
    color: var(--on-accent);
  }
  button.primary:hover:not(:disabled) {
    border-color: var(--ink);
    background: var(--ink);
    color: var(--paper);
  }
  button.link,
  a {
    min-block-size: 0;
    padding: 0;
    border: 0;
    background: none;
    color: var(--accent);
    font-weight: 400;
    text-decoration: underline;
    text-underline-offset: 2px;
    text-decoration-thickness: 1px;
    cursor: pointer;
  }
  button.link:hover,
  a:hover {
    background: none;
    text-decoration-thickness: 2px;
  }
  input,
  select,
  textarea {
    min-block-size: 32px;
    padding: 3px 8px;
    border: 1px solid var(--button-edge);
    border-radius: 4px;
    background: var(--paper);
  }
  :focus-visible {
    outline: 3px solid var(--accent);
    outline-offset: 1px;
  }
  h2,
  h3 {
    margin: 0;
    font-size: 13px;
    font-weight: 600;
    color: var(--ink-2);
  }
  .mono {
    font-family: var(--mono);
  }
  .second {
    color: var(--ink-2);
    font-size: 13px;
  }
  .unseen {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .caution {
    margin: 8px 0;
    padding: 8px 12px;
    border-inline-start: 4px solid var(--caution);
    background: var(--caution-wash);
    color: var(--caution);
  }
  .error {
    margin: 8px 0;
    padding: 8px 12px;
    border-inline-start: 4px solid var(--error);
    background: var(--error-wash);
    color: var(--error);
  }
  /* It inherits from a slot inside its details, which knows nothing of ours. */
  summary {
    box-sizing: border-box;
    min-block-size: 26px;
    cursor: pointer;
  }
  @media (pointer: coarse) {
    :host {
      --least: 44px;
    }
    button,
    select,
    input {
      min-block-size: 44px;
      min-inline-size: 44px;
    }
    /* However small a view sets them for the mouse. */
    button.link,
    a,
    summary {
      min-block-size: 44px !important;
      min-inline-size: 44px;
    }
    button.link,
    a {
      display: inline-flex;
      align-items: center;
    }
    /* The label around them is the target. */
    label > input:is([type='checkbox'], [type='radio']) {
      flex: none;
      inline-size: 22px;
      block-size: 22px;
      min-block-size: 0;
      min-inline-size: 0;
    }
    summary {
      padding-block: 10px;
      line-height: 24px;
    }
  }
  /* Where the system's few colours replace ours, what is chosen is told by the system's own. */
  @media (forced-colors: active) {
    [aria-selected='true']:not(td),
    [aria-pressed='true'],
    [aria-current='page'] {
      background: Highlight !important;
      color: HighlightText !important;
      forced-color-adjust: none;
    }
    button.primary,
    button.primary:hover:not(:disabled) {
      border: 3px solid ButtonText;
      background: ButtonFace;
      color: ButtonText;
    }
  }
`;
