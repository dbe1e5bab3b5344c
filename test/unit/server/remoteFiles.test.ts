import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { serveFilesOf, uriOfPath } from '../../../server/protocol/conversion/uris';
import { remoteFiles } from '../../../server/protocol/remoteFiles';
import type { FileRangeParams } from '../../../server/protocol/requests/fileRequests';
import { MemoryFiles } from '../workspace/memoryFiles';

/** A connection to files in memory, by path; it keeps what was asked for. */
function connectionTo(files: MemoryFiles) {
  const asked: string[] = [];
  return {
    asked,
    async sendRequest<Answer>(method: string, params: object): Promise<Answer> {
      const { file, start, length } = params as FileRangeParams;
      asked.push(`${method} ${file}`);
      return (await answer(method, file, start, length)) as Answer;
    },
  };

  async function answer(method: string, file: string, start: number, length: number): Promise<unknown> {
    if (method === 'zonewright/fileStat') return (await files.stat(file)) ?? null;
    if (method === 'zonewright/folderList') return (await files.list(file)) ?? null;
    const reader = await files.open(file);
    if (!reader) throw new Error('There is no such file.');
    return reader.read(start, length);
  }
}

const own = (path: string) => path;

describe('files that the other side of a connection has', () => {
  afterEach(() => serveFilesOf('file:///'));

  it('answer as the files there do', async () => {
    const there = new MemoryFiles({ '/a/one.wav': 'abcdef', '/a/b/two.wav': '' });
    const files = remoteFiles(connectionTo(there), own);
    for (const path of ['/a', '/a/one.wav', '/a/b', '/gone']) {
      expect(await files.stat(path)).toEqual(await there.stat(path));
      expect(await files.list(path)).toEqual(await there.list(path));
    }
    expect(await files.open('/a')).toBeUndefined();
    expect(await files.open('/gone')).toBeUndefined();
  });

  it('give every stretch of a file, and ask for nothing past its end', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uint8Array({ maxLength: 20 }),
        fc.nat(30),
        fc.nat(30),
        async (bytes, start, length) => {
          const connection = connectionTo(new MemoryFiles({ '/a.wav': bytes }));
          const reader = await remoteFiles(connection, own).open('/a.wav');
          expect(reader?.size).toBe(bytes.length);
          expect(await reader?.read(start, length)).toEqual(bytes.slice(start, start + length));
          const reads = connection.asked.filter((one) => one.startsWith('zonewright/fileRange'));
          expect(reads).toHaveLength(start < bytes.length && length > 0 ? 1 : 0);
          await reader?.close();
        },
      ),
    );
  });

  it('are asked for by their addresses there', async () => {
    serveFilesOf('memory-files://band/x');
    const connection = connectionTo(new MemoryFiles());
    await remoteFiles(connection, uriOfPath).stat('/a b.wav');
    expect(connection.asked).toEqual(['zonewright/fileStat memory-files://band/a%20b.wav']);
  });

  it('cannot be reached where the connection fails or the path has no address', async () => {
    const broken = remoteFiles({ sendRequest: () => Promise.reject(new Error('closed')) }, own);
    expect(await broken.stat('/a')).toBeUndefined();
    expect(await broken.list('/a')).toBeUndefined();
    expect(await broken.open('/a')).toBeUndefined();
    // Half of a pair of UTF-16 units has no form in UTF-8, which addresses are made of (RFC 3986, 2.5).
    const files = remoteFiles(connectionTo(new MemoryFiles({ '/a': 'a' })), uriOfPath);
    expect(await files.stat('/\ud800')).toBeUndefined();
    expect(await files.list('/\ud800')).toBeUndefined();
  });
});
