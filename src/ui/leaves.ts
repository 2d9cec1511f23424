/** Leaves: what is laid over the desk or the start view for a while, a row each, loaded when it is first opened. */

import { html, type TemplateResult } from 'lit';
import type { World } from './ports.ts';
import type { Session } from './session.ts';

export { openLeaf } from './open-leaf.ts';

export interface LeafPlace {
  readonly world: World;
  /** Absent on the start view. */
  readonly session: Session | undefined;
  /** What the caller handed over. */
  readonly detail: unknown;
  close(): void;
}

export interface Leaf {
  readonly key: string;
  /** Its heading. */
  readonly title: string;
  /** Brings the leaf's element. */
  load(): Promise<unknown>;
  view(place: LeafPlace): TemplateResult;
}

export const LEAVES: readonly Leaf[] = [
  {
    key: 'help',
    title: 'Help',
    load: () => import('./views/help-leaf.ts'),
    view: () => html`<help-leaf></help-leaf>`,
  },
  {
    key: 'keys',
    title: 'Keys',
    load: () => import('./views/keys-leaf.ts'),
    view: ({ session }) => html`<keys-leaf .session=${session}></keys-leaf>`,
  },
  {
    key: 'about',
    title: 'About Swarfbook',
    load: () => import('./views/about-leaf.ts'),
    view: ({ world, session }) =>
      html`<about-leaf
        .world=${world}
        .session=${session}
        .readiness=${world.installation.readiness}
        .waiting=${world.installation.updateWaiting}
      ></about-leaf>`,
  },
  {
    key: 'differences',
    title: 'Results that differ from the stored ones',
    load: () => import('./views/differences-leaf.ts'),
    view: ({ session, close }) =>
      html`<differences-leaf .session=${session} .close=${close}></differences-leaf>`,
  },
  {
    key: 'text',
    title: 'The file as text',
    load: () => import('./views/text-leaf.ts'),
    view: ({ detail }) => html`<text-leaf .file=${detail}></text-leaf>`,
  },
  {
    key: 'trial-plan',
    title: 'Plan a trial',
    load: () => import('./views/trial-plan.ts'),
    view: ({ session }) => html`<trial-plan .session=${session}></trial-plan>`,
  },
  {
    key: 'trial-record',
    title: 'Trial record',
    load: () => import('./views/trial-record.ts'),
    view: ({ session, detail }) =>
      html`<trial-record
        .session=${session}
        .trial=${typeof detail === 'string' ? detail : undefined}
      ></trial-record>`,
  },
];
