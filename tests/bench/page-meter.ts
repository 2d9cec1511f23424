/** Meters inside the page: when values are painted, what an edit costs up to the frame that shows it, how even scrolling is. */

import type { Page } from 'playwright-core';

/** Milliseconds from the start of the navigation to the frame after the first painted value. */
declare global {
  interface Window {
    paintedAt?: number;
    edits?: { readonly work: number; readonly frames: number }[];
  }
}

/** To be set before the page loads; the answer stands in `paintedAt`. */
export function watchFirstValue(): void {
  const look = (): void => {
    const grid = document.querySelector('swarf-book')?.shadowRoot?.querySelector('page-grid');
    if (!grid?.shadowRoot?.querySelector('td.number .value')?.textContent)
      return void requestAnimationFrame(look);
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', () => (window.paintedAt = performance.now()));
    port1.start();
    requestAnimationFrame(() => port2.postMessage(0));
  };
  requestAnimationFrame(look);
}

/**
 * Counts for each Enter: work is the time to the last change of the cell `watched` plus the time of the frame that shows it
 * (its callbacks, style, layout, paint); the wait between the two is not counted. `frames`: how many frames showed a change
 * of the page or of the entry line, up to the one with the result; 1 where the edit and its result are seen together. The
 * meter asks for no frame by itself: it would be one more.
 */
export function watchEdits([row, column]: readonly [number, number]): void {
  const app = document.querySelector('swarf-book')?.shadowRoot;
  const grid = app?.querySelector('page-grid')?.shadowRoot;
  const line = app?.querySelector('entry-line')?.shadowRoot;
  const cell = grid?.querySelector(`tr[data-row="${row}"] td[data-column="${column}"]`);
  if (!grid || !line || !cell) throw new Error('no such cell');
  const all = { subtree: true, childList: true, characterData: true, attributes: true } as const;
  window.edits = [];
  let start = 0;
  let changedAt = 0;
  let frames = 0;
  let isAwaited = false;
  const frame = (): void => {
    const began = performance.now();
    isAwaited = false;
    frames += 1;
    if (changedAt === 0) return;
    const work = changedAt - start;
    start = 0;
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', () => {
      performance.mark('shown');
      window.edits?.push({ work: work + (performance.now() - began), frames });
    });
    port1.start();
    port2.postMessage(0);
  };
  new MutationObserver(() => (changedAt = performance.now())).observe(cell, all);
  const seen = new MutationObserver(() => {
    if (start === 0 || isAwaited) return;
    isAwaited = true;
    requestAnimationFrame(frame);
  });
  seen.observe(grid, all);
  seen.observe(line, all);
  window.addEventListener(
    'keydown',
    ({ key }) => {
      if (key !== 'Enter') return;
      performance.mark('key');
      start = performance.now();
      changedAt = 0;
      frames = 0;
    },
    { capture: true },
  );
}

/** Frame times in milliseconds while the wheel turns. */
export function watchFrames(duration: number): Promise<number[]> {
  return new Promise((resolve) => {
    const times: number[] = [];
    const start = performance.now();
    let before = start;
    const frame = (): void => {
      const now = performance.now();
      times.push(now - before);
      before = now;
      if (now - start < duration) requestAnimationFrame(frame);
      else resolve(times.slice(1));
    };
    requestAnimationFrame(frame);
  });
}

/** Makes the page's processor slower by this factor. */
export async function slow(page: Page, rate: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate });
}

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
}

/** Records what the page's main thread does; the answer gives its processor time, in milliseconds, from each key to the frame that showed the result. */
export async function processorTimes(page: Page): Promise<() => Promise<number[]>> {
  const session = await page.context().browser()?.newBrowserCDPSession();
  if (!session) throw new Error('no browser');
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    traceConfig: { includedCategories: ['toplevel', 'blink.user_timing'] },
    transferMode: 'ReportEvents',
  });
  return async () => {
    const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
    await session.send('Tracing.end');
    await complete;
    const marks = events
      .filter(({ name }) => name === 'key' || name === 'shown')
      .toSorted((a, b) => a.ts - b.ts);
    const [first] = marks;
    const tasks = events.filter(
      ({ name, pid, tid }) => name.endsWith('RunTask') && pid === first?.pid && tid === first.tid,
    );
    return marks.flatMap((key, k) => {
      const shown = marks[k + 1];
      if (key.name !== 'key' || shown?.name !== 'shown') return [];
      const during = tasks.filter(({ ts, dur = 0 }) => ts + dur > key.ts && ts < shown.ts);
      return [during.reduce((sum, { tdur = 0 }) => sum + tdur, 0) / 1000];
    });
  };
}

/** Value below which a share of the list lies. */
export function quantile(list: readonly number[], share: number): number {
  const sorted = list.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}
