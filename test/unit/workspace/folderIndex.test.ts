import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../server/workspace/folderIndex';
import { FolderIndex } from '../../../server/workspace/folderIndex';
import { MemoryFiles } from './memoryFiles';

/** Asks until nothing more is wanted. */
async function find(index: FolderIndex, path: string): Promise<Entry> {
  let entry = index.entry(path);
  for (let round = 0; index.wants; round++) {
    expect(round).toBeLessThan(20);
    await index.loadWanted();
    entry = index.entry(path);
  }
  return entry;
}

const files = () => new MemoryFiles({ '/work/Samples/Soft/C4.wav': '', '/work/a.sfz': '', '/x.wav': '' });

describe('what stands at a path', () => {
  it.each<[string, Entry]>([
    ['/work/a.sfz', { kind: 'file' }],
    ['/work/Samples', { kind: 'folder' }],
    ['/work/b.sfz', { kind: 'missing' }],
    ['/x.wav', { kind: 'file' }],
    ['/X.wav', { kind: 'otherCase', actual: '/x.wav' }],
    ['/work/A.SFZ', { kind: 'otherCase', actual: '/work/a.sfz' }],
    ['/work/Samples/Soft/c4.WAV', { kind: 'otherCase', actual: '/work/Samples/Soft/C4.wav' }],
    ['/work/samples/soft/C4.wav', { kind: 'otherCase', actual: '/work/Samples/Soft/C4.wav' }],
    ['/WORK/samples/SOFT/c4.wav', { kind: 'otherCase', actual: '/work/Samples/Soft/C4.wav' }],
    ['/work/samples/soft', { kind: 'otherCase', actual: '/work/Samples/Soft' }],
    ['/work/samples/loud/C4.wav', { kind: 'missing' }],
    ['/work/no/such/folder/C4.wav', { kind: 'missing' }],
    ['/work/a.sfz/C4.wav', { kind: 'missing' }],
  ])('%s', async (path, entry) => {
    expect(await find(new FolderIndex(files()), path)).toEqual(entry);
  });

  it('is unknown until the folder is listed, which happens once', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(index.entry('/work/a.sfz')).toEqual({ kind: 'unknown' });
    expect(index.wants).toBe(true);
    await index.loadWanted();
    expect(index.entry('/work/a.sfz')).toEqual({ kind: 'file' });
    expect(index.entry('/work/Samples')).toEqual({ kind: 'folder' });
    expect(index.wants).toBe(false);
    expect(disk.listed).toEqual(['/work']);
    expect([...(index.names('/work') ?? [])]).toEqual([
      ['Samples', 'folder'],
      ['a.sfz', 'file'],
    ]);
  });
});

describe('changes on the disk', () => {
  it('are seen when a file comes or goes', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/work/new.wav')).toEqual({ kind: 'missing' });
    disk.put('/work/new.wav', '');
    expect(await find(index, '/work/new.wav')).toEqual({ kind: 'missing' });
    index.forget('/work/new.wav');
    expect(await find(index, '/work/new.wav')).toEqual({ kind: 'file' });
    disk.remove('/work/new.wav');
    index.forget('/work/new.wav');
    expect(await find(index, '/work/new.wav')).toEqual({ kind: 'missing' });
  });

  it('are seen when a folder comes with all that is in it', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/work/Loud/Deep/C4.wav')).toEqual({ kind: 'missing' });
    disk.put('/work/Loud/Deep/C4.wav', '');
    index.forget('/work/Loud');
    expect(await find(index, '/work/Loud/Deep/C4.wav')).toEqual({ kind: 'file' });
  });

  it('are seen when only the innermost new file is told of', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/work/Loud/Deep/c4.wav')).toEqual({ kind: 'missing' });
    disk.put('/work/Loud/Deep/C4.wav', '');
    index.forget('/work/Loud/Deep/C4.wav');
    expect(await find(index, '/work/Loud/Deep/c4.wav')).toEqual({
      kind: 'otherCase',
      actual: '/work/Loud/Deep/C4.wav',
    });
  });

  it('are seen when a folder goes', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/work/Samples/Soft/C4.wav')).toEqual({ kind: 'file' });
    disk.remove('/work/Samples');
    index.forget('/work/Samples');
    expect(await find(index, '/work/Samples/Soft/C4.wav')).toEqual({ kind: 'missing' });
  });

  it('are seen when they happen while a folder is being listed', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    index.entry('/work/new.wav');
    disk.beforeAnswer = async () => {
      disk.beforeAnswer = async () => {};
      disk.put('/work/new.wav', '');
      index.forget('/work/new.wav');
    };
    await index.loadWanted();
    expect(await find(index, '/work/new.wav')).toEqual({ kind: 'file' });
  });

  it('are seen after all was forgotten', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/work/new.wav')).toEqual({ kind: 'missing' });
    disk.put('/work/new.wav', '');
    index.forgetAll();
    expect(await find(index, '/work/new.wav')).toEqual({ kind: 'file' });
  });
});
