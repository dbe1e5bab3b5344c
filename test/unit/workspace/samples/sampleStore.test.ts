import { describe, expect, it } from 'vitest';
import type { SampleState } from '../../../../server/model/samples';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { chunk, format, silence, wave } from '../../audio/byteFiles';
import { MemoryFiles } from '../memoryFiles';

/** A WAV file of 16-bit mono with a number of frames. */
const sound = (frames: number) =>
  wave(chunk('fmt ', format(1, 1, 44100, 16)), chunk('data', silence(frames * 2)));

const disk = () =>
  new MemoryFiles({
    '/set/a.sfz': '<region>',
    '/set/Samples/C4.wav': sound(100),
    '/set/Samples/D4.wav': sound(200),
    '/set/Samples/notes.txt': 'no audio',
    '/outside.wav': sound(300),
    '/other/away.wav': sound(400),
  });

/** What is known of a sample once all that was wanted has been fetched. */
async function stateOf(store: SampleStore, path: string, folder = '/set'): Promise<SampleState> {
  let state = store.lookup(folder).state(path);
  for (let round = 0; store.wants; round++) {
    expect(round).toBeLessThan(20);
    await store.loadWanted();
    state = store.lookup(folder).state(path);
  }
  return state;
}

const frames = (state: SampleState) =>
  'reading' in state && state.reading?.kind === 'facts' ? state.reading.facts.frames : undefined;

describe('the state of a sample', () => {
  it('is pending at first and then what stands on the disk', async () => {
    const files = disk();
    const store = new SampleStore(files);
    expect(store.lookup('/set').state('Samples/C4.wav')).toEqual({ kind: 'pending' });
    const state = await stateOf(store, 'Samples/C4.wav');
    expect(state.kind).toBe('file');
    expect(frames(state)).toBe(100);
    expect(files.opened).toEqual(['/set/Samples/C4.wav']);
    expect(files.closed).toBe(1);
  });

  it('is the same for every instrument, its file read once', async () => {
    const files = disk();
    const store = new SampleStore(files);
    await stateOf(store, 'Samples/C4.wav');
    expect(frames(await stateOf(store, '../Samples/C4.wav', '/set/Programs'))).toBe(100);
    expect(files.opened).toEqual(['/set/Samples/C4.wav']);
  });

  it('tells another letter case in the name or in a folder', async () => {
    const store = new SampleStore(disk());
    for (const path of ['Samples/c4.WAV', 'samples/C4.wav', 'SAMPLES/c4.wav']) {
      const state = await stateOf(store, path);
      expect(state).toMatchObject({ kind: 'otherCase', actual: 'Samples/C4.wav' });
      expect(frames(state)).toBe(100);
    }
  });

  it('is missing for what is not there', async () => {
    const store = new SampleStore(disk());
    for (const path of ['Samples/E4.wav', 'Nowhere/C4.wav', 'C4.wav', '../../../../E4.wav', 'a.sfz/C4.wav']) {
      expect(await stateOf(store, path)).toEqual({ kind: 'missing' });
    }
  });

  it('is that of a folder for a folder', async () => {
    const store = new SampleStore(disk());
    expect(await stateOf(store, 'Samples')).toEqual({ kind: 'folder' });
    expect(await stateOf(store, 'Samples/')).toEqual({ kind: 'folder' });
  });

  it('follows paths that leave the folder or start at a root', async () => {
    const store = new SampleStore(disk());
    expect(frames(await stateOf(store, '../outside.wav'))).toBe(300);
    expect(frames(await stateOf(store, '/other/away.wav'))).toBe(400);
    expect(frames(await stateOf(store, 'Samples/../../outside.wav'))).toBe(300);
  });

  it('is missing for a path with a NUL, and nothing is asked of the disk', async () => {
    const files = disk();
    const store = new SampleStore(files);
    expect(await stateOf(store, 'Samples/C4\0.wav')).toEqual({ kind: 'missing' });
    expect(files.listed).toEqual([]);
  });

  it('says why a file cannot be read', async () => {
    const state = await stateOf(new SampleStore(disk()), 'Samples/notes.txt');
    expect(state).toMatchObject({ kind: 'file', reading: { kind: 'unreadable' } });
  });

  it('says that a file cannot be opened, where the disk refuses', async () => {
    const files = disk();
    files.open = async () => undefined;
    expect(await stateOf(new SampleStore(files), 'Samples/C4.wav')).toMatchObject({
      kind: 'file',
      reading: { kind: 'unreadable' },
    });
  });
});

