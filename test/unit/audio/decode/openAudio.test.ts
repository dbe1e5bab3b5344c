import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AudioSource } from '../../../../server/audio/decode/audioSource';
import { openAudio } from '../../../../server/audio/decode/openAudio';
import type { FileReader } from '../../../../server/model/files';
import { bigChunk, common, form, sound } from '../bigEndianFiles';
import { chunk, format, readerOf, silence, text, wave } from '../byteFiles';
import { block, flac, streamInfo, verbatimFrame } from '../flacFiles';
import { opusHead, page, vorbisHead } from '../oggFiles';

async function opened(reader: FileReader): Promise<AudioSource> {
  const audio = await openAudio(reader);
  if (!audio) throw new Error('The file is not decoded.');
  return audio;
}

/** All frames of a file, channel by channel. */
async function framesOf(bytes: Uint8Array): Promise<number[][]> {
  const audio = await opened(readerOf(bytes));
  const whole = Array.from({ length: audio.channels }, (): number[] => []);
  for await (const values of audio.blocks()) {
    values.forEach((channel, number) => {
      for (const value of channel) whole[number]?.push(value);
    });
  }
  await audio.close();
  return whole;
}

/** Numbers of 16 bits that no predictor guesses. */
const noise = (length: number, seed: number) =>
  Array.from({ length }, (_, frame) => ((((frame + seed) * 48_271) % 65_537) % 65_536) - 32_768);
const [left, right] = [noise(3000, 1), noise(3000, 99)];
const parts = (values: number[]) => [0, 1, 2].map((part) => values.slice(1000 * part, 1000 * part + 1000));
const verbatim = [0, 1, 2].map((part) =>
  verbatimFrame(part, [parts(left)[part] ?? [], parts(right)[part] ?? []]),
);
const flacFile = flac(block(0, streamInfo(44100, 2, 16, 3000, 0, 1000), true), ...verbatim);
const oggHead = (packets: number) => [
  ...text('\x7fFLAC'),
  1,
  0,
  0,
  packets,
  ...text('fLaC'),
  ...block(0, streamInfo(44100, 2, 16, 3000, 0, 1000)),
];
const oggFile = new Uint8Array([
  ...page(3, 2, 0n, oggHead(1), 0),
  ...page(3, 0, 0n, block(4, silence(40), true), 1),
  ...verbatim.flatMap((frame, part) =>
    page(3, part === 2 ? 4 : 0, BigInt(1000 * (part + 1) - (part === 2 ? 100 : 0)), frame, 2 + part),
  ),
]);
const little = (value: number) => [value & 255, (value >> 8) & 255];
const waveFile = wave(
  chunk('fmt ', format(1, 2, 44100, 16)),
  chunk(
    'data',
    left.flatMap((value, frame) => [...little(value), ...little(right[frame] ?? 0)]),
  ),
);
const aiffFile = form(
  'AIFF',
  bigChunk('COMM', common(2, 3000, 16)),
  bigChunk('SSND', sound(left.flatMap((value, frame) => [...big(value), ...big(right[frame] ?? 0)]))),
);
function big(value: number): number[] {
  return little(value).reverse();
}

const kinds: [string, Uint8Array, number][] = [
  ['WAV', waveFile, 3000],
  ['AIFF', aiffFile, 3000],
  ['FLAC', flacFile, 3000],
  // The last page ends 100 frames before its packet does.
  ['FLAC in Ogg', oggFile, 2900],
];

describe.each(kinds)('audio of %s', (_, bytes, frames) => {
  it('is exact', async () => {
    const audio = await opened(readerOf(bytes));
    expect(audio).toMatchObject({ sampleRate: 44100, channels: 2, bitsPerSample: 16, frames });
    await audio.close();
    const expected = [left, right].map((values) => values.slice(0, frames).map((value) => value / 32_768));
    expect(await framesOf(bytes)).toEqual(expected);
  });

  it('is the same from any frame on, in any order', async () => {
    const audio = await opened(readerOf(bytes));
    const asked = fc.tuple(fc.integer({ min: -50, max: frames + 50 }), fc.nat(1500));
    await fc.assert(
      fc.asyncProperty(asked, async ([start, count]) => {
        const read = await audio.read(start, count);
        const [from, to] = [Math.max(0, start), Math.max(0, Math.min(frames, start + count))];
        expect([...(read[1] ?? [])]).toEqual(right.slice(from, to).map((value) => value / 32_768));
      }),
    );
    // At once.
    const reads = await Promise.all([audio.read(2000, 9), audio.read(5, 9), audio.read(1000, 9)]);
    expect(reads.map(([channel]) => (channel?.[0] ?? 0) * 32_768)).toEqual([left[2000], left[5], left[1000]]);
    await audio.close();
  });

  it('ends early in a file that is cut short', async () => {
    for (let length = 0; length < bytes.length; length += 97) {
      const cut = bytes.slice(0, length);
      for (const size of [length, bytes.length]) {
        const audio = await openAudio(readerOf(cut, size));
        if (!audio) continue;
        const there: number[] = [];
        for await (const [channel = []] of audio.blocks()) there.push(...channel);
        expect(there.length).toBeLessThanOrEqual(frames);
        expect(there).toEqual(left.slice(0, there.length).map((value) => value / 32_768));
        await audio.read(2500, 100);
        await audio.close();
      }
    }
  });

  it('never fails for changed bytes', async () => {
    const change = fc.tuple(
      fc.oneof(fc.nat(120), fc.nat(bytes.length - 1)),
      fc.constantFrom(0, 1, 127, 128, 255),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 4 }), async (changes) => {
        const changed = bytes.slice();
        for (const [at, value] of changes) changed[at] = value;
        const audio = await openAudio(readerOf(changed));
        if (!audio) return;
        let count = 0;
        for await (const values of audio.blocks()) {
          expect(values).toHaveLength(audio.channels);
          count += values[0]?.length ?? 0;
        }
        expect(count).toBeLessThanOrEqual(4 * 3000 * audio.channels);
        await audio.close();
      }),
      { numRuns: 60 },
    );
  });
});

