/** The preview of a table: fields above, the table as it will stand, answers below. */

import { css } from 'lit';

export const tableStyles = css`
  :host {
    display: block;
  }
  p {
    margin: 0 0 8px;
  }
  fieldset {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 2px 18px;
    margin: 0 0 10px;
    padding: 4px 12px 6px;
    border: 1px solid var(--ruling-strong);
    border-radius: 4px;
  }
  fieldset.asked {
    border: 2px solid var(--caution);
    background: var(--caution-wash);
  }
  legend {
    padding-inline: 4px;
    font-weight: 600;
  }
  label {
    display: inline-flex;
    align-items: center;
    gap: 6px;
    min-block-size: 28px;
  }
  input[type='radio'] {
    min-block-size: 0;
  }
  .choices {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 22px;
    margin-block-end: 10px;
  }
  .preview {
    max-block-size: 44dvh;
    margin-block-end: 10px;
    overflow: auto;
    border: 1px solid var(--ruling-strong);
  }
  .preview p {
    margin: 4px 10px;
  }
  table {
    border-collapse: collapse;
    font-size: 14px;
  }
  th,
  td {
    padding: 3px 10px;
    border-block-end: 1px solid var(--ruling);
    border-inline-end: 1px solid var(--ruling);
    text-align: start;
    white-space: nowrap;
  }
  th {
    background: var(--paper-edge);
  }
  td.number {
    font-family: var(--mono);
    text-align: end;
  }
  td.unit {
    vertical-align: top;
  }
  td.unit input {
    inline-size: 96px;
    min-block-size: 28px;
  }
  td.unit input.unknown {
    border: 2px solid var(--error);
  }
  .near {
    display: flex;
    flex-wrap: wrap;
    gap: 4px;
    margin-block-start: 4px;
  }
  .near button {
    min-block-size: 26px;
    padding: 0 8px;
    font-size: 13px;
  }
  .over,
  b.caution {
    color: var(--caution);
    font-weight: 600;
  }
  .answers {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: flex-end;
    gap: 6px 14px;
  }
  .answers button {
    white-space: nowrap;
  }
  .answers span {
    color: var(--caution);
    font-weight: 600;
  }
  @media (pointer: coarse) {
    label {
      min-block-size: 44px;
    }
    input[type='radio'] {
      inline-size: 22px;
      block-size: 22px;
    }
    .near button,
    td.unit input {
      min-block-size: 44px;
    }
  }
`;
