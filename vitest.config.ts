/** Suites: "unit" runs in Node, "browser" drives a real Chromium against the built page; "soak" and "bench" kill and measure when asked for. */

import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/bench/**'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 300_000,
          maxWorkers: 2,
          // A browser on a busy computer misses a moment now and then; where something could be lost once is enough (retry 0 there).
          retry: 1,
        },
      },
      {
        test: {
          name: 'soak',
          include: ['tests/browser/**/*.soak.ts'],
          testTimeout: 3_600_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
      {
        test: {
          name: 'bench',
          include: ['tests/bench/**/*.bench.ts'],
          testTimeout: 600_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
