import type { SampleFacts, SampleProblem, SampleReading } from '../../model/samples';
import type { ByteWindow } from './byteWindow';
import { fourCharacters, isIdentifier } from './byteWindow';
import { chunkHeaderBytes, nextChunk } from './chunkEnds';
import type { FrameLayout } from './frameLayout';
import { isLaidOut } from './frameLayout';
import { loopsPastEnd } from './loopEnds';
import { unreadable } from './unreadable';
import type { WavFormat } from './wavFormat';
import { longestFormat, readWavFormat, shortestFormat } from './wavFormat';
import type { SamplerFacts } from './wavSampler';
import {
  instrumentBytes,
  mostLoops,
  readInstrumentChunk,
  readSamplerChunk,
  samplerHeaderBytes,
  samplerLoopBytes,
} from './wavSampler';

const chunk = {
  data: fourCharacters('data'),
  ds64: fourCharacters('ds64'),
  fact: fourCharacters('fact'),
  fmt: fourCharacters('fmt '),
  inst: fourCharacters('inst'),
  smpl: fourCharacters('smpl'),
} as const;

/** Chunks that are met behind audio data; they tell audio that ends from a size that was never filled in. */
const chunksBehindData: ReadonlySet<number> = new Set(
  [
    'LIST',
    'smpl',
    'inst',
    'fact',
    'cue ',
    'plst',
    'bext',
    'JUNK',
    'junk',
    'PAD ',
    'id3 ',
    'ID3 ',
    'data',
  ].map(fourCharacters),
);

/** Forms of the container: RIFF, big-endian RIFX (both in the specifications of 1991), and those with 64-bit sizes. */
const longForms: ReadonlySet<number> = new Set([fourCharacters('RF64'), fourCharacters('BW64')]);
const bigEndianForm = fourCharacters('RIFX');

const firstChunk = 12;
const mostChunks = 1000;
const notFilledIn = 0xffffffff;

/** What the chunks of a WAV file said, as far as the walk has come. */
interface Walk {
  format?: WavFormat;
  formatFault?: string;
  /** Bytes of audio by the header and by the file. */
  data?: { stated: number; there: number; placeholder: boolean };
  /** The byte at which the audio starts. */
  dataStart?: number;
  sampler?: SamplerFacts;
  instrument?: SamplerFacts;
  factFrames?: number;
  /** Size of the data chunk by `ds64`. */
  longDataSize?: number;
  /** A chunk goes on past the end of the file. */
  cut: boolean;
  problems: SampleProblem[];
}

/**
 * Reads what the chunks of a WAV file say: RIFF, RIFX, RF64 and BW64. `bytes` holds the start of the file, which
 * begins with one of these names and `WAVE`. Audio data is skipped, never read.
 *
 * Sources: Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, August 1991 (RIFF and
 * WAVE); Microsoft, Multimedia Data Standards Update, revision 3.0, April 15, 1994 (`smpl`, `inst`); EBU Tech 3306 (RF64); ITU-R BS.2088 (BW64).
 */
export async function readWav(bytes: ByteWindow): Promise<SampleReading> {
  return summary(bytes, await walkChunks(bytes));
}

/**
 * Where the audio of a WAV file lies; `undefined` where the file has none or where it is not plain numbers. `bytes`
 * is as {@link readWav} takes it.
 */
export async function readWavLayout(bytes: ByteWindow): Promise<FrameLayout | undefined> {
  const { format, data, dataStart } = await walkChunks(bytes);
  if (!format || !data || dataStart === undefined) return undefined;
  const { encoding, channels, sampleRate, blockBytes } = format;
  if (!isLaidOut(encoding)) return undefined;
  return {
    encoding,
    littleEndian: bytes.littleEndian,
    unsignedBytes: true,
    channels,
    sampleRate,
    bytesPerSample: blockBytes / channels,
    dataStart,
    frames: framesIn(data.there, format, undefined),
  };
}

