import type { FileReader } from '../../model/files';
import type { FrameLayout } from '../headers/frameLayout';
import { logarithmic } from './logarithmic';

/** Bytes that one call reads at most: an hour-long file asked for whole must not fill the memory. */
const mostBytes = 1 << 26;

/**
 * Frames of an open file as numbers, one array for each channel, full scale from −1 to 1. Reads the bytes of these
 * frames and no others. Frames outside the file are left out, so the arrays can be shorter than `count`; a kind of
 * numbers that is not decoded answers empty arrays. Values that are no numbers read as 0.
 */
export async function readFrames(
  reader: FileReader,
  layout: FrameLayout,
  startFrame: number,
  count: number,
): Promise<Float32Array[]> {
  const { channels, bytesPerSample, dataStart, frames } = layout;
  const frameBytes = channels * bytesPerSample;
  const decode = decoderOf(layout);
  const first = Math.max(0, Math.floor(startFrame));
  const end = Math.min(frames, Math.floor(startFrame + count), first + Math.floor(mostBytes / frameBytes));
  if (!decode || !(end > first)) return emptyChannels(channels);
  const bytes = await reader.read(dataStart + first * frameBytes, (end - first) * frameBytes);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const there = Math.min(end - first, Math.floor(bytes.length / frameBytes));
  return Array.from({ length: channels }, (_, channel) => {
    const samples = new Float32Array(there);
    for (let frame = 0, at = channel * bytesPerSample; frame < there; frame++, at += frameBytes) {
      samples[frame] = decode(view, at);
    }
    return samples;
  });
}

/**
 * All channels as one: their mean. Channels that cancel one another, as those in opposite phase do, would leave
 * nothing to measure, so then the loudest channel stands for all.
 */
export function mixToMono(channels: readonly Float32Array[]): Float32Array {
  const first = channels[0];
  if (!first || channels.length === 1) return first ?? new Float32Array(0);
  const mix = new Float32Array(first.length);
  let loudest = first;
  let most = -1;
  let total = 0;
  for (const channel of channels) {
    let energy = 0;
    for (let frame = 0; frame < mix.length; frame++) {
      const value = channel[frame];
      mix[frame] = mix[frame] + value / channels.length;
      energy += value * value;
    }
    total += energy;
    if (energy > most) {
      most = energy;
      loudest = channel;
    }
  }
  let mixed = 0;
  for (const value of mix) mixed += value * value;
  // Unlike channels, mixed, keep a share of one over their number; half of that means that they cancel.
  return mixed * 2 * channels.length < total / channels.length ? loudest : mix;
}

function emptyChannels(channels: number): Float32Array[] {
  return Array.from({ length: channels }, () => new Float32Array(0));
}

type Decoder = (view: DataView, at: number) => number;

/**
 * How the number at a byte becomes a value. PCM of 1 to 4 or of 8 bytes holds its bits at the top (Multimedia Programming
 * Interface and Data Specifications 1.0, 1991); floating-point numbers are those of IEEE 754.
 */
function decoderOf(layout: FrameLayout): Decoder | undefined {
  const { encoding, littleEndian, bytesPerSample, unsignedBytes } = layout;
  if (encoding === 'float') {
    if (bytesPerSample === 4) return (view, at) => finite(view.getFloat32(at, littleEndian));
    if (bytesPerSample === 8) return (view, at) => finite(view.getFloat64(at, littleEndian));
    return undefined;
  }
  if (encoding === 'alaw' || encoding === 'mulaw') {
    const values = logarithmic[encoding];
    return bytesPerSample === 1 ? (view, at) => values[view.getUint8(at)] : undefined;
  }
  switch (bytesPerSample) {
    case 1:
      return unsignedBytes
        ? (view, at) => (view.getUint8(at) - 128) / 128
        : (view, at) => view.getInt8(at) / 128;
    case 2:
      return (view, at) => view.getInt16(at, littleEndian) / 0x8000;
    case 3:
      return littleEndian
        ? (view, at) => (view.getInt8(at + 2) * 0x10000 + view.getUint16(at, true)) / 0x800000
        : (view, at) => (view.getInt8(at) * 0x10000 + view.getUint16(at + 1)) / 0x800000;
    case 4:
      return (view, at) => view.getInt32(at, littleEndian) / 0x80000000;
    case 8: {
      // The lower half lies below what is told apart in 32 bits of floating point.
      const high = littleEndian ? 4 : 0;
      return (view, at) => view.getInt32(at + high, littleEndian) / 0x80000000;
    }
    default:
      return undefined;
  }
}

/** Far above full scale nothing is sound any more, and squares of it would overflow. */
function finite(value: number): number {
  return Math.abs(value) < 1e9 ? value : 0;
}
