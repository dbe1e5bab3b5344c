import type { SampleProblem, SampleReading } from '../../model/samples';
import type { AiffCommon } from './aiffCommon';
import { longestCommon, readAiffCommon, shortestCommon } from './aiffCommon';
import type { AiffInstrument, Markers } from './aiffSampler';
import { aiffInstrumentBytes, aiffSampler, readAiffInstrument, readMarkers } from './aiffSampler';
import type { ByteWindow } from './byteWindow';
import { fourCharacters, isIdentifier } from './byteWindow';
import { chunkHeaderBytes, nextChunk } from './chunkEnds';
import { loopsPastEnd } from './loopEnds';
import { unreadable } from './unreadable';

const chunk = {
  comm: fourCharacters('COMM'),
  inst: fourCharacters('INST'),
  mark: fourCharacters('MARK'),
  ssnd: fourCharacters('SSND'),
} as const;

const knownChunks: ReadonlySet<number> = new Set(
  ['COMM', 'SSND', 'MARK', 'INST', 'COMT', 'MIDI', 'AESD', 'APPL', 'NAME', 'AUTH', '(c) ', 'ANNO', 'FVER']
    .concat(['CHAN', 'ID3 ', 'id3 ', 'PEAK', 'bext'])
    .map(fourCharacters),
);

const compressedForm = fourCharacters('AIFC');
const firstChunk = 12;
const mostChunks = 1000;
/** Bytes of an `SSND` chunk before its audio: an offset and a block size. */
const soundHeaderBytes = 8;

/** What the chunks of an AIFF file said, as far as the walk has come. */
interface Walk {
  readonly isCompressed: boolean;
  common?: AiffCommon;
  commonFault?: string;
  /** Bytes of audio by the header and by the file. */
  sound?: { stated: number; there: number; placeholder: boolean };
  markers?: Markers;
  instrument?: AiffInstrument;
  /** A chunk goes on past the end of the file. */
  cut: boolean;
  problems: SampleProblem[];
}

/**
 * Reads what the chunks of an AIFF or AIFF-C file say. `bytes` holds the start of the file, which begins with `FORM`, a
 * size and `AIFF` or `AIFC`. Chunks may stand in any order. Audio is skipped, never read.
 *
 * Sources: Audio Interchange File Format 1.3, Apple, 1989; AIFF-C draft, Apple, 1991.
 */
export async function readAiff(bytes: ByteWindow): Promise<SampleReading> {
  bytes.littleEndian = false;
  const walk: Walk = { isCompressed: bytes.identifier(8) === compressedForm, cut: false, problems: [] };
  let at = firstChunk;
  for (let count = 0; at + chunkHeaderBytes <= bytes.size; count++) {
    if (count === mostChunks || !(await bytes.hold(at, chunkHeaderBytes))) {
      walk.problems.push({
        kind: 'chunk-broken',
        message: 'The file has too many parts; not all were read.',
      });
      break;
    }
    const name = bytes.identifier(at);
    if (!isIdentifier(name)) break;
    const body = at + chunkHeaderBytes;
    const stated = bytes.uint32(at + 4);
    const left = bytes.size - body;
    let length = stated;
    if (name === chunk.ssnd && !walk.sound) length = await readSound(bytes, walk, body, stated);
    else {
      if (stated > left) walk.cut = true;
      await readChunk(bytes, walk, name, body, Math.min(stated, left));
    }
    at = await nextChunk(bytes, body, length, knownChunks);
  }
  return summary(bytes, walk);
}

async function readChunk(
  bytes: ByteWindow,
  walk: Walk,
  name: number,
  body: number,
  length: number,
): Promise<void> {
  if (name === chunk.mark) {
    walk.markers ??= await readMarkers(bytes, body, length);
    return;
  }
  const needed =
    name === chunk.comm
      ? Math.max(shortestCommon, Math.min(length, longestCommon))
      : name === chunk.inst
        ? aiffInstrumentBytes
        : 0;
  if (needed === 0) return;
  if (needed > length || !(await bytes.hold(body, needed))) {
    walk.problems.push({
      kind: 'chunk-broken',
      message: `The chunk at byte ${body - chunkHeaderBytes} is too short.`,
    });
    return;
  }
  if (name === chunk.inst) walk.instrument ??= readAiffInstrument(bytes, body);
  else if (!walk.common) {
    const common = readAiffCommon(bytes, body, needed, walk.isCompressed);
    if (typeof common === 'string') walk.commonFault ??= common;
    else walk.common = common;
  }
}

