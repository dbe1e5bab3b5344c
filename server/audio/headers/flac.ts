import type { SampleProblem, SampleReading } from '../../model/samples';
import type { AiffInstrument, Markers } from './aiffSampler';
import { aiffInstrumentBytes, aiffSampler, readAiffInstrument, readMarkers } from './aiffSampler';
import type { ByteWindow } from './byteWindow';
import { fourCharacters } from './byteWindow';
import { chunkHeaderBytes } from './chunkEnds';
import type { FlacEnd } from './flacEnd';
import { findFlacEnd } from './flacEnd';
import type { FlacStreamInfo } from './flacStreamInfo';
import { readStreamInfo, streamInfoBytes } from './flacStreamInfo';
import { loopsPastEnd } from './loopEnds';
import { unreadable } from './unreadable';
import type { SamplerFacts } from './wavSampler';
import {
  instrumentBytes,
  mostLoops,
  readInstrumentChunk,
  readSamplerChunk,
  samplerHeaderBytes,
  samplerLoopBytes,
} from './wavSampler';

const blockType = { streamInfo: 0, application: 2, invalid: 127 } as const;
const blockHeaderBytes = 4;
const markerBytes = 4;
const applicationIdBytes = 4;
const mostBlocks = 1000;

const kept = {
  aiff: fourCharacters('aiff'),
  aiffInst: fourCharacters('INST'),
  aiffMark: fourCharacters('MARK'),
  riff: fourCharacters('riff'),
  riffInst: fourCharacters('inst'),
  riffSmpl: fourCharacters('smpl'),
} as const;

/** What the metadata blocks of a FLAC file said, as far as the walk has come. */
interface Walk {
  info?: FlacStreamInfo;
  sampler?: SamplerFacts;
  instrument?: SamplerFacts;
  aiffInstrument?: AiffInstrument;
  markers?: Markers;
  problems: SampleProblem[];
}

/**
 * Reads what the metadata blocks of a FLAC file say; `start` is where its marker `fLaC` stands. Audio is not read.
 * Loops and root key come from chunks of a WAV or AIFF file that an encoder kept, one in an APPLICATION block of id
 * `riff` or `aiff` each (common practice). The length of a stream that does not say it is that up to its last frame,
 * found from the end. Comments are passed over: no standard gives loops a name in them.
 *
 * Source: RFC 9639, section 8.
 */
export async function readFlac(bytes: ByteWindow, start: number): Promise<SampleReading> {
  const walk: Walk = { problems: [] };
  let at = start + markerBytes;
  let cut = false;
  for (let count = 0, isLast = false; !isLast; count++) {
    if (count === mostBlocks || !(await bytes.hold(at, blockHeaderBytes))) {
      cut = at + blockHeaderBytes > bytes.size;
      if (!cut) {
        walk.problems.push({
          kind: 'chunk-broken',
          message: 'The file has too many parts; not all were read.',
        });
      }
      break;
    }
    bytes.littleEndian = false;
    const first = bytes.uint32(at);
    isLast = first >>> 31 === 1;
    const type = (first >>> 24) & 127;
    const length = first & 0xffffff;
    const body = at + blockHeaderBytes;
    if (type === blockType.invalid) {
      walk.problems.push({ kind: 'chunk-broken', message: `The block at byte ${at} is damaged.` });
      break;
    }
    if (type === blockType.streamInfo && !walk.info) {
      if (length < streamInfoBytes) return unreadable('This FLAC file is damaged. Its header is too short.');
      if (!(await bytes.hold(body, streamInfoBytes))) break;
      const info = readStreamInfo(bytes, body);
      if (typeof info === 'string') return unreadable(`This FLAC file is damaged. ${info}`);
      walk.info = info;
    } else if (type === blockType.application) await readApplication(bytes, walk, body, length);
    at = body + length;
    cut = at >= bytes.size;
  }
  const end = walk.info?.frames === 0 && !cut ? await findFlacEnd(bytes, at, walk.info) : undefined;
  return summary(bytes, walk, at, cut, end);
}

