/**
 * Lets a sound fall in a straight line over the last `fadeFrames` frames of its sample. `left` frames of the sample are left
 * at the first value, and `step` fewer at each.
 */
export function fadeOut(
  soundLeft: Float64Array,
  soundRight: Float64Array,
  count: number,
  left: number,
  step: number,
  fadeFrames: number,
): void {
  if (fadeFrames <= 0 || left - step * count >= fadeFrames) return;
  for (let frame = 0; frame < count; frame++) {
    const share = Math.max(0, Math.min(1, (left - step * frame) / fadeFrames));
    soundLeft[frame] *= share;
    if (soundRight !== soundLeft) soundRight[frame] *= share;
  }
}
