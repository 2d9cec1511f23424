import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Watchers } from '../../src/ui/watchers.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const counted = (watchers: Watchers): (() => number) => {
  let count = 0;
  watchers.add(() => (count += 1));
  return () => count;
};

test('what changes is told at once', () => {
  const watchers = new Watchers();
  const count = counted(watchers);
  watchers.tell();
  watchers.tell();
  expect(count()).toBe(2);
});

test('an edit and its results are told together', () => {
  const watchers = new Watchers();
  const count = counted(watchers);
  watchers.hold();
  watchers.tell();
  watchers.tell();
  expect(count()).toBe(0);
  watchers.release();
  expect(count()).toBe(1);
  watchers.tell();
  expect(count()).toBe(2);
});

test('results that do not come in time are not waited for', () => {
  const watchers = new Watchers();
  const count = counted(watchers);
  watchers.hold();
  watchers.tell();
  // Less than one frame at 60 a second.
  vi.advanceTimersByTime(1000 / 60);
  expect(count()).toBe(1);
});

test('holding again does not make the first edit wait longer', () => {
  const watchers = new Watchers();
  const count = counted(watchers);
  watchers.hold();
  watchers.tell();
  vi.advanceTimersByTime(8);
  watchers.hold();
  vi.advanceTimersByTime(1000 / 60 - 8);
  expect(count()).toBe(1);
});

test('where nothing was held back nothing is told on release', () => {
  const watchers = new Watchers();
  const count = counted(watchers);
  watchers.hold();
  watchers.release();
  watchers.release();
  expect(count()).toBe(0);
});

test('who makes the browser lay out the page is told last, whenever it came', () => {
  const watchers = new Watchers();
  const order: string[] = [];
  watchers.add(() => order.push('page'), 'last');
  watchers.add(() => order.push('head'));
  const end = watchers.add(() => order.push('margin'));
  watchers.tell();
  expect(order).toEqual(['head', 'margin', 'page']);
  end();
  order.length = 0;
  watchers.tell();
  expect(order).toEqual(['head', 'page']);
});

test('what stands beside the page follows after a frame, once for all changes, or when everything is wanted', () => {
  const watchers = new Watchers();
  let count = 0;
  watchers.add(() => (count += 1), 'later');
  watchers.tell();
  watchers.tell();
  expect(count).toBe(0);
  vi.advanceTimersByTime(1000);
  expect(count).toBe(1);
  watchers.hold();
  watchers.tell();
  watchers.flush();
  expect(count).toBe(2);
  watchers.flush();
  vi.advanceTimersByTime(1000);
  expect(count).toBe(2);
});
