import { defineConfig } from 'vitest/config';

/** Tests in a browser: a worker has one, and one tab for all pages. */
const inBrowser = [
  'test/unit/webview/**/*.test.ts',
  'test/unit/comparison/page.test.ts',
  'test/unit/server/browserHost.test.ts',
  'test/standards/voiceWebAudio.test.ts',
  'test/standards/voiceWorklet.test.ts',
];

/**
 * Test files that have their modules for themselves: those that start processes and keep them between their tests, and those
 * with so much in memory that they take twice as long among what others leave behind.
 */
const forThemselves = [
  'test/unit/server/**/*.test.ts',
  'test/unit/table/badInput.test.ts',
  'test/unit/audio/decode/openAudio.test.ts',
  'test/standards/decoding.test.ts',
  'test/standards/loudness.test.ts',
  'test/standards/pitchTools.test.ts',
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
          exclude: [...never, ...forThemselves, ...inBrowser],
          // Loading the rooms anew for each of some 300 files took a fifth of the time of all tests.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'apart', include: forThemselves, exclude: [...never, ...inBrowser] } },
      { extends: true, test: { name: 'browser', include: inBrowser, isolate: false } },
    ],
  },
});
