// Bundles the extension, its language server, the command line and the pages of web views into dist.
// node esbuild.mjs [--production] [--watch]

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { chmod, mkdir, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, context } from 'esbuild';

const production = process.argv.includes('--production');
const watch = process.argv.includes('--watch');
const repository = dirname(fileURLToPath(import.meta.url));

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
/** For the workers of an editor that a browser hosts. */
const forBrowser = { ...shared, platform: 'browser', target: 'es2022', format: 'iife' };
/** For web views: modules, so that pages share what several of them use. */
const forPages = { ...forBrowser, format: 'esm', splitting: true, chunkNames: 'shared-[hash]' };

const bundles = [
  { ...forNode, entryPoints: ['client/main.ts'], outfile: 'dist/client.js', external: ['vscode'] },
  { ...forNode, entryPoints: ['server/main.ts'], outfile: 'dist/server.js' },
  { ...forNode, entryPoints: ['server/measureWorker.ts'], outfile: 'dist/measureWorker.js' },
  {
    ...forNode,
    entryPoints: ['server/cli.ts'],
    outfile: 'dist/cli.js',
    banner: { js: '#!/usr/bin/env node' },
  },
  {
    ...forBrowser,
    entryPoints: ['client/browser/main.ts'],
    outfile: 'dist/browser/client.js',
    format: 'cjs',
    external: ['vscode'],
  },
  { ...forBrowser, entryPoints: ['server/browserMain.ts'], outfile: 'dist/browser/server.js' },
  {
    ...forBrowser,
    entryPoints: ['server/browserMeasureWorker.ts'],
    outfile: 'dist/browser/measureWorker.js',
  },
  { ...forPages, entryPoints: pageEntries(), outdir: 'dist/pages' },
];

/** Every folder of the client with a `page/main.ts` is a page: a script and a style sheet named after the folder. */
function pageEntries() {
  const entry = (name) => `client/${name}/page/main.ts`;
  const pages = readdirSync(join(repository, 'client')).filter((name) =>
    existsSync(join(repository, entry(name))),
  );
  return Object.fromEntries(pages.map((name) => [name, entry(name)]));
}

/** The files that went into each bundle, by output. */
const inputsOf = new Map();

// What pages share goes by the name of its content, so that older ones would stay.
await rm(join(repository, 'dist/pages'), { recursive: true, force: true });
await mkdir(join(repository, 'dist'), { recursive: true });

if (watch) {
  for (const options of bundles) {
    const watched = await context({ ...options, plugins: [{ name: 'finish', setup: finishEachBuild }] });
    await watched.watch();
  }
  console.log('Watching for changes.');
} else {
  const results = await Promise.allSettled(bundles.map((options) => build(options).then(finish(options))));
  const failed = results.filter(({ status }) => status === 'rejected');
  if (failed.length === 0) await writeThirdPartyNotice();
  else process.exitCode = 1;
}

function finishEachBuild(plugin) {
  plugin.onEnd(async (result) => {
    if (result.errors.length > 0) return;
    await finish(plugin.initialOptions)(result);
    await writeThirdPartyNotice();
    console.log(`Built ${plugin.initialOptions.outfile ?? plugin.initialOptions.outdir}`);
  });
}

function finish({ outfile, outdir }) {
  return async ({ metafile }) => {
    inputsOf.set(outfile ?? outdir, Object.keys(metafile.inputs));
    if (outfile === 'dist/cli.js') await chmod(join(repository, outfile), 0o755);
  };
}

/** Writes the name, version and licence text of every package that ended up in a bundle. */
async function writeThirdPartyNotice() {
  const folders = new Set([...inputsOf.values()].flat().map(packageFolder).filter(Boolean));
  const sections = [...folders].sort().map(licenceSection);
  const heading = 'The bundles in this folder contain code of these packages.\n';
  await writeFile(
    join(repository, 'dist/THIRD-PARTY.txt'),
    [heading, ...sections].join(`\n${'-'.repeat(78)}\n\n`),
  );
}

/** The folder of the package that a bundled file belongs to; undefined for files of this project. */
function packageFolder(input) {
  return /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
}

function licenceSection(folder) {
  const { name, version, license } = JSON.parse(
    readFileSync(join(repository, folder, 'package.json'), 'utf8'),
  );
  const file = readdirSync(join(repository, folder)).find((entry) => /^licen[cs]e(\.|$)/i.test(entry));
  const text =
    file === undefined
      ? `${license ?? 'No licence stated'} (the package carries no licence text)\n`
      : readFileSync(join(repository, folder, file), 'utf8');
  return `${name} ${version}\n\n${text}`;
}
