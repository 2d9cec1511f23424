/** The notebook's recordings: logs beside the cells, their columns with units, and reading another one in. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import {
  changeRecordingColumn,
  isRefusal,
  partsOf,
  removeRecording,
  renameRecording,
  usersOfRecording,
} from '../../document/index.ts';
import type { Recording } from '../../document/index.ts';
import { writeRecordingCsv } from '../../exchange/index.ts';
import type { TableColumn, UnderstoodTable } from '../../exchange/index.ts';
import { formatNumber } from '../../quantity/index.ts';
import { addedLog, chosenLog, readLog, readWords, understoodLog } from '../log-reading.ts';
import type { ChosenLog } from '../log-reading.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';
import { recordingsStyles } from './recordings-leaf.styles.ts';

const ACCEPTED = '.csv,.tsv,.tab,.txt,.log,text/csv,text/plain';
/** Lines of a log that are shown before it is read. */
const SHOWN = 6;

export class RecordingsLeaf extends LitElement {
  static override styles = [shared, recordingsStyles];
  static override properties = {
    session: { attribute: false },
    log: { state: true },
    rows: { state: true },
    words: { state: true },
    problem: { state: true },
  };
  declare session: Session | undefined;
  declare log: ChosenLog | undefined;
  /** Rows read so far, while one is being read. */
  declare rows: number | undefined;
  declare words: string;
  declare problem: string;

