import { defineConfig } from 'vitest/config';

/**
 * Tests that start tools and browsers. Starting a process takes ten times as long from a worker that holds what hundreds of
 * test files leave behind. A worker has one browser, and one tab for all pages.
 */
const withTools = [
  'test/standards/**/*.test.ts',
  'test/unit/webview/**/*.test.ts',
  'test/unit/comparison/page.test.ts',
  'test/unit/server/browserHost.test.ts',
];

/**
 * Test files that have their modules for themselves: those that start processes and keep them between their tests, and those
 * with so much in memory that they take twice as long among what others leave behind.
 */
const forThemselves = [
  // It has the engine count what runs, which makes all that runs after it in its process slower.
  'test/unit/growth/growth.test.ts',
  'test/unit/server/**/*.test.ts',
  'test/unit/table/badInput.test.ts',
  'test/unit/audio/decode/openAudio.test.ts',
];

const never = ['test/editor/**', 'node_modules/**'];

export default defineConfig({
  test: {
    setupFiles: ['test/setup.ts'],
    testTimeout: 30_000,
    hookTimeout: 30_000,
    // Much of the time goes by waiting for processes and browsers.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'rooms',
          include: ['test/**/*.test.ts'],
          exclude: [...never, ...forThemselves, ...withTools],
          // Loading the rooms anew for each of some 300 files took a fifth of the time of all tests.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'apart', include: forThemselves, exclude: [...never, ...withTools] } },
      { extends: true, test: { name: 'tools', include: withTools, isolate: false } },
    ],
  },
});
