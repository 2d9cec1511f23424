/** The generator xoshiro128** 1.1: 32 bits a step, period 2^128 - 1. */

export class Xoshiro {
  readonly #state: Uint32Array;

  /** Four words, not all zero. */
  constructor(state: readonly [number, number, number, number]) {
    this.#state = Uint32Array.from(state);
  }

  /** State from one word by splitmix32 (the finaliser of MurmurHash3 over a Weyl sequence). */
  static seeded(seed: number): Xoshiro {
    let word = seed | 0;
    const mixed = (): number => {
      word = (word + 0x9e3779b9) | 0;
      let z = word ^ (word >>> 16);
      z = Math.imul(z, 0x85ebca6b);
      z ^= z >>> 13;
      z = Math.imul(z, 0xc2b2ae35);
      return (z ^ (z >>> 16)) >>> 0;
    };
    return new Xoshiro([mixed(), mixed(), mixed(), mixed() | 1]);
  }

  /** The next 32 bits as a whole number. */
  word(): number {
    const s = this.#state;
    const [s0 = 0, s1 = 0] = s;
    const product = Math.imul(s1, 5);
    const result = Math.imul((product << 7) | (product >>> 25), 9) >>> 0;
    s[2]! ^= s0;
    s[3]! ^= s1;
    s[1]! ^= s[2]!;
    s[0]! ^= s[3]!;
    s[2]! ^= s1 << 9;
    s[3] = (s[3]! << 11) | (s[3]! >>> 21);
    return result;
  }

  /** A number in [0, 1) of 53 bits. */
  next(): number {
    return ((this.word() >>> 5) * 0x4000000 + (this.word() >>> 6)) / 0x20000000000000;
  }

  /** A whole number in [0, below). */
  below(below: number): number {
    return Math.floor(this.next() * below);
  }
}
