/** The part of a recording that pitch is measured in: its attack is over and it has not died away. */
export interface SoundingPart {
  start: number;
  /** One past the last frame. */
  end: number;
}

/** The level is followed in steps of so long (our choice). */
const blockSeconds = 0.005;
/** The attack is over this long after the sound has come up to half of its greatest level (our choice). */
const settleSeconds = 0.05;
/** Below this share of the greatest level the sound has died away (our choice). */
const quietest = 0.03;
/** The mean level that counts as silence: about −80 dB (our choice). */
const silence = 1e-4;

/**
 * Where a recording sounds, by its level in blocks of 5 ms; `undefined` for silence. A sound that is hardly longer
 * than its attack keeps its end, so at least `wanted` frames are given where they are there.
 */
export function soundingPart(
  samples: Float32Array,
  sampleRate: number,
  wanted: number,
): SoundingPart | undefined {
  const block = Math.max(1, Math.round(blockSeconds * sampleRate));
  const count = Math.floor(samples.length / block);
  const levels = new Float64Array(count);
  let greatest = 0;
  for (let number = 0; number < count; number++) {
    let energy = 0;
    for (let at = number * block; at < (number + 1) * block; at++) energy += samples[at] ** 2;
    levels[number] = Math.sqrt(energy / block);
    greatest = Math.max(greatest, levels[number]);
  }
  if (!(greatest > silence)) return undefined;
  let first = 0;
  while (levels[first] < greatest / 2) first++;
  let last = count - 1;
  while (levels[last] < greatest * quietest) last--;
  const end = (last + 1) * block;
  const settled = first * block + Math.round(settleSeconds * sampleRate);
  const start = Math.max(first * block, Math.min(settled, end - wanted));
  return { start, end };
}

/** First frames of up to `most` windows, evenly spread and overlapping by three quarters at the most. */
export function windowStarts({ start, end }: SoundingPart, length: number, most: number): number[] {
  const room = end - start - length;
  if (room < 0) return [];
  const count = Math.max(1, Math.min(most, 1 + Math.floor(room / (length / 4))));
  return Array.from({ length: count }, (_, number) =>
    count === 1 ? start : start + Math.floor((room * number) / (count - 1)),
  );
}