it('decodes the first example of RFC 9639, appendix D', async () => {
  const example = `664c6143 80000022 10001000 00000f00 000f0ac4 42f00000 00013e84 b41807dc
    69030758 6a3dad1a 2e0ffff8 69180000 bf0358fd 03128baa 9a`.replace(/\s/g, '');
  const bytes = Uint8Array.from(example.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
  // "The first sample" of the left channel is 25588, that of the right one 10416 (appendix D.1).
  expect(await framesOf(bytes)).toEqual([[25_588 / 32_768], [10_416 / 32_768]]);
});

it('passes tags before and behind a FLAC file', async () => {
  const before = [...text('ID3\x04\0\0\0\0\x02\x04'), ...silence(260)];
  for (const behind of [
    [...text('TAG'), ...silence(125)],
    [...text('APETAGEX'), ...silence(60)],
  ]) {
    expect(await framesOf(new Uint8Array([...before, ...flacFile, ...behind]))).toEqual(
      await framesOf(flacFile),
    );
  }
});

it('passes over a damaged frame of a FLAC file', async () => {
  const damaged = flacFile.slice();
  const second = 4 + 38 + (verbatim[0]?.length ?? 0);
  damaged[second + 500] = (damaged[second + 500] ?? 0) ^ 1;
  const [channel = []] = await framesOf(damaged);
  expect(channel).toEqual([...left.slice(0, 1000), ...left.slice(2000)].map((value) => value / 32_768));
});

it('decodes FLAC files one after the other, whatever the blocks and channels of the one before', async () => {
  const inBlocks = (size: number, channels: number[][], first = 0) => {
    const count = Math.ceil(3000 / size);
    const frames = Array.from({ length: count }, (_, part) =>
      verbatimFrame(
        first + part,
        channels.map((values) => values.slice(size * part, size * (part + 1))),
      ),
    );
    return flac(block(0, streamInfo(44100, channels.length, 16, 3000, 0, size), true), ...frames);
  };
  const files = [3000, 100, 1000, 250, 2999].map((size, at) =>
    inBlocks(size, at % 2 === 0 ? [left, right] : [right]),
  );
  const full = (values: number[]) => values.map((value) => value / 32_768);
  for (const [at, file] of [...files, ...files.toReversed()].entries())
    expect(await framesOf(file)).toEqual(
      (at < 5 ? at : 9 - at) % 2 === 0 ? [full(left), full(right)] : [full(right)],
    );
  // One that was cut at its start counts on from there: nothing is missing before it.
  expect(await framesOf(inBlocks(1000, [left], 100))).toEqual([full(left)]);
});

it('decodes recordings one behind the other, and puts packets together again that go over pages', async () => {
  const again = oggFile.slice();
  const [first = []] = await framesOf(new Uint8Array([...oggFile, ...again]));
  expect(first).toHaveLength(2 * 2900);
  expect(first.slice(2900)).toEqual(first.slice(0, 2900));
});

it('gives nothing for a file that is not decoded, and none of the faults of its reader', async () => {
  expect(await openAudio(readerOf(new Uint8Array(text('no audio at all'))))).toBeUndefined();
  // IMA ADPCM.
  const differences = wave(chunk('fmt ', format(0x11, 1, 8000, 4)), chunk('data', silence(100)));
  expect(await openAudio(readerOf(differences))).toBeUndefined();
  const broken: FileReader = {
    size: 5000,
    read: () => Promise.reject(new Error('The disk is gone.')),
    close: async () => {},
  };
  expect(await openAudio(broken)).toBeUndefined();
});

it('ends on any packets in Vorbis and Opus streams', async () => {
  const packets = fc.array(fc.uint8Array({ minLength: 1, maxLength: 200 }), { maxLength: 6 });
  const heads = fc.constantFrom(vorbisHead(2, 44100), opusHead(2, 312, 48000), vorbisHead(8, 8000));
  await fc.assert(
    fc.asyncProperty(heads, packets, async (head, rest) => {
      const pages = rest.map((packet, number) => page(7, 0, BigInt(1000 * number), [...packet], number + 1));
      const audio = await openAudio(readerOf(new Uint8Array([...page(7, 2, 0n, head, 0), ...pages.flat()])));
      if (!audio) return;
      for await (const values of audio.blocks()) expect(values).toHaveLength(audio.channels);
      await audio.close();
    }),
    { numRuns: 60 },
  );
});
