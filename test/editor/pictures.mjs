// Makes the pictures of the README from the real editor: runs the tests that take them and puts them in place.
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = dirname(fileURLToPath(import.meta.url));
const root = join(folder, '../..');
const { status } = spawnSync(process.execPath, [join(folder, 'run.mjs'), '--only', 'picture:'], {
  stdio: 'inherit',
});
if (status !== 0) process.exit(status ?? 1);

const taken = join(root, 'out/screenshots');
const place = join(root, 'client/media/screenshots');
mkdirSync(place, { recursive: true });
for (const name of readdirSync(taken)) {
  if (name.startsWith('picture-'))
    copyFileSync(join(taken, name), join(place, name.slice('picture-'.length)));
}
console.log(`The pictures are in ${place}.`);
