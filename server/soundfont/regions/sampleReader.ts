import type { FileReader } from '../../model/files';
import { ByteWriter } from '../byteWriter';
import type { SampleHeader, SoundFont } from '../font';
import type { SampleFile } from './sampleFiles';

/**
 * A sample of an open SoundFont as a WAV file of 16 or 24 bits: root key, tuning and loop in a `smpl` chunk, its frames as
 * they stand in the font, a left and a right sample side by side, the shorter one with silence behind it. Bytes are put
 * together when they are read. Closing it closes the font.
 */
export function sampleReader(fontReader: FileReader, font: SoundFont, file: SampleFile): FileReader {
  const layout = layoutOf(font, file);
  const header = wavHeader(layout, file);
  const size = header.length + layout.dataBytes + (layout.dataBytes % 2);
  return {
    size,
    async read(start, length) {
      const first = Math.max(0, start);
      const end = Math.min(size, first + Math.max(0, length));
      if (end <= first) return new Uint8Array(0);
      const bytes = new Uint8Array(end - first);
      if (first < header.length) bytes.set(header.subarray(first, Math.min(end, header.length)));
      await readAudio(fontReader, font, file, layout, first - header.length, bytes);
      return bytes;
    },
    close: () => fontReader.close(),
  };
}

/** Bytes of a sample as a WAV file, as {@link sampleReader} gives it. */
export function sampleFileBytes(font: SoundFont, file: SampleFile): number {
  const layout = layoutOf(font, file);
  return wavHeader(layout, file).length + layout.dataBytes + (layout.dataBytes % 2);
}

interface Layout {
  channels: number;
  bytesPerValue: number;
  frameBytes: number;
  dataBytes: number;
}

function layoutOf(font: SoundFont, { use, frames }: SampleFile): Layout {
  const channels = use.samples.length;
  const bytesPerValue = font.lowBytesStart === undefined ? 2 : 3;
  const frameBytes = channels * bytesPerValue;
  return { channels, bytesPerValue, frameBytes, dataBytes: frames * frameBytes };
}

const loopBytes = 24;
const middleKey = 60;
const nanoseconds = 1e9;
/** What one semitone is in the fraction of a `smpl` chunk. */
const semitone = 2 ** 32;

/** Layout of the chunks: Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991. */
function wavHeader({ channels, bytesPerValue, frameBytes, dataBytes }: Layout, file: SampleFile): Uint8Array {
  const { loop, sampleRate } = file;
  const samplerBytes = 36 + (loop ? loopBytes : 0);
  const size = 12 + 24 + 8 + samplerBytes + 8;
  const { key, fraction } = pitchOf(file);
  const writer = new ByteWriter(size);
  writer.letters('RIFF').u32(size - 8 + dataBytes + (dataBytes % 2));
  writer
    .letters('WAVEfmt ')
    .u32(16)
    .u16(1, channels)
    .u32(sampleRate, sampleRate * frameBytes);
  writer.u16(frameBytes, bytesPerValue * 8);
  writer.letters('smpl').u32(samplerBytes, 0, 0, Math.round(nanoseconds / sampleRate), key, fraction);
  writer.u32(0, 0, loop ? 1 : 0, 0);
  if (loop) writer.u32(0, 0, loop.start, loop.end, 0, 0);
  return writer.letters('data').u32(dataBytes).finish();
}

/** The chunk counts upwards from its key. */
function pitchOf({ rootKey = middleKey, fineTuneCents }: SampleFile): { key: number; fraction: number } {
  const cents = 100 * rootKey + fineTuneCents;
  const key = Math.max(0, Math.min(127, Math.floor(cents / 100)));
  const rest = Math.max(0, Math.min(99.999, cents - 100 * key));
  return { key, fraction: Math.round((rest / 100) * semitone) };
}

/** Puts audio into `bytes`, whose first byte is at `from` in the audio; less than 0 where a header stands before it. */
async function readAudio(
  reader: FileReader,
  font: SoundFont,
  { use, frames }: SampleFile,
  { bytesPerValue, frameBytes, channels }: Layout,
  from: number,
  bytes: Uint8Array,
): Promise<void> {
  const firstFrame = Math.max(0, Math.floor(from / frameBytes));
  const endFrame = Math.min(frames, Math.ceil((from + bytes.length) / frameBytes));
  if (endFrame <= firstFrame) return;
  for (let channel = 0; channel < channels; channel++) {
    const { start, end } = playedPart(font, use.samples[channel] as number, frames);
    const first = start + firstFrame;
    const count = Math.min(end, start + endFrame) - first;
    if (count <= 0) continue;
    const high = await reader.read(font.pool.startByte + 2 * first, 2 * count);
    const low =
      font.lowBytesStart === undefined ? undefined : await reader.read(font.lowBytesStart + first, count);
    const there = Math.min(count, high.length >> 1);
    const skip = bytesPerValue - 2;
    for (let frame = 0; frame < there; frame++) {
      const at = (firstFrame + frame) * frameBytes + channel * bytesPerValue - from;
      if (low) put(bytes, at, low[frame] ?? 0);
      put(bytes, at + skip, high[2 * frame] as number);
      put(bytes, at + skip + 1, high[2 * frame + 1] as number);
    }
  }
}

function put(bytes: Uint8Array, at: number, value: number): void {
  if (at >= 0 && at < bytes.length) bytes[at] = value;
}

function playedPart(
  { samples, pool }: SoundFont,
  sample: number,
  frames: number,
): { start: number; end: number } {
  const { start, end, loopEnd } = samples[sample] as SampleHeader;
  const last = Math.max(end, loopEnd <= pool.frames ? loopEnd : 0);
  return { start, end: Math.min(last, start + frames, pool.frames) };
}
