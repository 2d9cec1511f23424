/** What closes the printed notebook: errors and cautions with their acknowledgements, reviewed formulas, the usual cautions. */

import { html, nothing, type TemplateResult } from 'lit';
import type { CellAddress } from '../../calculation/index.ts';
import { cellAt, findWorksheet, forEachCell } from '../../document/index.ts';
import { addressWords } from '../cell-links.ts';
import { printedNote } from '../elements/note.ts';
import { readNote } from '../note-tree.ts';
import { editedText, inWords } from '../number-locale.ts';
import { openCautions } from '../open-cautions.ts';
import type { Session } from '../session.ts';
import { USUAL_CAUTIONS } from '../usual-cautions.ts';

const WORDS = { error: '✕ error', breach: '▲ limit', caution: '▲ caution', assumed: 'unit' } as const;

export function closingPages(session: Session): TemplateResult {
  return html`${cautions(session)} ${notes(session)} ${reviews(session)}
    <div class="always">
      <b>Always</b>
      ${USUAL_CAUTIONS.map((words) => html`<p>▲ ${words}</p>`)}
    </div>`;
}

const homeOf = ({ notebook }: Session, { worksheet }: CellAddress): string =>
  findWorksheet(notebook, worksheet)?.title ?? '';

function cautions(session: Session): TemplateResult {
  const all = openCautions(session);
  if (all.length === 0)
    return html`<h2>Errors and cautions</h2>
      <p>There were none when this was printed.</p>`;
  return html`<h2>Errors, cautions, units that were assumed</h2>
    <table>
      <thead>
        <tr>
          <th>cell</th>
          <th>what</th>
          <th>words</th>
          <th>acknowledged because</th>
        </tr>
      </thead>
      <tbody>
        ${all.map(
          (each) =>
            html`<tr>
              <td>${homeOf(session, each.address)}, ${addressWords(session, each.address, true)}</td>
              <td class="mark">${WORDS[each.type]}</td>
              <td>${inWords(each.text)}</td>
              <td>${each.acknowledged ?? (each.type === 'assumed' ? '' : 'not acknowledged')}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
}

/** The notes of the cells, as they are read in the margin. */
function notes(session: Session): TemplateResult | typeof nothing {
  const rows: TemplateResult[] = [];
  for (const worksheet of session.notebook.worksheets)
    forEachCell(worksheet, ({ note }, row, column) => {
      if (note === undefined) return;
      const address = { worksheet: worksheet.id, row, column };
      rows.push(
        html`<tr>
          <td>${worksheet.title}, ${addressWords(session, address, true)}</td>
          <td>${printedNote(readNote(note))}</td>
        </tr>`,
      );
    });
  if (rows.length === 0) return nothing;
  return html`<h2>Notes</h2>
    <table>
      <thead>
        <tr>
          <th>cell</th>
          <th>note</th>
        </tr>
      </thead>
      <tbody>
        ${rows}
      </tbody>
    </table>`;
}

function reviews(session: Session): TemplateResult | typeof nothing {
  const { notebook } = session;
  const list = notebook.parts?.reviews ?? [];
  if (list.length === 0) return nothing;
  return html`<h2>Formulas that were reviewed</h2>
    <table>
      <thead>
        <tr>
          <th>cell</th>
          <th>formula as reviewed</th>
          <th>by</th>
          <th>on</th>
        </tr>
      </thead>
      <tbody>
        ${list.map(({ place, content, initials, at }) => {
          const home = findWorksheet(notebook, place.worksheet);
          const now = home && cellAt(home, place.row, place.column)?.content;
          return html`<tr>
            <td>${home ? `${home.title}, ${addressWords(session, place, true)}` : '#REF!'}</td>
            <td class="formula">
              ${editedText(content, notebook.currency)}${now === content ? '' : ' (changed since: review again)'}
            </td>
            <td>${initials}</td>
            <td>${at.slice(0, 10)}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
}
