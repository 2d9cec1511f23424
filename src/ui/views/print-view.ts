/** The notebook on paper: first page with all given values, worksheets, figures, workings, cautions. Exists only while it is printed. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import type { Explanation } from '../../calculation/index.ts';
import { closingPages } from '../print/closing-pages.ts';
import { firstPage } from '../print/first-page.ts';
import { printStyles } from '../print/print.styles.ts';
import { explanationKey, markedResults, resultWorkings } from '../print/result-workings.ts';
import { worksheetPages } from '../print/worksheet-pages.ts';
import type { Session } from '../session.ts';

/** How long the calculator may take for the workings before the page is printed without those that are missing. */
const PATIENCE = 3_000;
/** After the last change: the workings are fetched, so that the browser's own print command finds them. */
const QUIET = 1_500;

export class PrintView extends LitElement {
  static override properties = { session: { attribute: false }, printing: { state: true } };
  static override styles = printStyles;
  declare session: Session | undefined;
  declare printing: boolean;

  readonly #explanations = new Map<string, Explanation>();
  /** State of the notebook for which the workings are at hand or will be. */
  #wanted: number | undefined;
  #following: Session | undefined;
  #unfollow: (() => void) | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

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
    this.#follow(undefined);
  }

  override willUpdate(): void {
    this.#follow(this.session);
  }

  #follow(session: Session | undefined): void {
    if (session === this.#following) return;
    this.#unfollow?.();
    clearTimeout(this.#timer);
    this.#following = session;
    this.#explanations.clear();
    this.#wanted = undefined;
    this.#unfollow = session?.subscribe(() => this.#later(session));
    if (session) this.#later(session);
  }

  #later(session: Session): void {
    if (this.#wanted === session.version) return;
    this.#wanted = session.version;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.prepare(), QUIET);
  }

  /** Fetches what is not at hand at once: the steps of the marked results, and what draws the figures. */
  async prepare(): Promise<void> {
    const { session } = this;
    if (!session) return;
    const asked = markedResults(session).map(async ({ address }) => {
      const explanation = await session.explain(address);
      if (session === this.session) this.#explanations.set(explanationKey(address), explanation);
    });
    if (session.notebook.parts?.figures) asked.push(this.#figures(session));
    const given = new Promise<void>((resolve) => void setTimeout(resolve, PATIENCE));
    await Promise.race([Promise.allSettled(asked), given]);
  }

  async #figures(session: Session): Promise<void> {
    const { prepareFigures } = await import('../figures/notebook-figure.ts');
    await prepareFigures(session);
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session || !this.printing) return nothing;
    const { worksheets, parts } = session.notebook;
    const figures = customElements.get('notebook-figure') ? (parts?.figures ?? []) : [];
    return html`${firstPage(session)}
      <div class="page">
        ${session.showFormulas ? html`<p class="legend">Formulas in place of values.</p>` : nothing}
        ${
          session.results.fromLastTime
            ? html`<p class="legend">▲ Values from last time, not yet computed again.</p>`
            : nothing
        }
        <p class="legend">
          Underlined: given. Dotted, with ◷: measured. ▲ caution, △ acknowledged: see the last pages.
        </p>
        ${worksheets.map((worksheet) => worksheetPages(session, worksheet))}
      </div>
      ${
        figures.length === 0
          ? nothing
          : html`<h2>Figures</h2>
              ${figures.map((figure) => html`<notebook-figure .session=${session} .figure=${figure}></notebook-figure>`)}`
      }
      ${resultWorkings(session, this.#explanations)} ${closingPages(session)}`;
  }
}

customElements.define('print-view', PrintView);
