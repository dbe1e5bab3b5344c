// Packs the command line for npm: `npm run package:cli` writes dist/zonewright-VERSION.tgz, which `npm install -g` takes.

import { execFileSync } from 'node:child_process';
import { chmod, cp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const repository = dirname(fileURLToPath(import.meta.url));
const onWindows = process.platform === 'win32';
const staged = join(repository, 'dist/package');

const { version, license, engines, keywords } = JSON.parse(
  await readFile(join(repository, 'package.json'), 'utf8'),
);
const about = {
  name: 'zonewright',
  version,
  description: 'Turns copied zone tables into open text instruments, checks, converts, plays and packs them.',
  license,
  keywords,
  engines: { node: engines.node },
  bin: { zonewright: 'dist/cli.js' },
  files: ['dist', 'THIRD-PARTY.txt'],
};

await rm(staged, { recursive: true, force: true });
await mkdir(join(staged, 'dist'), { recursive: true });
await writeFile(join(staged, 'package.json'), `${JSON.stringify(about, undefined, 2)}\n`);
for (const name of ['cli.js', 'cli', 'buildWorker.js', 'measureWorker.js', 'flacLibrary.js'])
  await cp(join(repository, 'dist', name), join(staged, 'dist', name), {
    recursive: true,
    filter: (path) => !path.endsWith('.map'),
  });
await chmod(join(staged, 'dist/cli.js'), 0o755);
await cp(join(repository, 'dist/THIRD-PARTY.txt'), join(staged, 'THIRD-PARTY.txt'));
await cp(join(repository, 'LICENSE'), join(staged, 'LICENSE'));
await writeFile(join(staged, 'README.md'), await readme());
execFileSync(
  onWindows ? 'npm.cmd' : 'npm',
  ['pack', '--silent', '--pack-destination', join(repository, 'dist')],
  {
    cwd: staged,
    stdio: 'inherit',
    shell: onWindows,
  },
);
await rm(staged, { recursive: true });

/** What the package says of itself: the commands, as the program lists them. */
async function readme() {
  const help = execFileSync(process.execPath, [join(repository, 'dist/cli.js'), '--help'], {
    encoding: 'utf8',
  });
  return `# Zonewright on the command line\n\n${about.description}\n\n    npm install -g zonewright\n\n\`\`\`\n${help.trimEnd()}\n\`\`\`\n\nRecordings belong to those who made them: ask the maker before you share them; the law differs by country.\nStart quiet when you play what was rendered.\n`;
}
