import { describe, expect, it } from 'vitest';
import { MeasureCache } from '../../../../server/workspace/measuring/measureCache';
import { Measurements } from '../../../../server/workspace/measuring/measurements';
import type { Measurer } from '../../../../server/workspace/measuring/measurer';
import { visitFile } from '../../../../server/workspace/measuring/visitFile';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { waveBytes } from '../../server/host/waveBytes';
import { MemoryFiles } from '../memoryFiles';

const names = ['a.wav', 'b.wav', 'c.wav'];

/** The frames and the peak of each file, and the paths of the files that a thread was sent to for it. */
async function lookAt(files: MemoryFiles, cache: MeasureCache) {
  const visited: string[] = [];
  const measurer: Measurer = {
    width: 1,
    measure: async () => ({ kind: 'failed', reason: 'broken' }),
    visit: (orders, signal) => {
      visited.push(...orders.map(({ path }) => path));
      return Promise.all(orders.map((order) => visitFile(files, order, signal)));
    },
    close: async () => {},
  };
  const store = new SampleStore(files, {
    measures: new Measurements(files, { measurer }),
    readsInThreads: true,
  });
  store.useCache(cache);
  const lookup = store.lookup('/set');
  const ask = () =>
    names.map((name) => {
      const state = lookup.state(name);
      const reading = 'reading' in state ? state.reading : undefined;
      return [
        reading?.kind === 'facts' ? reading.facts.frames : undefined,
        lookup.measures?.survey?.(name)?.frames,
      ];
    });
  ask();
  while (store.wants) {
    await store.loadWanted();
    ask();
  }
  return { found: ask(), visited: [...new Set(visited)].sort() };
}

describe('samples of which something is remembered', () => {
  it('are opened again only where they have changed', async () => {
    const files = new MemoryFiles({ '/set/a.wav': waveBytes(100), '/set/b.wav': waveBytes(200) });
    const cache = new MeasureCache();
    const first = await lookAt(files, cache);
    expect(first.found.slice(0, 2)).toEqual([
      [100, 100],
      [200, 200],
    ]);
    expect(first.visited).toEqual(['/set/a.wav', '/set/b.wav']);
    const opened = files.opened.length;

    expect((await lookAt(files, cache)).found).toEqual(first.found);
    expect(files.opened).toHaveLength(opened);

    files.put('/set/b.wav', waveBytes(250));
    files.put('/set/c.wav', waveBytes(300));
    const changed = await lookAt(files, cache);
    expect(changed.found).toEqual([
      [100, 100],
      [250, 250],
      [300, 300],
    ]);
    expect(changed.visited).toEqual(['/set/b.wav', '/set/c.wav']);
  });

  it('are found missing where they are gone', async () => {
    const files = new MemoryFiles({ '/set/a.wav': waveBytes(100), '/set/b.wav': waveBytes(200) });
    const cache = new MeasureCache();
    await lookAt(files, cache);
    files.remove('/set/b.wav');
    const { found } = await lookAt(files, cache);
    expect(found[0]).toEqual([100, 100]);
    expect(found[1]).toEqual([undefined, undefined]);
  });
});
