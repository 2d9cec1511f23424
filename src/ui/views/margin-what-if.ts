/** What if: variants, solve, search, sweep and spread, one section in sight at a time. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import type { Session } from '../session.ts';
import { wholeSelectStyles } from '../elements/whole-select.ts';
import { shared } from '../shared.styles.ts';
import { Watching } from '../watching.ts';
import { whatIfOf, type Section, type WhatIf } from '../what-if/what-if-state.ts';
import { searchSection } from './what-if/search-section.ts';
import { solveSection } from './what-if/solve-section.ts';
import { spreadSection } from './what-if/spread-section.ts';
import { sweepSection } from './what-if/sweep-section.ts';
import { variantsSection } from './what-if/variants-section.ts';
import { whatIfStyles } from './what-if/what-if.styles.ts';

const SECTIONS: readonly {
  readonly key: Section;
  readonly words: string;
  readonly question: string;
  view(session: Session, state: WhatIf): TemplateResult;
}[] = [
  {
    key: 'variants',
    words: 'Variants',
    question: 'What if these values were others, side by side?',
    view: variantsSection,
  },
  {
    key: 'solve',
    words: 'Solve',
    question: 'Which given value makes a result what I want?',
    view: solveSection,
  },
  {
    key: 'search',
    words: 'Search',
    question: 'What is the best that keeps every limit?',
    view: searchSection,
  },
  {
    key: 'sweep',
    words: 'Sweep',
    question: 'How does a result run over a range?',
    view: sweepSection,
  },
  {
    key: 'spread',
    words: 'Spread',
    question: 'How sure is a result, and what makes it unsure?',
    view: spreadSection,
  },
];

export class MarginWhatIf extends LitElement {
  static override styles = [shared, whatIfStyles, wholeSelectStyles];
  static override properties = { session: { attribute: false } };
  declare session: Session | undefined;

  constructor() {
    super();
    new Watching(this);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    const state = whatIfOf(session);
    const section = SECTIONS.find(({ key }) => key === state.section) ?? SECTIONS[0];
    return html`<div class="sections" role="group" aria-label="kind of question">
        ${SECTIONS.map(
          ({ key, words }) =>
            html`<button
              aria-pressed=${key === state.section ? 'true' : 'false'}
              @click=${() => {
                state.section = key;
                session.changed();
              }}
            >
              ${words}
            </button>`,
        )}
      </div>
      <p class="question">${section?.question}</p>
      ${section?.view(session, state)}`;
  }
}
customElements.define('margin-what-if', MarginWhatIf);