/** An APPLICATION block: four characters that say whose it is, then whatever that one keeps: here, one chunk. */
async function readApplication(bytes: ByteWindow, walk: Walk, body: number, length: number): Promise<void> {
  const headerBytes = applicationIdBytes + chunkHeaderBytes;
  if (length < headerBytes || !(await bytes.hold(body, headerBytes))) return;
  const owner = bytes.identifier(body);
  if (owner !== kept.riff && owner !== kept.aiff) return;
  const name = bytes.identifier(body + applicationIdBytes);
  bytes.littleEndian = owner === kept.riff;
  const stated = bytes.uint32(body + applicationIdBytes + 4);
  const at = body + headerBytes;
  const there = Math.min(stated, length - headerBytes);
  if (owner === kept.aiff) {
    if (name === kept.aiffMark) walk.markers ??= await readMarkers(bytes, at, there);
    else if (
      name === kept.aiffInst &&
      there >= aiffInstrumentBytes &&
      (await bytes.hold(at, aiffInstrumentBytes))
    ) {
      walk.aiffInstrument ??= readAiffInstrument(bytes, at);
    }
    return;
  }
  if (name === kept.riffSmpl && there >= samplerHeaderBytes) {
    const needed = Math.min(there, samplerHeaderBytes + mostLoops * samplerLoopBytes);
    if (await bytes.hold(at, needed)) walk.sampler ??= readSamplerChunk(bytes, at, needed);
  } else if (name === kept.riffInst && there >= instrumentBytes && (await bytes.hold(at, instrumentBytes))) {
    walk.instrument ??= readInstrumentChunk(bytes, at);
  }
}

function summary(
  bytes: ByteWindow,
  walk: Walk,
  audioStart: number,
  cut: boolean,
  end: FlacEnd | undefined,
): SampleReading {
  const { info, problems } = walk;
  if (!info) {
    return unreadable(
      cut || audioStart + blockHeaderBytes + streamInfoBytes > bytes.size
        ? `This FLAC file is cut short: it ends after ${bytes.size} bytes, inside its header.`
        : 'This FLAC file does not start with its stream information, so its audio cannot be read.',
    );
  }
  const frames = info.frames || (end?.frames ?? 0);
  if (end?.isCut) {
    problems.push({
      kind: 'cut-short',
      message: `The file ends in the middle of a frame; ${frames} frames are whole.`,
    });
  } else if (frames === 0) {
    problems.push(
      cut
        ? { kind: 'chunk-broken', message: 'The file holds no audio: it is 0 frames long.' }
        : { kind: 'size-wrong', message: 'The file does not say how long it is.' },
    );
  } else if (!end && (cut || bytes.size - audioStart < leastAudioBytes(info))) {
    problems.push({
      kind: 'cut-short',
      message: `The file says that it holds ${frames} frames of audio, but it ends after ${bytes.size} bytes, too early for that many.`,
    });
  }
  const kept = walk.aiffInstrument && aiffSampler(walk.aiffInstrument, walk.markers ?? new Map());
  const source = [walk.sampler, walk.instrument, kept].find((part) => part && part.rootKey !== null);
  const loops = walk.sampler?.loops ?? kept?.loops ?? [];
  for (const part of [walk.sampler, walk.instrument, kept]) if (part) problems.push(...part.problems);
  problems.push(...loopsPastEnd(loops, frames));
  return {
    kind: 'facts',
    facts: {
      container: 'flac',
      encoding: 'flac',
      sampleRate: info.sampleRate,
      channels: info.channels,
      bitsPerSample: info.bitsPerSample,
      frames,
      lengthSeconds: frames / info.sampleRate,
      loops,
      rootKey: source?.rootKey ?? null,
      fineTuneCents: source?.fineTuneCents ?? null,
      problems,
    },
  };
}

/** The fewest bytes that the audio can take: as many frames of the stream as it needs, each of the smallest size. */
function leastAudioBytes({ frames, largestBlock, leastFrameBytes }: FlacStreamInfo): number {
  if (largestBlock === 0) return 0;
  // The last frame of the stream may be shorter than the smallest size, which need not count it.
  return Math.max(0, Math.ceil(frames / largestBlock) - 1) * leastFrameBytes;
}
