/** First page of the printed notebook: what it is, of which state, and every given value with its source. */

import { html, nothing, type TemplateResult } from 'lit';
import { forEachCell, labelOf, roleOf } from '../../document/index.ts';
import type { Cell, Worksheet } from '../../document/index.ts';
import { writeNotebook } from '../../exchange/index.ts';
import { addressText } from '../../expression/index.ts';
import { editedText } from '../number-locale.ts';
import type { Session } from '../session.ts';
import { resultText } from '../value-text.ts';

const OFFSET = 0x811c9dc5;
const PRIME = 0x01000193;

/** Eight hexadecimal digits that are equal where two notebooks are equal: FNV-1a with 32 bits over the file's text. */
export function stateCode(text: string): string {
  let hash = OFFSET;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, PRIME) >>> 0;
  return hash.toString(16).padStart(8, '0');
}

const day = (at: number): string => {
  const date = new Date(at);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())} ${two(date.getHours())}:${two(date.getMinutes())}`;
};

export function firstPage(session: Session): TemplateResult {
  const { notebook, world, saved } = session;
  const state = `${stateCode(writeNotebook(notebook))}${saved.type === 'saved' ? `, saved ${day(saved.at)}` : ', not saved yet'}`;
  const rows: readonly (readonly [string, string])[] = [
    ['Printed', day(world.clock.now())],
    ['State of the notebook', state],
    ['Program', `Swarfbook ${world.version}`],
    [
      'Units',
      `results in ${notebook.display} units, plain numbers read as ${notebook.reading}, money in ${notebook.currency}`,
    ],
  ];
  return html`<h1>${notebook.title}</h1>
    <dl class="meta">
      ${rows.map(
        ([what, words]) =>
          html`<dt>${what}</dt>
            <dd>${words}</dd>`,
      )}
    </dl>
    ${givenValues(session)}`;
}

function givenValues(session: Session): TemplateResult | typeof nothing {
  const rows: TemplateResult[] = [];
  for (const worksheet of session.notebook.worksheets)
    forEachCell(worksheet, (cell, row, column) => {
      if (isGiven(cell)) rows.push(givenRow(session, worksheet, cell, row, column));
    });
  if (rows.length === 0) return nothing;
  return html`<h2>Given values</h2>
    <table>
      <thead>
        <tr>
          <th>cell</th>
          <th>what</th>
          <th>value</th>
          <th>role</th>
          <th>source, remark</th>
        </tr>
      </thead>
      <tbody>
        ${rows}
      </tbody>
    </table>`;
}

const isGiven = (cell: Cell): boolean => ['given', 'measured', 'choice'].includes(roleOf(cell));

function givenRow(
  session: Session,
  worksheet: Worksheet,
  cell: Cell,
  row: number,
  column: number,
): TemplateResult {
  const { notebook } = session;
  const result = session.results.at(worksheet.id, row, column);
  const { changed } = cell;
  const atMachine =
    changed &&
    `set at the machine by ${changed.by}, ${day(Date.parse(changed.at))}, before: ${editedText(changed.from, notebook.currency)}${changed.reason ? ` (${changed.reason})` : ''}`;
  const words = [cell.source, cell.note && 'see its note', atMachine].filter(Boolean).join(' · ');
  return html`<tr>
    <td>${worksheet.title}, ${addressText(column, row)}</td>
    <td>${labelOf(worksheet, row, column)}</td>
    <td class="number">
      ${result ? resultText(result, notebook, cell.format) : editedText(cell.content, notebook.currency)}
    </td>
    <td class="mark">${roleOf(cell)}</td>
    <td>${words}</td>
  </tr>`;
}