/** Works out how much audio there is, against what the header says; answers the length of the sound chunk. */
async function readSound(bytes: ByteWindow, walk: Walk, body: number, stated: number): Promise<number> {
  const left = bytes.size - body;
  if (left < soundHeaderBytes) {
    walk.cut = true;
    walk.sound = { stated: Math.max(0, stated - soundHeaderBytes), there: 0, placeholder: false };
    return stated;
  }
  const followed =
    stated === 0 && (await bytes.hold(body, chunkHeaderBytes)) && knownChunks.has(bytes.identifier(body));
  if (followed) {
    walk.sound = { stated: 0, there: 0, placeholder: false };
    return 0;
  }
  // A size that has no room for the chunk's own header was never filled in.
  const placeholder = stated < soundHeaderBytes || (stated > left && isPlaceholder(stated));
  const length = placeholder ? left : stated;
  const offset = (await bytes.hold(body, soundHeaderBytes)) ? bytes.uint32(body) : 0;
  walk.sound = {
    stated: Math.max(0, length - soundHeaderBytes - offset),
    there: Math.max(0, Math.min(length, left) - soundHeaderBytes - offset),
    placeholder,
  };
  return length;
}

/** Sizes that programs write into a pipe, which cannot be gone back into: near 2 GiB, or all bits set (common practice). */
function isPlaceholder(size: number): boolean {
  return (size >= 0x7efff000 && size <= 0x80000000) || size >= 0xffff0000;
}

function summary(bytes: ByteWindow, walk: Walk): SampleReading {
  const { common, sound, problems } = walk;
  if (!common) {
    if (walk.commonFault) return unreadable(`This AIFF file is damaged. ${walk.commonFault}`);
    return unreadable(
      walk.cut || bytes.size < firstChunk + chunkHeaderBytes + shortestCommon
        ? `This AIFF file is cut short: it ends after ${bytes.size} bytes, inside its header.`
        : 'This AIFF file has no common chunk, so its audio cannot be read.',
    );
  }
  if (!sound && common.blocks > 0) {
    return unreadable(
      walk.cut || bytes.size < 54
        ? `This AIFF file is cut short: it ends after ${bytes.size} bytes, before its audio.`
        : 'This AIFF file has no sound chunk, so it holds no audio.',
    );
  }
  const blocks = blocksIn(walk, common);
  const frames = blocks * common.framesPerBlock;
  if (frames === 0) {
    problems.push({ kind: 'chunk-broken', message: 'The file holds no audio: it is 0 frames long.' });
  }
  const sampler = walk.instrument && aiffSampler(walk.instrument, walk.markers ?? new Map());
  const loops = sampler?.loops ?? [];
  if (sampler) problems.push(...sampler.problems);
  problems.push(...loopsPastEnd(loops, frames));
  return {
    kind: 'facts',
    facts: {
      container: 'aiff',
      encoding: common.encoding,
      sampleRate: common.sampleRate,
      channels: common.channels,
      bitsPerSample: common.bitsPerSample,
      frames,
      lengthSeconds: frames / common.sampleRate,
      loops,
      rootKey: sampler?.rootKey ?? null,
      fineTuneCents: sampler?.fineTuneCents ?? null,
      problems,
    },
  };
}

/** The blocks that are there, with a problem where the header says something else. */
function blocksIn(walk: Walk, common: AiffCommon): number {
  const { sound, problems } = walk;
  if (!sound) return 0;
  const held = common.blockBytes > 0 ? Math.floor(sound.there / common.blockBytes) : common.blocks;
  if (sound.placeholder || (common.blocks === 0 && held > 0)) {
    problems.push({
      kind: 'size-wrong',
      message: `The file does not say how much audio it holds (its recording may have been broken off); all ${sound.there} bytes after the header are taken as audio.`,
    });
    return held;
  }
  if (common.blocks > held) {
    problems.push({
      kind: 'cut-short',
      message: `The file says that it holds ${common.blocks * common.blockBytes} bytes of audio, but only ${sound.there} are there.`,
    });
    return held;
  }
  if (sound.stated > sound.there) {
    // The audio that the header counts is there; with block sizes that are not known, nobody can tell.
    problems.push({
      kind: common.blockBytes > 0 ? 'size-wrong' : 'cut-short',
      message: `The file says that it holds ${sound.stated} bytes of audio, but only ${sound.there} are there.`,
    });
  } else if (walk.cut) {
    problems.push({
      kind: 'size-wrong',
      message: 'A chunk after the audio runs past the end of the file.',
    });
  }
  return common.blocks;
}
