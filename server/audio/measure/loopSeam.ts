import type { FileReader } from '../../model/files';
import type { LoopSeam } from '../../model/samples';
import type { AudioSource } from '../decode/audioSource';
import { openAudio } from '../decode/openAudio';
import { matchSeconds, nearerEnd, searchSeconds } from './loopSearch';
import type { LoopSurroundings } from './loopSurroundings';
import { mixToMono } from './readFrames';

/** So much of the loop at each of its ends says how the sound moves by itself. */
const motionSeconds = 0.05;
/** A loop of fewer frames is a tone made by the loop itself. */
const shortestLoop = 32;
/** A step or bend counts as a jump when it is this many times the greatest that the sound makes itself nearby. */
const stepTimes = 2;
const bendTimes = 3;
/** Jumps below this share of the greatest value nearby are masked by the sound. */
const audibleShare = 0.03;
const silence = 1e-3;

/** What a closed loop looks like at its seam; see {@link LoopSeam}. */
export type Seam = Omit<LoopSeam, 'betterEnd'>;

/**
 * The seam of a loop in an open sample file, from its first to its last frame: the step and the bend where it closes
 * against those that the sound makes itself at both ends of the loop. Proposes another end nearby where that closes
 * clearly better. `null` where the loop does not lie in the file, is shorter than 32 frames, or the file cannot be
 * decoded. Reads a tenth of a second around each end; the caller closes the file. Never throws.
 */
export async function measureLoopSeam(
  reader: FileReader,
  start: number,
  end: number,
): Promise<LoopSeam | null> {
  const audio = await openAudio(reader);
  if (!audio) return null;
  try {
    const around = await readSurroundings(audio, start, end);
    return around ? loopSeam(around) : null;
  } catch {
    return null;
  } finally {
    await audio.close();
  }
}

/** {@link measureLoopSeam} of frames that are in memory. */
export function loopSeam(around: LoopSurroundings): LoopSeam {
  const seam = seamAt(around, around.end);
  const better = nearerEnd(around);
  if (!better || seamAt(around, better.end).isAudible) return seam;
  // Where the sound goes on quite unlike what it is made to go on with, it breaks, however smooth the seam.
  const breaks = better.likenessNow < 0.5 && better.likeness > 0.95;
  const isAudible = seam.isAudible || breaks;
  return isAudible && better.likeness > 0.9 ? { ...seam, isAudible, betterEnd: better.end } : seam;
}

function seamAt(around: LoopSurroundings, end: number): Seam {
  const { start, sampleRate, near } = around;
  const reach = Math.round(motionSeconds * sampleRate);
  const motion = { greatestStep: 0, greatestBend: 0, peak: 0 };
  addMotion(motion, near.start, start, Math.min(around.end, start + reach));
  addMotion(motion, near.end, Math.max(start, around.end - reach), Math.min(around.end, end));
  const [beforeLast, last] = [near.end(end - 1), near.end(end)];
  const [first, second] = [near.start(start), near.start(start + 1)];
  const step = Math.abs(first - last);
  const bend = Math.max(Math.abs(beforeLast - 2 * last + first), Math.abs(last - 2 * first + second));
  const { greatestStep, greatestBend, peak } = motion;
  const least = audibleShare * peak;
  const isAudible =
    peak > silence &&
    ((step > least && step > stepTimes * greatestStep) || (bend > least && bend > bendTimes * greatestBend));
  return { isAudible, step, greatestStep, bend, greatestBend };
}

function addMotion(
  motion: { greatestStep: number; greatestBend: number; peak: number },
  at: (frame: number) => number,
  from: number,
  to: number,
): void {
  for (let frame = from; frame <= to; frame++) {
    const here = at(frame);
    motion.peak = Math.max(motion.peak, Math.abs(here));
    if (frame + 1 > to) continue;
    const next = at(frame + 1);
    motion.greatestStep = Math.max(motion.greatestStep, Math.abs(next - here));
    if (frame + 2 > to) continue;
    motion.greatestBend = Math.max(motion.greatestBend, Math.abs(here - 2 * next + at(frame + 2)));
  }
}

async function readSurroundings(
  audio: AudioSource,
  start: number,
  end: number,
): Promise<LoopSurroundings | undefined> {
  const { frames, sampleRate } = audio;
  const isWhole = Number.isSafeInteger(start) && Number.isSafeInteger(end);
  if (!isWhole || start < 0 || end >= frames || end - start < shortestLoop) return undefined;
  const reach =
    Math.round(Math.min(sampleRate, 384_000) * (motionSeconds + searchSeconds + matchSeconds)) + 4;
  const [startFrom, endFrom] = [Math.max(0, start - reach), Math.max(0, end - reach)];
  const atStart = await audio.read(startFrom, start + reach - startFrom);
  const atEnd = await audio.read(endFrom, end + reach - endFrom);
  const startLength = atStart[0]?.length ?? 0;
  // Both ends go through one mix, so that the same channels stand for the sound at both.
  const mono = mixToMono(atStart.map((channel, number) => joined(channel, atEnd[number])));
  return {
    start,
    end,
    frames,
    sampleRate: Math.min(sampleRate, 384_000),
    near: {
      start: (frame) => (frame - startFrom < startLength ? (mono[frame - startFrom] ?? 0) : 0),
      end: (frame) => mono[startLength + frame - endFrom] ?? 0,
    },
  };
}

function joined(first: Float32Array, second: Float32Array = new Float32Array(0)): Float32Array {
  const both = new Float32Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}
