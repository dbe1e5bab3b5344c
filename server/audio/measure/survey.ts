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

/** Values after which other work, such as a request to stop, is let run (our choice). */
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
  const { channels } = audio;
  const most = whole ? Number.POSITIVE_INFINITY : Math.floor(mostMeasuredValues / channels);
  const scans = new SurveyScans(audio);
  let isWhole = true;
  let untilPause = valuesAtOnce;
  for await (const block of audio.blocks()) {
    if (scans.frames >= most) {
      isWhole = false;
      break;
    }
    const before = scans.frames;
    scans.add(block);
    untilPause -= (scans.frames - before) * channels;
    if (untilPause > 0) continue;
    untilPause = valuesAtOnce;
    onFrames?.(scans.frames);
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (signal?.aborted) return null;
  }
  return scans.frames === 0 ? null : scans.result(isWhole);
}

/** All that is measured in one pass over a sample. */
class SurveyScans {
  frames = 0;
  #peak = 0;
  #magnitudes = new Float32Array(0);
  #energies = new Float32Array(0);
  readonly #sums: number[];
  readonly #squares: number[];
  readonly #clipping: ClippingScan[];
  readonly #silence = new SilenceScan();
  readonly #tail: TailScan;
  readonly #likeness = new ChannelLikeness();
  readonly #loudness: LoudnessMeter;

  constructor({ sampleRate, channels, bitsPerSample }: AudioSource) {
    this.#sums = new Array<number>(channels).fill(0);
    this.#squares = new Array<number>(channels).fill(0);
    this.#clipping = Array.from({ length: channels }, () => new ClippingScan(bitsPerSample));
    this.#tail = new TailScan(sampleRate, channels);
    this.#loudness = new LoudnessMeter(sampleRate, channels);
  }

  /** Goes on with the next frames, a list of values for each channel. */
  add(block: readonly Float32Array[]): void {
    const count = block[0]?.length ?? 0;
    if (this.#magnitudes.length < count) {
      this.#magnitudes = new Float32Array(count);
      this.#energies = new Float32Array(count);
    } else {
      this.#magnitudes.fill(0);
      this.#energies.fill(0);
    }
    block.forEach((values, channel) => {
      const scanned = scan(values, this.#magnitudes, this.#energies);
      this.#sums[channel] = (this.#sums[channel] ?? 0) + scanned.sum;
      this.#squares[channel] = (this.#squares[channel] ?? 0) + scanned.squares;
      this.#clipping[channel]?.add(values, scanned.peak);
      this.#peak = Math.max(this.#peak, scanned.peak);
    });
    this.#silence.add(this.#magnitudes, count);
    this.#tail.add(block, this.#energies, count);
    this.#likeness.add(block);
    this.#loudness.add(block);
    this.frames += count;
  }

  /** What was found; `isWhole` tells whether the end of the sample was looked at. */
  result(isWhole: boolean): SampleSurvey {
    for (const one of this.#clipping) one.finish();
    const { leading, trailing } = this.#silence.result();
    const { integrated, momentary } = this.#loudness.result();
    return {
      frames: this.frames,
      isWhole,
      peak: this.#peak,
      dcOffset: this.#sums.map((sum) => sum / this.frames),
      leadingSilenceFrames: leading,
      trailingSilenceFrames: isWhole ? trailing : 0,
      ...(isWhole ? this.#tail.result() : unknownEnd),
      clipping: clippingOf(this.#clipping),
      channelCorrelation: this.#likeness.correlation(this.#sums, this.#squares),
      hasEqualChannels: isWhole && this.#likeness.hasEqualChannels,
      loudness: integrated,
      momentaryLoudness: momentary,
    };
  }
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
