import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { readFrameLayout } from '../../../../server/audio/decode/readFrameLayout';
import { mixToMono, readFrames } from '../../../../server/audio/decode/readFrames';
import { measureSamplePitch } from '../../../../server/audio/measure/measureSample';
import { chunk, format, readerOf, text, u32, wave } from '../byteFiles';
import { centsAbove, toneAt } from '../measure/tones';

/** A stereo file that a library of its own wrote. */
function fileOf(
  bits: string,
  container: 'RIFF' | 'RIFX' = 'RIFF',
): { bytes: Uint8Array; channels: number[][] } {
  const left = Array.from({ length: 500 }, (_, frame) => Math.sin(frame / 9) * 0.9);
  const right = left.map((value) => -value / 2);
  const wav = new wavefile.WaveFile();
  const isFloat = bits === '32f' || bits === '64';
  const full = 2 ** (Number.parseInt(bits, 10) - 1);
  const written = [left, right].map((channel) =>
    isFloat ? channel : channel.map((value) => Math.round(value * (full - 1)) + (bits === '8' ? 128 : 0)),
  );
  wav.fromScratch(2, 44100, bits, written, { container });
  return { bytes: wav.toBuffer(), channels: [left, right] };
}

describe('frames of a WAV file', () => {
  it.each(['8', '16', '24', '32', '32f', '64'])('%s bits, written by wavefile', async (bits) => {
    for (const container of ['RIFF', 'RIFX'] as const) {
      const { bytes, channels } = fileOf(bits, container);
      const reader = readerOf(bytes);
      const layout = await readFrameLayout(reader);
      if (!layout) throw new Error('no layout');
      expect(layout).toMatchObject({ channels: 2, sampleRate: 44100, frames: 500 });
      reader.reads.length = 0;
      const read = await readFrames(reader, layout, 100, 50);
      expect(reader.reads).toEqual([
        { start: layout.dataStart + 100 * 2 * layout.bytesPerSample, length: 50 * 2 * layout.bytesPerSample },
      ]);
      const most = bits === '8' ? 0.02 : 1e-4;
      for (const [number, channel] of read.entries()) {
        expect(channel.length).toBe(50);
        channel.forEach((value, frame) => {
          expect(Math.abs(value - (channels[number]?.[100 + frame] ?? 9))).toBeLessThan(most);
        });
      }
    }
  });

  it('outside the file are left out', async () => {
    const reader = readerOf(fileOf('16').bytes);
    const layout = await readFrameLayout(reader);
    if (!layout) throw new Error('no layout');
    expect((await readFrames(reader, layout, 490, 50)).map(({ length }) => length)).toEqual([10, 10]);
    expect((await readFrames(reader, layout, 900, 50)).map(({ length }) => length)).toEqual([0, 0]);
    expect((await readFrames(reader, layout, -5, 10)).map(({ length }) => length)).toEqual([5, 5]);
  });

  it('that are no numbers read as 0', async () => {
    const floats = new Uint8Array(new Float32Array([Number.NaN, Number.POSITIVE_INFINITY, 0.5]).buffer);
    const reader = readerOf(wave(chunk('fmt ', format(3, 1, 8000, 32)), chunk('data', [...floats])));
    const layout = await readFrameLayout(reader);
    if (!layout) throw new Error('no layout');
    expect([...((await readFrames(reader, layout, 0, 9))[0] ?? [])]).toEqual([0, 0, 0.5]);
  });
});

describe('one channel of several', () => {
  it('is their mean', () => {
    expect([...mixToMono([Float32Array.of(1, 0), Float32Array.of(0, 0.5)])]).toEqual([0.5, 0.25]);
  });

  it('is the loudest where they cancel', () => {
    const left = Float32Array.of(0.5, -0.5);
    expect(mixToMono([left.map((value) => -0.9 * value), left])).toBe(left);
  });
});

describe('the pitch of a file', () => {
  it('is found behind silence, and in channels of opposite phase', async () => {
    const { samples, hertz } = toneAt(64, { seconds: 1 });
    const silent = new Array(3 * 44100).fill(0);
    const left = [...silent, ...samples];
    const wav = new wavefile.WaveFile();
    wav.fromScratch(2, 44100, '32f', [left, left.map((value) => -value)]);
    const pitch = await measureSamplePitch(readerOf(wav.toBuffer()));
    expect(Math.abs(centsAbove(pitch?.hertz ?? 0, hertz))).toBeLessThan(0.5);
  });

  it('any bytes give an answer', async () => {
    const head = fileOf('16').bytes.slice(0, 60);
    await fc.assert(
      fc.asyncProperty(
        fc.uint8Array({ maxLength: 400 }),
        fc.array(fc.tuple(fc.nat(59), fc.nat(255)), { maxLength: 4 }),
        async (tail, flips) => {
          const bytes = new Uint8Array([...head, ...tail]);
          for (const [at, byte] of flips) bytes[at] = byte;
          const pitch = await measureSamplePitch(readerOf(bytes));
          expect(pitch === null || pitch.confidence <= 1).toBe(true);
          expect(await measureSamplePitch(readerOf(tail))).toBeNull();
          const aiff = [...text('FORM'), ...u32(0), ...text(tail.length % 2 ? 'AIFF' : 'AIFC'), ...tail];
          expect(await measureSamplePitch(readerOf(new Uint8Array(aiff)))).toBeNull();
        },
      ),
    );
  });

  it('a file whose reads fail has none', async () => {
    const reader = { ...readerOf(fileOf('16').bytes), read: () => Promise.reject(new Error('gone')) };
    expect(await measureSamplePitch(reader)).toBeNull();
  });
});
