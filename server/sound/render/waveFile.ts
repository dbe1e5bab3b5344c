/** How the values of a WAV file are written: whole numbers of 24 bits, or floating-point numbers of 32. */
export type WaveEncoding = 'pcm24' | 'float32';

/** The most bytes of audio that the sizes of a WAV file can hold, its headers taken off. */
const mostBytes = 0xffffffff - 1024;

/**
 * A stereo WAV file as it grows (Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991). Full
 * scale is 1; values of 24 bits are rounded to the nearest and clipped, without dither.
 */
export class WaveFile {
  readonly #rate: number;
  readonly #encoding: WaveEncoding;
  readonly #pieces: Uint8Array[] = [];
  #bytes = 0;

  constructor(rate: number, encoding: WaveEncoding) {
    this.#rate = rate;
    this.#encoding = encoding;
  }

  get #frameBytes(): number {
    return this.#encoding === 'pcm24' ? 6 : 8;
  }

  /** Seconds of sound that a WAV file can hold. */
  get mostSeconds(): number {
    return mostBytes / (this.#frameBytes * this.#rate);
  }

  /** Whether no more fits into a WAV file. */
  get isFull(): boolean {
    return this.#bytes > mostBytes;
  }

  /** Adds the first `count` values of two channels. */
  add(left: Float64Array, right: Float64Array, count: number): void {
    const piece = new Uint8Array(count * this.#frameBytes);
    const view = new DataView(piece.buffer);
    for (let frame = 0, at = 0; frame < count; frame++) {
      at = this.#write(view, at, left[frame]);
      at = this.#write(view, at, right[frame]);
    }
    this.#pieces.push(piece);
    this.#bytes += piece.length;
  }

  #write(view: DataView, at: number, value: number): number {
    if (this.#encoding === 'float32') {
      view.setFloat32(at, value, true);
      return at + 4;
    }
    const whole = Math.max(-0x800000, Math.min(0x7fffff, Math.round(value * 0x800000)));
    view.setUint16(at, whole & 0xffff, true);
    view.setInt8(at + 2, whole >> 16);
    return at + 3;
  }

  /** The file with its first `frames` frames, or as many as there are. */
  finish(frames: number): { length: number; chunks(): AsyncIterable<Uint8Array> } {
    const audioBytes = Math.min(this.#bytes, frames * this.#frameBytes);
    const header = this.#header(audioBytes);
    const pieces = this.#pieces;
    return {
      length: header.length + audioBytes,
      async *chunks() {
        yield header;
        for (let at = 0, piece = 0; at < audioBytes; piece++) {
          yield pieces[piece].subarray(0, audioBytes - at);
          at += pieces[piece].length;
        }
      },
    };
  }

  /** `fmt ` and, for floating-point numbers, `fact`, then the head of `data`. */
  #header(audioBytes: number): Uint8Array {
    const isFloat = this.#encoding === 'float32';
    const formatBytes = isFloat ? 18 : 16;
    const header = new Uint8Array(12 + 8 + formatBytes + (isFloat ? 12 : 0) + 8);
    const view = new DataView(header.buffer);
    const text = (at: number, name: string) => {
      for (let letter = 0; letter < 4; letter++) header[at + letter] = name.charCodeAt(letter);
    };
    text(0, 'RIFF');
    view.setUint32(4, header.length - 8 + audioBytes, true);
    text(8, 'WAVE');
    text(12, 'fmt ');
    view.setUint32(16, formatBytes, true);
    view.setUint16(20, isFloat ? 3 : 1, true);
    view.setUint16(22, 2, true);
    view.setUint32(24, this.#rate, true);
    view.setUint32(28, this.#rate * this.#frameBytes, true);
    view.setUint16(32, this.#frameBytes, true);
    view.setUint16(34, this.#frameBytes * 4, true);
    if (isFloat) {
      text(38, 'fact');
      view.setUint32(42, 4, true);
      view.setUint32(46, audioBytes / this.#frameBytes, true);
    }
    text(header.length - 8, 'data');
    view.setUint32(header.length - 4, audioBytes, true);
    return header;
  }
}
