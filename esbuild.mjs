// Bundles the extension, its language server, the command line and the pages of web views into dist.
// node esbuild.mjs [--production] [--watch]

import { chmod, mkdir, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, context } from 'esbuild';
import { bundlesFor } from './bundles.mjs';
import { makeExample } from './example.mjs';
import { thirdPartyNotice } from './third-party/notice.mjs';

const production = process.argv.includes('--production');
const watch = process.argv.includes('--watch');
const repository = dirname(fileURLToPath(import.meta.url));

const bundles = bundlesFor({ production });

/** The files that went into each bundle, by output. */
const inputsOf = new Map();

// What pages share goes by the name of its content, so that older ones would stay.
for (const folder of ['dist/pages', 'dist/cli', 'dist/client', 'dist/server'])
  await rm(join(repository, folder), { recursive: true, force: true });
await mkdir(join(repository, 'dist'), { recursive: true });

if (watch) {
  for (const options of bundles) {
    const watched = await context({
      ...options,
      plugins: [...(options.plugins ?? []), { name: 'finish', setup: finishEachBuild }],
    });
    await watched.watch();
  }
  console.log('Watching for changes.');
} else {
  const results = await Promise.allSettled(bundles.map((options) => build(options).then(finish(options))));
  const failed = results.filter(({ status }) => status === 'rejected');
  if (failed.length === 0) await Promise.all([writeThirdPartyNotice(), makeExample(repository)]);
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

function finish({ entryPoints, outfile }) {
  return async ({ metafile }) => {
    inputsOf.set(outfile ?? entryPoints, Object.keys(metafile.inputs));
    if (entryPoints[0] === 'server/cli.ts') await chmod(join(repository, 'dist/cli.js'), 0o755);
  };
}

/** Writes the notice of all packages that ended up in a bundle. */
async function writeThirdPartyNotice() {
  const notice = thirdPartyNotice(repository, [...inputsOf.values()].flat());
  await writeFile(join(repository, 'dist/THIRD-PARTY.txt'), notice);
}
