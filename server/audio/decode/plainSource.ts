import type { FileReader } from '../../model/files';
import type { FrameLayout } from '../headers/frameLayout';
import type { AudioSource } from './audioSource';
import { readFrames } from './readFrames';

/** Frames of a block, fewer where there are very many channels. */
const blockFrames = 1 << 15;
const mostBlockValues = 1 << 20;

/** The audio of a file whose frames lie one behind the other, uncompressed. */
export function plainSource(reader: FileReader, layout: FrameLayout): AudioSource {
  const { sampleRate, channels, frames, bytesPerSample } = layout;
  const step = Math.max(1, Math.min(blockFrames, Math.floor(mostBlockValues / channels)));
  return {
    sampleRate,
    channels,
    frames,
    bitsPerSample: bytesPerSample * 8,
    isDecodedInOrder: false,
    read: (startFrame, count) => readFrames(reader, layout, startFrame, count),
    async *blocks() {
      for (let start = 0; start < frames; ) {
        const block = await readFrames(reader, layout, start, step);
        const length = block[0]?.length ?? 0;
        if (length === 0) return;
        yield block;
        start += length;
      }
    },
    async close() {},
  };
}
