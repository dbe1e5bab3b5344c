// Puts the instrument of the first steps, with its samples, into dist/example, so that the extension can carry it.

import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

/** Makes `dist/example` of a repository. */
export async function makeExample(repository) {
  const source = join(repository, 'samples-demo/first-bars');
  const target = join(repository, 'dist/example');
  const made = await mkdtemp(join(tmpdir(), 'zonewright-example-'));
  try {
    await promisify(execFile)(process.execPath, [join(repository, 'samples-demo/make.mjs'), made]);
    await rm(target, { recursive: true, force: true });
    await cp(source, target, { recursive: true });
    await mkdir(join(target, 'Samples'));
    const texts = await Promise.all(
      ['first-bars.sfz', 'bars.tsv'].map((name) => readFile(join(source, name), 'utf8')),
    );
    const named = new Set(texts.join('\n').match(/felt-[\w-]+-1\.wav/g));
    // One name in the text is misspelt for a person to mend.
    named.add('felt-loud-F4-1.wav');
    for (const name of named)
      await cp(join(made, 'millrace-chimes/Samples', name), join(target, 'Samples', name));
  } finally {
    await rm(made, { recursive: true, force: true });
  }
}
