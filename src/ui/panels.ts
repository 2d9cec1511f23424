/** The margin's panels as data: a row each, loaded when it is first opened. */

import { html, type TemplateResult } from 'lit';
import { openCautions } from './open-cautions.ts';
import { waitingForReview } from './review.ts';
import type { Session } from './session.ts';

export interface Panel {
  readonly key: string;
  readonly words: string;
  /** Brings the panel's element; the page is painted without it. */
  load(): Promise<unknown>;
  view(session: Session): TemplateResult;
  /** How many things in it wait for the user. */
  waiting?(session: Session): number;
}

const unseen = (session: Session): number =>
  openCautions(session).filter((each) => each.acknowledged === undefined).length;

export const PANELS: readonly Panel[] = [
  {
    key: 'working',
    words: 'Working',
    load: () => import('./views/margin-working.ts'),
    view: (session) => html`<margin-working .session=${session}></margin-working>`,
  },
  {
    key: 'functions',
    words: 'Functions',
    load: () => import('./views/margin-functions.ts'),
    view: (session) => html`<margin-functions .session=${session}></margin-functions>`,
  },
  {
    key: 'figures',
    words: 'Figures',
    load: () => import('./views/margin-figures.ts'),
    view: (session) => html`<margin-figures .session=${session}></margin-figures>`,
  },
  {
    key: 'what-if',
    words: 'What-if',
    load: () => import('./views/margin-what-if.ts'),
    view: (session) => html`<margin-what-if .session=${session}></margin-what-if>`,
  },
  {
    key: 'cautions',
    words: 'Cautions',
    load: () => import('./views/margin-cautions.ts'),
    view: (session) => html`<margin-cautions .session=${session}></margin-cautions>`,
    waiting: unseen,
  },
  {
    key: 'review',
    words: 'Review',
    load: () => import('./views/review-walk.ts'),
    view: (session) => html`<review-walk .session=${session}></review-walk>`,
    waiting: waitingForReview,
  },
];
