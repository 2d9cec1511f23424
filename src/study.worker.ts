/** The what-if worker: the studies with the whole catalogue behind the messages of calculation/. */

import type { FromStudy, ToStudy } from './calculation/index.ts';
import { functionTable } from './catalogue.ts';
import { StudyDesk } from './study/index.ts';

declare const self: DedicatedWorkerGlobalScope;

const post = (message: FromStudy): void => self.postMessage(message);

/** A message to ourselves comes after those that wait already: a cancel is heard. Unlike a timer it costs next to nothing. */
const { port1, port2 } = new MessageChannel();
port1.start();
const rest = (): Promise<void> =>
  new Promise((resolve) => {
    port1.addEventListener('message', () => resolve(), { once: true });
    port2.postMessage(0);
  });

const desk = new StudyDesk({ functions: functionTable(), post, rest, now: () => performance.now() });

self.addEventListener('message', ({ data }: MessageEvent<ToStudy>) => desk.take(data));
post({ type: 'ready', build: import.meta.env.VITE_BUILD ?? import.meta.env.MODE });
