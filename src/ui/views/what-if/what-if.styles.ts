/** Looks of the What-if panel and of the table of variants. */

import { css } from 'lit';

export const whatIfStyles = css`
  :host {
    display: block;
  }
  .sections {
    display: flex;
    flex-wrap: wrap;
    gap: 3px;
  }
  .sections button {
    flex: 1 1 auto;
    padding: 2px 5px;
    font-size: 14px;
    font-weight: 400;
  }
  input[type='radio'] {
    inline-size: 18px;
    block-size: 18px;
    min-block-size: 0;
    margin: 0 4px 0 0;
    vertical-align: -3px;
    accent-color: var(--accent);
  }
  li > button.link {
    text-align: start;
  }
  @media (pointer: coarse) {
    .row > label,
    .acts button.link {
      display: inline-flex;
      align-items: center;
      min-block-size: 44px;
    }
  }
  .sections button[aria-pressed='true'] {
    border-color: var(--accent);
    background: var(--wash);
    box-shadow: inset 0 -3px 0 var(--accent);
    font-weight: 600;
  }
  .question {
    margin: 10px 0 12px;
    color: var(--ink-2);
  }
  .field {
    display: grid;
    grid-template-columns: 92px minmax(0, 1fr);
    align-items: center;
    gap: 8px;
    margin-block-end: 6px;
  }
  .field > span:not(.whole) {
    color: var(--ink-2);
    font-size: 13px;
  }
  .field select,
  .field input {
    inline-size: 100%;
    min-inline-size: 0;
  }
  .pair {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 8px;
  }
  .pair .field {
    grid-template-columns: auto minmax(0, 1fr);
  }
  .pair input {
    padding-inline: 5px;
  }
  .one .field > span:first-child {
    min-inline-size: 10px;
  }
  .one {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: center;
    gap: 0 10px;
    margin-block-end: 6px;
  }
  .one .field {
    grid-template-columns: auto minmax(0, 1fr);
    margin: 0;
  }
  fieldset {
    margin: 0 0 10px;
    padding: 6px 10px 6px;
    border: 1px solid var(--ruling-strong);
    border-radius: 3px;
  }
  legend {
    padding: 0 4px;
    color: var(--ink-2);
    font-size: 13px;
    font-weight: 600;
  }
  .ask {
    display: flex;
    align-items: center;
    gap: 10px;
    margin: 12px 0 8px;
  }
  progress {
    flex: 1;
    min-inline-size: 0;
    accent-color: var(--accent);
  }
  h3 {
    margin-block: 16px 6px;
  }
  .answer {
    margin: 0 0 8px;
    padding: 8px 12px;
    border-inline-start: 4px solid var(--accent);
    background: var(--wash);
  }
  .answer.not {
    border-inline-start-color: var(--caution);
    background: var(--caution-wash);
  }
  .answer p {
    margin: 0 0 6px;
  }
  .acts button.link {
    min-block-size: 24px;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 14px;
  }
  ul.plain {
    margin: 0 0 10px;
    padding: 0;
    list-style: none;
  }
  ul.plain > li {
    padding: 6px 0;
    border-block-end: 1px solid var(--ruling);
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 2px 10px;
  }
  .row > b {
    overflow-wrap: anywhere;
  }
  .scroll {
    overflow: auto;
  }
  table {
    border-collapse: collapse;
    font-size: 14px;
    font-variant-numeric: tabular-nums;
  }
  caption {
    padding-block-end: 6px;
    color: var(--ink-2);
    font-size: 13px;
    text-align: start;
  }
  th,
  td {
    padding: 4px 10px;
    border: 1px solid var(--ruling-strong);
    text-align: end;
    vertical-align: top;
  }
  th {
    color: var(--ink-2);
    font-size: 13px;
    font-weight: 600;
  }
  th[scope='row'],
  td.words {
    min-inline-size: 9em;
    text-align: start;
  }
  td.own {
    border-block-end: 3px solid var(--line);
  }
  td.breach {
    background: var(--error-wash);
    color: var(--error);
  }
  td.best {
    box-shadow: inset 0 0 0 2px var(--accent);
    font-weight: 600;
  }
  td .change {
    display: block;
    color: var(--ink-2);
    font-size: 12px;
    font-weight: 400;
  }
  td .mark {
    display: block;
    font-size: 12px;
    font-weight: 600;
  }
  td input {
    inline-size: 9em;
    min-block-size: 30px;
    text-align: end;
  }
  dl {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 2px 12px;
    margin: 6px 0 10px;
    font-variant-numeric: tabular-nums;
  }
  dt {
    color: var(--ink-2);
  }
  dd {
    margin: 0;
  }
  svg {
    display: block;
    inline-size: 100%;
    block-size: auto;
    margin-block: 6px;
  }
  svg .column {
    fill: var(--accent);
  }
  svg .outside {
    fill: var(--button-edge);
  }
  svg .line {
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  svg .limit {
    stroke: var(--error);
    stroke-dasharray: 4 3;
  }
  svg text {
    fill: var(--ink-2);
    font: 11px var(--face);
  }
  @media (pointer: coarse) {
    td input,
    td select.best,
    th button.link {
      min-block-size: 44px;
    }
  }
  @media print {
    .add,
    th button,
    .ask {
      display: none;
    }
    .scroll {
      overflow: visible;
    }
    td input,
    td select {
      border: 0;
      background: none;
      appearance: none;
    }
    table {
      font-size: 9pt;
    }
    td input {
      inline-size: 7em;
    }
  }
`;
