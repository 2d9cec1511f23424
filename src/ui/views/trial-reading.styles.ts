/** What a trial tells: the sentences first, then the curves, then the tables. */

import { css } from 'lit';

export const readingStyles = css`
  :host {
    display: block;
  }
  h3 {
    margin: 20px 0 6px;
    padding-block-end: 2px;
    border-block-end: 1.5px solid var(--line);
    color: var(--ink);
    font-size: 16px;
  }
  .sentence {
    margin: 6px 0;
    font-size: 20px;
    font-weight: 600;
    line-height: 1.3;
  }
  .sentence.open {
    font-weight: 400;
  }
  .plots {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 420px), 1fr));
    gap: 16px;
  }
  .scroll {
    overflow-x: auto;
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
  }
  th {
    padding: 4px 8px 4px 0;
    border-block-end: 2px solid var(--ruling-strong);
    color: var(--ink-2);
    font-size: 13px;
    font-weight: 600;
    text-align: start;
    vertical-align: bottom;
  }
  td {
    padding: 5px 8px 5px 0;
    border-block-end: 1px solid var(--ruling);
    vertical-align: top;
  }
  td .caution {
    margin: 4px 0 0;
    padding: 3px 8px;
    font-size: 14px;
  }
  td.value {
    font: 600 16px/1.4 var(--mono);
    white-space: nowrap;
  }
  .asked {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 180px), 1fr));
    align-items: end;
    gap: 8px 12px;
  }
  label {
    color: var(--ink-2);
    font-size: 13px;
  }
  label input,
  label select {
    display: block;
    inline-size: 100%;
    color: var(--ink);
    font-size: 15px;
  }
  fieldset {
    margin: 10px 0 0;
    padding: 0;
    border: 0;
  }
  legend {
    padding: 0 0 4px;
    font-weight: 600;
  }
`;
