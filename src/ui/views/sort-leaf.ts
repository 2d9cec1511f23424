/** Sorting the rows of a block: by which column, which way, and whether its first row is a head that stays. */

import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { cellAt, isRefusal } from '../../document/index.ts';
import type { Block } from '../../document/index.ts';
import { columnLetters } from '../../expression/index.ts';
import { looksLikeHead, sortBlock, sortedRows } from '../sorting.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';

interface Key {
  readonly column: number;
  readonly descending: boolean;
}

export class SortLeaf extends LitElement {
  static override properties = {
    session: { attribute: false },
    keys: { state: true },
    head: { state: true },
    refused: { state: true },
  };
  declare session: Session | undefined;
  declare close: () => void;
  declare keys: readonly Key[];
  declare head: boolean;
  declare refused: string;

  static override styles = [
    shared,
    css`
      :host {
        display: block;
      }
      p {
        margin: 0 0 10px;
      }
      .key {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 8px;
        margin-block-end: 8px;
      }
      .key span {
        min-inline-size: 64px;
      }
      label {
        display: inline-flex;
        align-items: center;
        gap: 6px;
        min-block-size: 32px;
      }
      label input {
        min-block-size: 0;
      }
      .answers {
        display: flex;
        justify-content: flex-end;
        gap: 10px;
        margin-block-start: 12px;
      }
      @media (pointer: coarse) {
        label {
          min-block-size: 44px;
        }
        label input {
          inline-size: 22px;
          block-size: 22px;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.keys = [];
    this.head = false;
    this.refused = '';
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    const { session } = this;
    if (!changed.has('session') || !session) return;
    const block = sortBlock(session);
    const at = session.selection.column;
    const inside = at >= block.column && at < block.column + block.columns;
    this.keys = [{ column: inside ? at : block.column, descending: false }];
    this.head = looksLikeHead(session, block);
    this.refused = '';
  }

  override render(): TemplateResult | typeof nothing {
    const { session, keys } = this;
    if (!session) return nothing;
    const block = sortBlock(session);
    const { row, rows, column, columns } = block;
    const corner = `${columnLetters(column)}${row + 1}:${columnLetters(column + columns - 1)}${row + rows}`;
    const more = keys.length < Math.min(3, columns);
    return html`<p>Rows of ${corner} on ${session.worksheet.title}; the cells of a row stay together.</p>
      <label
        ><input
          type="checkbox"
          .checked=${this.head}
          @change=${(event: Event) =>
            (this.head = event.target instanceof HTMLInputElement && event.target.checked)}
        />the first row is a head and stays where it is</label
      >
      ${keys.map((key, k) => this.#key(session, key, k, block))}
      ${more ? html`<button class="link" @click=${() => this.#add(column, columns)}>then by another column…</button>` : nothing}
      ${this.refused ? html`<p class="error" role="alert">${this.refused}</p>` : nothing}
      <div class="answers">
        <button @click=${() => this.close()}>Leave it</button>
        <button class="primary" ?disabled=${session.readOnly} @click=${() => this.#sort(session)}>
          Sort
        </button>
      </div>`;
  }

  #key(session: Session, key: Key, k: number, { row, column, columns }: Block): TemplateResult {
    const set = (change: Partial<Key>): void => {
      this.keys = this.keys.map((each, at) => (at === k ? { ...each, ...change } : each));
    };
    return html`<div class="key">
      <span>${k === 0 ? 'sort by' : 'then by'}</span>
      <select
        aria-label=${k === 0 ? 'column to sort by' : `column ${k + 1} to sort by`}
        @change=${(event: Event) => set({ column: Number(valueOf(event)) })}
      >
        ${Array.from({ length: columns }, (_, each) => column + each).map(
          (each) =>
            html`<option value=${each} .selected=${each === key.column}>
              ${columnWords(session, row, each, this.head)}
            </option>`,
        )}
      </select>
      <select
        aria-label=${k === 0 ? 'order' : `order of column ${k + 1}`}
        @change=${(event: Event) => set({ descending: valueOf(event) === 'down' })}
      >
        <option value="up" .selected=${!key.descending}>ascending: 1, 2, a, b</option>
        <option value="down" .selected=${key.descending}>descending: b, a, 2, 1</option>
      </select>
      ${k > 0 ? html`<button class="link" @click=${() => (this.keys = this.keys.filter((_, at) => at !== k))}>take away</button>` : nothing}
    </div>`;
  }

  #add(column: number, columns: number): void {
    const used = new Set(this.keys.map((key) => key.column));
    const next = Array.from({ length: columns }, (_, k) => column + k).find((each) => !used.has(each));
    if (next !== undefined) this.keys = [...this.keys, { column: next, descending: false }];
  }

  #sort(session: Session): void {
    const answer = sortedRows(session, this.keys, this.head);
    if (isRefusal(answer)) this.refused = answer.message;
    else if (session.run(answer)) this.close();
  }
}

/** "B", or "B · force" where the head says so. */
function columnWords({ worksheet }: Session, row: number, column: number, head: boolean): string {
  const text = head ? cellAt(worksheet, row, column)?.content.replace(/^'/, '') : undefined;
  return text ? `${columnLetters(column)} · ${text}` : columnLetters(column);
}

const valueOf = (event: Event): string =>
  event.target instanceof HTMLSelectElement ? event.target.value : '';

customElements.define('sort-leaf', SortLeaf);