async function walkChunks(bytes: ByteWindow): Promise<Walk> {
  const form = bytes.identifier(0);
  bytes.littleEndian = form !== bigEndianForm;
  const walk: Walk = { cut: false, problems: [] };
  let at = firstChunk;
  for (let count = 0; at + chunkHeaderBytes <= bytes.size; count++) {
    if (
      count === mostChunks ||
      !(bytes.holds(at, chunkHeaderBytes) || (await bytes.hold(at, chunkHeaderBytes)))
    ) {
      walk.problems.push({
        kind: 'chunk-broken',
        message: 'The file has too many parts; not all were read.',
      });
      break;
    }
    const name = bytes.identifier(at);
    // Zeros or other filling at the end do no harm once the audio is known.
    if (!isIdentifier(name)) break;
    const body = at + chunkHeaderBytes;
    const stated = bytes.uint32(at + 4);
    const left = bytes.size - body;
    let length = stated;
    if (name === chunk.data && !walk.data) {
      walk.dataStart = body;
      length = await readDataSize(bytes, walk, body, stated, longForms.has(form));
    } else if (stated > left) walk.cut = true;
    await readChunk(bytes, walk, name, body, Math.min(length, left));
    at = await nextChunk(bytes, body, length, chunksBehindData);
  }
  checkStatedSize(walk, longForms.has(form));
  return walk;
}

async function readChunk(
  bytes: ByteWindow,
  walk: Walk,
  name: number,
  body: number,
  length: number,
): Promise<void> {
  const needed = name === chunk.data ? 0 : bytesNeeded(name, length);
  if (needed === 0) return;
  if (needed > length) {
    walk.problems.push({
      kind: 'chunk-broken',
      message: `The chunk at byte ${body - chunkHeaderBytes} is too short.`,
    });
    return;
  }
  if (!(bytes.holds(body, needed) || (await bytes.hold(body, needed)))) {
    walk.problems.push({
      kind: 'chunk-broken',
      message: `The chunk at byte ${body - chunkHeaderBytes} could not be read.`,
    });
    return;
  }
  if (name === chunk.fmt && !walk.format) {
    const format = readWavFormat(bytes, body, needed);
    if (typeof format === 'string') walk.formatFault ??= format;
    else walk.format = format;
  } else if (name === chunk.smpl) walk.sampler ??= readSamplerChunk(bytes, body, needed);
  else if (name === chunk.inst) walk.instrument ??= readInstrumentChunk(bytes, body);
  else if (name === chunk.fact) walk.factFrames ??= bytes.uint32(body);
  // RIFF size, data size, frames: three numbers of 64 bits each.
  else if (name === chunk.ds64) walk.longDataSize ??= bytes.uint64(body + 8);
}

/** How much of a chunk has to be in memory: 0 for chunks that say nothing of use, more than `length` for a broken one. */
function bytesNeeded(name: number, length: number): number {
  switch (name) {
    case chunk.fmt:
      return Math.max(shortestFormat, Math.min(length, longestFormat));
    case chunk.smpl:
      return Math.max(
        samplerHeaderBytes,
        Math.min(length, samplerHeaderBytes + mostLoops * samplerLoopBytes),
      );
    case chunk.inst:
      return instrumentBytes;
    case chunk.fact:
      return 4;
    case chunk.ds64:
      return 16;
    default:
      return 0;
  }
}

/** Works out how much audio there is, against what the header says; answers the length of the data chunk. */
async function readDataSize(
  bytes: ByteWindow,
  walk: Walk,
  body: number,
  stated: number,
  isLong: boolean,
): Promise<number> {
  const left = bytes.size - body;
  if (isLong && stated === notFilledIn && walk.longDataSize !== undefined && walk.longDataSize !== 0) {
    const size = walk.longDataSize;
    walk.data = {
      stated: size,
      there: Math.min(size, left),
      placeholder: size > left && size > Number.MAX_SAFE_INTEGER,
    };
    return size;
  }
  if (stated === 0) {
    // A size of 0 with chunks behind it is meant; with audio behind it, nobody came back to fill it in.
    const empty =
      left === 0 ||
      ((await bytes.hold(body, chunkHeaderBytes)) &&
        chunksBehindData.has(bytes.identifier(body)) &&
        bytes.uint32(body + 4) <= left - chunkHeaderBytes);
    walk.data = { stated, there: empty ? 0 : left, placeholder: !empty };
    return empty ? 0 : left;
  }
  const placeholder = isPlaceholder(stated) && stated > left;
  walk.data = { stated, there: Math.min(stated, left), placeholder };
  return stated;
}

