/** The other answer of a command: why it is not possible, in words for the user. */

export interface Refusal {
  readonly message: string;
  /** The readings between which the user may choose ("1.234" under a decimal comma), as canonical text. */
  readonly readings?: readonly string[];
  /** What would be possible instead (D_1 for the name D1). */
  readonly suggestion?: string;
}

export function isRefusal<T extends object>(answer: T | Refusal): answer is Refusal {
  return 'message' in answer;
}
