import type { FileReader } from '../../model/files';
import { joinedBytes } from '../../model/joinedBytes';
import type { AudioSource } from '../decode/audioSource';
import { openAudio } from '../decode/openAudio';
import type { StreamSummary } from './flacBlocks';
import { completeFlac } from './flacBlocks';
import { keptChunks } from './keptChunks';

/** The part of the compiled encoder that is used. */
export interface FlacLibrary {
  isReady(): boolean;
  on(event: 'ready', listener: () => void): void;
  create_libflac_encoder(
    sampleRate: number,
    channels: number,
    bitsPerSample: number,
    compression: 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8,
    totalFrames: number,
    verify: boolean,
  ): number;
  init_encoder_stream(
    encoder: number,
    write: (bytes: Uint8Array) => void,
    told: (facts?: { min_framesize: number; max_framesize: number; md5sum: string }) => void,
  ): number;
  FLAC__stream_encoder_process_interleaved(
    encoder: number,
    frames: Int32Array<ArrayBuffer>,
    count: number,
  ): boolean;
  FLAC__stream_encoder_finish(encoder: number): boolean;
  FLAC__stream_encoder_delete(encoder: number): void;
}

/** The usual effort of encoders. */
const compression = 5;

/** Whether audio comes back bit by bit from FLAC: whole numbers of 4 to 24 bits in up to eight channels (RFC 9639, section 9.1). */
export function fitsFlac({
  encoding,
  bitsPerSample,
  channels,
  sampleRate,
  frames,
}: {
  encoding: string;
  bitsPerSample: number;
  channels: number;
  sampleRate: number;
  frames: number;
}): boolean {
  return (
    encoding === 'pcm' &&
    bitsPerSample >= 4 &&
    bitsPerSample <= 24 &&
    channels >= 1 &&
    channels <= 8 &&
    sampleRate >= 1 &&
    sampleRate <= 655_350 &&
    frames > 0
  );
}

/**
 * An open WAV or AIFF file as a FLAC file with the same samples, root key and loops. What was written is decoded again and
 * compared. Fails with an error that says what does not fit.
 */
export async function encodeFlac(library: FlacLibrary, reader: FileReader): Promise<Uint8Array> {
  if (!library.isReady()) await new Promise<void>((done) => library.on('ready', done));
  const audio = await openAudio(reader);
  if (!audio) throw new Error('its audio cannot be decoded');
  try {
    const { stream, summary } = await encoded(library, audio);
    const bytes = joinedBytes(completeFlac(stream, summary, await keptChunks(reader)));
    await compare(audio, bytes);
    return bytes;
  } finally {
    await audio.close();
  }
}

async function encoded(
  library: FlacLibrary,
  audio: AudioSource,
): Promise<{ stream: Uint8Array; summary: StreamSummary }> {
  const { sampleRate, channels, bitsPerSample, frames } = audio;
  const encoder = library.create_libflac_encoder(
    sampleRate,
    channels,
    bitsPerSample,
    compression,
    frames,
    false,
  );
  const parts: Uint8Array[] = [];
  let summary: StreamSummary | undefined;
  try {
    const status = library.init_encoder_stream(
      encoder,
      (bytes) => void parts.push(bytes.slice()),
      (facts) => {
        if (facts)
          summary = {
            leastFrameBytes: facts.min_framesize,
            mostFrameBytes: facts.max_framesize,
            md5: facts.md5sum,
          };
      },
    );
    if (encoder === 0 || status !== 0) throw new Error(`FLAC has no place for its format (${status})`);
    const scale = 2 ** (bitsPerSample - 1);
    let count = 0;
    for await (const block of audio.blocks()) {
      const length = block[0].length;
      const interleaved = new Int32Array(length * channels);
      block.forEach((values, channel) => {
        for (let frame = 0, at = channel; frame < length; frame++, at += channels)
          interleaved[at] = Math.round(values[frame] * scale);
      });
      if (!library.FLAC__stream_encoder_process_interleaved(encoder, interleaved, length))
        throw new Error('it could not be written as FLAC');
      count += length;
    }
    library.FLAC__stream_encoder_finish(encoder);
    if (count !== frames) throw new Error('it ends before its header says');
  } finally {
    library.FLAC__stream_encoder_delete(encoder);
  }
  if (!summary) throw new Error('it could not be written as FLAC');
  return { stream: joinedBytes(parts), summary };
}

/** Fails where decoding what was written does not give the same numbers, all of them. */
async function compare(audio: AudioSource, bytes: Uint8Array): Promise<void> {
  const written = await openAudio(readerOf(bytes));
  if (!written) throw new Error('what was written as FLAC cannot be read');
  try {
    let at = 0;
    for await (const block of written.blocks()) {
      const length = block[0].length;
      const own = await audio.read(at, length);
      const isSame = own.every(
        (values, channel) =>
          values.length === length && values.every((value, frame) => value === block[channel][frame]),
      );
      if (!isSame || own.length !== block.length) throw new Error('what was written as FLAC differs from it');
      at += length;
    }
    if (at !== audio.frames) throw new Error('what was written as FLAC is not as long as it');
  } finally {
    await written.close();
  }
}

function readerOf(bytes: Uint8Array): FileReader {
  return {
    size: bytes.length,
    read: async (start, length) => bytes.subarray(start, start + length),
    close: async () => {},
  };
}
