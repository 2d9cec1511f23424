/** The squared page: faint ruling, given values on a writing line, worked ones bare. */

import { css } from 'lit';

export const gridStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    min-block-size: 0;
    background: var(--paper);
    border-radius: 3px;
    box-shadow: var(--shadow);
  }
  .scroller {
    --head: 24px;
    flex: 1;
    min-block-size: 0;
    overflow: auto;
    overscroll-behavior: contain;
    border-radius: 3px;
    scroll-padding: 30px 8px 8px 44px;
  }
  .scroller.head-row {
    scroll-padding-block-start: calc(var(--head) + var(--row) + 6px);
  }
  .scroller.head-column {
    scroll-padding-inline-start: calc(44px + var(--first-column));
  }
  .head-row tr[data-row='0'] > * {
    position: sticky;
    inset-block-start: var(--head);
    z-index: 4;
    border-block-end: 1px solid var(--ink-2);
    background: var(--paper);
  }
  .head-column tbody td[data-column='0'],
  .head-column thead th[data-column='0'] {
    position: sticky;
    inset-inline-start: 40px;
    z-index: 3;
    border-inline-end: 1px solid var(--ink-2);
    background: var(--paper);
  }
  .head-column thead th[data-column='0'] {
    z-index: 6;
    background: var(--paper-edge);
  }
  .head-row tr[data-row='0'] > th,
  .head-row.head-column tr[data-row='0'] > td[data-column='0'] {
    z-index: 5;
  }
  .head-row tr[data-row='0'] > th {
    background: var(--paper-edge);
  }
  .head-row tr[data-row='0'] > td.chosen,
  .head-column td[data-column='0'].chosen {
    background: var(--wash);
  }
  table {
    table-layout: fixed;
    inline-size: 0;
    border-collapse: separate;
    border-spacing: 0;
  }
  col.head {
    inline-size: 40px;
  }
  th {
    padding: 0;
    background: var(--paper-edge);
    color: var(--ink-2);
    font-size: 12.5px;
    font-weight: 400;
    user-select: none;
  }
  thead th {
    position: sticky;
    inset-block-start: 0;
    z-index: 5;
    block-size: var(--head);
    border-block-end: 1px solid var(--ruling-strong);
    border-inline-end: 1px solid var(--ruling);
  }
  thead th:first-child {
    inset-inline-start: 0;
    z-index: 7;
  }
  thead th.at,
  tbody th.at {
    color: var(--accent);
    font-weight: 600;
  }
  .grip {
    position: absolute;
    inset-block: 0;
    inset-inline-end: -4px;
    inline-size: 9px;
    cursor: col-resize;
    touch-action: none;
  }
  .grip:hover::after {
    content: '';
    position: absolute;
    inset-block: 4px;
    inset-inline-start: 3px;
    border-inline-start: 2px solid var(--accent);
  }
  tbody th {
    position: sticky;
    inset-inline-start: 0;
    z-index: 2;
    padding-inline-end: 8px;
    border-block-end: 1px solid var(--ruling);
    border-inline-end: 1px solid var(--ruling-strong);
    text-align: end;
  }
  td {
    block-size: var(--row);
    padding: 0;
    border-block-end: 1px solid var(--ruling);
    border-inline-end: 1px solid var(--ruling);
    cursor: cell;
    vertical-align: middle;
  }
  /* Each row is painted for itself, and only the cells with something placed over them are layers: both spare work in every frame. */
  tbody tr {
    position: relative;
    z-index: 0;
  }
  td.active,
  td.corner,
  td.ref,
  td.noted {
    position: relative;
  }
  tbody tr.lifted {
    z-index: 3;
  }
  .head-row tbody tr[data-row='0'] {
    z-index: 4;
  }
  tr:hover > th {
    color: var(--ink);
  }
  td.covered {
    border-inline-end-color: transparent;
  }
  td.over {
    border-inline-end-color: transparent;
  }
  .gap td {
    border: 0;
  }
  td.formula .value {
    font: 14px/1.3 var(--mono);
    overflow-wrap: anywhere;
  }
  td.ref::before {
    content: '';
    position: absolute;
    inset: 0;
    z-index: 1;
    border: 0 dashed var(--reference);
    background: color-mix(in srgb, var(--reference) 9%, transparent);
    pointer-events: none;
  }
  td.ref-t::before {
    border-block-start-width: 2px;
  }
  td.ref-b::before {
    border-block-end-width: 2px;
  }
  td.ref-l::before {
    border-inline-start-width: 2px;
  }
  td.ref-r::before {
    border-inline-end-width: 2px;
  }
  td[data-ref='0'] {
    --reference: var(--reference-0);
  }
  td[data-ref='1'] {
    --reference: var(--reference-1);
  }
  td[data-ref='2'] {
    --reference: var(--reference-2);
  }
  td[data-ref='3'] {
    --reference: var(--reference-3);
  }
  td[data-ref='4'] {
    --reference: var(--reference-4);
  }
  td[data-ref='5'] {
    --reference: var(--reference-5);
  }
  td.corner {
    z-index: 2;
  }
  .handle {
    position: absolute;
    z-index: 3;
    touch-action: none;
  }
  .handle.start,
  .handle.end {
    display: none;
  }
  .handle.fill {
    inset-block-end: -5px;
    inset-inline-end: -5px;
    inline-size: 10px;
    block-size: 10px;
    border: 1.5px solid var(--paper);
    background: var(--accent);
    cursor: crosshair;
  }
  .handle.fill::before {
    content: '';
    position: absolute;
    inset: -8px;
  }
  .choices {
    position: absolute;
    inset-block-start: calc(100% + 2px);
    inset-inline-start: 0;
    z-index: 9;
    min-inline-size: 100%;
    max-inline-size: 340px;
    max-block-size: var(--room, 240px);
    margin: 0;
    padding: 4px 0;
    overflow: auto;
    border: 1px solid var(--button-edge);
    border-radius: 4px;
    background: var(--paper);
    box-shadow: var(--shadow);
    list-style: none;
    cursor: default;
  }
  .choices.up {
    inset-block: auto calc(100% + 2px);
  }
  .choices li {
    padding: 4px 12px;
    white-space: nowrap;
  }
  .choices li[aria-selected='true'] {
    background: var(--wash);
    box-shadow: inset 3px 0 0 var(--accent);
  }
  .face {
    padding: 2px 8px;
    line-height: 18px;
    overflow-wrap: anywhere;
    white-space: pre-wrap;
    pointer-events: none;
  }
  td.over .face {
    white-space: pre;
    overflow: visible;
  }
  td.wrapped .value {
    display: inline-block;
    inline-size: calc(var(--wrap) - 20px);
    overflow-wrap: break-word;
    white-space: pre-wrap;
  }
  .virtual td.wrapped .value {
    overflow: hidden;
    white-space: pre;
  }
  td.noted::after {
    content: '';
    position: absolute;
    inset-block-start: 2px;
    inset-inline-end: 2px;
    border: 4px solid var(--ink-2);
    border-block-end-color: transparent;
    border-inline-start-color: transparent;
  }
  .face code {
    padding: 0 3px;
    background: var(--paper-edge);
    font-family: var(--mono);
  }
  .leads {
    color: var(--accent);
    text-decoration: underline;
    pointer-events: auto;
  }
  .virtual td.text .face {
    white-space: pre;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .virtual td.text.over .face {
    overflow: visible;
  }
  td.heading .value {
    font-weight: 600;
    font-size: 16px;
  }
  td.role-note .value {
    color: var(--ink-2);
    font-size: 14px;
  }
  i {
    font-style: italic;
  }
  sub {
    font-size: 0.72em;
    line-height: 0;
    vertical-align: -0.35em;
  }
  td.number .face {
    padding-inline: 10px 8px;
    text-align: end;
    white-space: pre;
  }
  td.number .value {
    font-family: var(--mono);
    font-size: 15px;
  }
  .unit {
    display: inline-block;
    min-inline-size: 46px;
    margin-inline-start: 1px;
    color: var(--ink-2);
    font-size: 13px;
    text-align: start;
  }
  td.role-given .face,
  td.role-measured .face,
  td.role-choice .face {
    margin: 0 9px 4px;
    padding: 2px 0 max(0px, (var(--row) - 30px) / 2);
    border-block-end: 1.5px solid var(--line);
  }
  td.role-given,
  td.role-measured,
  td.role-choice {
    vertical-align: bottom;
  }
  td.role-measured .face {
    border-block-end: 2px dotted var(--ink-2);
  }
  td.role-choice .face {
    border-block-end-style: dashed;
  }
  .clock,
  .sign {
    margin-inline-end: 6px;
  }
  .clock {
    color: var(--ink-2);
    font-size: 14px;
  }
  .sign {
    color: var(--caution);
    font-size: 12px;
  }
  .sign.breach {
    color: var(--error);
    font-size: 13px;
  }
  .sign.acknowledged {
    opacity: 0.75;
  }
  td.error {
    padding: 0;
  }
  td.error .value {
    color: var(--error);
    font-weight: 600;
  }
  td.error .face {
    text-align: end;
  }
  td.stale .value {
    color: var(--ink-2);
    font-style: italic;
  }
  td.chosen {
    background: var(--wash);
  }
  td.active {
    z-index: 1;
    background: var(--wash);
    outline: 2px solid var(--accent);
    outline-offset: -1px;
  }
  td.active:has(.editor.open) {
    z-index: 4;
    outline: 0;
  }
  .editor {
    position: absolute;
    inset: 0;
    z-index: 2;
    inline-size: 100%;
    min-block-size: 0;
    block-size: 100%;
    margin: 0;
    padding: 0 9px;
    border: 0;
    border-radius: 0;
    outline: 0;
    background: transparent;
    color: transparent;
    caret-color: transparent;
    font: 15px var(--mono);
    cursor: cell;
  }
  .editor.open {
    inline-size: max(100%, var(--editor-width, 0px));
    background: var(--paper);
    color: var(--ink);
    caret-color: var(--accent);
    outline: 2px solid var(--accent);
    cursor: text;
  }
  .scroller:not(:focus-within) td.active {
    outline-style: dashed;
  }
  @media (forced-colors: active) {
    td.chosen {
      outline: 2px dashed Highlight;
      outline-offset: -2px;
    }
    td.active {
      outline: 3px solid Highlight;
      outline-offset: -3px;
    }
    thead th.at,
    tbody th.at {
      background: Highlight;
      color: HighlightText;
      forced-color-adjust: none;
    }
    .sign {
      color: CanvasText;
    }
  }
  @media (pointer: coarse) {
    .scroller {
      --head: 32px;
    }
    .handle.fill {
      display: none;
    }
    .handle.start,
    .handle.end {
      display: block;
      inline-size: 44px;
      block-size: 44px;
    }
    .handle.start {
      inset-block-start: -22px;
      inset-inline-start: -22px;
    }
    /* At the heads the whole mark stays in sight. */
    [data-row='0'] .handle.start {
      inset-block-start: -12px;
    }
    [data-column='0'] .handle.start {
      inset-inline-start: -12px;
    }
    .handle.end {
      inset-block-end: -22px;
      inset-inline-end: -22px;
    }
    .handle.start::after,
    .handle.end::after {
      content: '';
      position: absolute;
      inset: 13px;
      border: 2px solid var(--paper);
      border-radius: 50%;
      background: var(--accent);
      box-shadow: var(--shadow);
    }
    .choices li {
      min-block-size: 44px;
      padding-block: 10px;
    }
  }
`;
