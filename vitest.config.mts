import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { compiledModules, compiledServer } from './test/compiledServer.mjs';
import { useOwnTemporaryFolder } from './test/ownTemporaryFolder.mjs';

/** Tests of pages: a worker has one browser, and one tab for all pages. */
const inBrowser = [
  'test/standards/browser/**/*.test.ts',
  'test/unit/webview/**/*.test.ts',
  'test/unit/comparison/page.test.ts',
  'test/unit/server/browserHost.test.ts',
];

/** Tests that start general tools: starting one from a worker of a gigabyte takes twenty-five times as long as from a new one. */
const withTools = ['test/standards/tools/**/*.test.ts'];

/** Test files that have a process for themselves: they take twice as long among what others leave behind. */
const forThemselves = [
  // It has the engine count what runs, which makes all that runs after it in its process slower.
  'test/unit/growth/growth.test.ts',
  'test/unit/library/pack/pack.test.ts',
  'test/unit/table/badInput.test.ts',
  'test/unit/audio/decode/openAudio.test.ts',
];

/** Tests of a server as a process: their worker loads the protocol once and holds little besides. */
const withServer = ['test/unit/server/**/*.test.ts'];

const never = ['test/editor/**', 'node_modules/**'];

/** While tests are watched, sources are loaded as they are, so that a change of one is noticed. */
const isWatched = !process.argv.includes('run');

if (!isWatched) useOwnTemporaryFolder();

export default defineConfig({
  plugins: isWatched ? [] : [await compiledServer()],
  test: {
    server: { deps: { external: [compiledModules] } },
    setupFiles: ['test/setup.ts', 'test/setupFolders.ts'],
    // What hangs, or works with the square of much, is ended. On a busy machine a browser alone may take 30 s to start.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // One more than there are processors: much of the time goes by waiting for processes and browsers.
    maxWorkers: availableParallelism() + 1,
    projects: [
      {
        extends: true,
        test: {
          name: 'rooms',
          include: ['test/**/*.test.ts'],
          exclude: [...never, ...forThemselves, ...withTools, ...withServer, ...inBrowser],
          // Loading the rooms anew for each of some 300 files took a fifth of the time of all tests.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'apart', include: forThemselves, exclude: [...never, ...inBrowser] } },
      { extends: true, test: { name: 'tools', include: withTools, exclude: never, isolate: false } },
      {
        extends: true,
        test: { name: 'servers', include: withServer, exclude: [...never, ...inBrowser], isolate: false },
      },
      { extends: true, test: { name: 'pages', include: inBrowser, isolate: false } },
    ],
  },
});
