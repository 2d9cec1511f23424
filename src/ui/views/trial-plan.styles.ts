/** The plan of a trial: what is asked at the left, what follows from it at the right. */

import { css } from 'lit';

export const planStyles = css`
  :host {
    display: block;
  }
  .two {
    display: grid;
    grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
    gap: 20px 28px;
  }
  fieldset {
    margin: 0 0 14px;
    padding: 0;
    border: 0;
  }
  legend,
  h3 {
    padding: 0;
    margin-block-end: 4px;
    color: var(--ink);
    font-size: 15px;
    font-weight: 600;
  }
  label {
    display: block;
    color: var(--ink-2);
    font-size: 13px;
  }
  form > label {
    margin-block-end: 14px;
  }
  label input,
  label select {
    display: block;
    inline-size: 100%;
    color: var(--ink);
    font-size: 15px;
  }
  .row {
    display: grid;
    align-items: end;
    gap: 6px;
    margin-block-end: 6px;
  }
  .factor {
    grid-template-columns: minmax(0, 1fr) minmax(0, 2fr) auto;
  }
  .measurand {
    grid-template-columns: minmax(0, 1.2fr) 76px 96px minmax(0, 1.6fr) auto;
  }
  .three {
    grid-template-columns: repeat(3, minmax(0, 1fr));
  }
  .stock {
    grid-template-columns: repeat(2, minmax(0, 1fr));
  }
  .follows {
    padding: 12px 16px;
    align-self: start;
    border: 1px solid var(--ruling-strong);
    border-radius: 4px;
    background: var(--paper-edge);
  }
  .follows .count {
    font: 600 26px/1.2 var(--mono);
  }
  .follows p {
    margin: 4px 0;
  }
  .follows ol {
    columns: 2;
    column-gap: 18px;
    margin: 4px 0 10px;
    padding-inline-start: 26px;
    max-block-size: 300px;
    overflow: auto;
  }
  .follows ul {
    margin: 4px 0 10px;
    padding-inline-start: 18px;
  }
  .follows .primary {
    inline-size: 100%;
    min-block-size: 44px;
    margin-block-start: 8px;
  }
  .fits {
    color: var(--good);
    font-weight: 600;
  }
  .known {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 12px;
    padding: 6px 0;
    border-block-end: 1px solid var(--ruling);
  }
  .known b {
    flex: 1;
    min-inline-size: 12ch;
  }
  .known:last-of-type {
    margin-block-end: 16px;
  }
  @media (max-width: 800px) {
    .two {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media (max-width: 1000px) {
    .measurand {
      grid-template-columns: minmax(0, 2fr) minmax(0, 1fr) minmax(0, 1fr) auto;
    }
    .measurand .when {
      grid-row: 2;
      grid-column: 1 / -1;
    }
  }
`;
