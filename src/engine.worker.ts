/** The worker: an engine with the whole catalogue behind the messages of calculation/. */

import type { FromEngine, ToEngine } from './calculation/index.ts';
import { DEFINITIONS, functionTable } from './catalogue.ts';
import { createEngine } from './engine/index.ts';

declare const self: DedicatedWorkerGlobalScope;

/** Columns of numbers are handed over instead of copied. */
function post(message: FromEngine): void {
  const columns =
    message.type === 'results' ? [message.numbers.addresses.buffer, message.numbers.values.buffer] : [];
  self.postMessage(message, columns);
}

const engine = createEngine({
  functions: functionTable(),
  // What is computed by iteration may take long; the watchdog has to know in which cell.
  heavy: new Set(DEFINITIONS.filter((definition) => 'compute' in definition).map(({ name }) => name)),
  onStarted: (address) => post({ type: 'started', address }),
});

self.addEventListener('message', ({ data }: MessageEvent<ToEngine>) => engine.handle(data, post));
post({ type: 'ready', build: import.meta.env.VITE_BUILD ?? import.meta.env.MODE });
