/** The bars over the page: one line of fields, its words below. */

import { css } from 'lit';

export const barStyles = css`
  :host {
    position: relative;
    display: block;
    padding: 6px 10px;
    border-block-end: 1px solid var(--ruling-strong);
    border-radius: 3px 3px 0 0;
    background: var(--paper-edge);
    font-size: 14px;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 8px;
  }
  .line + .line {
    margin-block-start: 4px;
  }
  label.check {
    display: inline-flex;
    align-items: center;
    gap: 4px;
    min-block-size: 28px;
    white-space: nowrap;
  }
  label.check input {
    min-block-size: 0;
  }
  input[type='text'] {
    flex: 1 1 140px;
    min-inline-size: 90px;
    max-inline-size: 280px;
  }
  .count {
    min-inline-size: 76px;
    color: var(--ink-2);
  }
  .spring {
    flex: 1;
  }
  .list {
    position: absolute;
    inset-block-start: 100%;
    inset-inline-start: 8px;
    z-index: 12;
    min-inline-size: 280px;
    max-inline-size: calc(100% - 16px);
    margin: 0;
    padding: 4px 0;
    border: 1px solid var(--button-edge);
    border-radius: 4px;
    background: var(--paper);
    box-shadow: var(--shadow);
    list-style: none;
  }
  .list li {
    display: flex;
    justify-content: space-between;
    gap: 20px;
    padding: 4px 12px;
    cursor: pointer;
  }
  .list li[aria-selected='true'] {
    background: var(--wash);
    box-shadow: inset 3px 0 0 var(--accent);
  }
  .left {
    max-block-size: 90px;
    margin: 4px 0 0;
    padding: 0;
    overflow: auto;
    color: var(--caution);
    list-style: none;
  }
  @media (pointer: coarse) {
    .list li {
      align-items: center;
      min-block-size: 44px;
    }
    label.check {
      min-block-size: 44px;
    }
    label.check input {
      inline-size: 22px;
      block-size: 22px;
    }
  }
`;
