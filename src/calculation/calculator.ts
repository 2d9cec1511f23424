/** Whoever computes a notebook for the page: the worker, or the engine itself in tests and on the command line. */

import type { FromEngine, ToEngine } from './messages.ts';

export interface Calculator {
  /** Carries a message out and posts every answer before it returns. Never throws for what stands in a notebook. */
  handle(message: ToEngine, post: (message: FromEngine) => void): void;
}
