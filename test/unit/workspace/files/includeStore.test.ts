import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinPath } from '../../../../server/model/paths';
import { IncludeStore } from '../../../../server/workspace/files/includeStore';
import { Reach } from '../../../../server/workspace/files/reach';
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

  it('are missing where there is no file, and not given where it holds no text', async () => {
    const store = new IncludeStore(new MemoryFiles({ '/a/c.wav': new Uint8Array([82, 0, 1]) }));
    expect(await textOf(store, '/a/b.sfz')).toEqual({ kind: 'missing' });
    expect(await textOf(store, '/a/c.wav')).toMatchObject({ kind: 'refused' });
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

describe('the reach of includes', () => {
  const part = fc.constantFrom('..', '.', 'a', 'b', 'lib', 'music', 'x.sfz', '\\..', '/');
  const written = fc.array(part, { minLength: 1, maxLength: 6 }).map((parts) => parts.join('/'));
  const links: Record<string, string> = { '/music/lib/a': '/secret', '/music/b': '/music/lib' };

  /** Files everywhere, and links at two places, followed where a path leads through them. */
  class LinkedFiles extends MemoryFiles {
    override async open(path: string) {
      this.opened.push(path);
      const text = Buffer.from(`// ${await this.realPath(path)}\n<region>\n`);
      return { size: text.length, read: async () => text, close: async () => {} };
    }

    async realPath(path: string): Promise<string> {
      const link = Object.keys(links).find((one) => path === one || path.startsWith(`${one}/`));
      return link === undefined ? path : this.realPath(`${links[link]}${path.slice(link.length)}`);
    }
  }

  it('ends at the folders around, whatever is written and wherever links lead', async () => {
    await fc.assert(
      fc.asyncProperty(written, async (name) => {
        for (const [folder, tree] of [
          ['/music/lib', '/music'],
          ['/other/lib', '/other/lib'],
        ] as const) {
          const files = new LinkedFiles();
          const store = new IncludeStore(files, undefined, new Reach(files, ['/music']));
          const path = joinPath(folder, name);
          store.includedBy(folder, path);
          await store.loadWanted();
          const found = store.includedBy(folder, path);
          const end = await files.realPath(path);
          const isWithin = (one: string) => one === tree || one.startsWith(`${tree}/`);
          expect(found.kind).toBe(isWithin(path) && isWithin(end) ? 'text' : 'refused');
          if (found.kind === 'text') expect(found.text).toContain(`// ${end}\n`);
          else expect(files.opened).not.toContain(path);
        }
      }),
    );
  });
});
