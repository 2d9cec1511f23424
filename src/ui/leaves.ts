/** Leaves: what is laid over the desk or the start view for a while, a row each, loaded when it is first opened. */

import { html, type TemplateResult } from 'lit';
import { fetchHelp } from './fetched-later.ts';
import type { World } from './ports.ts';
import type { Session } from './session.ts';

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
  /** It can be printed for itself. */
  readonly printed?: true;
  /** Brings the leaf's element. */
  load(): Promise<unknown>;
  view(place: LeafPlace): TemplateResult;
}

export const LEAVES: readonly Leaf[] = [
  {
    key: 'help',
    title: 'Help',
    load: fetchHelp,
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
  {
    key: 'table',
    title: 'A table of another program',
    load: () => import('./views/table-leaf.ts'),
    view: ({ session, detail, close }) =>
      html`<table-leaf .session=${session} .table=${detail} .close=${close}></table-leaf>`,
  },
  {
    key: 'list',
    title: 'A list of cells',
    load: () => import('./views/list-leaf.ts'),
    view: ({ session, detail, close }) =>
      html`<list-leaf .session=${session} .table=${detail} .close=${close}></list-leaf>`,
  },
  {
    key: 'sort',
    title: 'Sort rows',
    load: () => import('./views/sort-leaf.ts'),
    view: ({ session, close }) => html`<sort-leaf .session=${session} .close=${close}></sort-leaf>`,
  },
  {
    key: 'figure',
    title: 'Figure',
    load: () => import('./views/figure-leaf.ts'),
    view: ({ session, detail }) => html`<figure-leaf .session=${session} .figure=${detail}></figure-leaf>`,
  },
  {
    key: 'cell',
    title: 'About this cell',
    load: () => import('./views/cell-properties.ts'),
    view: ({ session }) => html`<cell-properties .session=${session}></cell-properties>`,
  },
  {
    key: 'note',
    title: 'Note',
    load: () => import('./views/note-leaf.ts'),
    view: ({ session, close }) => html`<note-leaf .session=${session} .close=${close}></note-leaf>`,
  },
  {
    key: 'choices',
    title: 'What may be picked',
    load: () => import('./views/choices-leaf.ts'),
    view: ({ session, close }) => html`<choices-leaf .session=${session} .close=${close}></choices-leaf>`,
  },
  {
    key: 'trial-reading',
    title: 'What the trial tells',
    load: () => import('./views/trial-reading.ts'),
    view: ({ session, detail }) =>
      html`<trial-reading
        .session=${session}
        .trial=${typeof detail === 'string' ? detail : undefined}
      ></trial-reading>`,
  },
  {
    key: 'recordings',
    title: 'Recordings',
    load: () => import('./views/recordings-leaf.ts'),
    view: ({ session }) => html`<recordings-leaf .session=${session}></recordings-leaf>`,
  },
  {
    key: 'variants',
    title: 'Variants side by side',
    printed: true,
    load: () => import('./views/what-if/variants-table.ts'),
    view: ({ session }) => html`<variants-table .session=${session}></variants-table>`,
  },
  {
    key: 'hand-over',
    title: 'Hand the notebook over',
    load: () => import('./views/hand-over.ts'),
    view: ({ session, close }) => html`<hand-over .session=${session} .close=${close}></hand-over>`,
  },
  {
    key: 'compare',
    title: 'Compare with a received notebook',
    load: () => import('./views/compare-view.ts'),
    view: ({ session, detail, close }) =>
      html`<compare-view .session=${session} .received=${detail} .close=${close}></compare-view>`,
  },
];
