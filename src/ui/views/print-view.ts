/** The notebook on paper: title and state, given values with their sources, every worksheet, cautions, workings, the usual cautions. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { forEachCell, labelOf, roleOf, usedExtent } from '../../document/index.ts';
import type { Worksheet } from '../../document/index.ts';
import { addressText } from '../../expression/index.ts';
import type { Face } from '../elements/grid-body.ts';
import { addressWords } from '../cell-links.ts';
import { Faces } from '../faces.ts';
import { openCautions } from '../open-cautions.ts';
import type { Session } from '../session.ts';
import { USUAL_CAUTIONS } from '../usual-cautions.ts';
import { resultText } from '../value-text.ts';

export class PrintView extends LitElement {
  static override properties = { session: { attribute: false }, printing: { state: true } };
  declare session: Session | undefined;
  declare printing: boolean;

  static override styles = css`
    :host {
      display: none;
    }
    @media print {
      :host {
        display: block;
        color: #000;
        font: 10.5pt/1.4 var(--face);
      }
    }
    h1 {
      margin: 0 0 2pt;
      font-size: 18pt;
    }
    h2 {
      margin: 16pt 0 6pt;
      font-size: 13pt;
      break-after: avoid;
    }
    p {
      margin: 2pt 0;
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
      padding: 2pt 5pt;
      border: 0.5pt solid #bbb;
      text-align: start;
      vertical-align: baseline;
    }
    th {
      font-weight: 400;
      font-size: 8.5pt;
    }
    tr {
      break-inside: avoid;
    }
    .number {
      font-family: var(--mono);
      text-align: end;
      white-space: nowrap;
    }
    .given {
      text-decoration: underline;
      text-decoration-thickness: 0.7pt;
      text-underline-offset: 2.5pt;
    }
    .measured {
      text-decoration: underline dotted;
      text-underline-offset: 2.5pt;
    }
    .heading {
      font-weight: 600;
    }
    .always {
      margin-block-start: 16pt;
      padding: 6pt 8pt;
      border: 1pt solid #000;
      break-inside: avoid;
    }
  `;

  readonly #before = (): void => {
    this.printing = true;
    this.performUpdate();
  };
  readonly #after = (): void => {
    this.printing = false;
  };

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('beforeprint', this.#before);
    window.addEventListener('afterprint', this.#after);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('beforeprint', this.#before);
    window.removeEventListener('afterprint', this.#after);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session || !this.printing) return nothing;
    const { notebook, world } = session;
    const date = new Date(world.clock.now()).toISOString().slice(0, 10);
    const cautions = openCautions(session).filter((each) => each.type !== 'assumed');
    return html`
      <h1>${notebook.title}</h1>
      <p>
        Printed ${date} · Swarfbook ${world.version} · shown in ${notebook.display} units, plain numbers read
        as ${notebook.reading} · ${notebook.currency}
      </p>
      ${this.#given(session)} ${notebook.worksheets.map((worksheet) => this.#worksheet(session, worksheet))}
      ${
        cautions.length > 0
          ? html`<h2>Errors and cautions</h2>
              ${cautions.map(
                (each) =>
                  html`<p>
                    ${each.type === 'error' ? '✕' : '▲'} ${addressWords(session, each.address)}:
                    ${each.text}${
                      each.acknowledged === undefined ? '' : ` (acknowledged: ${each.acknowledged})`
                    }
                  </p>`,
              )}`
          : nothing
      }
      <div class="always">${USUAL_CAUTIONS.map((words) => html`<p>▲ ${words}</p>`)}</div>
    `;
  }

  #given(session: Session): unknown {
    const rows: TemplateResult[] = [];
    for (const worksheet of session.notebook.worksheets)
      forEachCell(worksheet, (cell, row, column) => {
        const role = roleOf(cell);
        if (role !== 'given' && role !== 'measured' && role !== 'choice') return;
        const result = session.results.at(worksheet.id, row, column);
        rows.push(
          html`<tr>
            <td>${worksheet.title}, ${addressText(column, row)}</td>
            <td>${labelOf(worksheet, row, column)}</td>
            <td class="number">
              ${result ? resultText(result, session.notebook, cell.format) : cell.content}
            </td>
            <td>${role}</td>
            <td>${cell.source ?? ''}</td>
          </tr>`,
        );
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
            <th>source</th>
          </tr>
        </thead>
        <tbody>
          ${rows}
        </tbody>
      </table>`;
  }

  #worksheet(session: Session, worksheet: Worksheet): TemplateResult | typeof nothing {
    const { rows, columns } = usedExtent(worksheet);
    if (rows === 0) return nothing;
    const faces = new Faces();
    faces.show(session.notebook, worksheet, session.results, session.showFormulas);
    const row = (r: number): TemplateResult => {
      const cells: TemplateResult[] = [];
      for (let c = 0; c < columns; c += 1) {
        const face = faces.face(r, c);
        const span = Math.min((face.over ?? 0) + 1, columns - c);
        cells.push(
          html`<td colspan=${span} class="${face.type} ${face.role ?? ''} ${face.heading ? 'heading' : ''}">
            ${faceText(face)}
          </td>`,
        );
        c += span - 1;
      }
      return html`<tr>
        <th>${r + 1}</th>
        ${cells}
      </tr>`;
    };
    return html`<h2>${worksheet.title}</h2>
      <table>
        <thead>
          <tr>
            <th></th>
            ${Array.from({ length: columns }, (_, c) => html`<th>${faces.columnName(c)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${Array.from({ length: rows }, (_, r) => row(r))}
        </tbody>
      </table>`;
  }
}

const faceText = (face: Face): string =>
  `${face.caution ? '▲ ' : ''}${face.role === 'measured' ? '◷ ' : ''}${face.text}${face.unit ? ` ${face.unit}` : ''}`;

customElements.define('print-view', PrintView);
