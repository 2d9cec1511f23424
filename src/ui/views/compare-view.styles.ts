/** Two notebooks side by side: what is decided recedes. */

import { css } from 'lit';

export const compareStyles = css`
  :host {
    display: block;
  }
  .top,
  .actions {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 10px;
    margin-block-end: 10px;
  }
  .top p {
    flex: 1 1 300px;
    margin: 0;
  }
  h3 {
    margin: 18px 0 4px;
    color: var(--ink);
    font-size: 15px;
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
    table-layout: fixed;
  }
  th {
    padding: 4px 8px;
    border-block-end: 2px solid var(--ruling-strong);
    color: var(--ink-2);
    font-size: 13px;
    font-weight: 600;
    text-align: start;
  }
  th:last-child:nth-child(4) {
    inline-size: 150px;
  }
  td {
    padding: 6px 8px;
    border-block-end: 1px solid var(--ruling);
    vertical-align: top;
    overflow-wrap: anywhere;
  }
  td .link {
    text-align: start;
  }
  td b {
    font-family: var(--mono);
    font-weight: 600;
  }
  .line,
  .author {
    display: block;
    color: var(--ink-2);
    font-size: 13px;
  }
  .line {
    font-family: var(--mono);
  }
  .both .author {
    color: var(--caution);
    font-weight: 600;
  }
  tr.kept td:nth-child(3) {
    color: var(--ink-2);
    text-decoration: line-through;
  }
  .decide {
    display: flex;
    gap: 6px;
  }
  .decide button {
    padding-inline: 8px;
  }
  .decide button[aria-pressed='true'] {
    border-color: var(--accent);
    background: var(--wash);
  }
  /* Where and what is decided stand over the two values. */
  @media (max-width: 599px) {
    thead {
      position: absolute;
      clip-path: inset(50%);
    }
    tr {
      display: grid;
      grid-template-columns: 1fr 1fr;
      border-block-end: 1px solid var(--ruling-strong);
    }
    td {
      border: 0;
    }
    td:nth-child(1) {
      grid-column: 1 / -1;
    }
    td:nth-child(2)::before,
    td:nth-child(3)::before {
      content: 'this one';
      display: block;
      color: var(--ink-2);
      font-size: 13px;
    }
    td:nth-child(3)::before {
      content: 'received';
    }
    td:nth-child(4) {
      grid-column: 1 / -1;
    }
  }
`;
