/** Bands across the top: what the user has to know at once, each with what can be done about it. */

import { html, nothing } from 'lit';
import type { Installation } from '../ports.ts';
import type { Session } from '../session.ts';

export interface Bands {
  readonly installation: Installation | undefined;
  readonly session: Session | undefined;
  /** What was restored or can not be changed. */
  readonly notices: readonly string[];
  save(): void;
  takeOver(session: Session): void;
  dismiss(words: string): void;
}

export function bands({ installation, session, notices, save, takeOver, dismiss }: Bands): unknown {
  return html`
    ${
      installation?.readiness === 'insecure'
        ? html`<div class="band" role="alert">
            ▲ This address is neither https nor this computer itself: nothing works here without network, and
            what is kept on this device may be lost. Save a file copy.
            ${session ? html`<button @click=${() => save()}>Save a file copy</button>` : nothing}
          </div>`
        : nothing
    }
    ${
      session?.saved.type === 'failed'
        ? html`<div class="band bad" role="alert">
            ▲ Not saved on this device: ${session.saved.words}. The notebook is complete in this window; save
            a file copy now.
            <button @click=${() => save()}>Save a file copy</button>
          </div>`
        : nothing
    }
    ${
      session?.readOnly
        ? html`<div class="band" role="status">
            Another tab holds this notebook; here it is read only.
            <button @click=${() => takeOver(session)}>Take over</button>
          </div>`
        : nothing
    }
    ${notices.map(
      (words) =>
        html`<div class="band" role="status">
          ${words} <button @click=${() => dismiss(words)}>Understood</button>
        </div>`,
    )}
    ${
      installation?.updateWaiting
        ? html`<div class="band calm" role="status">
            A new version is ready.
            <button
              @click=${() => installation.acceptUpdate(async () => void (await session?.saving.written()))}
            >
              Change to it now
            </button>
          </div>`
        : nothing
    }
  `;
}
