import { describe, expect, it } from 'vitest';
import { openAudio } from '../../../server/audio/decode/openAudio';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import type { Files } from '../../../server/model/files';
import { withFontSamples } from '../../../server/soundfont/fontFiles';
import { Generator as g } from '../../../server/soundfont/generators';
import { MemoryFiles } from '../workspace/memoryFiles';
import type { TestGenerator, TestSample } from './fontBytes';
import { fontBytes, simpleFont, tone } from './fontBytes';

function filesWith(bytes: Uint8Array): { disk: MemoryFiles; files: Files } {
  const disk = new MemoryFiles({ '/kit/reeds.sf2': bytes, '/kit/plain.txt': 'no font' });
  return { disk, files: withFontSamples(disk) };
}

function fontOf(
  samples: TestSample[],
  gens: TestGenerator[][],
  version: [number, number] = [2, 4],
): Uint8Array {
  return fontBytes({
    version,
    presets: [{ name: 'P', zones: [{ gens: [[g.instrument, 0]] }] }],
    instruments: [
      {
        name: 'I',
        zones: gens.map((own, at) => ({
          gens: [...own, [g.sample, at % samples.length]] as TestGenerator[],
        })),
      },
    ],
    samples,
  });
}

async function audioOf(files: Files, path: string) {
  const reader = (await files.open(path))!;
  const reading = await readSampleFacts(reader);
  if (reading.kind !== 'facts') throw new Error(reading.reason);
  const source = (await openAudio(reader))!;
  const channels = await source.read(0, 1e6);
  return { facts: reading.facts, channels: channels.map((channel) => [...channel]), reader };
}

