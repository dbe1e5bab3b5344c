import { defineConfig } from 'vitest/config';

/**
 * Test files that have their modules for themselves: those that start processes or browsers and keep them between their tests,
 * and those with so much in memory that they take twice as long among what others leave behind.
 */
const forThemselves = [
  'test/unit/server/**/*.test.ts',
  'test/unit/webview/**/*.test.ts',
  'test/unit/table/badInput.test.ts',
  'test/unit/audio/decode/openAudio.test.ts',
  'test/standards/decoding.test.ts',
  'test/standards/loudness.test.ts',
  'test/standards/pitchTools.test.ts',
];

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
          exclude: ['test/editor/**', 'node_modules/**', ...forThemselves],
          // Loading the rooms anew for each of some 300 files took a fifth of the time of all tests.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'apart', include: forThemselves } },
    ],
  },
});
