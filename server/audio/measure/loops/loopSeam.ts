import type { FileReader } from '../../../model/files';
import type { LoopSeam } from '../../../model/samples';
import type { AudioSource } from '../../decode/audioSource';
import { mixToMono } from '../../decode/readFrames';
import { isWithinReach, openMeasured } from '../openMeasured';
import { longestCrossfade, smoothCrossfade } from './loopCrossfade';
import { motionSeconds, seamAt } from './loopMotion';
import type { LoopPoints } from './loopSearch';
import { likenessNow, matchSeconds, nearerEnd, pointsNearby, searchSeconds } from './loopSearch';
import { spectrumFrames, stretches } from './loopSpectrum';
import type { LoopSurroundings } from './loopSurroundings';

/** A loop of fewer frames is a tone made by the loop itself (our choice). */
const shortestLoop = 32;
/** Files that claim a higher rate are measured as if they had this one (our choice). */
const highestRate = 384_000;
/** Sound that is less like itself than this at other points does not close better there (our choice). */
const likeEnough = 0.9;
/** Where the sound goes on so unlike what it is made to go on with, it breaks, if it can go on so like it nearby (our choice). */
const unlike = 0.5;
const alike = 0.95;

/**
 * The seam of a loop in an open sample file, from its first to its last frame: the step, the bend and the change of the
 * short-time spectrum where it closes against those that the sound makes itself at both ends of the loop. Where it can
 * be heard, proposes points nearby that close it smoothly, and the length of a crossfade that does. `null` where the
 * loop does not lie in the file, is shorter than 32 frames, the file cannot be decoded, or so much would have to be decoded
 * to get to it as no measure looks at. Reads a quarter of a second around each end; the caller closes the file. Never throws.
 */
export async function measureLoopSeam(
  reader: FileReader,
  start: number,
  end: number,
): Promise<LoopSeam | null> {
  const audio = await openMeasured(reader);
  if (!audio) return null;
  try {
    const around = await readSurroundings(audio, start, end);
    return around ? seamInMemory(around) : null;
  } catch {
    return null;
  } finally {
    await audio.close();
  }
}

/** {@link measureLoopSeam} of frames that are in memory. */
export function seamInMemory(around: LoopSurroundings): LoopSeam {
  const seam = seamAt(around, around.start, around.end);
  const sameStart = nearerEnd(around, around.start);
  const breaks = (likenessNow(around) ?? 1) < unlike && (sameStart?.likeness ?? 0) > alike;
  if (!seam.isAudible && !breaks) return seam;
  const better = betterPoints(around, sameStart);
  const crossfadeFrames = smoothCrossfade(around, seam.greatestSpectrumChange);
  return {
    ...seam,
    // Where no points are smooth, what sounds like a break may be how the sound is.
    isAudible: seam.isAudible || better !== undefined,
    ...(better && { better: { start: better.start, end: better.end } }),
    ...(crossfadeFrames !== undefined && { crossfadeFrames }),
  };
}

/** Points near the present ones that close the loop smoothly: with another end if there is one, else with both others. */
function betterPoints(around: LoopSurroundings, sameStart: LoopPoints | undefined): LoopPoints | undefined {
  const isBetter = ({ start, end, likeness }: LoopPoints) =>
    likeness > likeEnough &&
    (start !== around.start || end !== around.end) &&
    !seamAt(around, start, end).isAudible;
  if (sameStart && isBetter(sameStart)) return sameStart;
  let best: LoopPoints | undefined;
  for (const points of pointsNearby(around)) {
    if (points.likeness > (best?.likeness ?? 0) && isBetter(points)) best = points;
  }
  return best;
}

/** Frames around an end of the loop that its spectra are taken from, with other points and a crossfade. */
function spectraReach(rate: number): number {
  return stretches * spectrumFrames(rate) + Math.round(Math.max(searchSeconds, longestCrossfade) * rate);
}

async function readSurroundings(
  audio: AudioSource,
  start: number,
  end: number,
): Promise<LoopSurroundings | undefined> {
  const { frames, sampleRate } = audio;
  const isWhole = Number.isSafeInteger(start) && Number.isSafeInteger(end);
  if (!isWhole || start < 0 || end >= frames || end - start < shortestLoop) return undefined;
  if (!isWithinReach(audio, end)) return undefined;
  const rate = Math.min(sampleRate, highestRate);
  const searched = motionSeconds + searchSeconds + matchSeconds;
  const reach = 4 + Math.max(Math.round(searched * rate), spectraReach(rate));
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
    sampleRate: rate,
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
