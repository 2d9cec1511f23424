/** What can be done with an answer: into the cells, as a variant, or the question kept to be asked again. */

import { html, nothing, type TemplateResult } from 'lit';
import { addVariant, enterMany, freshPartId, partsOf, putPart, removeParts } from '../../document/index.ts';
import type { CellPlace, Study, StudySetting } from '../../document/index.ts';
import type { Session } from '../session.ts';

/** A content for a cell, as an answer gives it. */
export interface FoundContent {
  readonly place: CellPlace;
  readonly content: string;
}

/** Puts contents into their cells as one step. */
export function putInto(session: Session, found: readonly FoundContent[], description: string): void {
  const entries = found.map(({ place, content }) => ({ ...place, typed: content }));
  const { transaction, left } = enterMany(session.notebook, entries, description);
  if (session.run(transaction) && left[0]) session.say(left[0].why, true);
}

/** Asks for a title from anywhere in the page. */
export function askTitle(
  from: EventTarget,
  title: string,
  value: string,
  done: (text: string) => void,
): void {
  const detail = { title, words: '', value, done };
  from.dispatchEvent(new CustomEvent('ask-text', { bubbles: true, composed: true, detail }));
}

export function keepAsVariant(session: Session, from: EventTarget, found: readonly FoundContent[]): void {
  const proposal = found.map(({ content }) => content).join(', ');
  askTitle(from, 'Title of the variant', proposal, (title) => {
    if (session.run(addVariant(session.notebook, { title, values: found })))
      session.say(`${title} is kept under Variants`);
  });
}

/** The two ways to take an answer over. */
export function takeOver(session: Session, found: readonly FoundContent[], what: string): TemplateResult {
  return html`<div class="acts">
    <button ?disabled=${session.readOnly} @click=${() => putInto(session, found, what)}>
      Put into the page
    </button>
    <button
      ?disabled=${session.readOnly}
      @click=${(event: Event) => event.target && keepAsVariant(session, event.target, found)}
    >
      Keep as a variant
    </button>
  </div>`;
}

/** Questions of one kind that were kept, and the way to keep the one in the fields. */
export function keptQuestions<Kind extends Study['type']>(
  session: Session,
  kind: Kind,
  current: Study,
  open: (study: Extract<Study, { readonly type: Kind }>) => void,
): TemplateResult {
  const isOfKind = (
    setting: StudySetting,
  ): setting is StudySetting & { readonly study: Extract<Study, { readonly type: Kind }> } =>
    setting.study.type === kind;
  const kept = partsOf(session.notebook, 'studies').filter(isOfKind);
  const keep = (title: string): void => {
    const record: StudySetting = { id: freshPartId(session.notebook, 'studies'), title, study: current };
    session.run(
      putPart(session.notebook, { part: 'studies', record, description: `keep the question ${title}` }),
    );
  };
  return html`<h3>Kept questions</h3>
    ${
      kept.length === 0
        ? nothing
        : html`<ul class="plain">
            ${kept.map(
              ({ id, title, study }) =>
                html`<li class="row">
                  <button class="link" @click=${() => open(study)}>${title}</button>
                  <button
                    class="link"
                    ?disabled=${session.readOnly}
                    @click=${() =>
                      session.run(
                        removeParts(session.notebook, {
                          part: 'studies',
                          ids: [id],
                          description: `remove the question ${title}`,
                        }),
                      )}
                  >
                    remove
                  </button>
                </li>`,
            )}
          </ul>`
    }
    <p>
      <button
        ?disabled=${session.readOnly}
        @click=${(event: Event) => event.target && askTitle(event.target, 'Title of the question', '', (title) => title && keep(title))}
      >
        Keep this question
      </button>
    </p>`;
}