// Root key, correction in cents, loop and pairs of channels of a sample: SoundFont Technical Specification 2.04, 7.10; the
// `smpl` chunk of the files that are made: see the test of its reader. A loop ends one frame earlier there, as its end is
// played.
describe('the samples of a font as files', () => {
  it('stand in a folder with the name of the font', async () => {
    const { files } = filesWith(simpleFont());
    expect(await files.list('/kit/reeds.sf2')).toEqual([{ name: 'Reed C4.wav', kind: 'file' }]);
    const reader = (await files.open('/kit/reeds.sf2/Reed C4.wav'))!;
    expect(await files.stat('/kit/reeds.sf2/Reed C4.wav')).toMatchObject({ kind: 'file', size: reader.size });
    expect(await files.stat('/kit/reeds.sf2')).toMatchObject({ kind: 'file' });
    expect((await files.list('/kit'))!.map(({ name }) => name).sort()).toEqual(['plain.txt', 'reeds.sf2']);
  });

  it('are not there where there is no such sample or no font', async () => {
    const { files } = filesWith(simpleFont());
    for (const path of [
      '/kit/reeds.sf2/Other.wav',
      '/kit/plain.txt/Reed C4.wav',
      '/kit/none.sf2/Reed C4.wav',
      '/',
    ]) {
      expect(await files.open(path)).toBeUndefined();
      if (path !== '/') expect(await files.stat(path)).toBeUndefined();
    }
    expect(await files.list('/kit/plain.txt')).toBeUndefined();
  });

  it('are mono WAV of 16 bits with root key, tuning and loop', async () => {
    const frames = tone(200, 20);
    const { files } = filesWith(
      fontOf(
        [{ name: 'A', frames, loop: [40, 160], root: 57, correction: -12, rate: 32000 }],
        [[[g.sampleModes, 1]]],
        [2, 1],
      ),
    );
    const { facts, channels } = await audioOf(files, '/kit/reeds.sf2/A.wav');
    expect(facts).toMatchObject({
      encoding: 'pcm',
      bitsPerSample: 16,
      channels: 1,
      sampleRate: 32000,
      frames: 200,
      loops: [{ start: 40, end: 159, type: 'forward' }],
      rootKey: 57,
      // To be lowered by 12 cents, it sounds 12 above its root key.
      fineTuneCents: 12,
      problems: [],
    });
    expect(channels[0]).toEqual(frames.map((value) => Math.fround(value / 32768)));
  });

  it('have no loop where no region loops them', async () => {
    const { files } = filesWith(simpleFont());
    expect((await audioOf(files, '/kit/reeds.sf2/Reed C4.wav')).facts.loops).toEqual([]);
  });

  it('have 24 bits where the font has', async () => {
    const frames = tone(60, 20);
    const low = frames.map((_, at) => (at * 37) % 256);
    const { files } = filesWith(fontOf([{ name: 'A', frames, low }], [[]]));
    const { facts, channels } = await audioOf(files, '/kit/reeds.sf2/A.wav');
    expect(facts.bitsPerSample).toBe(24);
    // 2.04, section 6.2: the low byte is unsigned.
    expect(channels[0]).toEqual(frames.map((value, at) => (value * 256 + low[at]!) / 2 ** 23));
  });

  it('are stereo where left and right belong together, the shorter with silence behind it', async () => {
    const [left, right] = [tone(61, 20), tone(70, 15)];
    const { files } = filesWith(
      fontOf(
        [
          { name: 'A L', frames: left, type: 4 },
          { name: 'A R', frames: right, type: 2 },
        ],
        [[[g.pan, -500]], [[g.pan, 500]]],
      ),
    );
    const { facts, channels } = await audioOf(files, '/kit/reeds.sf2/A.wav');
    expect(facts).toMatchObject({ channels: 2, frames: 70, problems: [] });
    expect(channels[0]).toEqual(
      [...left.map((value) => value / 32768), ...new Array<number>(9).fill(0)].map(Math.fround),
    );
    expect(channels[1]).toEqual(right.map((value) => Math.fround(value / 32768)));
  });

  it('give the same bytes whatever ranges are read', async () => {
    const frames = tone(61, 20);
    const low = frames.map((_, at) => at);
    const { files } = filesWith(
      fontOf(
        [
          { name: 'A L', frames, low, type: 4 },
          { name: 'A R', frames: tone(50, 9), low, type: 2 },
        ],
        [[[g.pan, -500]], [[g.pan, 500]]],
      ),
    );
    const reader = (await files.open('/kit/reeds.sf2/A.wav'))!;
    const whole = await reader.read(0, reader.size);
    expect(whole.length).toBe(reader.size);
    for (const step of [1, 2, 3, 5, 7, 100])
      for (let at = 0; at < reader.size; at += step)
        expect([...(await reader.read(at, step))]).toEqual([...whole.slice(at, at + step)]);
    expect(await reader.read(reader.size, 10)).toHaveLength(0);
  });

  it('have names that differ and that every file system takes', async () => {
    const names = ['A/B:C*', 'a/b:c*', 'CON', ' .x', '', '$no=yes <x>'];
    const { files } = filesWith(
      fontOf(
        names.map((name) => ({ name, frames: tone(60, 20) })),
        names.map(() => []),
      ),
    );
    const entries = await files.list('/kit/reeds.sf2');
    expect(entries!.map(({ name }) => name)).toEqual([
      'A_B_C_.wav',
      'a_b_c_ (2).wav',
      'CON_.wav',
      'x.wav',
      'unnamed.wav',
      '_no_yes _x_.wav',
    ]);
  });

  it('are looked at again when the font changes, and the font is closed each time', async () => {
    const { disk, files } = filesWith(simpleFont());
    await files.list('/kit/reeds.sf2');
    await files.list('/kit/reeds.sf2');
    expect(disk.opened).toHaveLength(1);
    disk.put('/kit/reeds.sf2', fontOf([{ name: 'New', frames: tone(60, 20) }], [[]]));
    expect(await files.list('/kit/reeds.sf2')).toEqual([{ name: 'New.wav', kind: 'file' }]);
    expect(disk.closed).toBe(2);
    await (await files.open('/kit/reeds.sf2/New.wav'))!.close();
    expect(disk.closed).toBe(3);
  });
});
