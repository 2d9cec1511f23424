/** Three suites: "unit" runs in Node, "browser" drives a real Chromium, "bench" measures (only when asked for). */

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
    ],
  },
});