  constructor() {
    super();
    this.words = '';
    this.problem = '';
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session, log } = this;
    if (!session) return nothing;
    const list = partsOf(session.notebook, 'recordings');
    return html`<p>
        A recording is a log of the machine or of an instrument: columns beside the cells, up to 200 000 rows,
        read in formulas as <code>title.column</code>, such as
        <code>=MAX(${list[0]?.title ?? 'Log'}.${list[0]?.columns[0]?.name ?? 'force'})</code>.
      </p>
      ${list.map((recording) => this.#recording(session, recording))}
      ${log ? this.#chosen(session, log) : nothing}
      ${this.problem === '' ? nothing : html`<p class="error" role="alert">${this.problem}</p>`}
      <p role="status">
        ${this.rows === undefined ? this.words : `reading, ${formatNumber(this.rows)} rows so far`}
      </p>
      <button
        class=${log ? '' : 'primary'}
        ?disabled=${session.readOnly || this.rows !== undefined}
        @click=${() => void this.#choose(session)}
      >
        ${log ? 'Another file…' : 'Read a log…'}
      </button>`;
  }

  #recording(session: Session, recording: Recording): TemplateResult {
    const { id, title, columns, source } = recording;
    const users = usersOfRecording(session.notebook, { title }).length;
    const rows = columns[0]?.values.length ?? 0;
    const off = session.readOnly;
    return html`<section aria-label="recording ${title}">
      <div class="head">
        <label
          >title
          <input
            .value=${title}
            ?disabled=${off}
            spellcheck="false"
            autocapitalize="off"
            @change=${(event: Event) => this.#run(session, renameRecording(session.notebook, { recording: id, title: textOf(event) }))}
          />
        </label>
        <span class="grow second"
          >${formatNumber(rows)} rows${source ? `, from ${source}` : ''}; read in ${users}
          ${users === 1 ? 'cell' : 'cells'}</span
        >
        <button @click=${() => void save(session, recording)}>Save as a table (CSV)</button>
        <button
          ?disabled=${off}
          @click=${() => this.#run(session, removeRecording(session.notebook, { recording: id }))}
        >
          Remove
        </button>
      </div>
      <div class="scroll" tabindex="0" role="region" aria-label="columns of ${title}">
        <table>
          <thead>
            <tr>
              <th scope="col">column</th>
              <th scope="col">unit</th>
              <th scope="col">in formulas</th>
              <th scope="col">first readings</th>
            </tr>
          </thead>
          <tbody>
            ${columns.map((column) => this.#column(session, recording, column))}
          </tbody>
        </table>
      </div>
    </section>`;
  }

  #column(
    session: Session,
    { id, title }: Recording,
    { name, unit = '', values }: Recording['columns'][number],
  ): TemplateResult {
    const change = (more: { readonly to?: string; readonly unit?: string }): void =>
      this.#run(session, changeRecordingColumn(session.notebook, { recording: id, column: name, ...more }));
    return html`<tr>
      <td>
        <input
          .value=${name}
          aria-label="name of the column ${name}"
          ?disabled=${session.readOnly}
          spellcheck="false"
          autocapitalize="off"
          @change=${(event: Event) => change({ to: textOf(event) })}
        />
      </td>
      <td>
        <input
          class="unit"
          .value=${unit}
          placeholder="none"
          aria-label="unit of ${name}"
          ?disabled=${session.readOnly}
          spellcheck="false"
          autocapitalize="off"
          @change=${(event: Event) => change({ unit: textOf(event) })}
        />
      </td>
      <td><code>${title}.${name}</code></td>
      <td class="number">
        ${values
          .slice(0, 4)
          .map((value) => (value === null ? '–' : String(value)))
          .join(', ')}${values.length > 4 ? ' …' : ''}
      </td>
    </tr>`;
  }

  #chosen(session: Session, log: ChosenLog): TemplateResult {
    const table = understoodLog(log);
    if (isRefusal(table)) return html`<p class="error" role="alert">${log.from}: ${table.message}</p>`;
    const unknown = table.columns.filter(({ unknownUnit }) => unknownUnit);
    const waits = table.asksDecimalMark || unknown.length > 0;
    return html`<section aria-label="the log to be read">
      <p>From <b>${log.from}</b>: these are its first lines.</p>
      <div class="choices">
        <label
          >title
          <input
            .value=${log.title}
            spellcheck="false"
            autocapitalize="off"
            @change=${(event: Event) => (this.log = { ...log, title: textOf(event) })}
          />
        </label>
        <label
          >decimal mark
          <select
            @change=${(event: Event) => this.#option(log, { decimalMark: textOf(event) === ',' ? ',' : '.' })}
          >
            ${table.asksDecimalMark ? html`<option selected disabled>choose</option>` : nothing}
            <option value="." .selected=${!table.asksDecimalMark && table.decimalMark === '.'}>point</option>
            <option value="," .selected=${!table.asksDecimalMark && table.decimalMark === ','}>comma</option>
          </select>
        </label>
        <label
          >keep every
          <select @change=${(event: Event) => this.#option(log, { every: Number(textOf(event)) })}>
            ${[1, 2, 5, 10, 100].map((each) => html`<option value=${each} .selected=${each === (log.options.every ?? 1)}>${each === 1 ? 'row' : `${each}. row`}</option>`)}
          </select>
        </label>
        <button
          class="primary"
          ?disabled=${waits || session.readOnly || this.rows !== undefined}
          @click=${() => void this.#read(session, log)}
        >
          Read it in
        </button>
      </div>
      ${waits ? html`<p class="asked">▲ ${table.asksDecimalMark ? `${table.example?.text ?? ''} has two readings: choose the decimal mark.` : `${unknown.map(({ unit }) => unit).join(', ')}: choose a known unit, or none.`}</p>` : nothing}
      ${this.#preview(log, table)}
    </section>`;
  }

  #preview(log: ChosenLog, { columns, contents, headerLines }: UnderstoodTable): TemplateResult {
    const named = headerLines > 0 && columns.some(({ header }) => header !== '');
    return html`<div class="scroll" tabindex="0" role="region" aria-label="what was understood">
      <table>
        <thead>
          <tr>
            ${columns.map(({ header }, k) => html`<th scope="col">${header || `column ${k + 1}`}</th>`)}
          </tr>
          <tr>
            ${columns.map((column, k) => html`<td>${this.#unit(log, column, k)}</td>`)}
          </tr>
        </thead>
        <tbody>
          ${(named ? contents.slice(1) : contents).slice(0, SHOWN).map(
            (line) =>
              html`<tr>
                ${line.map((each) => html`<td class="number">${each.replace(/^'/, '')}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  #unit(
    log: ChosenLog,
    { unit, unknownUnit, near, numbers, header }: TableColumn,
    k: number,
  ): TemplateResult | typeof nothing {
    if (numbers === 0 && unit === '') return nothing;
    const set = (text: string): void =>
      this.#option(log, { units: new Map([...(log.options.units ?? []), [k, text]]) });
    return html`<input
        class="unit"
        aria-label="unit of ${header || `column ${k + 1}`}"
        aria-invalid=${unknownUnit ? 'true' : 'false'}
        placeholder="none"
        spellcheck="false"
        autocapitalize="off"
        .value=${unit}
        @change=${(event: Event) => set(textOf(event))}
      />
      ${unknownUnit ? [...near.slice(0, 3), ''].map((each) => html`<button @click=${() => set(each)}>${each || 'no unit'}</button>`) : nothing}`;
  }

  #option(log: ChosenLog, options: ChosenLog['options']): void {
    this.log = { ...log, options: { ...log.options, ...options } };
    this.problem = '';
  }

  #run(session: Session, answer: Parameters<Session['run']>[0]): void {
    this.problem = isRefusal(answer) ? answer.message : '';
    this.words = '';
    if (!isRefusal(answer)) session.run(answer);
    this.requestUpdate();
  }

  async #choose(session: Session): Promise<void> {
    this.problem = '';
    this.words = '';
    try {
      const picked = await session.world.files.pick(ACCEPTED);
      if (picked) this.log = chosenLog(session, picked.name, picked.text);
    } catch (reason) {
      this.problem = reason instanceof Error ? reason.message : String(reason);
    }
  }

  async #read(session: Session, log: ChosenLog): Promise<void> {
    this.problem = '';
    this.rows = 0;
    const read = await readLog(log, (rows) => (this.rows = rows));
    this.rows = undefined;
    if (isRefusal(read)) {
      this.problem = read.message;
      return;
    }
    const added = addedLog(session, log, read);
    this.#run(session, added);
    if (isRefusal(added)) return;
    this.log = undefined;
    this.words = `${log.title}: ${readWords(read)}`;
  }
}

const textOf = (event: Event): string =>
  event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement
    ? event.target.value.trim()
    : '';

async function save({ world }: Session, recording: Recording): Promise<void> {
  await world.files.save(`${recording.title}.csv`, writeRecordingCsv(recording), 'text/csv');
}

customElements.define('recordings-leaf', RecordingsLeaf);
