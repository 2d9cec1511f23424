/** What a newer program wrote and this one does not know. */

/** Unknown keys of a file at this level, kept unread and written back. */
export interface Kept {
  readonly kept?: Readonly<Record<string, unknown>>;
}
