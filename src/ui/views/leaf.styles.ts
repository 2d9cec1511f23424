/** Looks shared by the leaves that are read: columns of short texts, lists of two columns. */

import { css } from 'lit';

export const leafStyles = css`
  :host {
    display: block;
    font-size: 14px;
    line-height: 1.4;
  }
  .columns {
    columns: 300px 3;
    column-gap: 32px;
  }
  section {
    break-inside: avoid;
    margin-block-end: 14px;
  }
  h3 {
    margin-block-end: 3px;
    padding-block-end: 2px;
    border-block-end: 1.5px solid var(--line);
    color: var(--ink);
    font-size: 14px;
  }
  p {
    margin: 3px 0;
  }
  dl {
    display: grid;
    grid-template-columns: max-content minmax(0, 1fr);
    gap: 2px 12px;
    margin: 4px 0 0;
  }
  dl.keys {
    grid-template-columns: minmax(0, 5fr) minmax(0, 7fr);
  }
  dt {
    overflow-wrap: anywhere;
  }
  dd {
    margin: 0;
    color: var(--ink-2);
  }
  dd b {
    color: var(--ink);
    font-family: var(--mono);
    font-weight: 400;
  }
  dl.entries {
    grid-template-columns: minmax(0, 1fr);
    gap: 0;
  }
  dl.entries dd {
    margin-block-end: 4px;
    padding-inline-start: 10px;
  }
  kbd {
    color: var(--ink);
    font: 600 13.5px/1.4 var(--face);
  }
  .actions {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 10px;
    margin-block: 10px;
  }
`;
