/** The journal as a chain: each entry carries the hash of the one before, so that a torn or missing record is noticed. */

/** One committed edit. `body` is the JSON text that was hashed. */
export interface Entry {
  readonly seq: number;
  readonly before: string;
  readonly hash: string;
  readonly body: string;
}

/** The whole notebook as it was after entry `seq`, whose hash is `hash`. */
export interface Snapshot {
  readonly seq: number;
  readonly hash: string;
  readonly body: string;
  /** Digest of the body. */
  readonly check: string;
}

/** 106-bit digest of a text; guards against torn records, not against forgery. */
export function digest(text: string): string {
  let [a, b, c, d] = [0xdeadbeef, 0x41c6ce57, 0x9e3779b9, 0x85ebca6b];
  for (let k = 0; k < text.length; k += 1) {
    const code = text.charCodeAt(k);
    a = Math.imul(a ^ code, 2_654_435_761);
    b = Math.imul(b ^ code, 1_597_334_677);
    c = Math.imul(c ^ code, 2_246_822_519);
    d = Math.imul(d ^ code, 3_266_489_917);
  }
  const mixed = (x: number, y: number): string => {
    const low = Math.imul(x ^ (x >>> 16), 2_246_822_507) ^ Math.imul(y ^ (y >>> 13), 3_266_489_909);
    return (low >>> 0).toString(16).padStart(8, '0');
  };
  return mixed(a, b) + mixed(b, a) + mixed(c, d) + mixed(d, c);
}

export function entryAfter(before: string, seq: number, body: string): Entry {
  return { seq, before, hash: digest(`${before} ${seq} ${body}`), body };
}

export function snapshotOf(seq: number, hash: string, body: string): Snapshot {
  return { seq, hash, body, check: digest(body) };
}

const isSound = (entry: Entry): boolean =>
  entry.hash === digest(`${entry.before} ${entry.seq} ${entry.body}`);

/** Whether what a browser gave back has the shape of a record at all. */
export const isRecord = (value: unknown): value is { readonly seq: number; readonly body: string } =>
  typeof value === 'object' &&
  value !== null &&
  'seq' in value &&
  typeof value.seq === 'number' &&
  'body' in value &&
  typeof value.body === 'string';

/** Entries up to a state, oldest first, as far back as each is sound and leads to the next: the steps that led there. */
export function stepsTo(
  { seq, hash }: { readonly seq: number; readonly hash: string },
  entries: readonly Entry[],
): readonly Entry[] {
  const bySeq = new Map(entries.filter(isRecord).map((entry) => [entry.seq, entry]));
  const steps: Entry[] = [];
  let wanted = hash;
  for (let at = seq; ; at -= 1) {
    const entry = bySeq.get(at);
    if (!entry || entry.hash !== wanted || !isSound(entry)) break;
    steps.push(entry);
    wanted = entry.before;
  }
  return steps.toReversed();
}

/** Whether a message or a record is an entry whose hash is right. */
export const isEntry = (value: unknown): value is Entry =>
  isRecord(value) &&
  'before' in value &&
  typeof value.before === 'string' &&
  'hash' in value &&
  typeof value.hash === 'string' &&
  isSound(value as Entry);

/** Whether a record is a snapshot whose body is whole. */
export const isSnapshot = (value: Snapshot): boolean => isRecord(value) && value.check === digest(value.body);

export interface Chain {
  readonly snapshot: Snapshot;
  /** Entries after the snapshot, in order, each sound and following the one before. */
  readonly entries: readonly Entry[];
  readonly seq: number;
  readonly hash: string;
  /** Something was torn or missing: an older snapshot was taken, or entries behind a gap could not be used. */
  readonly damaged: boolean;
}

/** The longest valid chain in what was found; undefined where no snapshot is sound. */
export function longestChain(snapshots: readonly Snapshot[], entries: readonly Entry[]): Chain | undefined {
  const bySeq = new Map(entries.filter(isRecord).map((entry) => [entry.seq, entry]));
  const sound = snapshots.filter(isSnapshot).sort((a, b) => b.seq - a.seq);
  const torn = sound.length < snapshots.length || bySeq.size < entries.length;
  const lastSeq = Math.max(0, ...bySeq.keys(), ...sound.map((each) => each.seq));
  let best: Chain | undefined;
  for (const snapshot of sound) {
    const used: Entry[] = [];
    let { seq, hash } = snapshot;
    for (let next = bySeq.get(seq + 1); next; next = bySeq.get(seq + 1)) {
      if (next.before !== hash || !isSound(next)) break;
      used.push(next);
      ({ seq, hash } = next);
    }
    const damaged = torn || seq < lastSeq;
    if (!best || seq > best.seq) best = { snapshot, entries: used, seq, hash, damaged };
  }
  return best;
}