/**
 * Sizes that programs write before they know better: all bits set, or just below 2 GiB (common practice where the
 * output is a pipe, which cannot be gone back into).
 */
function isPlaceholder(size: number): boolean {
  return size === notFilledIn || (size >= 0x7fff0000 && size <= 0x80000000) || size >= 0xffff0000;
}

function checkStatedSize(walk: Walk, isLong: boolean): void {
  const { data, format } = walk;
  if (!data) return;
  if (data.placeholder) {
    walk.problems.push({
      kind: 'size-wrong',
      message: `The file does not say how much audio it holds (its recording may have been broken off); all ${data.there} bytes after the header are taken as audio.`,
    });
    return;
  }
  const missing = data.stated - data.there;
  if (missing > 0) {
    const clearly = missing >= (format?.blockBytes ?? 1);
    walk.problems.push({
      kind: clearly ? 'cut-short' : 'size-wrong',
      message: `The file says that it holds ${data.stated} bytes of audio, but only ${data.there} are there.`,
    });
  } else if (isLong && walk.longDataSize === undefined) {
    walk.problems.push({ kind: 'chunk-broken', message: 'The file lacks the chunk with its 64-bit sizes.' });
  } else if (walk.cut) {
    walk.problems.push({
      kind: 'size-wrong',
      message: 'A chunk after the audio runs past the end of the file.',
    });
  }
}

function summary(bytes: ByteWindow, walk: Walk): SampleReading {
  const { format, data, problems } = walk;
  if (!format) {
    if (walk.formatFault) return unreadable(`This WAV file is damaged. ${walk.formatFault}`);
    return unreadable(
      walk.cut || bytes.size < firstChunk + chunkHeaderBytes + shortestFormat
        ? `This WAV file is cut short: it ends after ${bytes.size} bytes, inside its header.`
        : 'This WAV file has no format chunk, so its audio cannot be read.',
    );
  }
  if (!data) {
    return unreadable(
      walk.cut || bytes.size < 44
        ? `This WAV file is cut short: it ends after ${bytes.size} bytes, before its audio.`
        : 'This WAV file has no data chunk, so it holds no audio.',
    );
  }
  const frames = framesIn(data.there, format, walk.factFrames);
  if (frames === 0)
    problems.push({ kind: 'chunk-broken', message: 'The file holds no audio: it is 0 frames long.' });
  const sampler = walk.sampler;
  const source = sampler && sampler.rootKey !== null ? sampler : walk.instrument;
  const loops = sampler?.loops ?? [];
  for (const part of [sampler, walk.instrument]) if (part) problems.push(...part.problems);
  problems.push(...loopsPastEnd(loops, frames));
  const facts: SampleFacts = {
    container: 'wav',
    encoding: format.encoding,
    sampleRate: format.sampleRate,
    channels: format.channels,
    bitsPerSample: format.bitsPerSample,
    frames,
    lengthSeconds: frames / format.sampleRate,
    loops,
    rootKey: source?.rootKey ?? null,
    fineTuneCents: source?.fineTuneCents ?? null,
    problems,
  };
  return { kind: 'facts', facts };
}

/** In a compressed encoding the `fact` chunk holds the number of frames, since the last block may be filled up. */
function framesIn(dataBytes: number, format: WavFormat, factFrames: number | undefined): number {
  const { blockBytes, framesPerBlock } = format;
  if (framesPerBlock === 1 && blockBytes > 0) return Math.floor(dataBytes / blockBytes);
  const most = blockBytes > 0 ? Math.ceil(dataBytes / blockBytes) * framesPerBlock : 0;
  if (factFrames === undefined) return most;
  return most > 0 ? Math.min(factFrames, most) : factFrames;
}
