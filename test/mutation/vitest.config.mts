import { defineConfig } from 'vitest/config';

// The tests that judge the mutants of one run; test/mutation/run.mjs chooses them.
export default defineConfig({
  test: {
    include: (process.env.ZONEWRIGHT_MUTATION_TESTS ?? '').split('\n').filter(Boolean),
    setupFiles: ['test/setup.ts'],
    testTimeout: 30_000,
  },
});
