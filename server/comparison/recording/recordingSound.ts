import { ClippingScan, clippingOf } from '../../audio/measure/clipping';
import type { SampleSource } from '../../sound/samples/sampleSource';
import { LevelTrack } from './levelTrack';

/** A recording, read stretch by stretch. */
export interface RecordedSound {
  samples: SampleSource;
  path: string;
  sampleRate: number;
  frames: number;
  channels: number;
}

/** A level that counts as silence, as a factor: −90 dB. */
export const silentPeak = 10 ** (-90 / 20);

/** Rates at which the voice renders. */
const leastRate = 4000;
const mostRate = 768000;

/** Opens a recording, or says why it cannot be compared, as a part of a sentence. */
export async function openRecordingAt(
  samples: SampleSource,
  path: string,
): Promise<RecordedSound | { reason: string }> {
  const shape = await samples.shape(path);
  if (!shape || shape.frames === 0) return { reason: 'this is no audio that can be read' };
  const { rate, frames, channels } = shape;
  if (rate < leastRate || rate > mostRate)
    return { reason: `a sample rate of ${rate} Hz cannot be compared` };
  return { samples, path, sampleRate: rate, frames, channels };
}

/** What one pass over a recording tells. */
export interface RecordingSurvey {
  track: LevelTrack;
  peak: number;
  /** Stretches at full scale. */
  clippedRuns: number;
  /** Frames that could be read. */
  frames: number;
}

const readFrames = 1 << 17;

/** Goes through a recording once. */
export async function surveyRecording(
  recording: RecordedSound,
  signal?: AbortSignal,
): Promise<RecordingSurvey> {
  const track = new LevelTrack(recording.sampleRate);
  const scans = [new ClippingScan(0), new ClippingScan(0)];
  let peak = 0;
  let at = 0;
  while (at < recording.frames) {
    signal?.throwIfAborted();
    const { left, right } = await recordedFrames(recording, at, readFrames);
    if (left.length === 0) break;
    let highest = 0;
    for (const side of [left, right])
      for (let frame = 0; frame < side.length; frame++) highest = Math.max(highest, Math.abs(side[frame]));
    track.add(left, right, left.length);
    scans[0].add(left, highest);
    if (right !== left) scans[1].add(right, highest);
    peak = Math.max(peak, highest);
    at += left.length;
  }
  for (const scan of scans) scan.finish();
  return { track, peak, clippedRuns: clippingOf(scans)?.runs ?? 0, frames: at };
}

/** Frames of a recording, silence where it has none; a mono one has both channels the same. */
export async function recordedFrames(
  { samples, path }: RecordedSound,
  start: number,
  count: number,
): Promise<{ left: Float32Array; right: Float32Array }> {
  const [left, right = left] = await samples.read(path, Math.max(0, start), count + Math.min(0, start));
  if (start >= 0) return { left, right };
  const late = (values: Float32Array) => {
    const whole = new Float32Array(values.length - start);
    whole.set(values, -start);
    return whole;
  };
  return { left: late(left), right: late(right) };
}
