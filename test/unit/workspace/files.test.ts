import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { nodeFiles, waitingNodeFiles } from '../../../server/workspace/files/nodeFiles';
import { readWholeText } from '../../../server/workspace/files/readWhole';
import { audioFilesBelow } from '../../../server/workspace/samples/audioFilesBelow';
import { temporaryFolder } from '../../temporaryFolder';
import { MemoryFiles } from './memoryFiles';

describe('files of the disk', () => {
  let folder: string;

  beforeAll(() => {
    folder = temporaryFolder('instrument').replaceAll('\\', '/');
    mkdirSync(`${folder}/Samples`);
    writeFileSync(`${folder}/Samples/C4.wav`, 'abcdef');
  });

  it('are stated, listed and read by ranges', async () => {
    expect(await nodeFiles.stat(`${folder}/Samples`)).toMatchObject({ kind: 'folder' });
    expect(await nodeFiles.stat(`${folder}/Samples/C4.wav`)).toMatchObject({ kind: 'file', size: 6 });
    expect(await nodeFiles.list(folder)).toEqual([{ name: 'Samples', kind: 'folder' }]);
    const reader = await nodeFiles.open(`${folder}/Samples/C4.wav`);
    const text = async (start: number, length: number) =>
      Buffer.from((await reader?.read(start, length)) ?? []).toString();
    expect(reader?.size).toBe(6);
    expect(await text(0, 3)).toBe('abc');
    expect(await text(4, 100)).toBe('ef');
    expect(await text(6, 1)).toBe('');
    expect(await text(100, 1)).toBe('');
    await reader?.close();
  });

  it('answer about many paths as about each of them', async () => {
    const paths = Array.from({ length: 50 }, (_, at) => [
      `${folder}/no ${at}`,
      folder,
      `${folder}/a\0${at}`,
    ]).flat();
    paths.push(`${folder}/Samples/C4.wav`);
    const each = await Promise.all(paths.map((path) => nodeFiles.stat(path)));
    expect(await nodeFiles.stats?.(paths)).toEqual(each);
    expect(each.filter((one) => one !== undefined)).toHaveLength(51);
    expect(await nodeFiles.stats?.([])).toEqual([]);
    expect(await waitingNodeFiles.stats?.(paths)).toEqual(each);
    expect(await waitingNodeFiles.stats?.([])).toEqual([]);
  });

  it('answer nothing, and never fail, where there is nothing to be had', async () => {
    for (const path of [`${folder}/no`, `${folder}/a\0b`, `${folder}/Samples/C4.wav/x`, '']) {
      expect(await nodeFiles.stat(path)).toBeUndefined();
      expect(await nodeFiles.open(path)).toBeUndefined();
    }
    expect(await nodeFiles.list(`${folder}/no`)).toBeUndefined();
    expect(await nodeFiles.list(`${folder}/Samples/C4.wav`)).toBeUndefined();
    expect(await nodeFiles.open(`${folder}/Samples`)).toBeUndefined();
  });

  it.skipIf(process.platform === 'win32')(
    'follow links to folders, also those that lead nowhere',
    async () => {
      symlinkSync(`${folder}/Samples`, `${folder}/link`);
      symlinkSync(`${folder}/nowhere`, `${folder}/broken`);
      const entries = (await nodeFiles.list(folder)) ?? [];
      expect(new Map(entries.map(({ name, kind }) => [name, kind]))).toEqual(
        new Map([
          ['Samples', 'folder'],
          ['link', 'folder'],
          ['broken', 'file'],
        ]),
      );
    },
  );
});

describe('audio files below a folder', () => {
  it('are found in all folders but hidden ones, sorted', async () => {
    const files = new MemoryFiles({
      '/set/b.WAV': '',
      '/set/a/deep/er/c.flac': '',
      '/set/a.aiff': '',
      '/set/notes.txt': '',
      '/set/.hidden/x.wav': '',
      '/set/.x.wav': '',
      '/set/a/y.ogg': '',
    });
    expect(await audioFilesBelow(files, '/set')).toEqual([
      '/set/a.aiff',
      '/set/a/deep/er/c.flac',
      '/set/a/y.ogg',
      '/set/b.WAV',
    ]);
    expect(await audioFilesBelow(files, '/nowhere')).toEqual([]);
  });
});

describe('whole texts', () => {
  it('come with their encoding, or say why there is none', async () => {
    const files = new MemoryFiles({
      '/a.sfz': 'é',
      '/b.wav': new Uint8Array([82, 73, 70, 70, 0]),
      '/empty.sfz': '',
    });
    expect(await readWholeText(files, '/a.sfz')).toEqual({ kind: 'text', text: 'é', encoding: 'utf-8' });
    expect(await readWholeText(files, '/empty.sfz')).toMatchObject({ kind: 'text', text: '' });
    expect(await readWholeText(files, '/b.wav')).toEqual({ kind: 'binary' });
    expect(await readWholeText(files, '/none.sfz')).toEqual({ kind: 'missing' });
    expect(files.closed).toBe(3);
  });

  it('are not read where they cannot be held', async () => {
    const files = new MemoryFiles();
    const size = 8 * 1024 ** 3;
    files.open = async () => ({
      size,
      read: async () => {
        throw new Error('nothing of such a file may be read');
      },
      close: async () => {},
    });
    expect(await readWholeText(files, '/large.sfz')).toEqual({ kind: 'too-large', size });
  });
});
