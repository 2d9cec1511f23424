/** About the program: version, licence, source, notices, a newer version, the usual cautions. */

import { LitElement, html, nothing, type TemplateResult } from 'lit';
import type { Installation, World } from '../ports.ts';
import type { Session } from '../session.ts';
import { shared } from '../shared.styles.ts';
import { USUAL_CAUTIONS } from '../usual-cautions.ts';
import { leafStyles } from './leaf.styles.ts';

type Answer = 'asking' | 'late' | 'asked' | 'unreachable';

/** Milliseconds without an answer after which the reader is told that it may take longer. */
const PATIENCE = 20_000;

const READY: Readonly<Record<Installation['readiness'], string>> = {
  ready: 'This device can open it without network.',
  loading: 'It is not yet complete on this device: without network it may not open.',
  insecure: 'This address is neither https nor this computer itself: it does not open without network.',
  unsupported: 'This browser does not keep it: it does not open without network.',
};

export class AboutLeaf extends LitElement {
  static override styles = [shared, leafStyles];
  static override properties = {
    world: { attribute: false },
    session: { attribute: false },
    readiness: { attribute: false },
    waiting: { attribute: false },
    answer: { state: true },
  };
  declare world: World | undefined;
  declare session: Session | undefined;
  declare readiness: Installation['readiness'];
  /** A newer version is ready. */
  declare waiting: boolean;
  declare answer: Answer | undefined;

  override render(): TemplateResult | typeof nothing {
    const { world } = this;
    if (!world) return nothing;
    return html`<div class="columns">
      <section>
        <h3>Version</h3>
        <p>Swarfbook ${world.version}. ${READY[this.readiness]}</p>
        <div class="actions">
          ${
            this.waiting
              ? html`<button class="primary" @click=${() => this.#change(world)}>Change to it now</button>`
              : html`<button ?disabled=${this.answer === 'asking'} @click=${() => void this.#ask(world)}>
                  Look for a newer version
                </button>`
          }
        </div>
        <p role="status">${this.#words()}</p>
      </section>
      <section>
        <h3>Licence</h3>
        <p>
          Free software under the GNU General Public License, version 3 only. It comes without any warranty.
          You may use, study, change and pass it on under that licence.
        </p>
        <p>
          <a href="./notices.txt" target="_blank" rel="noopener"
            >The licence, and the notices of every part</a
          >
        </p>
        <p><a href="./source.tar.gz">The complete source of this version</a></p>
        <p class="second">
          Both lie beside the program and can be had without network where it is ready for that.
        </p>
      </section>
      <section>
        <h3>Always</h3>
        ${USUAL_CAUTIONS.map((words) => html`<p>▲ ${words}</p>`)}
      </section>
    </div>`;
  }

  #words(): string {
    if (this.waiting)
      return 'A newer version is ready. It begins when you change to it; everything typed is saved first.';
    if (this.answer === 'asking') return 'Asking…';
    if (this.answer === 'late')
      return 'No answer yet. A browser that has just started may wait some minutes before it asks; a newer version is then offered by itself.';
    if (this.answer === 'unreachable') return 'The place it came from could not be reached.';
    return this.answer === 'asked'
      ? 'Asked just now: there is no newer version ready at the place it came from.'
      : '';
  }

  async #ask(world: World): Promise<void> {
    this.answer = 'asking';
    const late = setTimeout(() => (this.answer = 'late'), PATIENCE);
    this.answer = (await world.installation.checkForUpdate()) ? 'asked' : 'unreachable';
    clearTimeout(late);
  }

  #change({ installation }: World): void {
    void installation.acceptUpdate();
  }
}
customElements.define('about-leaf', AboutLeaf);
