/** Layout of the desk: three columns from 1100 px on, below that the side columns slide over the page. */

import { css } from 'lit';

export const appStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    block-size: 100dvh;
    overflow: hidden;
    background: var(--plate);
  }
  .desk {
    position: relative;
    display: grid;
    flex: 1;
    grid-template-columns: 172px minmax(0, 1fr) 344px;
    gap: 10px;
    min-block-size: 0;
    padding: 10px 16px 6px 0;
  }
  main {
    display: flex;
    flex-direction: column;
    gap: 10px;
    min-inline-size: 0;
    min-block-size: 0;
  }
  page-grid {
    flex: 1;
  }
  footer {
    padding: 2px 16px 5px;
    color: var(--ink-2);
    font-size: 12px;
    line-height: 1.3;
  }
  footer span {
    color: var(--caution);
  }
  .band {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 12px;
    padding: 7px 16px;
    border-inline-start: 8px solid var(--caution);
    background: var(--caution-wash);
    color: var(--caution);
  }
  .band.bad {
    border-inline-start-color: var(--error);
    background: var(--error-wash);
    color: var(--error);
  }
  .band.calm {
    border-inline-start-color: var(--accent);
    background: var(--wash);
    color: var(--ink);
  }
  start-view {
    flex: 1;
    min-block-size: 0;
    overflow: auto;
  }
  .shade {
    display: none;
  }
  @media (max-width: 1099px) {
    .desk {
      grid-template-columns: minmax(0, 1fr);
      padding: 8px;
    }
    contents-rail,
    margin-view {
      position: absolute;
      inset-block: 0;
      z-index: 20;
      display: none;
      inline-size: min(420px, 88vw);
      background: var(--plate);
      box-shadow: 0 0 24px rgb(15 24 34 / 0.35);
    }
    contents-rail {
      inset-inline-start: 0;
      inline-size: min(280px, 80vw);
      padding-block-start: 14px;
    }
    margin-view {
      inset-inline-end: 0;
      background: var(--paper);
    }
    .show-contents contents-rail {
      display: block;
    }
    .show-margin margin-view {
      display: flex;
    }
    .shade {
      position: absolute;
      inset: 0;
      z-index: 10;
      display: block;
      background: rgb(15 24 34 / 0.25);
    }
  }
  @media (max-height: 560px), (max-width: 599px) and (max-height: 700px) {
    :host {
      block-size: auto;
      min-block-size: 100dvh;
      overflow: visible;
    }
    .desk {
      flex: none;
      block-size: max(380px, 96dvh);
    }
  }
  @media print {
    :host {
      display: block;
      block-size: auto;
      overflow: visible;
    }
    desk-head,
    machine-page,
    leaf-dialog,
    question-dialog,
    .desk,
    .band,
    footer,
    start-view {
      display: none;
    }
    :host([print-leaf]) leaf-dialog {
      display: block;
    }
    :host([print-leaf]) print-view {
      display: none;
    }
  }
`;
