/** A pass being recorded: fields above, keypad or the way out below; fits a phone in one hand. */

import { css } from 'lit';

export const passFormStyles = css`
  dialog {
    inline-size: min(820px, 100vw);
    block-size: 100dvh;
    max-inline-size: 100vw;
    max-block-size: 100dvh;
    padding: 0;
    overflow: hidden;
    border: 0;
    background: var(--plate);
    color: var(--ink);
    font-size: 18px;
    touch-action: manipulation;
  }
  dialog[open] {
    display: flex;
    flex-direction: column;
  }
  dialog::backdrop {
    background: rgb(15 24 34 / 0.5);
  }
  button:not(.link),
  select {
    min-block-size: 64px;
    min-inline-size: 64px;
    font-size: 18px;
    line-height: 1.2;
  }
  header {
    display: flex;
    align-items: center;
    gap: 12px;
    padding: 8px 16px;
    border-block-end: 1px solid color-mix(in srgb, var(--ink) 25%, transparent);
  }
  header div {
    flex: 1;
    min-inline-size: 0;
  }
  h2 {
    color: var(--ink);
    font-size: 22px;
    line-height: 1.2;
  }
  header p {
    margin: 2px 0 0;
    color: var(--ink-2);
    font-size: 15px;
    line-height: 1.3;
  }
  .cautions {
    flex: none;
    border-inline-start: 10px solid var(--caution);
    background: var(--caution-wash);
    color: var(--caution);
  }
  .cautions.bad {
    border-inline-start-color: var(--error);
  }
  .cautions.calm {
    border-inline-start-color: var(--good);
  }
  .cautions ul {
    max-block-size: 54px;
    margin: 0;
    padding: 4px 12px 0;
    overflow: auto;
    list-style: none;
    font-size: 17px;
    font-weight: 600;
    line-height: 1.35;
  }
  .cautions .error-line {
    color: var(--error);
  }
  .cautions .usual {
    margin: 0;
    padding: 3px 12px 4px;
    font-size: 14px;
    line-height: 1.3;
  }
  .stop {
    margin: 0;
    padding: 6px 16px 6px 22px;
    border-block-start: 1px solid color-mix(in srgb, var(--caution) 40%, transparent);
    background: var(--caution-wash);
    color: var(--caution);
    font-size: 15px;
    line-height: 1.3;
  }
  .fields {
    flex: 1;
    min-block-size: 0;
    padding: 8px 16px 16px;
    overflow: auto;
    background: var(--paper);
  }
  .line {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(180px, 46%);
    align-items: center;
    gap: 2px 12px;
    padding: 8px 0;
    border-block-end: 1px solid var(--ruling-strong);
  }
  .line > span {
    line-height: 1.25;
  }
  .line small {
    display: block;
    color: var(--ink-2);
    font-size: 15px;
  }
  .value {
    display: flex;
    align-items: baseline;
    justify-content: center;
    gap: 8px;
    min-block-size: 64px;
    padding: 8px 6px 4px;
    border-block-end: 4px dotted var(--ink-2);
    cursor: text;
  }
  .value:focus-within {
    border-block-end: 4px solid var(--accent);
    outline: 3px solid var(--accent);
    background: var(--wash);
  }
  .value input {
    inline-size: auto;
    min-inline-size: 3ch;
    max-inline-size: 100%;
    min-block-size: 0;
    padding: 0;
    border: 0;
    outline: 0;
    background: none;
    font: 600 32px/1.25 var(--mono);
    text-align: center;
    field-sizing: content;
  }
  .unit {
    color: var(--ink-2);
    font-size: 19px;
    white-space: nowrap;
  }
  .wide {
    inline-size: 100%;
    min-block-size: 64px;
    font-size: 20px;
  }
  .line select {
    inline-size: 100%;
    font-weight: 600;
  }
  .wrong {
    grid-column: 1 / -1;
    margin: 0;
    color: var(--error);
    font-weight: 600;
  }
  .before {
    grid-column: 1 / -1;
    margin: 0;
    color: var(--ink-2);
    font-size: 15px;
  }
  .picture {
    display: flex;
    align-items: center;
    gap: 12px;
  }
  .picture img {
    max-block-size: 96px;
    max-inline-size: 140px;
    border: 1px solid var(--button-edge);
  }
  label.take {
    display: flex;
    align-items: center;
    justify-content: center;
    flex: 1;
    min-block-size: 64px;
    padding: 3px 12px;
    border: 1px solid var(--button-edge);
    border-radius: 4px;
    background: var(--button);
    font-weight: 600;
    text-align: center;
    cursor: pointer;
  }
  label.take:focus-within {
    outline: 3px solid var(--accent);
  }
  .out {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 2fr);
    gap: 10px;
    padding: 10px 16px;
    border-block-start: 1px solid color-mix(in srgb, var(--ink) 25%, transparent);
  }
  .out.three {
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) minmax(0, 1.6fr);
  }
  .out .primary {
    min-block-size: 72px;
    font-size: 21px;
  }
  /* The keypad needs the room: what applies to this job stays, the words for every job stand on the page around. */
  @media (max-width: 599px) {
    .cautions ul {
      max-block-size: 27px;
    }
    .cautions .always,
    .cautions .usual:not(:has(b)) {
      display: none;
    }
    .line.run {
      grid-template-columns: minmax(0, 1fr);
    }
    header,
    .fields,
    .out {
      padding-inline: 12px;
    }
    .line {
      grid-template-columns: minmax(0, 1fr) minmax(150px, 50%);
      padding: 4px 0;
    }
    .value input {
      font-size: 30px;
    }
  }
  @media (min-width: 1000px) and (max-height: 900px) {
    dialog {
      inline-size: min(1100px, 100vw);
    }
    .body.typing {
      flex-direction: row;
    }
    .body.typing on-screen-keypad {
      flex: 0 0 430px;
      overflow: auto;
      border-block-start: 0;
      border-inline-start: 2px solid var(--accent);
    }
  }
  .body {
    display: flex;
    flex: 1;
    flex-direction: column;
    min-block-size: 0;
  }
`;
