import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/editor/**', 'node_modules/**'],
    setupFiles: ['test/setup.ts'],
    testTimeout: 30_000,
    // Much of the time goes by waiting for processes and browsers.
    maxWorkers: '100%',
  },
});
