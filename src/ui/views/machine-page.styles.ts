/** The machine-side page: read at arm's length, worked with a gloved thumb. Targets of 64 px, values of 32 px and more. */

import { css } from 'lit';

export const machineStyles = css`
  :host {
    display: flex;
    flex: 1;
    flex-direction: column;
    min-block-size: 0;
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
  header {
    display: flex;
    align-items: center;
    gap: 12px;
    padding: 8px 20px;
    border-block-end: 1px solid color-mix(in srgb, var(--ink) 25%, transparent);
  }
  header div {
    flex: 1;
    min-inline-size: 0;
  }
  h1 {
    margin: 0;
    font-size: 23px;
    line-height: 1.2;
  }
  header p {
    margin: 2px 0 0;
    color: var(--ink-2);
    font-size: 15px;
    line-height: 1.3;
  }
  header button {
    flex: none;
    padding-inline: 18px;
  }
  /* The band has one height whatever it says, so that nothing moves under the thumb. */
  .cautions {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
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
    block-size: 58px;
    margin: 6px 0 0;
    padding: 0 12px;
    overflow: auto;
    list-style: none;
    font-size: 18px;
    font-weight: 600;
    line-height: 1.35;
  }
  .cautions.all ul {
    block-size: auto;
    max-block-size: 40dvh;
  }
  .cautions li {
    padding-block-end: 4px;
  }
  .cautions .error-line {
    margin: 0;
    padding: 0 0 4px;
    border: 0;
    background: none;
    color: var(--error);
  }
  .cautions .calm-line {
    color: var(--good);
  }
  .cautions button {
    margin: 4px 12px 0 0;
    background: transparent;
    border-color: currentColor;
  }
  .cautions .usual {
    grid-column: 1 / -1;
    margin: 0;
    padding: 4px 12px 7px;
    font-size: 14px;
    line-height: 1.3;
  }
  .work {
    display: flex;
    flex: 1;
    flex-direction: column;
    min-block-size: 0;
  }
  main {
    flex: 1;
    min-block-size: 0;
    padding: 12px 20px 20px;
    overflow: auto;
  }
  h2 {
    margin: 6px 2px;
    font-size: 17px;
  }
  section + section {
    margin-block-start: 16px;
  }
  .fields {
    padding: 4px 16px;
    border-radius: 4px;
    background: var(--paper);
    box-shadow: var(--shadow);
  }
  .field {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 76px minmax(200px, 250px) 76px;
    align-items: center;
    gap: 4px 12px;
    padding: 10px 0 4px;
  }
  .field + .field {
    border-block-start: 1px solid var(--ruling-strong);
  }
  .field .value {
    grid-column: 3;
  }
  .field .value.whole {
    grid-column: 2 / -1;
  }
  .name {
    font-size: 20px;
    line-height: 1.25;
  }
  .symbol {
    margin-inline-start: 4px;
    color: var(--ink-2);
    font-style: italic;
    white-space: nowrap;
  }
  sub {
    font-size: 0.72em;
  }
  .about {
    min-block-size: 21px;
    color: var(--ink-2);
    font-size: 16px;
    line-height: 1.3;
  }
  /* The line is there before anything stands on it. */
  .message {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 12px;
    grid-column: 1 / -1;
    min-block-size: 23px;
    color: var(--error);
    font-size: 17px;
    font-weight: 600;
    line-height: 23px;
  }
  .message.stopped {
    color: var(--caution);
  }
  .message .set {
    overflow: hidden;
    max-inline-size: 100%;
    margin-inline-start: auto;
    color: var(--ink-2);
    font-size: 15px;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  button.step:not(.link) {
    min-block-size: 72px;
    padding: 0;
  }
  .step svg {
    display: block;
    inline-size: 30px;
    block-size: 30px;
    margin: auto;
    stroke: currentColor;
    stroke-width: 4;
  }
  .step small {
    display: block;
    color: var(--ink-2);
    font-size: 14px;
    font-weight: 400;
    white-space: nowrap;
  }
  .step[aria-disabled='true'] {
    border-style: dashed;
    background: transparent;
    color: var(--ink-2);
    cursor: default;
  }
  .step:active:not([aria-disabled='true']),
  .bar button:active:not(:disabled) {
    border-color: var(--accent);
    background: var(--wash);
  }
  .value {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: center;
    min-block-size: 72px;
    gap: 0 8px;
    padding: 10px 6px 6px;
    border-block-end: 4px solid var(--line);
    border-radius: 3px 3px 0 0;
    cursor: text;
  }
  .value:focus-within {
    border-block-end-color: var(--accent);
    outline: 3px solid var(--accent);
    background: var(--wash);
  }
  .value.passed {
    border-block-end-color: var(--error);
  }
  .value.measured {
    border-block-end-style: dotted;
    border-block-end-color: var(--ink-2);
  }
  .value input {
    inline-size: auto;
    min-inline-size: 2ch;
    max-inline-size: 100%;
    min-block-size: 0;
    padding: 0;
    border: 0;
    outline: 0;
    background: none;
    font: 600 34px/1.25 var(--mono);
    text-align: center;
    field-sizing: content;
  }
  .value select {
    inline-size: 100%;
    font-size: 24px;
    font-weight: 600;
  }
  .value .text {
    inline-size: 100%;
    font-size: 24px;
  }
  .unit {
    color: var(--ink-2);
    font-size: 20px;
    white-space: nowrap;
  }
  .results {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 300px), 1fr));
    gap: 12px;
  }
  .result {
    padding: 10px 16px 12px;
    border-radius: 4px;
    background: var(--paper);
    box-shadow: var(--shadow);
  }
  .result.wide {
    grid-column: 1 / -1;
  }
  .result .number {
    font: 600 40px/1.2 var(--mono);
    overflow-wrap: anywhere;
  }
  .result .number .unit {
    margin-inline-start: 3px;
    white-space: pre;
    font: 400 20px/1.2 var(--face);
  }
  .result .decision {
    font-size: 32px;
    font-weight: 600;
    line-height: 1.2;
    overflow-wrap: anywhere;
  }
  .result.refused {
    box-shadow: inset 0 0 0 3px var(--error);
  }
  .result .decision svg {
    inline-size: 30px;
    block-size: 26px;
    margin-inline-end: 10px;
    fill: none;
    stroke: currentColor;
    stroke-width: 4;
  }
  .result .yes svg {
    color: var(--good);
  }
  .result .no svg {
    color: var(--error);
  }
  .result .wrong {
    color: var(--error);
    font-size: 22px;
    font-weight: 600;
    line-height: 1.3;
  }
  .result .sign {
    margin-inline-end: 6px;
    color: var(--caution);
    font-size: 24px;
  }
  .result .sign.passed {
    color: var(--error);
  }
  .result p {
    margin: 2px 0 0;
    color: var(--ink-2);
    font-size: 16px;
    line-height: 1.3;
  }
  .result p.passed {
    color: var(--error);
    font-weight: 600;
  }
  .meter {
    display: block;
    inline-size: 100%;
    block-size: 26px;
    margin-block-start: 4px;
  }
  .meter .track {
    fill: var(--ruling-strong);
  }
  .meter .fill {
    fill: var(--accent);
  }
  .meter .fill.passed {
    fill: var(--error);
  }
  .meter .limit {
    fill: var(--caution);
  }
  .bar {
    display: grid;
    grid-auto-columns: minmax(64px, 1fr);
    grid-auto-flow: column;
    gap: 8px;
    padding: 8px 20px;
    border-block-start: 1px solid color-mix(in srgb, var(--ink) 25%, transparent);
  }
  .bar button {
    padding: 4px 6px;
  }
  .bar button[aria-pressed='true'] {
    border-color: var(--accent);
    background: var(--wash);
    box-shadow: inset 0 -4px 0 var(--accent);
  }
  .typing {
    display: flex;
    align-items: baseline;
    flex-wrap: wrap;
    align-content: flex-start;
    min-block-size: 62px;
    max-inline-size: 640px;
    gap: 0 12px;
    margin: 0 auto 6px;
    font-size: 17px;
    line-height: 1.3;
  }
  .typing .what {
    font-weight: 600;
  }
  .typing output {
    padding: 0 6px;
    border-block-end: 3px solid var(--accent);
    background: var(--paper);
    font: 600 26px/1.25 var(--mono);
    white-space: pre;
  }
  .typing .note {
    color: var(--ink-2);
  }
  .typing .passed {
    flex-basis: 100%;
    color: var(--error);
    font-weight: 600;
  }
  .nothing {
    max-inline-size: 60ch;
    margin: 0 auto;
    padding: 18px 20px;
    border-radius: 4px;
    background: var(--paper);
    box-shadow: var(--shadow);
    font-size: 19px;
  }
  .nothing button {
    display: block;
    inline-size: 100%;
    margin-block-start: 10px;
  }
  @media (max-width: 599px) {
    header {
      gap: 8px;
      padding: 6px 12px;
    }
    header p,
    .cautions .usual {
      font-size: 13px;
    }
    h1 {
      font-size: 20px;
    }
    header button {
      padding-inline: 10px;
      max-inline-size: 110px;
      font-size: 16px;
    }
    .cautions ul {
      block-size: 66px;
      font-size: 16px;
    }
    .cautions .usual {
      line-height: 1.25;
    }
    main {
      padding: 8px 12px 14px;
    }
    .fields {
      padding: 2px 12px;
    }
    .field {
      grid-template-columns: 72px minmax(0, 1fr) 72px;
      gap: 4px 8px;
    }
    .field > .title {
      grid-column: 1 / -1;
    }
    .field .value {
      grid-column: 2;
    }
    .field .value.whole {
      grid-column: 1 / -1;
    }
    .value {
      padding-inline: 2px;
    }
    .value input {
      font-size: 32px;
    }
    .unit {
      font-size: 17px;
    }
    .result .number {
      font-size: 36px;
    }
    .result .decision {
      font-size: 28px;
    }
    .bar {
      gap: 6px;
      padding: 6px 12px;
    }
    .bar button {
      font-size: 15px;
    }
  }
  @media (min-width: 1000px) {
    main.two {
      display: grid;
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      align-content: start;
      gap: 20px;
    }
    main.two section + section {
      margin: 0;
    }
    main.two .record {
      grid-column: 1 / -1;
    }
    .field {
      grid-template-columns: minmax(0, 1fr) 72px minmax(150px, 200px) 72px;
      gap: 4px 10px;
    }
    .results {
      grid-template-columns: repeat(auto-fit, minmax(min(100%, 250px), 1fr));
    }
    .work.typing-now {
      flex-direction: row;
    }
    .work.typing-now on-screen-keypad {
      flex: 0 0 420px;
      overflow: auto;
      border-block-start: 0;
      border-inline-start: 2px solid var(--accent);
    }
    .work.typing-now main.two {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  /* Where the whole page scrolls the keypad stays below what is typed into. */
  @media (max-width: 599px) and (min-height: 560px) and (max-height: 700px) {
    .typing-now on-screen-keypad {
      position: sticky;
      inset-block-end: 0;
      z-index: 2;
    }
    .typing-now .field {
      scroll-margin-block-end: 430px;
    }
  }
  @media (forced-colors: active) {
    .fields,
    .result {
      border: 1px solid;
    }
    .result.refused {
      border-width: 4px;
    }
  }
  @media print {
    :host {
      display: none;
    }
  }
`;
