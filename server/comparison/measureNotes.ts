import type { PlayedNote } from '../playing/sweep/playedNote';
import { messagesOf } from '../playing/sweep/playedNote';
import type { RenderSource } from '../sound/render/renderParts';
import { renderParts } from '../sound/render/renderParts';
import type { SoundDifference, StereoSound } from './soundDifference';
import { differenceAbove } from './soundDifference';

export interface MeasureOptions {
  /** Differences of up to so many dB to full scale do not count. */
  toleranceDb: number;
  sampleRate: number;
  seed: number;
}

/** The note of several that told two sides apart, or the one that came nearest to it. */
export interface MeasuredNote {
  note: PlayedNote;
  difference: SoundDifference;
}

/** Renders notes on two sides, one after the other until one is heard to differ by more than the tolerance. */
export async function measureNotes(
  a: RenderSource,
  b: RenderSource,
  notes: readonly PlayedNote[],
  options: MeasureOptions,
): Promise<MeasuredNote> {
  let greatest: MeasuredNote | undefined;
  for (const note of notes) {
    const one = await soundOfNote(a, note, options);
    const other = await soundOfNote(b, note, options);
    const difference = differenceAbove(options.toleranceDb, one, other, options.sampleRate);
    if (!greatest || level(difference) > level(greatest.difference)) greatest = { note, difference };
    if (level(difference) > options.toleranceDb) break;
  }
  if (!greatest) throw new Error('No note to measure');
  return greatest;
}

function level({ peakDb }: SoundDifference): number {
  return peakDb ?? Number.NEGATIVE_INFINITY;
}

/** What one side makes of a note. */
export async function soundOfNote(
  source: RenderSource,
  note: PlayedNote,
  { sampleRate, seed }: Pick<MeasureOptions, 'sampleRate' | 'seed'>,
): Promise<StereoSound> {
  const parts: [Float64Array, Float64Array][] = [];
  const { channel, tempoBpm } = note;
  const { frames } = await renderParts(
    source,
    [messagesOf(note)],
    {
      sampleRate,
      seed,
      quality: 'reference',
      ...(channel && { channel }),
      ...(tempoBpm && { tempoBpm }),
    },
    (left, right, count) => parts.push([left.slice(0, count), right.slice(0, count)]),
  );
  const sound = { left: new Float32Array(frames), right: new Float32Array(frames) };
  let at = 0;
  for (const [left, right] of parts) {
    const count = Math.min(left.length, frames - at);
    if (count <= 0) break;
    sound.left.set(left.subarray(0, count), at);
    sound.right.set(right.subarray(0, count), at);
    at += count;
  }
  return sound;
}
