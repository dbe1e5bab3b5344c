import { leastSpectrumChange } from './loopMotion';
import { greatestChange, spectrumFrames } from './loopSpectrum';
import type { LoopSurroundings } from './loopSurroundings';

/** Lengths that are tried, from short to long: a short one keeps most of the sound as it is (our choice). */
const triedSeconds = [0.005, 0.01, 0.02, 0.05, 0.1, 0.2];
export const longestCrossfade = 0.2;
/** A crossfade is smooth where the spectrum changes no more than this many times as much as nearby (our choice). */
const spectrumTimes = 2;

/**
 * The shortest length in frames over which a crossfade makes a loop close smoothly: the end of the loop fades out while
 * as much sound from before its start fades in, so that the step is gone, and what is left to judge is whether the
 * spectrum changes more than it does by itself, which is `motion`. `undefined` where there is too little sound before
 * the start, or where no length does.
 */
export function smoothCrossfade(around: LoopSurroundings, motion: number): number | undefined {
  const { start, end, sampleRate, near } = around;
  const most = Math.max(leastSpectrumChange, spectrumTimes * motion);
  const edge = 2 * spectrumFrames(sampleRate);
  for (const seconds of triedSeconds) {
    const length = Math.round(seconds * sampleRate);
    if (length > start || length > (end - start) / 2) return undefined;
    // A loop that is no longer than the stretches compared sounds as one tone, whatever its spectrum does.
    if (end - start + 1 < edge) return length;
    const played = (frame: number) => {
      if (frame > end) return near.start(start + frame - end - 1);
      const share = (frame - (end - length)) / (length + 1);
      if (share <= 0) return near.end(frame);
      return (1 - share) * near.end(frame) + share * near.start(start + frame - end - 1);
    };
    const from = Math.max(start, end - length - edge);
    if (greatestChange(played, from, end + edge, sampleRate) <= most) return length;
  }
  return undefined;
}
