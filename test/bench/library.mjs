// `npm run bench:library [-- --instruments N --regions N --frames N --folder DIR --runs N --keep]`
// Makes a large library (500 instruments of 200 regions over 100,000 files of a tenth of a second, all in one folder) and
// measures `check` on it: the first time, again, and both without measuring; then `library build` without measuring, the first
// time and again. Time is that of the processor, user and
// system, so that other work on the machine matters less; ratios are to a bare stat of all files in the same minute.

import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, stat, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { monoWave, partialsAt } from '../../samples-demo/monoWave.mjs';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const { values } = parseArgs({
  options: {
    instruments: { type: 'string', default: '500' },
    regions: { type: 'string', default: '200' },
    frames: { type: 'string', default: '4410' },
    folder: { type: 'string', default: join(tmpdir(), 'zonewright-bench-library') },
    runs: { type: 'string', default: '2' },
    only: { type: 'string', default: '' },
    keep: { type: 'boolean', default: false },
  },
});
const instruments = Number(values.instruments);
const regions = Number(values.regions);
const folder = join(values.folder, `${instruments}x${regions}`);
const cache = join(values.folder, 'cache');

makeLibrary();
const rows = [];
for (let run = 0; run < Number(values.runs); run++) {
  const bare = await bareStat();
  row('a bare stat of all files', bare, bare);
  rmSync(cache, { recursive: true, force: true });
  for (const [name, measures] of [
    ['first run', true],
    ['again', true],
    ['first run without measuring', false],
    ['again without measuring', false],
  ]) {
    if (!name.includes(values.only)) continue;
    if (name === 'first run without measuring') rmSync(cache, { recursive: true, force: true });
    row(name, await check(measures), bare);
  }
  removeBuilt();
  for (const name of ['build', 'build again'])
    if (name.includes(values.only)) row(name, await timed(['library', 'build', folder]), bare);
  // What was built would be checked too.
  removeBuilt();
}
console.log(`${instruments} instruments of ${regions} regions, ${instruments * regions} files`);
console.table(rows);
if (!values.keep) rmSync(values.folder, { recursive: true, force: true });

function removeBuilt() {
  rmSync(join(folder, 'built'), { recursive: true, force: true });
  rmSync(join(folder, '.zonewright-build'), { recursive: true, force: true });
}

function row(name, { seconds, wall, memory, findings }, bare) {
  rows.push({
    what: name,
    'processor s': seconds.toFixed(1),
    'elapsed s': wall.toFixed(1),
    'to bare stat': (seconds / bare.seconds).toFixed(1),
    MB: memory === undefined ? '' : Math.round(memory),
    findings: findings ?? '',
  });
  console.log(JSON.stringify(rows.at(-1)));
}

/** Sounds of a tenth of a second, each of another pitch; silence would not be measured as recordings are. */
function makeLibrary() {
  if (existsSync(join(folder, 'done'))) return;
  const samples = join(folder, 'Samples');
  mkdirSync(samples, { recursive: true });
  const sounds = Array.from({ length: 88 }, (_, key) => sound(440 * 2 ** ((key + 21 - 69) / 12)));
  for (let number = 0; number < instruments; number++) {
    const lines = ['<control> default_path=Samples/', '<global> ampeg_release=0.3'];
    for (let region = 0; region < regions; region++) {
      const at = region % 88;
      const layer = Math.floor(region / 88);
      const name = `i${number}-${region}.wav`;
      writeFileSync(join(samples, name), sounds[at]);
      lines.push(
        `<region> sample=${name} key=${at + 21} lovel=${layer * 42 + 1} hivel=${Math.min(127, layer * 42 + 42)}`,
      );
    }
    writeFileSync(join(folder, `instrument-${number}.sfz`), `${lines.join('\n')}\n`);
  }
  writeFileSync(join(folder, 'zonewright.library.json'), '{ "sources": [{ "files": ["*.sfz"] }] }');
  writeFileSync(join(folder, 'done'), '');
}

/** A decaying sound with some partials. */
function sound(hertz) {
  return monoWave(
    44_100,
    Number(values.frames),
    (at) => 8000 * partialsAt(hertz, 44_100, 5, at) * Math.exp(-at / 2000),
  );
}

async function bareStat() {
  const paths = [];
  for (let number = 0; number < instruments; number++)
    for (let region = 0; region < regions; region++)
      paths.push(join(folder, 'Samples', `i${number}-${region}.wav`));
  const before = process.cpuUsage();
  const started = performance.now();
  await new Promise((resolve) => {
    let next = 0;
    let done = 0;
    const start = () => {
      if (next >= paths.length) return;
      stat(paths[next++], () => {
        if (++done === paths.length) resolve();
        else start();
      });
    };
    for (let at = 0; at < 32; at++) start();
  });
  const { user, system } = process.cpuUsage(before);
  return { seconds: (user + system) / 1e6, wall: (performance.now() - started) / 1000 };
}

function check(measures) {
  const settings = join(folder, 'zonewright.json');
  const off = Object.fromEntries(measuringCodes().map((code) => [code, 'off']));
  writeFileSync(settings, JSON.stringify({ severity: measures ? {} : off }));
  return timed(['check', folder]);
}

/** Runs a command as it is released and asks the process itself what it took. */
async function timed(command) {
  const usage = join(values.folder, 'usage.json');
  const hook = join(values.folder, 'usage.cjs');
  writeFileSync(
    hook,
    `if (require('node:worker_threads').isMainThread) process.on('exit', () => require('node:fs').writeFileSync(${JSON.stringify(usage)}, JSON.stringify(process.resourceUsage())));`,
  );
  const started = performance.now();
  const child = spawn(process.execPath, ['--require', hook, join(root, 'dist/cli.js'), ...command], {
    env: { ...process.env, XDG_CACHE_HOME: cache },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let lines = 0;
  let last = '';
  for await (const part of child.stdout) {
    const text = last + part;
    const all = text.split('\n');
    last = all.pop() ?? '';
    lines += all.length;
    if (all.length > 0 && last === '') last = '';
  }
  const wall = (performance.now() - started) / 1000;
  const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(readFileSync(usage, 'utf8'));
  return { seconds: (userCPUTime + systemCPUTime) / 1e6, wall, memory: maxRSS / 1024, findings: lines - 1 };
}

/** The codes whose findings come of the audio itself, as the README lists them. */
function measuringCodes() {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  const codes = [...readme.matchAll(/^\| `([a-z-]+)` \| (?:error|warning|information|hint) \|/gm)].map(
    ([, code]) => code,
  );
  const from = codes.indexOf('silence-before');
  return ['loop-seam', 'root-mismatch', ...codes.slice(from, codes.indexOf('velocity-order') + 1)];
}
