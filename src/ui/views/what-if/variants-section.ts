/** Variants: which one stands on the page, its own values, and the way to the table. */

import { html, nothing, type TemplateResult } from 'lit';
import {
  addVariant,
  BASE,
  makeBase,
  ownValues,
  removeVariant,
  renameVariant,
  setVariantValue,
  shownVariant,
  showVariant,
  variantsOf,
} from '../../../document/index.ts';
import type { Variant } from '../../../document/index.ts';
import { cellLink } from '../../cell-links.ts';
import { openLeaf } from '../../open-leaf.ts';
import { editedText, typing } from '../../number-locale.ts';
import type { Session } from '../../session.ts';
import { askTitle } from '../../what-if/acting.ts';
import { cellWords, givensOf, keyOf, proposed } from '../../what-if/candidate-cells.ts';

export function variantsSection(session: Session): TemplateResult {
  const { notebook } = session;
  const variants = variantsOf(notebook);
  const shown = shownVariant(notebook);
  return html`
    <ul class="plain" aria-label="variants">
      <li class="row">
        ${standing(session, BASE, 'Base', !shown)}
        <span class="second">the notebook's own values</span>
      </li>
      ${variants.map((variant) => item(session, variant, variant.id === shown?.id))}
    </ul>
    <div class="acts">
      <button
        ?disabled=${session.readOnly}
        @click=${(event: Event) => event.target && askTitle(event.target, 'Title of the new variant', '', (title) => session.run(addVariant(session.notebook, { title })))}
      >
        New variant
      </button>
      <button
        ?disabled=${variants.length === 0}
        @click=${(event: Event) => event.target && openLeaf(event.target, 'variants')}
      >
        Compare side by side
      </button>
    </div>
    ${
      shown
        ? html`<p class="second">
            The page shows ${shown.title}. What you type into its own cells belongs to it; every other cell is
            shared with the base.
          </p>`
        : nothing
    }
  `;
}

function standing(session: Session, id: string, title: string, shown: boolean): TemplateResult {
  return html`<label>
    <input
      type="radio"
      name="shown"
      ?disabled=${session.readOnly}
      .checked=${shown}
      @change=${() => session.run(showVariant(session.notebook, { id }))}
    />
    <b>${title}</b>
  </label>`;
}

function item(session: Session, variant: Variant, shown: boolean): TemplateResult {
  const { id, title } = variant;
  const { notebook, readOnly } = session;
  const own = ownValues(notebook, variant);
  const candidate = proposed(session, givensOf(session));
  const selected = candidate?.place;
  const isOwn = selected && own.some(({ place }) => keyOf(place) === candidate.key);
  return html`<li>
    <div class="row">
      ${standing(session, id, title, shown)}
      <span class="acts">
        <button
          class="link"
          ?disabled=${readOnly}
          @click=${(event: Event) => event.target && askTitle(event.target, 'Title of the variant', title, (text) => session.run(renameVariant(session.notebook, { id, title: text })))}
        >
          rename
        </button>
        <button class="link" ?disabled=${readOnly} @click=${() => session.run(makeBase(notebook, { id }))}>
          make it the base
        </button>
        <button
          class="link"
          ?disabled=${readOnly}
          @click=${() => session.run(removeVariant(notebook, { id }))}
        >
          remove
        </button>
      </span>
    </div>
    ${own.map(
      ({ place, content }) =>
        html`<div class="field">
          <span>${cellLink(session, place)}</span>
          <input
            aria-label="${cellWords(session, place)} in ${title}; empty takes the difference back"
            .value=${editedText(content, notebook.currency)}
            ?disabled=${readOnly}
            @change=${(event: Event) => set(session, id, place, event)}
          />
        </div>`,
    )}
    ${
      selected && !isOwn
        ? html`<button
            class="link"
            ?disabled=${readOnly}
            @click=${() =>
              session.run(
                setVariantValue(notebook, {
                  id,
                  place: selected,
                  typed: currentText(session, selected),
                  ...typing(),
                }),
              )}
          >
            give ${candidate.words} a value of its own
          </button>`
        : nothing
    }
  </li>`;
}

/** What stands in the cell, as it would be typed here. */
function currentText(
  session: Session,
  { worksheet, row, column }: Variant['values'][number]['place'],
): string {
  const sheet = session.notebook.worksheets.find(({ id }) => id === worksheet);
  return editedText(sheet?.rows[row]?.[column]?.content ?? '', session.notebook.currency);
}

function set(session: Session, id: string, place: Variant['values'][number]['place'], event: Event): void {
  const field = event.target as HTMLInputElement;
  session.run(setVariantValue(session.notebook, { id, place, typed: field.value.trim(), ...typing() }));
}
