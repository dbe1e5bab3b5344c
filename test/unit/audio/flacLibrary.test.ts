import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { encodeFlac } from '../../../server/audio/encode/flacEncoder';
import { flacLibrary } from '../../../server/flacLibrary';
import { flacLibraryIn } from '../../../server/workspace/files/flacLibraryIn';
import { chunk, format, readerOf, sampler, wave } from './byteFiles';

const bundles = join(__dirname, '../../../dist');

/** A tone and noise in so many channels of 16 bits, with a loop and a root key. */
function waveOf(channels: number): Uint8Array {
  const values = Array.from({ length: 9000 * channels }, (_, at) => {
    const noise = ((at * 48_271) % 65_537) % 601;
    return (Math.round(9000 * Math.sin(at / (20 * channels))) + noise) & 0xffff;
  });
  return wave(
    chunk('fmt ', format(1, channels, 44100, 16)),
    chunk('smpl', sampler(62, 0, [[0, 100, 8000]])),
    chunk(
      'data',
      values.flatMap((value) => [value & 255, value >> 8]),
    ),
  );
}

describe.skipIf(!existsSync(join(bundles, 'flacLibrary.js')))('the encoder of FLAC that is released', () => {
  it('is WebAssembly, and gives the bytes of the same encoder compiled to JavaScript', async () => {
    const released = await flacLibraryIn(bundles);
    for (const channels of [1, 2]) {
      const file = () => ({ ...readerOf(waveOf(channels)), close: async () => {} });
      expect(await encodeFlac(released, file())).toEqual(await encodeFlac(flacLibrary, file()));
    }
  });
});
