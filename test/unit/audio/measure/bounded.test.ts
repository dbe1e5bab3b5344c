import { describe, expect, it } from 'vitest';
import { measureLoopSeam } from '../../../../server/audio/measure/loops/loopSeam';
import { measureSamplePitch } from '../../../../server/audio/measure/measureSample';
import { mostMeasuredValues } from '../../../../server/audio/measure/openMeasured';
import { surveySample } from '../../../../server/audio/measure/survey';
import type { FileReader } from '../../../../server/model/files';
import { chunk, format, readerOf, wave } from '../byteFiles';
import { block, flac, silentFrame, streamInfo } from '../flacFiles';

/** Frames of the largest FLAC frame. */
const large = 65_535;
const channels = 8;

/** A FLAC file of a few kilobytes that holds twice as much silence as is measured. */
const longSilence = (() => {
  const count = Math.ceil((2 * mostMeasuredValues) / (large * channels));
  const frames = Array.from({ length: count }, (_, number) => silentFrame(number, channels, large));
  return flac(block(0, streamInfo(48_000, channels, 16, count * large, 0, large), true), ...frames);
})();

/** A WAV file of silence, made while it is read, that claims any size; counts the bytes that are read. */
function longWave(channelCount: number, frames: number): FileReader & { bytesRead: number } {
  const head = wave(chunk('fmt ', format(1, channelCount, 48_000, 8)), chunk('data', []));
  const size = frames * channelCount;
  const view = new DataView(head.buffer, head.byteOffset);
  view.setUint32(4, head.length - 8 + size, true);
  view.setUint32(head.length - 4, size, true);
  return {
    size: head.length + size,
    bytesRead: 0,
    async read(start, length) {
      this.bytesRead += length;
      const bytes = new Uint8Array(length).fill(128);
      if (start < head.length) bytes.set(head.subarray(start, start + length));
      return bytes;
    },
    close: async () => {},
  };
}

describe('a file that holds far more than it seems to', () => {
  it('is looked at from its start for a bounded stretch', async () => {
    expect(longSilence.length).toBeLessThan(4000);
    const survey = await surveySample(readerOf(longSilence));
    expect(survey).toMatchObject({ isWhole: false, peak: 0, hasEqualChannels: false });
    const values = (survey?.frames ?? 0) * channels;
    expect(values).toBeGreaterThanOrEqual(mostMeasuredValues);
    expect(values).toBeLessThan(mostMeasuredValues + large * channels);
  });

  it('is stopped while it is decoded, though all of it was read', async () => {
    const stop = new AbortController();
    const looked: number[] = [];
    const onFrames = (frames: number) => {
      looked.push(frames);
      if (looked.length === 2) stop.abort();
    };
    const options = { whole: true, signal: stop.signal, onFrames };
    expect(await surveySample(readerOf(longSilence), options)).toBeNull();
    expect(looked).toEqual([large, 2 * large]);
  });

  it('lets other work run while it is decoded', async () => {
    const stop = new AbortController();
    setTimeout(() => stop.abort(), 0);
    const looked: number[] = [];
    const options = { whole: true, signal: stop.signal, onFrames: (frames: number) => looked.push(frames) };
    expect(await surveySample(readerOf(longSilence), options)).toBeNull();
    expect(looked.length).toBeLessThan(4);
  });

  it('has no seam measured where all before it would have to be decoded', async () => {
    const reader = readerOf(longSilence);
    const far = mostMeasuredValues / channels + 1;
    expect(await measureLoopSeam(reader, far - 50_000, far)).toBeNull();
    // A loop at the start is measured; that one is silent.
    expect(await measureLoopSeam(reader, 1000, 60_000)).toMatchObject({ isAudible: false });
  });

  it('is read for a bounded stretch where it is not compressed, and to its end when that is asked for', async () => {
    const twice = longWave(2, mostMeasuredValues);
    const survey = await surveySample(twice);
    expect(survey?.isWhole).toBe(false);
    expect(twice.bytesRead).toBeLessThan(1.1 * mostMeasuredValues);
    const short = longWave(2, 1_000_000);
    expect(await surveySample(short)).toMatchObject({ isWhole: true, frames: 1_000_000 });
  });

  it('has its loops measured wherever they are where it is not compressed', async () => {
    const reader = longWave(2, 4 * mostMeasuredValues);
    expect(await measureLoopSeam(reader, 3 * mostMeasuredValues, 3.5 * mostMeasuredValues)).not.toBeNull();
    expect(reader.bytesRead).toBeLessThan(1_000_000);
  });

  it('is not measured where a header claims more channels than any sound has', async () => {
    const reader = longWave(65_535, 100_000);
    expect(await surveySample(reader)).toBeNull();
    expect(await measureSamplePitch(reader)).toBeNull();
    expect(await measureLoopSeam(reader, 1000, 60_000)).toBeNull();
    expect(reader.bytesRead).toBeLessThan(50_000);
  });
});
