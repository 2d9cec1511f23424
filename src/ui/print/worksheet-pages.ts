/** A worksheet on paper: its cells under repeating headers; columns that do not fit go into a table of their own. */

import { html, nothing, type TemplateResult } from 'lit';
import { usedExtent } from '../../document/index.ts';
import type { Worksheet } from '../../document/index.ts';
import type { Face } from '../elements/cell-face.ts';
import { printed } from '../elements/note.ts';
import { Faces } from '../faces.ts';
import type { Session } from '../session.ts';

/** Widths of the screen, in CSS pixels, that share the width of a sheet. */
const PAPER = 980;

/** Numbers are never shortened on paper. */
class WideFaces extends Faces {
  override width(): number {
    return Number.POSITIVE_INFINITY;
  }
}

interface Look {
  readonly faces: Faces;
  readonly numbers: Faces;
}

/** Columns in groups that fit side by side. */
function groups(faces: Faces, columns: number): readonly (readonly number[])[] {
  const all: number[][] = [];
  let room = 0;
  for (let column = 0; column < columns; column += 1) {
    const width = Math.min(faces.width(column), PAPER);
    const last = all.at(-1);
    if (last && width <= room) last.push(column);
    else {
      all.push([column]);
      room = PAPER;
    }
    room -= width;
  }
  return all;
}

/** Rows to the last one that has something in these columns. */
function usedRows(faces: Faces, rows: number, columns: readonly number[]): number {
  let last = rows;
  while (last > 0 && columns.every((column) => faces.face(last - 1, column).type === 'empty')) last -= 1;
  return last;
}

export function worksheetPages(session: Session, worksheet: Worksheet): TemplateResult | typeof nothing {
  const { rows, columns } = usedExtent(worksheet);
  if (rows === 0) return nothing;
  const look: Look = { faces: new Faces(), numbers: new WideFaces() };
  const { faces } = look;
  for (const each of [faces, look.numbers])
    each.show(session.notebook, worksheet, session.results, session.showFormulas);
  return html`${groups(faces, columns).map((part, k) => {
    const length = usedRows(faces, rows, part);
    return length === 0
      ? nothing
      : html`<h2>${worksheet.title}${k > 0 ? ', continued to the right' : ''}</h2>
          ${table(look, length, part)}`;
  })}`;
}

function table(look: Look, rows: number, columns: readonly number[]): TemplateResult {
  const { faces } = look;
  const total = columns.reduce((sum, column) => sum + faces.width(column), 0);
  const share = (column: number): string =>
    `${Math.round((faces.width(column) / Math.max(total, PAPER * 0.6)) * 94)}%`;
  return html`<table class="cells">
    <thead>
      <tr>
        <th width="4%"></th>
        ${columns.map((column) => html`<th width=${share(column)}>${faces.columnName(column)}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${Array.from({ length: rows }, (_, row) => line(look, row, columns))}
    </tbody>
  </table>`;
}

function line({ faces, numbers }: Look, row: number, columns: readonly number[]): TemplateResult {
  const cells: TemplateResult[] = [];
  for (let k = 0; k < columns.length; k += 1) {
    const face = faces.face(row, columns[k] ?? 0);
    const span = Math.min((face.over ?? 0) + 1, columns.length - k);
    cells.push(cell(face.type === 'number' ? numbers.face(row, columns[k] ?? 0) : face, span));
    k += span - 1;
  }
  return html`<tr>
    <th scope="row">${row + 1}</th>
    ${cells}
  </tr>`;
}

const SIGNS = { open: '▲ ', acknowledged: '△ ', breach: '◆ ' } as const;

function cell(face: Face, span: number): TemplateResult {
  const look = [face.type, face.heading ? 'heading' : '', face.role === 'note' ? 'note' : ''];
  const formula = face.type === 'text' && face.text.startsWith('=') ? 'formula' : '';
  return html`<td colspan=${span} class="${[...look, formula].filter(Boolean).join(' ')}">
    ${face.caution === undefined ? '' : SIGNS[face.caution]}${face.role === 'measured' ? '◷ ' : ''}<span
      class="value ${face.role ?? ''} ${face.type}"
      >${face.symbol ? html`<i>${face.symbol[0]}</i><sub>${face.symbol[1]}</sub>` : face.parts ? printed(face.parts) : face.text}</span
    >${face.unit ? ` ${face.unit}` : ''}
  </td>`;
}
