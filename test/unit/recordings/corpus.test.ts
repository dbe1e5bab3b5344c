// Folders of recordings with the truth of each, written down first: see test/corpus/recordings/README.md.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readRecordingsFolder } from '../../../server/workspace/readRecordingsFolder';
import type { TrueFolder } from '../../corpus/recordings/folderTruth';
import { faultsOf } from '../../corpus/recordings/folderTruth';
import { recordingWave } from '../../corpus/recordings/recordingWave';
import { MemoryFiles } from '../workspace/memoryFiles';

const corpus = fileURLToPath(new URL('../../corpus/recordings/', import.meta.url));
const names = readdirSync(corpus).filter((name) => name.endsWith('.json'));

const trueFolder = (name: string): TrueFolder => JSON.parse(readFileSync(corpus + name, 'utf8'));

/** An instrument of a folder's recordings, which are made, opened and measured. */
async function read({ recordings }: TrueFolder) {
  const folder = '/recordings';
  const files = new MemoryFiles();
  for (const [at, one] of recordings.entries()) files.put(`${folder}/${one.path}`, recordingWave(one, at));
  const made = await readRecordingsFolder(files, folder, folder);
  if (!made) throw new Error('nothing could be read');
  return made;
}

describe('folders of recordings', () => {
  it('are at least seventy', () => {
    expect(names.length).toBeGreaterThanOrEqual(70);
  });

  it.each(names)('%s', async (name) => {
    const folder = trueFolder(name);
    expect(faultsOf(folder, await read(folder)), folder.about).toEqual([]);
  });

  it('are judged: truths that are changed are found', async () => {
    const folder = trueFolder('08-nyckel-swedish.json');
    const made = await read(folder);
    const changed = (change: (one: TrueFolder['recordings'][number]) => object): TrueFolder => ({
      ...folder,
      recordings: folder.recordings.map((one) => ({ ...one, ...change(one) })),
    });
    const faults = (change: Parameters<typeof changed>[0]) => faultsOf(changed(change), made).join('\n');
    expect(faults(() => ({ root: 12 }))).toContain('root 55');
    expect(faults(({ layer }) => (typeof layer === 'number' ? { layer: 3 - layer } : {}))).toContain(
      'not layered',
    );
    expect(faults(() => ({ release: true }))).toContain('sounds on attack');
    expect(faults(() => ({ turns: 2 }))).toContain('1 turns');
    expect(faults(() => ({ leftOut: true }))).toContain('is not named');
    expect(faults(({ path }) => ({ group: path }))).toContain('of one group');
    expect(faultsOf({ ...folder, noted: ['nothing of the kind'] }, made)).toEqual([
      'not told: nothing of the kind',
    ]);
  });
});
