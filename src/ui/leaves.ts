/** Leaves: what is laid over the desk or the start view for a while, a row each, loaded when it is first opened. */

import type { TemplateResult } from 'lit';
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
  /** Brings the leaf's element. */
  load(): Promise<unknown>;
  view(place: LeafPlace): TemplateResult;
}

export const LEAVES: readonly Leaf[] = [];

/** Asks for a leaf from anywhere in the page. */
export function openLeaf(from: EventTarget, key: string, detail?: unknown): void {
  from.dispatchEvent(
    new CustomEvent('open-leaf', { bubbles: true, composed: true, detail: { key, detail } }),
  );
}
