/** Looks of the printed notebook: black on white, thin rules, headers that repeat on every page. */

import { css } from 'lit';

export const printStyles = css`
  :host {
    display: none;
  }
  @media print {
    :host {
      display: block;
      color: #000;
      font: 10pt/1.35 var(--face);
    }
  }
  h1 {
    margin: 0 0 3pt;
    font-size: 18pt;
    line-height: 1.2;
  }
  h2 {
    margin: 16pt 0 5pt;
    padding-block-end: 2pt;
    border-block-end: 1pt solid #000;
    font-size: 12.5pt;
    line-height: 1.25;
    break-after: avoid;
  }
  h3 {
    margin: 9pt 0 2pt;
    font-size: 10.5pt;
    break-after: avoid;
  }
  p {
    margin: 2pt 0;
  }
  .page {
    break-before: page;
  }
  .meta {
    display: grid;
    grid-template-columns: max-content minmax(0, 1fr);
    gap: 1pt 12pt;
    margin: 0 0 8pt;
  }
  .meta dt {
    color: #333;
  }
  .meta dd {
    margin: 0;
  }
  table {
    inline-size: 100%;
    border-collapse: collapse;
  }
  thead {
    display: table-header-group;
  }
  th,
  td {
    padding: 1.6pt 4pt;
    border: 0.5pt solid #999;
    text-align: start;
    vertical-align: baseline;
    overflow-wrap: anywhere;
  }
  th {
    background: #fff;
    font-weight: 600;
    font-size: 8.5pt;
    overflow-wrap: normal;
  }
  tbody th {
    inline-size: 18pt;
    font-weight: 400;
    text-align: center;
  }
  tr {
    break-inside: avoid;
  }
  .cells {
    table-layout: fixed;
    font-size: 9pt;
  }
  .cells th {
    text-align: center;
  }
  .mark {
    white-space: nowrap;
  }
  .number {
    font-family: var(--mono);
    text-align: end;
    font-size: 9pt;
    overflow-wrap: normal;
  }
  .cells .number {
    font-size: 8.5pt;
  }
  .formula {
    font-family: var(--mono);
    font-size: 7.5pt;
  }
  .value.given,
  .value.choice {
    text-decoration: underline;
    text-decoration-thickness: 0.8pt;
    text-underline-offset: 2pt;
  }
  .value.measured {
    text-decoration: underline dotted;
    text-decoration-thickness: 1pt;
    text-underline-offset: 2pt;
  }
  .value.error {
    font-weight: 600;
  }
  .heading {
    font-weight: 600;
  }
  .note {
    font-size: 8.5pt;
  }
  .working {
    overflow: clip;
    break-inside: avoid;
  }
  .working math {
    margin: 3pt 0 3pt 12pt;
    font-size: 11pt;
    text-align: start;
  }
  .working .long math {
    font-size: 8pt;
  }
  .term {
    white-space: nowrap;
  }
  .result {
    margin-inline-start: 12pt;
    font-family: var(--mono);
    font-size: 12pt;
    font-weight: 600;
  }
  .small {
    font-size: 8.5pt;
  }
  .legend {
    margin-block-end: 4pt;
    font-size: 8.5pt;
  }
  notebook-figure {
    display: block;
    margin-block: 8pt;
    break-inside: avoid;
  }
  .always {
    margin-block-start: 16pt;
    padding: 6pt 8pt;
    border: 1pt solid #000;
    break-inside: avoid;
  }
`;
