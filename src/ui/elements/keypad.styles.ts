/** Keys of 64 px for a gloved thumb; on a wide screen the keypad stands beside the page. */

import { css } from 'lit';

export const keypadStyles = css`
  :host {
    display: block;
    padding: 8px;
    border-block-start: 2px solid var(--accent);
    background: var(--plate);
    user-select: none;
    touch-action: manipulation;
  }
  .units,
  .keys {
    display: grid;
    gap: 6px;
    max-inline-size: 640px;
    margin-inline: auto;
  }
  .units {
    display: flex;
    margin-block-end: 6px;
    overflow-x: auto;
    scrollbar-width: thin;
  }
  .keys {
    grid-template-columns: repeat(5, minmax(min(64px, var(--key, 64px)), 1fr));
  }
  button:not(.link) {
    min-block-size: var(--key, 64px);
    min-inline-size: min(64px, var(--key, 64px));
    padding: 2px 4px;
    background: var(--paper);
    font-size: 18px;
    line-height: 1.15;
  }
  button.digit {
    font: 600 28px/1 var(--mono);
  }
  button.act {
    background: var(--button);
    font-size: 16px;
  }
  button.primary {
    border-color: var(--accent);
    background: var(--accent);
  }
  .units button {
    flex: 1 0 auto;
    padding-inline: 14px;
    background: var(--button);
    font-weight: 400;
  }
  .units button[aria-pressed='true'] {
    border-color: var(--accent);
    background: var(--wash);
    box-shadow: inset 0 -4px 0 var(--accent);
    font-weight: 600;
  }
  button:active:not(:disabled) {
    border-color: var(--accent);
    background: var(--wash);
  }
  svg {
    inline-size: 30px;
    block-size: 24px;
    vertical-align: middle;
    fill: none;
    stroke: currentColor;
    stroke-width: 2;
    stroke-linejoin: round;
  }
  @media (forced-colors: active) {
    button.primary {
      background: ButtonFace;
    }
  }
  @media (min-width: 1000px) {
    .units {
      flex-wrap: wrap;
    }
  }
`;
