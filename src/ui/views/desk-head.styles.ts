/** Looks of the head of the desk. */

import { css } from 'lit';

export const headStyles = css`
  :host {
    display: block;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 10px;
    padding: 7px 16px;
    border-block-end: 1px solid color-mix(in srgb, var(--ink) 18%, transparent);
  }
  h1 {
    max-inline-size: 40ch;
    margin: 0 0 0 -7px;
    overflow: hidden;
    font-size: 18px;
  }
  h1 button {
    max-inline-size: 100%;
    padding-inline: 6px;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  h1 button:disabled {
    color: inherit;
    opacity: 1;
  }
  .status {
    flex: 1 1 160px;
    min-inline-size: 0;
    color: var(--ink-2);
    font-size: 13px;
    line-height: 1.3;
  }
  .variant {
    padding: 1px 8px;
    border: 1px dashed var(--accent);
    border-radius: 3px;
    color: var(--accent);
    font-size: 13px;
    font-weight: 600;
  }
  .spring {
    display: none;
  }
  .busy {
    color: var(--ink);
    font-size: 13px;
    font-weight: 600;
  }
  .switch {
    display: flex;
  }
  .switch button {
    border-radius: 0;
    font-weight: 400;
  }
  .switch button:first-child {
    border-radius: 4px 0 0 4px;
    border-inline-end: 0;
  }
  .switch button:last-child {
    border-radius: 0 4px 4px 0;
  }
  .switch button[aria-pressed='true'] {
    background: var(--paper);
    box-shadow: inset 0 -3px 0 var(--accent);
    font-weight: 600;
  }
  .narrow {
    display: none;
  }
  @media (max-width: 1099px) {
    button.narrow {
      display: block;
      border-color: var(--button-edge);
    }
    header {
      position: relative;
      padding-inline: 8px;
    }
    /* It comes and goes, and nothing under the finger may move by it. */
    .busy {
      position: absolute;
      inset-block-start: calc(100% + 4px);
      inset-inline-end: 8px;
      z-index: 10;
      padding: 4px 10px;
      border: 1px solid var(--button-edge);
      border-radius: 4px;
      background: var(--paper);
      box-shadow: var(--shadow);
    }
    h1 {
      /* The first line is contents, title and margin. */
      flex: 1 1 calc(100% - 200px);
      max-inline-size: none;
    }
    .narrow.last {
      order: 1;
    }
    .status {
      order: 3;
    }
    .variant,
    .spring,
    .switch,
    header > button:not(.narrow),
    notebook-menu {
      order: 2;
    }
  }
  @media (max-width: 600px) {
    .status {
      flex: 1 1 110px;
      font-size: 12px;
    }
  }
`;
