import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'esbuild';
import { runProgram } from './processes.mjs';

/** Builds the extension into `dist`, as a person would. */
export async function buildExtension(repository) {
  await runProgram(process.execPath, [join(repository, 'esbuild.mjs')], { cwd: repository });
}

/** Bundles the tests that run inside the extension host; gives the path of the bundle. */
export async function bundleSuite(repository, entry) {
  const outputFolder = join(repository, 'out/editor');
  await mkdir(outputFolder, { recursive: true });
  const outfile = join(outputFolder, 'suite.cjs');
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'cjs',
    external: ['vscode'],
    sourcemap: 'linked',
    logLevel: 'warning',
  });
  return outfile;
}
