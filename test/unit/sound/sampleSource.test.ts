import { describe, expect, it } from 'vitest';
import { SampleSource } from '../../../server/sound/samples/sampleSource';
import { chunk, format, wave } from '../audio/byteFiles';
import { MemoryFiles } from '../workspace/memoryFiles';

/** A mono WAV file of 16 bits of one value. */
function level(value: number, frames: number, rate = 44100): Uint8Array {
  const data = Array.from({ length: frames }, () => [value & 0xff, (value >> 8) & 0xff]).flat();
  return Uint8Array.from(wave(chunk('fmt ', format(1, 1, rate, 16)), chunk('data', data)));
}

describe('the audio of sample files', () => {
  it('is that of the file that took the place of another, as soon as its shape is asked for again', async () => {
    const files = new MemoryFiles({ '/a.wav': level(8192, 100) });
    const source = new SampleSource(files);
    expect(await source.shape('/a.wav')).toMatchObject({ frames: 100, rate: 44100 });
    expect([...(await source.read('/a.wav', 0, 1))[0]!]).toEqual([0.25]);
    // Of the same size, and then of another.
    files.put('/a.wav', level(16384, 100));
    expect(await source.shape('/a.wav')).toMatchObject({ frames: 100 });
    expect([...(await source.read('/a.wav', 0, 1))[0]!]).toEqual([0.5]);
    files.put('/a.wav', level(-8192, 40, 22050));
    expect(await source.shape('/a.wav')).toMatchObject({ frames: 40, rate: 22050 });
    expect([...(await source.read('/a.wav', 39, 5))[0]!]).toEqual([-0.25]);
    expect(files.opened).toHaveLength(3);
    expect(files.closed).toBe(2);
    // What did not change is not opened again; what is gone is gone.
    await source.shape('/a.wav');
    expect(files.opened).toHaveLength(3);
    files.remove('/a.wav');
    expect(await source.shape('/a.wav')).toBeUndefined();
    await source.close();
  });
});
