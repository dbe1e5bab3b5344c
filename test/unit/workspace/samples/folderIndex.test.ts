import { describe, expect, it } from 'vitest';
import type { PathState } from '../../../../server/workspace/samples/folderIndex';
import { FolderIndex } from '../../../../server/workspace/samples/folderIndex';
import { MemoryFiles } from '../memoryFiles';

/** Asks until nothing more is wanted. */
async function find(index: FolderIndex, path: string): Promise<PathState> {
  let entry = index.entry(path);
  for (let round = 0; index.wants; round++) {
    expect(round).toBeLessThan(20);
    await index.loadWanted();
    entry = index.entry(path);
  }
  return entry;
}

const files = () => new MemoryFiles({ '/music/Samples/Soft/C4.wav': '', '/music/a.sfz': '', '/x.wav': '' });

describe('what stands at a path', () => {
  it.each<[string, PathState]>([
    ['/music/a.sfz', { kind: 'file' }],
    ['/music/Samples', { kind: 'folder' }],
    ['/music/b.sfz', { kind: 'missing' }],
    ['/x.wav', { kind: 'file' }],
    ['/X.wav', { kind: 'otherCase', actual: '/x.wav' }],
    ['/music/A.SFZ', { kind: 'otherCase', actual: '/music/a.sfz' }],
    ['/music/Samples/Soft/c4.WAV', { kind: 'otherCase', actual: '/music/Samples/Soft/C4.wav' }],
    ['/music/samples/soft/C4.wav', { kind: 'otherCase', actual: '/music/Samples/Soft/C4.wav' }],
    ['/MUSIC/samples/SOFT/c4.wav', { kind: 'otherCase', actual: '/music/Samples/Soft/C4.wav' }],
    ['/music/samples/soft', { kind: 'otherCase', actual: '/music/Samples/Soft' }],
    ['/music/samples/loud/C4.wav', { kind: 'missing' }],
    ['/music/no/such/folder/C4.wav', { kind: 'missing' }],
    ['/music/a.sfz/C4.wav', { kind: 'missing' }],
  ])('%s', async (path, entry) => {
    expect(await find(new FolderIndex(files()), path)).toEqual(entry);
  });

  it('is unknown until the folder is listed, which happens once', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(index.entry('/music/a.sfz')).toEqual({ kind: 'unknown' });
    expect(index.wants).toBe(true);
    await index.loadWanted();
    expect(index.entry('/music/a.sfz')).toEqual({ kind: 'file' });
    expect(index.entry('/music/Samples')).toEqual({ kind: 'folder' });
    expect(index.wants).toBe(false);
    expect(disk.listed).toEqual(['/music']);
    expect([...(index.names('/music') ?? [])]).toEqual([
      ['Samples', 'folder'],
      ['a.sfz', 'file'],
    ]);
  });
});

describe('changes on the disk', () => {
  it('are seen when a file comes or goes', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/music/new.wav')).toEqual({ kind: 'missing' });
    disk.put('/music/new.wav', '');
    expect(await find(index, '/music/new.wav')).toEqual({ kind: 'missing' });
    index.forget('/music/new.wav');
    expect(await find(index, '/music/new.wav')).toEqual({ kind: 'file' });
    disk.remove('/music/new.wav');
    index.forget('/music/new.wav');
    expect(await find(index, '/music/new.wav')).toEqual({ kind: 'missing' });
  });

  it('are seen when a folder comes with all that is in it', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/music/Loud/Deep/C4.wav')).toEqual({ kind: 'missing' });
    disk.put('/music/Loud/Deep/C4.wav', '');
    index.forget('/music/Loud');
    expect(await find(index, '/music/Loud/Deep/C4.wav')).toEqual({ kind: 'file' });
  });

  it('are seen when only the innermost new file is told of', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/music/Loud/Deep/c4.wav')).toEqual({ kind: 'missing' });
    disk.put('/music/Loud/Deep/C4.wav', '');
    index.forget('/music/Loud/Deep/C4.wav');
    expect(await find(index, '/music/Loud/Deep/c4.wav')).toEqual({
      kind: 'otherCase',
      actual: '/music/Loud/Deep/C4.wav',
    });
  });

  it('are seen when a folder goes', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/music/Samples/Soft/C4.wav')).toEqual({ kind: 'file' });
    disk.remove('/music/Samples');
    index.forget('/music/Samples');
    expect(await find(index, '/music/Samples/Soft/C4.wav')).toEqual({ kind: 'missing' });
  });

  it('are seen when they happen while a folder is being listed', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    index.entry('/music/new.wav');
    disk.beforeAnswer = async () => {
      disk.beforeAnswer = async () => {};
      disk.put('/music/new.wav', '');
      index.forget('/music/new.wav');
    };
    await index.loadWanted();
    expect(await find(index, '/music/new.wav')).toEqual({ kind: 'file' });
  });

  it('are seen after all was forgotten', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    expect(await find(index, '/music/new.wav')).toEqual({ kind: 'missing' });
    disk.put('/music/new.wav', '');
    index.forgetAll();
    expect(await find(index, '/music/new.wav')).toEqual({ kind: 'file' });
  });
});

describe('folders that are not there', () => {
  it('are found so however many lie within each other, and listed once each', async () => {
    const disk = files();
    const index = new FolderIndex(disk);
    const path = `/music/${'a/'.repeat(300)}C4.wav`;
    expect(index.entry(path)).toEqual({ kind: 'unknown' });
    await index.loadWanted();
    expect(index.entry(path)).toEqual({ kind: 'missing' });
    expect(new Set(disk.listed).size).toBe(disk.listed.length);
  });
});

describe('folders that do not tell their names', () => {
  class ClosedFiles extends MemoryFiles {
    override async list(folder: string) {
      return folder === '/music/Samples' ? undefined : super.list(folder);
    }

    override async stat(path: string) {
      return path === '/music/Samples/Loud' ? undefined : super.stat(path);
    }

    async refusal(path: string) {
      return path === '/music/Samples' || path.startsWith('/music/Samples/Loud') ? 'permission' : undefined;
    }
  }

  it('are asked for each', async () => {
    const index = new FolderIndex(
      new ClosedFiles({ '/music/Samples/a.wav': '', '/music/Samples/b/c.wav': '' }),
    );
    expect(await find(index, '/music/Samples/a.wav')).toEqual({ kind: 'file' });
    expect(await find(index, '/music/Samples/b')).toEqual({ kind: 'folder' });
    expect(await find(index, '/music/Samples/A.wav')).toEqual({ kind: 'missing' });
    expect(await find(index, '/music/Samples/Loud')).toEqual({ kind: 'refused', refusal: 'permission' });
    expect(await find(index, '/music/samples/a.wav')).toEqual({
      kind: 'otherCase',
      actual: '/music/Samples/a.wav',
    });
  });
});
