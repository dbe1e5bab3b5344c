import type { FileReader } from '../../model/files';
import type { SampleSurvey } from '../../model/samples';
import type { AudioSource } from '../decode/audioSource';
import { ChannelLikeness } from './channelLikeness';
import { ClippingScan, clippingOf } from './clipping';
import { LoudnessMeter } from './loudness';
import { mostMeasuredValues, openMeasured } from './openMeasured';
import { SilenceScan } from './silence';
import { TailScan } from './soundTail';

/** How a survey is made. */
export interface SurveyOptions {
  /** Looks at the whole file, whatever its length. */
  whole?: boolean;
  /** Ends the survey, which then gives `null`. */
  signal?: AbortSignal;
  /** Told from time to time how many frames were looked at. */
  onFrames?(frames: number): void;
}

/** Values after which other work, such as a request to stop, is let run. */
const valuesAtOnce = 1 << 18;

/**
 * What one pass through the audio of an open sample file tells; the caller closes the file. Of a very long file the start
 * is looked at unless the whole is asked for. `null` where the file cannot be decoded, holds no audio or has more channels
 * than are measured. The memory that it takes does not grow with the length of the file, but for ten numbers a second.
 * Never throws.
 */
export async function surveySample(
  reader: FileReader,
  options: SurveyOptions = {},
): Promise<SampleSurvey | null> {
  const audio = await openMeasured(reader);
  if (!audio) return null;
  try {
    return await surveyAudio(audio, options);
  } catch {
    return null;
  } finally {
    await audio.close();
  }
}

/** What stands for an end that was not looked at. */
const unknownEnd = { endLevelDb: Number.NEGATIVE_INFINITY, endStep: 0, greatestEndStep: 0 };

/** {@link surveySample} of audio that is open. */
async function surveyAudio(
  audio: AudioSource,
  { whole = false, signal, onFrames }: SurveyOptions,
): Promise<SampleSurvey | null> {
  const { sampleRate, channels, bitsPerSample } = audio;
  const most = whole ? Number.POSITIVE_INFINITY : Math.floor(mostMeasuredValues / channels);
  let isWhole = true;
  let untilPause = valuesAtOnce;
  const sums = new Array<number>(channels).fill(0);
  const squares = new Array<number>(channels).fill(0);
  const clipping = Array.from({ length: channels }, () => new ClippingScan(bitsPerSample));
  const silence = new SilenceScan();
  const tail = new TailScan(sampleRate, channels);
  const likeness = new ChannelLikeness();
  const loudness = new LoudnessMeter(sampleRate, channels);
  let frames = 0;
  let peak = 0;
  let magnitudes = new Float32Array(0);
  let energies = new Float32Array(0);
  for await (const block of audio.blocks()) {
    if (frames >= most) {
      isWhole = false;
      break;
    }
    const count = block[0]?.length ?? 0;
    if (magnitudes.length < count) {
      magnitudes = new Float32Array(count);
      energies = new Float32Array(count);
    } else {
      magnitudes.fill(0);
      energies.fill(0);
    }
    block.forEach((values, channel) => {
      const scanned = scan(values, magnitudes, energies);
      sums[channel] = (sums[channel] ?? 0) + scanned.sum;
      squares[channel] = (squares[channel] ?? 0) + scanned.squares;
      clipping[channel]?.add(values, scanned.peak);
      peak = Math.max(peak, scanned.peak);
    });
    silence.add(magnitudes, count);
    tail.add(block, energies, count);
    likeness.add(block);
    loudness.add(block);
    frames += count;
    untilPause -= count * channels;
    if (untilPause > 0) continue;
    untilPause = valuesAtOnce;
    onFrames?.(frames);
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (signal?.aborted) return null;
  }
  if (frames === 0) return null;
  for (const one of clipping) one.finish();
  const { leading, trailing } = silence.result();
  const { integrated, momentary } = loudness.result();
  return {
    frames,
    isWhole,
    peak,
    dcOffset: sums.map((sum) => sum / frames),
    leadingSilenceFrames: leading,
    trailingSilenceFrames: isWhole ? trailing : 0,
    ...(isWhole ? tail.result() : unknownEnd),
    clipping: clippingOf(clipping),
    channelCorrelation: likeness.correlation(sums, squares),
    hasEqualChannels: isWhole && likeness.hasEqualChannels,
    loudness: integrated,
    momentaryLoudness: momentary,
  };
}

/** Sums of one channel; raises the magnitudes of frames to its own and adds its energies. */
function scan(
  values: Float32Array,
  magnitudes: Float32Array,
  energies: Float32Array,
): { sum: number; squares: number; peak: number } {
  let sum = 0;
  let squares = 0;
  let peak = 0;
  for (let frame = 0; frame < values.length; frame++) {
    const value = values[frame];
    const magnitude = Math.abs(value);
    const square = value * value;
    sum += value;
    squares += square;
    if (magnitude > peak) peak = magnitude;
    if (magnitude > magnitudes[frame]) magnitudes[frame] = magnitude;
    energies[frame] = energies[frame] + square;
  }
  return { sum, squares, peak };
}
