import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';

const cli = join(__dirname, '../../../dist/cli.js');

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

it('starts from what the last start compiled, and as well where that is damaged or cannot be kept', () => {
  const folder = temporaryFolder('zonewright');
  writeFileSync(join(folder, 'a.sfz'), '<region> sample=*sine keyy=60\n');
  const run = (cache: string, ...more: string[]) => {
    const env = { ...process.env, XDG_CACHE_HOME: join(folder, cache) };
    const { status, stdout } = spawnSync(process.execPath, [cli, 'check', 'a.sfz', ...more], {
      cwd: folder,
      env,
      encoding: 'utf8',
    });
    return { status, stdout };
  };
  const first = run('none', '--no-cache');
  expect(first.stdout).toContain('keyy');
  expect(readdirSync(folder)).toEqual(['a.sfz']);
  expect(run('cache')).toEqual(first);
  const kept = filesBelow(join(folder, 'cache'));
  expect(kept.length).toBeGreaterThan(3);
  for (const [at, path] of kept.entries()) {
    const bytes = readFileSync(path);
    writeFileSync(path, at % 2 === 0 ? bytes.subarray(0, bytes.length >> 1) : 'no compiled code');
  }
  expect(run('cache')).toEqual(first);
  // A file stands where the folder would go.
  writeFileSync(join(folder, 'full'), '');
  expect(run('full')).toEqual(first);
});
