/** Below this frequency lie the rumble of rooms, the hum of mains and the thump of keys and drums (our choice). */
const rumbleHertz = 300;

/**
 * A sound without what lies below some 300 Hz: two filters of the second order one after the other, each the analogue
 * high-pass with a quality of 1/√2 taken over by the bilinear transform (Oppenheim and Schafer, Discrete-Time Signal
 * Processing). The partials that are left keep their frequencies, and so their distance keeps telling a low fundamental.
 */
export function withoutRumble(samples: Float32Array, sampleRate: number): Float32Array {
  const warped = Math.tan((Math.PI * Math.min(rumbleHertz, 0.2 * sampleRate)) / sampleRate);
  const scale = 1 / (1 + Math.SQRT2 * warped + warped * warped);
  const first = 2 * (warped * warped - 1) * scale;
  const second = (1 - Math.SQRT2 * warped + warped * warped) * scale;
  const clear = new Float32Array(samples.length);
  let [oneLast, oneBefore, otherLast, otherBefore] = [0, 0, 0, 0];
  for (let frame = 0; frame < samples.length; frame++) {
    const one = samples[frame] - first * oneLast - second * oneBefore;
    const between = scale * (one - 2 * oneLast + oneBefore);
    oneBefore = oneLast;
    oneLast = one;
    const other = between - first * otherLast - second * otherBefore;
    clear[frame] = scale * (other - 2 * otherLast + otherBefore);
    otherBefore = otherLast;
    otherLast = other;
  }
  return clear;
}