describe('changes on the disk', () => {
  it('are seen when a sample comes, changes and goes', async () => {
    const files = disk();
    const store = new SampleStore(files);
    expect(await stateOf(store, 'Samples/E4.wav')).toEqual({ kind: 'missing' });
    files.put('/set/Samples/E4.wav', sound(7));
    store.forget('/set/Samples/E4.wav');
    expect(frames(await stateOf(store, 'Samples/E4.wav'))).toBe(7);
    files.put('/set/Samples/E4.wav', sound(8));
    store.forget('/set/Samples/E4.wav');
    expect(frames(await stateOf(store, 'Samples/E4.wav'))).toBe(8);
    files.remove('/set/Samples/E4.wav');
    store.forget('/set/Samples/E4.wav');
    expect(await stateOf(store, 'Samples/E4.wav')).toEqual({ kind: 'missing' });
  });

  it('are seen when a folder is put in the place of another', async () => {
    const files = disk();
    const store = new SampleStore(files);
    expect(frames(await stateOf(store, 'Samples/C4.wav'))).toBe(100);
    files.put('/set/Samples/C4.wav', sound(5));
    store.forget('/set/Samples');
    expect(frames(await stateOf(store, 'Samples/C4.wav'))).toBe(5);
  });

  it('are seen when they happen while the file is being read', async () => {
    const files = disk();
    const store = new SampleStore(files);
    store.lookup('/set').state('Samples/C4.wav');
    await store.loadWanted();
    store.lookup('/set').state('Samples/C4.wav');
    files.beforeAnswer = async () => {
      files.beforeAnswer = async () => {};
      files.put('/set/Samples/C4.wav', sound(6));
      store.forget('/set/Samples/C4.wav');
    };
    await store.loadWanted();
    expect(frames(await stateOf(store, 'Samples/C4.wav'))).toBe(6);
  });

  it('are seen after all was forgotten', async () => {
    const files = disk();
    const store = new SampleStore(files);
    await stateOf(store, 'Samples/C4.wav');
    files.put('/set/Samples/C4.wav', sound(9));
    store.forgetAll();
    expect(frames(await stateOf(store, 'Samples/C4.wav'))).toBe(9);
  });
});

describe('reading', () => {
  it('can be stopped, and goes on when it is asked for again', async () => {
    const files = disk();
    const store = new SampleStore(files);
    const lookup = store.lookup('/set');
    const ask = () => ['C4', 'D4'].map((name) => lookup.state(`Samples/${name}.wav`).kind);
    ask();
    await store.loadWanted();
    ask();
    await store.loadWanted(() => true);
    expect(files.opened).toEqual([]);
    expect(ask()).toEqual(['pending', 'pending']);
    await store.loadWanted();
    expect(ask()).toEqual(['file', 'file']);
  });
});

describe('the nearest samples', () => {
  it('are audio files of the same folder, in the form of the path', async () => {
    const store = new SampleStore(disk());
    await stateOf(store, 'Samples/C5.wav');
    expect(store.lookup('/set').nearest('Samples/C5.wav', 1)).toEqual(['Samples/C4.wav']);
    expect(store.lookup('/set').nearest('Samples/note.txt', 3)).toEqual([]);
    await stateOf(store, 'outsid.wav', '/');
    expect(store.lookup('/').nearest('outsid.wav', 3)).toEqual(['outside.wav']);
  });
});
