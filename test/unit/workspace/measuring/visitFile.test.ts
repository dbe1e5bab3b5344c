import { execFileSync } from 'node:child_process';
import { utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { blockingFiles } from '../../../../server/workspace/files/blockingFiles';
import { visitFile } from '../../../../server/workspace/measuring/visitFile';
import { temporaryFolder } from '../../../temporaryFolder';
import { waveBytes } from '../../server/host/waveBytes';
import { MemoryFiles } from '../memoryFiles';

const never = new AbortController().signal;

describe('a visit to a file', () => {
  it('opens it once for its header and for what is measured, and reads no header that is known', async () => {
    const files = new MemoryFiles({ '/a.wav': waveBytes(1000) });
    const first = await visitFile(files, { path: '/a.wav', requests: [{ what: 'survey' }] }, never);
    expect(first).toMatchObject({
      stat: { kind: 'file', size: 2044 },
      reading: { kind: 'facts', facts: { frames: 1000 } },
      outcome: { kind: 'measured', results: [{ frames: 1000, peak: 0 }] },
    });
    expect(files.opened).toHaveLength(1);
    const known = first.stat;
    expect(await visitFile(files, { path: '/a.wav', known, requests: [] }, never)).toEqual({ stat: known });
    files.put('/a.wav', waveBytes(500));
    const changed = await visitFile(files, { path: '/a.wav', known, requests: [] }, never);
    expect(changed).toMatchObject({ reading: { kind: 'facts', facts: { frames: 500 } } });
  });

  it('is nothing where there is no file, and never fails', async () => {
    const files = new MemoryFiles();
    expect(await visitFile(files, { path: '/none.wav', requests: [] }, never)).toEqual({});
    files.open = async () => {
      throw new Error('no disk');
    };
    expect(await visitFile(files, { path: '/a.wav', requests: [] }, never)).toEqual({});
  });
});

describe('files that a thread waits for', () => {
  let folder: string;

  beforeEach(() => {
    folder = temporaryFolder('zonewright');
  });

  it('are stated and read by ranges, with the time of their last change', async () => {
    const path = join(folder, 'a.wav');
    writeFileSync(path, 'abcdef');
    utimesSync(path, 1000, 2000);
    expect(await blockingFiles.stat(path)).toEqual({ kind: 'file', size: 6, modified: 2_000_000 });
    expect(await blockingFiles.stat(folder)).toMatchObject({ kind: 'folder' });
    expect(await blockingFiles.stat(`${path}/x`)).toBeUndefined();
    expect(await blockingFiles.list(folder)).toEqual([{ name: 'a.wav', kind: 'file' }]);
    const reader = await blockingFiles.open(path);
    expect(reader).toMatchObject({ size: 6, modified: 2_000_000 });
    const text = async (start: number, length: number) =>
      Buffer.from((await reader?.read(start, length)) ?? []).toString();
    expect(await text(0, 3)).toBe('abc');
    expect(await text(4, 100)).toBe('ef');
    expect(await text(100, 1)).toBe('');
    await reader?.close();
  });

  it('answer nothing where there is nothing to be had', async () => {
    for (const path of [`${folder}/no`, `${folder}/a\0b`, folder, ''])
      expect(await blockingFiles.open(path)).toBeUndefined();
    expect(await blockingFiles.list(`${folder}/no`)).toBeUndefined();
  });

  it.skipIf(process.platform === 'win32')('are not pipes, which would be waited for', async () => {
    const path = join(folder, 'pipe.wav');
    execFileSync('mkfifo', [path]);
    expect(await blockingFiles.open(path)).toBeUndefined();
  });
});
