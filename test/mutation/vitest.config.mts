import { readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

/** The tests that judge the mutants of one run; test/mutation/run.mjs chooses them. */
const include = (process.env.ZONEWRIGHT_MUTATION_TESTS ?? '').split('\n').filter(Boolean);

export default defineConfig({
  test: {
    include,
    // It loads the library of property tests, which takes as long as many tests do, at each mutant.
    setupFiles: [
      'test/setupFolders.ts',
      ...(include.some((test) => readFileSync(test, 'utf8').includes('fast-check')) ? ['test/setup.ts'] : []),
    ],
    testTimeout: 30_000,
  },
});
