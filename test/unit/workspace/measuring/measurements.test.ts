import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { MemoryFiles } from '../memoryFiles';

/** Half a second of a sine with a period of whole frames. */
function sine(period: number): Uint8Array {
  const wav = new wavefile.WaveFile();
  const frames = Float64Array.from({ length: 22050 }, (_, frame) => Math.sin((2 * Math.PI * frame) / period));
  wav.fromScratch(1, 44100, '32f', frames);
  return wav.toBuffer();
}

const disk = () => new MemoryFiles({ '/set/a.wav': sine(100), '/set/b.wav': 'no audio' });

async function loadAll(store: SampleStore, ask: () => unknown): Promise<void> {
  ask();
  for (let round = 0; store.wants; round++) {
    expect(round).toBeLessThan(20);
    await store.loadWanted();
    ask();
  }
}

describe('measures of samples', () => {
  it('are not known at first, then measured once', async () => {
    const files = disk();
    const store = new SampleStore(files, { measures: true });
    const { measures } = store.lookup('/set');
    expect(measures?.pitch('a.wav')).toBeUndefined();
    await loadAll(store, () => measures?.pitch('a.wav'));
    expect(measures?.pitch('a.wav')?.hertz).toBeCloseTo(441, 2);
    const opened = files.opened.length;
    await loadAll(store, () => store.lookup('/set').measures?.pitch('a.wav'));
    expect(files.opened.length).toBe(opened);
    expect(files.closed).toBe(opened);
  });

  it('are told apart by the points of a loop', async () => {
    const store = new SampleStore(disk(), { measures: true });
    const { measures } = store.lookup('/set');
    const ask = () => [measures?.loopSeam('a.wav', 1000, 8999), measures?.loopSeam('a.wav', 1000, 9030)];
    await loadAll(store, ask);
    expect(ask().map((seam) => seam?.isAudible)).toEqual([false, true]);
  });

  it('are null for what is missing or no audio', async () => {
    const store = new SampleStore(disk(), { measures: true });
    const { measures } = store.lookup('/set');
    const ask = () => [
      measures?.pitch('none.wav'),
      measures?.pitch('b.wav'),
      measures?.loopSeam('b.wav', 0, 99),
    ];
    await loadAll(store, ask);
    expect(ask()).toEqual([null, null, null]);
  });

  it('are measured anew after a change', async () => {
    const files = disk();
    const store = new SampleStore(files, { measures: true });
    const { measures } = store.lookup('/set');
    await loadAll(store, () => measures?.pitch('a.wav'));
    files.put('/set/a.wav', sine(50));
    store.forget('/set/a.wav');
    await loadAll(store, () => measures?.pitch('a.wav'));
    expect(measures?.pitch('a.wav')?.hertz).toBeCloseTo(882, 2);
  });

  it('end early when they are not wanted any more, and go on later', async () => {
    const store = new SampleStore(disk(), { measures: true });
    const { measures } = store.lookup('/set');
    await loadAll(store, () => store.lookup('/set').state('a.wav'));
    measures?.pitch('a.wav');
    await store.loadWanted(() => true);
    expect(measures?.pitch('a.wav')).toBeUndefined();
    await store.loadWanted();
    expect(measures?.pitch('a.wav')).not.toBeUndefined();
  });

  it('are not there unless asked for', () => {
    expect(new SampleStore(disk()).lookup('/set').measures).toBeUndefined();
  });
});
