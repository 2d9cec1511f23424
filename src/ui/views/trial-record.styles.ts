/** The record of a trial: a table of passes that is read at arm's length. */

import { css } from 'lit';

export const recordStyles = css`
  :host {
    display: block;
    font-size: 17px;
    touch-action: manipulation;
  }
  button:not(.link),
  select {
    min-block-size: 64px;
    min-inline-size: 64px;
    font-size: 18px;
    line-height: 1.2;
  }
  .top {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 14px;
    margin-block-end: 8px;
  }
  h2 {
    margin: 6px 2px;
    font-size: 17px;
  }
  .top p {
    margin: 0;
    color: var(--ink-2);
    font-size: 16px;
    line-height: 1.3;
  }
  .top select {
    max-inline-size: 100%;
    font-weight: 600;
  }
  .passes {
    overflow-x: auto;
    border-radius: 4px;
    background: var(--paper);
    box-shadow: var(--shadow);
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
  }
  th {
    padding: 8px 8px 6px;
    color: var(--ink-2);
    font-size: 15px;
    font-weight: 600;
    text-align: start;
    white-space: nowrap;
  }
  td {
    padding: 0 8px;
    block-size: 64px;
    border-block-start: 1px solid var(--ruling-strong);
    line-height: 1.25;
  }
  th.number,
  td.number {
    text-align: end;
  }
  td.number {
    inline-size: 1%;
    padding-inline: 16px;
  }
  td.number span {
    display: inline-block;
    padding-block-end: 2px;
    border-block-end: 2px dotted var(--ink-2);
    font: 600 20px/1.3 var(--mono);
    white-space: nowrap;
  }
  td.number small {
    color: var(--ink-2);
    font: 400 15px/1 var(--face);
  }
  td s {
    display: block;
    margin-block-start: 3px;
    color: var(--ink-2);
    font: 400 15px/1.2 var(--mono);
    white-space: nowrap;
  }
  td.run {
    white-space: nowrap;
  }
  td .levels {
    display: block;
  }
  td .who {
    display: block;
    color: var(--ink-2);
    font-size: 14px;
    white-space: nowrap;
  }
  td.at {
    padding: 0;
    inline-size: 84px;
  }
  td.at button {
    inline-size: 100%;
    border-color: transparent;
    background: none;
    text-align: start;
  }
  td.at button:hover {
    border-color: var(--button-edge);
  }
  tr.withdrawn td {
    color: var(--ink-2);
  }
  tr.withdrawn td.number span,
  tr.withdrawn td.run {
    text-decoration: line-through;
  }
  tr.reached td.number span.over {
    border-block-end: 3px solid var(--error);
    color: var(--error);
  }
  td img {
    display: block;
    max-block-size: 60px;
    max-inline-size: 80px;
    border: 1px solid var(--button-edge);
  }
  .empty {
    margin: 0;
    padding: 16px;
    color: var(--ink-2);
  }
  .record {
    display: block;
    inline-size: 100%;
    min-block-size: 72px;
    margin-block-start: 12px;
    font-size: 21px;
  }
  .others {
    display: flex;
    flex-wrap: wrap;
    gap: 10px;
    margin-block-start: 10px;
  }
  .others button {
    flex: 1;
  }
  @media (max-width: 599px) {
    td.number span {
      font-size: 18px;
    }
    th,
    td,
    td.number {
      padding-inline: 5px;
    }
    td.number {
      padding-inline: 2px;
    }
    td .levels,
    th:last-child:empty {
      display: none;
    }
    td .who {
      white-space: normal;
    }
    td.at button {
      min-inline-size: 84px;
      padding-inline: 6px;
    }
  }
`;
