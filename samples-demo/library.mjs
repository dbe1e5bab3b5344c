// The whole path of a library, timed: sixty invented sources, a library file, the build, its report, packs; then the build
// killed at twenty moments, and the build with packs at ten, each followed by one that has to end equal to the undisturbed one.
// node samples-demo/library.mjs [--kills N] [--pack-kills N]
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { prepare } from '../test/prepare.mjs';
import { writeSources } from './librarySources.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const { values } = parseArgs({
  options: { kills: { type: 'string', default: '20' }, 'pack-kills': { type: 'string', default: '10' } },
});
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
const equal = await killMoments(['library', 'build'], ['built'], whole, Number(values.kills));
startOver();
timed('library build, each conversion proved', ['library', 'build', '--prove', '--no-cache'], [0, 1]);
startOver();
const packed = timed('library build, each instrument packed', ['library', 'build', '--pack'], [0, 1]);
const equalPacks = await killMoments(
  ['library', 'build', '--pack'],
  ['built', 'packs'],
  packed,
  Number(values['pack-kills']),
);
console.log(`${equal} of ${values.kills} killed builds ended equal to the undisturbed one`);
console.log(`${equalPacks} of ${values['pack-kills']} builds with packs that were killed ended equal`);
if (equal < Number(values.kills) || equalPacks < Number(values['pack-kills'])) process.exitCode = 1;

/**
 * Kills a command at moments spread over the milliseconds that it takes, each followed by one that is left alone; answers how
 * often the folders that it writes ended equal to what they hold now.
 */
async function killMoments(args, folders, takes, kills) {
  const sums = () => folders.map(sumOf).join();
  const expected = sums();
  let equal = 0;
  for (let kill = 1; kill <= kills; kill++) {
    startOver();
    const lasted = await killedAfter(args, (takes * kill) / (kills + 1));
    const packs = countOf('packs');
    run(args, [0, 1]);
    const isEqual = sums() === expected;
    if (isEqual) equal++;
    const there = packs > 0 ? `, with ${packs} packs there` : '';
    console.log(
      `${args.join(' ')} killed after ${lasted} ms${there}: ${isEqual ? 'ends equal' : 'ENDS DIFFERENT'}`,
    );
  }
  return equal;
}

/** What a person adds by hand: facts are never made up. */
function giveFacts() {
  const file = join(folder, 'zonewright.library.json');
  const library = JSON.parse(readFileSync(file, 'utf8'));
  library.facts = { maker: 'Invented for the demo', licence: 'CC0 1.0', source: 'Computed, not recorded' };
  writeFileSync(file, `${JSON.stringify(library, undefined, 2)}\n`);
}

function startOver() {
  for (const name of ['built', 'packs', '.zonewright-build'])
    rmSync(join(folder, name), { recursive: true, force: true });
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

/** Begins a command and kills it; answers how long it lasted. */
function killedAfter(args, milliseconds) {
  const started = performance.now();
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, ...args], { cwd: folder, stdio: 'ignore' });
    const timer = setTimeout(() => child.kill('SIGKILL'), milliseconds);
    child.on('exit', () => {
      clearTimeout(timer);
      resolve(Math.round(performance.now() - started));
    });
  });
}

/** A sum over the names and bytes of all files below a folder of the library, hidden ones and what was left unfinished included. */
function sumOf(name) {
  const sum = createHash('sha256');
  for (const path of filesOf(name)) sum.update(path).update(readFileSync(path));
  return sum.digest('hex');
}

/** How many finished archives are in a folder of the library. */
function countOf(name) {
  return filesOf(name).filter((path) => path.endsWith('.zip')).length;
}

function filesOf(name) {
  const top = join(folder, name);
  const paths = existsSync(top) ? readdirSync(top, { recursive: true, withFileTypes: true }) : [];
  return paths
    .filter((one) => one.isFile())
    .map((one) => join(one.parentPath, one.name))
    .sort();
}
