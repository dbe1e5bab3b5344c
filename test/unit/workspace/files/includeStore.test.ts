import { describe, expect, it } from 'vitest';
import { IncludeStore } from '../../../../server/workspace/files/includeStore';
import { MemoryFiles } from '../memoryFiles';

async function textOf(store: IncludeStore, path: string) {
  store.get(path);
  while (store.wants) await store.loadWanted();
  return store.get(path);
}

describe('included texts', () => {
  it('are pending, then read once', async () => {
    const files = new MemoryFiles({ '/a/b.sfz': '<region>' });
    const store = new IncludeStore(files);
    expect(store.get('/a/b.sfz')).toEqual({ kind: 'pending' });
    expect(await textOf(store, '/a/b.sfz')).toEqual({ kind: 'text', text: '<region>' });
    expect(await textOf(store, '/a/b.sfz')).toEqual({ kind: 'text', text: '<region>' });
    expect(files.opened).toEqual(['/a/b.sfz']);
    expect(files.closed).toBe(1);
  });

  it('are missing where there is no file or no text in it', async () => {
    const store = new IncludeStore(new MemoryFiles({ '/a/c.wav': new Uint8Array([82, 0, 1]) }));
    expect(await textOf(store, '/a/b.sfz')).toEqual({ kind: 'missing' });
    expect(await textOf(store, '/a/c.wav')).toEqual({ kind: 'missing' });
    expect(await textOf(store, '/a')).toEqual({ kind: 'missing' });
  });

  it('are those of the open document, as it stands there', async () => {
    let open: string | undefined = 'tune=1';
    const store = new IncludeStore(new MemoryFiles({ '/a/b.sfz': 'tune=0' }), () => open);
    expect(store.get('/a/b.sfz')).toEqual({ kind: 'text', text: 'tune=1' });
    open = undefined;
    expect(await textOf(store, '/a/b.sfz')).toEqual({ kind: 'text', text: 'tune=0' });
  });

  it('are read again after a change of the file or of a folder around it', async () => {
    const files = new MemoryFiles({ '/a/b.sfz': 'tune=0' });
    const store = new IncludeStore(files);
    await textOf(store, '/a/b.sfz');
    files.put('/a/b.sfz', 'tune=1');
    store.forget('/a/b.sfz');
    expect(await textOf(store, '/a/b.sfz')).toEqual({ kind: 'text', text: 'tune=1' });
    files.put('/a/b.sfz', 'tune=2');
    store.forget('/a');
    expect(await textOf(store, '/a/b.sfz')).toEqual({ kind: 'text', text: 'tune=2' });
  });

  it('are read again when the file changed while it was being read', async () => {
    const files = new MemoryFiles({ '/a/b.sfz': 'tune=0' });
    const store = new IncludeStore(files);
    store.get('/a/b.sfz');
    files.beforeAnswer = async () => {
      files.beforeAnswer = async () => {};
      files.put('/a/b.sfz', 'tune=1');
      store.forget('/a/b.sfz');
    };
    await store.loadWanted();
    expect(await textOf(store, '/a/b.sfz')).toEqual({ kind: 'text', text: 'tune=1' });
  });
});
