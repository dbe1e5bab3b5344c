import type { AudioSource } from '../../audio/decode/audioSource';
import type { FramePiece } from './samplePieces';
import type { PlannedSample } from './samplePlan';

/** Frames that are read of a file at one time. */
const blockFrames = 1 << 16;

/**
 * One channel of a sample as it is laid out, in blocks, before frames are left out. Where a damaged file ends early,
 * silence stands for what is missing.
 */
export async function* laidOutBlocks(
  { layout }: PlannedSample,
  channel: number,
  source: AudioSource,
): AsyncGenerator<Float32Array> {
  const repeated = await repeatedFrames(layout.pieces, channel, source);
  let written = 0;
  for (const [at, piece] of layout.pieces.entries()) {
    const isAgain = at > 0 && piece.start < (layout.pieces[at - 1] as FramePiece).end;
    const blocks = isAgain && repeated ? slices(repeated, piece) : readPiece(piece, channel, source);
    for await (const block of blocks) {
      written += block.length;
      yield block;
    }
  }
  for (; written < layout.frames; written += blockFrames)
    yield new Float32Array(Math.min(blockFrames, layout.frames - written));
}

/**
 * The frames of the loop that are played again: to go back in a compressed file would mean to decode it from its start each
 * time. `undefined` where nothing is, or where they are too many to be held.
 */
async function repeatedFrames(
  pieces: readonly FramePiece[],
  channel: number,
  source: AudioSource,
): Promise<{ start: number; frames: Float32Array } | undefined> {
  const again = pieces.filter((piece, at) => at > 0 && piece.start < (pieces[at - 1] as FramePiece).end);
  const [first] = again;
  if (!first) return undefined;
  const length = Math.max(...again.map(({ start, end }) => end - start));
  const frames = (await source.read(first.start, length))[channel] ?? new Float32Array(0);
  return frames.length === length ? { start: first.start, frames } : undefined;
}

async function* slices(
  { start, frames }: { start: number; frames: Float32Array },
  piece: FramePiece,
): AsyncGenerator<Float32Array> {
  yield frames.slice(piece.start - start, piece.end - start);
}

async function* readPiece(
  piece: FramePiece,
  channel: number,
  source: AudioSource,
): AsyncGenerator<Float32Array> {
  if (piece.start < 0) yield new Float32Array(-piece.start);
  for (let start = Math.max(0, piece.start); start < piece.end; ) {
    const count = Math.min(blockFrames, piece.end - start);
    const read = (await source.read(start, count))[channel] ?? new Float32Array(0);
    if (read.length === 0) {
      yield new Float32Array(count);
      start += count;
    } else {
      yield read;
      start += read.length;
    }
  }
}
