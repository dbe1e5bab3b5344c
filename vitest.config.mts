import { defineConfig } from 'vitest/config';

/** Test files that start processes and keep them between their tests: each has its modules for itself. */
const withProcesses = ['test/unit/server/**/*.test.ts'];

export default defineConfig({
  test: {
    setupFiles: ['test/setup.ts'],
    testTimeout: 30_000,
    // Much of the time goes by waiting for processes and browsers.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'rooms',
          include: ['test/**/*.test.ts'],
          exclude: ['test/editor/**', 'node_modules/**', ...withProcesses],
          // Loading the rooms anew for each of some 300 files took a fifth of the time of all tests.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'processes', include: withProcesses } },
    ],
  },
});
