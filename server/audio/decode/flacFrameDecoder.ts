import { checksum8, checksum16, readFlacFrameHeader } from '../headers/flacFrame';
import { quietly } from './quietly';

type Decoder = InstanceType<typeof import('@wasm-audio-decoders/flac')['FLACDecoder']>;

/** Damaged or missing frames after which a stream is given up: each costs a new decoder. */
const mostFaults = 64;

/** One that ended well, for the next stream: a new one takes memory that only the collection of garbage gives back. */
let spare: Decoder | undefined;

/** Decodes single frames of a FLAC stream. */
export class FlacFrameDecoder {
  readonly #channels: number;
  readonly #bitsPerSample: number;
  #decoder: Decoder | undefined;
  /** The number that the next frame has where none is missing. */
  #next: number | undefined;
  #faults = 0;

  /** Channels and bits of a sample as the stream information says them. */
  constructor(channels: number, bitsPerSample: number) {
    this.#channels = channels;
    this.#bitsPerSample = bitsPerSample;
  }

  /**
   * The numbers of one frame; `undefined` where it is damaged. Throws where so many were damaged or missing that it is no
   * use to go on.
   */
  async decode(frame: Uint8Array): Promise<Float32Array[] | undefined> {
    const header = readFlacFrameHeader(frame, 0);
    if (header?.channels !== this.#channels || checksum16(frame, 0, frame.length) !== 0) return undefined;
    // Where one is missing the decoder would fill in silence, so a new one takes this frame as its first.
    const isFirst = this.#next === undefined;
    if (!isFirst && this.#next !== header.number) this.#startAnew();
    this.#next = header.number + (header.isVariable ? header.blockSize : 1);
    const whole = complete(frame, header.length, this.#bitsPerSample);
    this.#decoder ??= (isFirst ? takeSpare() : undefined) ?? (await newDecoder());
    const decoder = this.#decoder;
    try {
      const { channelData, samplesDecoded, bitDepth } = await quietly(() => decoder.decodeFrames([whole]));
      if (samplesDecoded === header.blockSize && channelData.length === this.#channels) {
        for (const values of channelData) toFullScale(values, bitDepth);
        return channelData;
      }
    } catch {
      // Handled like any other damage.
    }
    this.#startAnew();
    return undefined;
  }

  /** Leaves the decoder to the next stream. */
  free(): void {
    if (spare) this.#decoder?.free();
    else spare = this.#decoder;
    this.#decoder = undefined;
  }

  /** Leaves the decoder to the garbage collector: after a fault its memory is in no state to be freed. */
  #startAnew(): void {
    this.#decoder = undefined;
    if (++this.#faults > mostFaults) throw new Error('Too many frames are damaged.');
  }
}

function takeSpare(): Decoder | undefined {
  const taken = spare;
  spare = undefined;
  return taken;
}

async function newDecoder(): Promise<Decoder> {
  const { FLACDecoder } = await import('@wasm-audio-decoders/flac');
  const decoder = new FLACDecoder();
  await decoder.ready;
  return decoder;
}

/** Bits of a sample by their code in the header of a frame (RFC 9639, section 9.1.4). */
const depthCodes: ReadonlyMap<number, number> = new Map([
  [8, 1],
  [12, 2],
  [16, 4],
  [20, 5],
  [24, 6],
  [32, 7],
]);
/** The code of a sample rate of 44.1 kHz. */
const anyRate = 9;

/**
 * A frame that the decoder can read alone: one whose header leaves the sample rate or depth to the stream information
 * gets them in its header. Which rate it is does not change what is decoded.
 */
function complete(frame: Uint8Array, headerBytes: number, bitsPerSample: number): Uint8Array {
  const [, , sizes = 0, depths = 0] = frame;
  const isRateMissing = (sizes & 15) === 0;
  const isDepthMissing = (depths & 14) === 0;
  if (!isRateMissing && !isDepthMissing) return frame;
  const whole = frame.slice();
  if (isRateMissing) whole[2] = sizes | anyRate;
  if (isDepthMissing) whole[3] = depths | ((depthCodes.get(bitsPerSample) ?? 0) << 1);
  whole[headerBytes - 1] = checksum8(whole, 0, headerBytes - 1);
  const sum = checksum16(whole, 0, whole.length - 2);
  whole[whole.length - 2] = sum >> 8;
  whole[whole.length - 1] = sum & 255;
  return whole;
}

/**
 * Brings numbers to the full scale of all other files. The decoder divides by the greatest positive number, so that the
 * least would lie below −1; multiplying by it gives the whole numbers of the file back exactly up to 24 bits.
 */
function toFullScale(values: Float32Array, bits: number): void {
  const scale = 2 ** (bits - 1);
  for (let frame = 0; frame < values.length; frame++) {
    values[frame] = Math.round(values[frame] * (scale - 1)) / scale;
  }
}
