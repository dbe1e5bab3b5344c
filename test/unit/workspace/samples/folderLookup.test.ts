import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinPath, leadsToOtherHost } from '../../../../server/model/paths';
import type { SampleState } from '../../../../server/model/samples';
import { GuardedFiles } from '../../../../server/workspace/files/guardedFiles';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { waveBytes } from '../../server/host/waveBytes';
import { MemoryFiles } from '../memoryFiles';

const sound = waveBytes(10);
const contents = {
  '/set/a.wav': sound,
  '/set/Samples/a.wav': sound,
  '/set/Samples/b.wav': sound,
  '/set/Samples/soft/a.wav': sound,
  '/other/a.wav': sound,
};

const start = fc.constantFrom(
  '',
  'Samples/',
  'samples/',
  'Samples/soft/',
  'Samples/none/',
  'none/',
  'none/inner/',
  '../other/',
  '../none/',
  '/set/',
  '/other/',
  '/none/',
  '//host/',
  '//host/share/',
  'C:/',
  'Samples\\',
);
const name = fc.constantFrom(
  'a.wav',
  'A.wav',
  'b.wav',
  'c.wav',
  'soft',
  '.',
  '..',
  '../a.wav',
  '',
  'x.',
  'a\0',
);
const path = fc
  .tuple(start, name)
  .map((parts) => parts.join(''))
  .filter((one) => !/^(?:\/|[A-Z]:\/)$/.test(joinPath('/set', one)));

/** What stands at a path from `/set`, by the paths of all files alone. */
function kindOf(path: string): SampleState['kind'] {
  if (path.includes('\0')) return 'missing';
  // Other hosts are not asked.
  if (leadsToOtherHost('/set', path)) return 'file';
  const whole = joinPath('/set', path);
  const files = Object.keys(contents);
  if (files.includes(whole)) return 'file';
  if (files.some((file) => file.startsWith(`${whole}/`))) return 'folder';
  const start = `${whole.toLowerCase()}/`;
  return files.some((file) => `${file.toLowerCase()}/`.startsWith(start)) ? 'otherCase' : 'missing';
}

async function load(store: SampleStore): Promise<void> {
  for (let round = 0; store.wants; round++) {
    expect(round).toBeLessThan(20);
    await store.loadWanted();
  }
}

describe('what is known of a path', () => {
  it('is what stands there, whatever was asked before', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(path, { minLength: 1, maxLength: 12 }), async (paths) => {
        const together = new SampleStore(new MemoryFiles(contents));
        const lookup = together.lookup('/set');
        let found = paths.map((one) => lookup.state(one));
        while (together.wants) {
          await load(together);
          found = paths.map((one) => lookup.state(one));
        }
        expect(found.map(({ kind }) => kind)).toEqual(paths.map(kindOf));
      }),
    );
  });

  it('is looked up again after a file or its folder came', async () => {
    for (const one of ['Samples/new.wav', 'none/new.wav']) {
      const files = new MemoryFiles(contents);
      const store = new SampleStore(files);
      const lookup = store.lookup('/set');
      expect((await store.fetchState('/set', one)).kind).toBe('missing');
      const whole = joinPath('/set', one);
      files.put(whole, sound);
      expect(lookup.state(one).kind).toBe('missing');
      store.forget(whole);
      expect((await store.fetchState('/set', one)).kind).toBe('file');
    }
  });

  it('is looked up once the folder may be looked at', async () => {
    const files = new GuardedFiles(new MemoryFiles(contents));
    files.restrict(['/set']);
    const store = new SampleStore(files);
    const lookup = store.lookup('/set');
    for (const one of ['../other/a.wav', '../other/c.wav']) expect(lookup.state(one).kind).toBe('pending');
    expect(store.wants).toBe(false);
    files.trust();
    expect((await store.fetchState('/set', '../other/a.wav')).kind).toBe('file');
    expect((await store.fetchState('/set', '../other/c.wav')).kind).toBe('missing');
  });
});
