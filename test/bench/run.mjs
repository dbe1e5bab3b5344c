// Measures speed in one process and prints a table of it beside the aims: npm run bench
// ZONEWRIGHT_BENCH_SFZ=FOLDER adds the SFZ files of a folder.
import { mkdir, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const folder = join(dirname(dirname(here)), 'out', 'bench');
const outfile = join(folder, 'bench.mjs');

await rm(folder, { recursive: true, force: true });
await mkdir(folder, { recursive: true });
await build({
  entryPoints: [join(here, 'main.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  sourcemap: 'linked',
  // Libraries in CommonJS ask for Node's own modules by require.
  banner: {
    js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
  },
  logLevel: 'warning',
});
await import(pathToFileURL(outfile).href);
