// What is bundled from what, for esbuild.mjs and for the test of the notice of third parties.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { commonJsChunks } from './chunks.mjs';

const repository = dirname(fileURLToPath(import.meta.url));

/** The options of each bundle; those of a release are smaller and do not name their maps. */
export function bundlesFor({ production = false } = {}) {
  const shared = {
    absWorkingDir: repository,
    bundle: true,
    // A released bundle does not point at its map, which stays outside the package.
    sourcemap: production ? 'external' : 'linked',
    minify: production,
    legalComments: 'none',
    metafile: true,
    logLevel: 'warning',
    alias: { 'codec-parser': './server/audio/decode/streamParser.ts' },
  };
  const forNode = { ...shared, platform: 'node', target: 'node20', format: 'cjs' };
  /** Parted where something is loaded when it is needed. */
  const inChunks = { outdir: 'dist', format: 'esm', splitting: true };
  /** For the workers of an editor that a browser hosts. */
  const forBrowser = { ...shared, platform: 'browser', target: 'es2022', format: 'iife' };
  /** For web views: modules, so that pages share what several of them use. */
  const forPages = { ...forBrowser, format: 'esm', splitting: true, chunkNames: 'shared-[hash]' };

  return [
    {
      ...forNode,
      ...inChunks,
      // An editor waits for what is registered; the rest comes when something is asked for.
      entryPoints: [{ in: 'client/main.ts', out: 'client' }],
      chunkNames: 'client/[name]-[hash]',
      external: ['vscode'],
      sourcemap: production ? false : 'inline',
      plugins: [requestsAlone, commonJsChunks({ minify: production })],
    },
    {
      ...forNode,
      ...inChunks,
      // An editor waits for what the first document needs; the rest comes when it is asked for.
      entryPoints: [{ in: 'server/main.ts', out: 'server' }],
      chunkNames: 'server/[name]-[hash]',
      // Breakpoints need a map; a chunk made anew has it in itself.
      sourcemap: production ? false : 'inline',
      plugins: [commonJsChunks({ minify: production })],
    },
    { ...forNode, entryPoints: ['server/measureWorker.ts'], outfile: 'dist/measureWorker.js' },
    { ...forNode, entryPoints: ['server/compareWorker.ts'], outfile: 'dist/compareWorker.js' },
    {
      ...forNode,
      entryPoints: ['server/flacLibrary.ts'],
      outfile: 'dist/flacLibrary.js',
      plugins: [flacAsWebAssembly],
    },
    {
      ...forNode,
      ...inChunks,
      // The threads of a build share the chunks of the command line.
      entryPoints: ['server/cli.ts', 'server/buildWorker.ts'],
      chunkNames: 'cli/[name]-[hash]',
      sourcemap: false,
      plugins: [commonJsChunks({ program: 'server/cli.ts', minify: production })],
    },
    {
      ...forBrowser,
      entryPoints: ['client/browser/main.ts'],
      outfile: 'dist/browser/client.js',
      format: 'cjs',
      external: ['vscode'],
      plugins: [requestsAlone],
    },
    { ...forBrowser, entryPoints: ['server/browserMain.ts'], outfile: 'dist/browser/server.js' },
    {
      ...forBrowser,
      entryPoints: ['server/browserMeasureWorker.ts'],
      outfile: 'dist/browser/measureWorker.js',
    },
    { ...forPages, entryPoints: pageEntries(), outdir: 'dist/pages' },
    { ...forBrowser, entryPoints: ['client/audition/worklet/main.ts'], outfile: 'dist/pages/voice.js' },
  ];
}

/**
 * Has the names of our requests take of the protocol's library only what makes them, since whoever names a request would else
 * load all of it. The classes are those that the library itself works with.
 */
const requestsAlone = {
  name: 'requests-alone',
  setup(plugin) {
    const requests = join(repository, 'server/protocol/requests');
    const messages = join(repository, 'node_modules/vscode-jsonrpc/lib/common/messages.js');
    plugin.onResolve({ filter: /^vscode-languageserver-protocol$/ }, ({ importer }) =>
      dirname(importer) === requests ? { path: messages } : undefined,
    );
  },
};

/**
 * Has what is released encode FLAC in WebAssembly, which takes 0.4 of the time of the same compiled to JavaScript and gives the same
 * bytes. The package looks for its binary by an address; here the bytes are put into the script.
 */
const flacAsWebAssembly = {
  name: 'flac-as-web-assembly',
  setup(plugin) {
    plugin.onLoad({ filter: /libflacjs[\\/]dist[\\/]libflac\.js$/ }, ({ path }) => {
      const folder = dirname(path);
      const script = readFileSync(join(folder, 'libflac.min.wasm.js'), 'utf8');
      const bytes = readFileSync(join(folder, 'libflac.min.wasm.wasm'), 'base64');
      const settings = 'var Module=Module||{}';
      if (!script.includes(settings)) throw new Error(`${path}: the place for its settings is not known`);
      return {
        contents: script.replace(settings, () => `var Module={wasmBinary:Buffer.from("${bytes}","base64")}`),
        loader: 'js',
      };
    });
  },
};

/** Every folder of the client with a `page/main.ts` is a page: a script and a style sheet named after the folder. */
function pageEntries() {
  const entry = (name) => `client/${name}/page/main.ts`;
  const pages = readdirSync(join(repository, 'client')).filter((name) =>
    existsSync(join(repository, entry(name))),
  );
  return Object.fromEntries(pages.map((name) => [name, entry(name)]));
}
