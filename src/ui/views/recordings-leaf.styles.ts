/** Recordings: a box each, its columns as a table; the log that is being read below. */

import { css } from 'lit';

export const recordingsStyles = css`
  :host {
    display: block;
  }
  p {
    margin: 0 0 8px;
  }
  section {
    margin-block-end: 16px;
    padding: 10px 14px;
    border: 1px solid var(--ruling-strong);
    border-radius: 4px;
  }
  .head,
  .choices {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 8px 18px;
    margin-block-end: 8px;
  }
  .head .grow {
    flex: 1 1 auto;
  }
  label {
    display: inline-flex;
    flex-direction: column;
    color: var(--ink-2);
    font-size: 13px;
  }
  label input,
  label select {
    color: var(--ink);
    font-size: 15px;
  }
  .scroll {
    max-block-size: 40dvh;
    overflow: auto;
  }
  table {
    border-collapse: collapse;
    font-size: 14px;
  }
  th,
  td {
    padding: 3px 10px;
    border-block-end: 1px solid var(--ruling);
    text-align: start;
    white-space: nowrap;
  }
  th {
    color: var(--ink-2);
    font-weight: 600;
  }
  td.number {
    font-family: var(--mono);
    text-align: end;
  }
  td input {
    inline-size: 120px;
    min-block-size: 28px;
  }
  td input.unit {
    inline-size: 84px;
  }
  code {
    font-family: var(--mono);
  }
  .asked {
    color: var(--caution);
  }
  @media (pointer: coarse) {
    td input,
    label input,
    label select {
      min-block-size: 44px;
    }
  }
`;
