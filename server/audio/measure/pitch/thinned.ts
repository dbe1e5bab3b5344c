import type { SoundingPart } from './soundingPart';

/** Every `step` frames as their mean; what is over at the end is left out. */
export function thinned(samples: Float32Array, step: number): Float32Array {
  if (step === 1) return samples;
  const thin = new Float32Array(Math.floor(samples.length / step));
  for (let frame = 0, at = 0; frame < thin.length; frame++) {
    let sum = 0;
    for (const end = at + step; at < end; at++) sum += samples[at];
    thin[frame] = sum / step;
  }
  return thin;
}

/** How many frames one can stand for so that a period of a frequency keeps `framesInPeriod` of them. */
export function thinningStep(sampleRate: number, hertz: number, framesInPeriod: number): number {
  return Math.max(1, Math.floor(sampleRate / (framesInPeriod * hertz)));
}

/** A part of a sound as a part of the thinned one. */
export function thinnedPart({ start, end }: SoundingPart, step: number): SoundingPart {
  return { start: Math.ceil(start / step), end: Math.floor(end / step) };
}
