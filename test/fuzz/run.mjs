// Tries inputs that nobody thought of, for as long as is said: npm run fuzz -- --minutes 10 [--seed N] [--only NAME]
// What fails is shrunk and kept in test/fuzz/found.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const root = dirname(dirname(here));
const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '1' },
    seed: { type: 'string', default: '' },
    only: { type: 'string', default: '' },
  },
});
const outfile = join(root, 'out/fuzz/main.mjs');
// Inputs begin from the demo's recordings, among others.
spawnSync(process.execPath, [join(root, 'samples-demo/make.mjs')], { stdio: 'inherit', cwd: root });
await build({
  entryPoints: [join(here, 'main.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  sourcemap: 'linked',
  // Folders of what is tried are named from where the tests stand.
  define: { __dirname: JSON.stringify(join(root, 'test/unit/edits')) },
  banner: {
    js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
  },
  // Some of what makes inputs stands beside what expects things in tests.
  plugins: [
    {
      name: 'no test runner',
      setup(building) {
        building.onResolve({ filter: /^vitest$/ }, () => ({ path: 'vitest', namespace: 'none' }));
        building.onLoad({ filter: /.*/, namespace: 'none' }, () => ({
          contents: 'export const expect = undefined;',
        }));
      },
    },
  ],
  logLevel: 'warning',
});
const words = [
  '--enable-source-maps',
  outfile,
  values.minutes,
  join(here, 'found'),
  values.seed,
  values.only,
];
process.exitCode = spawnSync(process.execPath, words, { stdio: 'inherit', cwd: root }).status ?? 1;
