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
