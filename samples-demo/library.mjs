// The whole path of a library, timed: sixty invented sources, a library file, the build, its report, packs; then the build
// killed at twenty moments, each followed by one that has to end equal to the undisturbed one.
// node samples-demo/library.mjs [--kills N]
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { prepare } from '../test/prepare.mjs';
import { writeSources } from './librarySources.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const { values } = parseArgs({ options: { kills: { type: 'string', default: '20' } } });
const folder = join(root, 'out/library');
const program = join(root, 'dist/cli.js');

prepare();
rmSync(folder, { recursive: true, force: true });
const counts = writeSources(folder);
console.log(
  Object.entries(counts)
    .map(([kind, count]) => `${count} ${kind}`)
    .join(', '),
);

timed('library new', ['library', 'new', '.']);
giveFacts();
const whole = timed('library build', ['library', 'build'], [0, 1]);
timed('library build, nothing changed', ['library', 'build'], [0, 1]);
timed('library report', ['library', 'report', '--output', 'report.csv']);
timed('library pack', ['library', 'pack'], [0, 1]);
timed('library pack, nothing changed', ['library', 'pack'], [0, 1]);
const expected = sumOf(join(folder, 'built'));
let equal = 0;
for (let kill = 1; kill <= Number(values.kills); kill++) {
  startOver();
  const lasted = await killedAfter((whole * kill) / (Number(values.kills) + 1));
  run(['library', 'build'], [0, 1]);
  const isEqual = sumOf(join(folder, 'built')) === expected;
  if (isEqual) equal++;
  console.log(`killed after ${lasted} ms: ${isEqual ? 'ends equal' : 'ENDS DIFFERENT'}`);
}
startOver();
timed('library build, each conversion proved', ['library', 'build', '--prove', '--no-cache'], [0, 1]);
console.log(`${equal} of ${values.kills} killed builds ended equal to the undisturbed one`);
if (equal < Number(values.kills)) process.exitCode = 1;

/** What a person adds by hand: facts are never made up. */
function giveFacts() {
  const file = join(folder, 'zonewright.library.json');
  const library = JSON.parse(readFileSync(file, 'utf8'));
  library.facts = { maker: 'Invented for the demo', licence: 'CC0 1.0', source: 'Computed, not recorded' };
  writeFileSync(file, `${JSON.stringify(library, undefined, 2)}\n`);
}

function startOver() {
  rmSync(join(folder, 'built'), { recursive: true, force: true });
  rmSync(join(folder, '.zonewright-build'), { recursive: true, force: true });
}

function timed(title, args, allowed = [0]) {
  const started = performance.now();
  const out = run(args, allowed);
  const took = performance.now() - started;
  console.log(
    `${title}: ${(took / 1000).toFixed(1)} s. ${out
      .trim()
      .split('\n')
      .at(args[1] === 'new' ? 0 : -1)}`,
  );
  return took;
}

function run(args, allowed) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    cwd: folder,
    encoding: 'utf8',
  });
  if (allowed.includes(status)) return stdout || stderr;
  console.error(stderr);
  throw new Error(`zonewright ${args.join(' ')} ended with status ${status}`);
}

/** Begins a build and kills it; answers how long it lasted. */
function killedAfter(milliseconds) {
  const started = performance.now();
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, 'library', 'build'], { cwd: folder, stdio: 'ignore' });
    const timer = setTimeout(() => child.kill('SIGKILL'), milliseconds);
    child.on('exit', () => {
      clearTimeout(timer);
      resolve(Math.round(performance.now() - started));
    });
  });
}

/** A sum over the names and bytes of all files below a folder, hidden ones and what was left unfinished included. */
function sumOf(top) {
  const sum = createHash('sha256');
  const paths = existsSync(top) ? readdirSync(top, { recursive: true, withFileTypes: true }) : [];
  for (const entry of paths
    .filter((one) => one.isFile())
    .map((one) => join(one.parentPath, one.name))
    .sort())
    sum.update(entry).update(readFileSync(entry));
  return sum.digest('hex');
}
