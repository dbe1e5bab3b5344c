import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { instrumentFilesBelow } from '../../../../server/workspace/files/instrumentFiles';
import { nodeFiles } from '../../../../server/workspace/files/nodeFiles';
import { audioFilesBelow } from '../../../../server/workspace/samples/audioFilesBelow';
import { temporaryFolder } from '../../../temporaryFolder';

const folder = temporaryFolder('zonewright-links');

describe('what lies below a folder', () => {
  it('is found once, by its own path, however links lead round', async () => {
    const inner = join(folder, 'books', 'harp', 'inner');
    mkdirSync(inner, { recursive: true });
    mkdirSync(join(folder, 'elsewhere'));
    writeFileSync(join(inner, 'harp.sfz'), '<region> sample=a.wav');
    writeFileSync(join(inner, 'a.wav'), '');
    writeFileSync(join(folder, 'elsewhere', 'bell.sfz'), '<region>');
    const books = join(folder, 'books');
    for (const name of ['0', 'z']) {
      symlinkSync('..', join(inner, `up ${name}`));
      symlinkSync(books, join(books, `self ${name}`));
      symlinkSync(inner, join(books, `again ${name}`));
      symlinkSync('../elsewhere', join(books, `other ${name}`));
    }
    const found = await instrumentFilesBelow(nodeFiles, [books]);
    expect(found).toHaveLength(2);
    expect(found).toContain(`${inner}/harp.sfz`);
    expect(found.some((path) => /books\/other [0z]\/bell\.sfz$/.test(path))).toBe(true);
    expect(await audioFilesBelow(nodeFiles, books)).toEqual([`${inner}/a.wav`]);
  });
});
