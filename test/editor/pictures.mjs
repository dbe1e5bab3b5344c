// Makes the pictures of the README and of the walkthrough from the real editor: runs the tests that take them and puts
// them in place, with the 256 colours that serve each best, which makes them a quarter of their size. Needs ffmpeg.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = dirname(fileURLToPath(import.meta.url));
const root = join(folder, '../..');
const taken = join(root, 'out/screenshots');
const place = join(root, 'client/media/screenshots');
for (const name of pictures()) rmSync(join(taken, name));

const { status } = spawnSync(process.execPath, [join(folder, 'run.mjs'), '--only', 'picture:'], {
  stdio: 'inherit',
});
if (status !== 0) process.exit(status ?? 1);

mkdirSync(place, { recursive: true });
for (const name of pictures()) putInPlace(join(taken, name), join(place, name.slice('picture-'.length)));
console.log(`The pictures are in ${place}.`);

function pictures() {
  mkdirSync(taken, { recursive: true });
  return readdirSync(taken).filter((name) => name.startsWith('picture-'));
}

function putInPlace(from, to) {
  const colours = 'split[a][b];[a]palettegen=reserve_transparent=0[c];[b][c]paletteuse=dither=none';
  const { error, status, stderr } = spawnSync(
    'ffmpeg',
    ['-v', 'error', '-y', '-i', from, '-vf', colours, '-compression_level', '100', '-pred', 'none', to],
    { encoding: 'utf8' },
  );
  if (status === 0) return;
  console.error(
    `${to} was not made. ${error?.message ?? stderr} Install ffmpeg (Debian: apt-get install ffmpeg).`,
  );
  process.exit(1);
}
