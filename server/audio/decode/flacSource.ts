import type { FileReader } from '../../model/files';
import { checksum16, readFlacFrameHeader } from '../flacFrame';
import { streamInfoBytes } from '../flacStreamInfo';
import type { AudioSource } from './audioSource';
import { ByteStream } from './byteStream';
import { flacFrames } from './flacFrames';
import { quietly } from './quietly';
import type { StreamFormat } from './streamedSource';
import { StreamedSource } from './streamedSource';

const markerBytes = 4;
const blockHeaderBytes = 4;
const mostBlocks = 1000;

/** The audio of a FLAC file whose marker `fLaC` stands at `start`. */
export function flacSource(reader: FileReader, start: number, format: StreamFormat): AudioSource {
  return new StreamedSource(format, async function* () {
    const stream = new ByteStream(reader, start);
    const head = await readFlacHead(stream);
    if (!head) return;
    const decoder = await FlacFrameDecoder.make(head, format.channels);
    try {
      // A stream that does not say how long it is goes on to the end of the file.
      let left = format.frames || Number.POSITIVE_INFINITY;
      for await (const { bytes } of flacFrames(stream, format.channels)) {
        const block = await decoder.decode(bytes);
        const length = block?.[0]?.length ?? 0;
        if (!block || length === 0) continue;
        yield length > left ? block.map((values) => values.subarray(0, left)) : block;
        left -= length;
        if (left <= 0) return;
      }
    } finally {
      decoder.free();
    }
  });
}

/** Passes the metadata; answers the marker and the stream information, as a decoder wants them before the first frame. */
async function readFlacHead(stream: ByteStream): Promise<Uint8Array | undefined> {
  stream.skip(markerBytes);
  let info: Uint8Array | undefined;
  for (let count = 0; count < mostBlocks; count++) {
    const header = await stream.peek(blockHeaderBytes);
    if (header.length < blockHeaderBytes) return undefined;
    const [first = 0, high = 0, middle = 0, low = 0] = header;
    const length = high * 65536 + middle * 256 + low;
    if (!info && (first & 127) === 0 && length >= streamInfoBytes) {
      info = (await stream.peek(blockHeaderBytes + streamInfoBytes)).slice(
        blockHeaderBytes,
        blockHeaderBytes + streamInfoBytes,
      );
    }
    stream.skip(blockHeaderBytes + length);
    if (first >= 128) break;
  }
  return info && flacHead(info);
}

/** The start of a stream with its stream information alone (RFC 9639, section 8). */
export function flacHead(info: Uint8Array): Uint8Array {
  return new Uint8Array([0x66, 0x4c, 0x61, 0x43, 0x80, 0, 0, streamInfoBytes, ...info]);
}

type Decoder = InstanceType<typeof import('@wasm-audio-decoders/flac')['FLACDecoder']>;

/** Frames that may be missing before a stream is given up. */
const mostGaps = 256;

/** Decodes single frames of a FLAC stream. */
export class FlacFrameDecoder {
  readonly #decoder: Decoder;
  readonly #head: Uint8Array;
  readonly #channels: number;
  /** The number that the next frame has where none is missing. */
  #next: number | undefined;
  #gaps = 0;

  private constructor(decoder: Decoder, head: Uint8Array, channels: number) {
    this.#decoder = decoder;
    this.#head = head;
    this.#channels = channels;
  }

  /** `head` as {@link flacHead} gives it. */
  static async make(head: Uint8Array, channels: number): Promise<FlacFrameDecoder> {
    const { FLACDecoder } = await import('@wasm-audio-decoders/flac');
    const decoder = new FLACDecoder();
    await decoder.ready;
    await quietly(() => decoder.decodeFrames([head]));
    return new FlacFrameDecoder(decoder, head, channels);
  }

  /** The numbers of one frame; `undefined` where it is damaged. */
  async decode(frame: Uint8Array): Promise<Float32Array[] | undefined> {
    const header = readFlacFrameHeader(frame, 0);
    if (header?.channels !== this.#channels || checksum16(frame, 0, frame.length) !== 0) return undefined;
    if (this.#next !== undefined && this.#next !== header.number) {
      // The decoder would fill in what is missing; starting anew, it takes the frame as its first.
      if (++this.#gaps > mostGaps) throw new Error('Too many frames are missing.');
      await this.#decoder.reset();
      await quietly(() => this.#decoder.decodeFrames([this.#head]));
    }
    this.#next = header.number + (header.isVariable ? header.blockSize : 1);
    const decoded = await quietly(() => this.#decoder.decodeFrames([frame]));
    const { channelData, samplesDecoded, bitDepth } = decoded;
    if (samplesDecoded !== header.blockSize || channelData.length !== this.#channels) return undefined;
    for (const values of channelData) toFullScale(values, bitDepth);
    return channelData;
  }

  free(): void {
    this.#decoder.free();
  }
}

/**
 * Brings numbers to the full scale of all other files. The decoder divides by the greatest positive number, so that the
 * least would lie below −1; multiplying by it gives the whole numbers of the file back exactly up to 24 bits.
 */
function toFullScale(values: Float32Array, bits: number): void {
  const scale = 2 ** (bits - 1);
  for (let frame = 0; frame < values.length; frame++) {
    values[frame] = Math.round((values[frame] as number) * (scale - 1)) / scale;
  }
}
