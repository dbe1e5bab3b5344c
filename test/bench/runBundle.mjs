import { mkdir, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));

/** Bundles a file of this folder into a folder of `out` and runs it. */
export async function runBundle(entry, name) {
  const folder = join(dirname(dirname(here)), 'out', name);
  const outfile = join(folder, 'bench.mjs');
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  await build({
    entryPoints: [join(here, entry)],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    // These look for files of their own beside them.
    external: ['playwright-core', 'esbuild'],
    sourcemap: 'linked',
    // Libraries in CommonJS ask for Node's own modules by require.
    banner: {
      js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
  await import(pathToFileURL(outfile).href);
}
