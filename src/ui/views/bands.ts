/** Bands across the top: what the user has to know at once, each with what can be done about it. */

import { html, nothing, type TemplateResult } from 'lit';
import { openLeaf } from '../open-leaf.ts';
import type { Installation } from '../ports.ts';
import type { Session } from '../session.ts';

export interface Bands {
  readonly installation: Installation | undefined;
  readonly session: Session | undefined;
  /** What was restored or can not be changed. */
  readonly notices: readonly string[];
  /** The file copy has fallen behind. */
  readonly reminder: string | undefined;
  save(): void;
  later(): void;
  takeOver(session: Session): void;
  dismiss(words: string): void;
}

const band = (looks: '' | 'bad' | 'calm', words: unknown, actions: unknown = nothing): TemplateResult =>
  html`<div class="band ${looks}" role=${looks === 'bad' ? 'alert' : 'status'}>${words} ${actions}</div>`;

const button = (words: string, act: (event: Event) => void): TemplateResult =>
  html`<button @click=${act}>${words}</button>`;

export function bands(given: Bands): unknown {
  const { installation, session, notices, reminder } = given;
  const saveCopy = session ? button('Save a file copy', () => given.save()) : nothing;
  return html`
    ${
      installation?.readiness === 'insecure'
        ? html`<div class="band" role="alert">
            ▲ This address is neither https nor this computer itself: nothing works here without network, and
            what is kept on this device may be lost. Save a file copy. ${saveCopy}
          </div>`
        : nothing
    }
    ${
      session?.saved.type === 'failed'
        ? band(
            'bad',
            `▲ Not saved on this device: ${session.saved.words}. The notebook is complete in this window; save a file copy now.`,
            [saveCopy, button('Try again', () => session.saving.retry())],
          )
        : nothing
    }
    ${
      session?.computing.state === 'foreign'
        ? band(
            'bad',
            `▲ ${session.computing.words}.`,
            button('Load the page again', () => void installation?.acceptUpdate()),
          )
        : nothing
    }
    ${
      session?.readOnly && !session.newer
        ? band(
            '',
            'Another tab holds this notebook; here it is read only.',
            button('Take over', () => given.takeOver(session)),
          )
        : nothing
    }
    ${notices.map((words) =>
      band(
        '',
        words,
        button('Understood', () => given.dismiss(words)),
      ),
    )}
    ${session?.differences ? differing(session) : nothing}
    ${reminder ? band('calm', reminder, [saveCopy, button('Later', () => given.later())]) : nothing}
    ${
      installation?.updateWaiting
        ? band(
            'calm',
            'A new version is ready.',
            button('Change to it now', () => void installation.acceptUpdate()),
          )
        : nothing
    }
  `;
}

function differing(session: Session): TemplateResult {
  const count = session.differences?.list.length ?? 0;
  return band(
    '',
    `▲ ${count === 1 ? 'One result is' : `${count} results are`} computed otherwise than stored with this notebook.`,
    [
      button('Show them', ({ currentTarget }) => currentTarget && openLeaf(currentTarget, 'differences')),
      button('Understood', () => session.acceptDifferences()),
    ],
  );
}
