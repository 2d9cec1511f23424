/** The entry line: one writing line under the page, its hints below, choices above. */

import { css } from 'lit';

export const entryLineStyles = css`
  :host {
    --field: 32px;
    position: relative;
    display: block;
    padding: 8px 14px 8px 12px;
    border-inline-start: 5px solid var(--accent);
    border-radius: 3px;
    background: var(--paper);
    box-shadow: var(--shadow);
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 10px;
  }
  .place {
    color: var(--accent);
    font-weight: 600;
  }
  .label {
    max-inline-size: 150px;
    overflow: hidden;
    color: var(--ink-2);
    font-size: 13px;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .field {
    position: relative;
    flex: 1 1 280px;
    min-inline-size: 120px;
    border-block-end: 1.5px solid var(--line);
  }
  .ink,
  .field input {
    inline-size: 100%;
    min-block-size: 0;
    block-size: var(--field);
    padding: 0 4px;
    font: 15.5px / var(--field) var(--mono);
    letter-spacing: 0;
    white-space: pre;
  }
  .ink {
    position: absolute;
    inset: 0;
    overflow: hidden;
    pointer-events: none;
  }
  .field input {
    position: relative;
    border: 0;
    border-radius: 0;
    outline: 0;
    background: transparent;
    color: transparent;
    caret-color: var(--accent);
  }
  .field:focus-within {
    border-block-end-color: var(--accent);
    box-shadow: 0 1.5px 0 var(--accent);
  }
  .t-function {
    color: var(--accent);
    font-weight: 600;
  }
  .t-name,
  .t-cell,
  .t-worksheet {
    color: var(--token-name);
  }
  .t-number,
  .t-unit {
    color: var(--token-number);
  }
  .t-text {
    color: var(--token-text);
  }
  .t-bad {
    color: var(--error);
    text-decoration: underline wavy var(--error) 1px;
    text-underline-offset: 3px;
  }
  .ref-0 {
    color: var(--reference-0);
  }
  .ref-1 {
    color: var(--reference-1);
  }
  .ref-2 {
    color: var(--reference-2);
  }
  .ref-3 {
    color: var(--reference-3);
  }
  .ref-4 {
    color: var(--reference-4);
  }
  .ref-5 {
    color: var(--reference-5);
  }
  [class^='ref-'] {
    font-weight: 600;
  }
  .more {
    padding-inline: 8px;
  }
  select {
    field-sizing: content;
    max-inline-size: 130px;
    padding-inline: 6px;
    background: var(--button);
    font-weight: 600;
  }
  .hint {
    min-block-size: 42px;
    margin-block-start: 5px;
    color: var(--ink-2);
    font-size: 13px;
  }
  .hint b {
    color: var(--ink);
    font-weight: 600;
  }
  .hint .here {
    padding-block-end: 1px;
    border-block-end: 2px solid var(--accent);
    color: var(--ink);
    font-weight: 600;
  }
  .gives {
    color: var(--ink);
    font-weight: 600;
  }
  .refused {
    color: var(--error);
  }
  .choices {
    position: absolute;
    inset-block-end: calc(100% + var(--up, 4px));
    inset-inline-start: 0;
    z-index: 10;
    box-sizing: border-box;
    max-block-size: var(--room);
    overflow: hidden auto;
    max-inline-size: min(640px, 100%);
    margin: 0;
    padding: 4px 0;
    border: 1px solid var(--button-edge);
    border-radius: 4px;
    background: var(--paper);
    box-shadow: var(--shadow);
    list-style: none;
  }
  .choices li {
    display: grid;
    grid-template-columns: minmax(150px, auto) 1fr;
    gap: 14px;
    padding: 4px 12px;
    cursor: pointer;
  }
  .choices li[aria-selected='true'] {
    background: var(--wash);
    box-shadow: inset 3px 0 0 var(--accent);
  }
  .choices .mono {
    font-size: 14px;
    white-space: nowrap;
  }
  @media (max-width: 560px) {
    .field {
      flex-basis: 190px;
    }
  }
  @media (pointer: coarse) {
    :host {
      --field: 44px;
    }
    .choices li {
      align-items: center;
      min-block-size: 44px;
    }
    .hint.typing {
      min-block-size: 22px;
    }
  }
`;
