/** Gains of two channels into two, and what is added to each a frame; see `stereoGains`. */
export interface MixGains {
  now: Float64Array;
  slopes: Float64Array;
}

/** Adds a mono sound to a mix. */
export function mixMono(
  sound: Float64Array,
  { now, slopes }: MixGains,
  left: Float64Array,
  right: Float64Array,
  from: number,
  count: number,
): void {
  let [toLeft, , toRight] = now;
  const [slopeLeft, , slopeRight] = slopes;
  for (let frame = 0, at = from; frame < count; frame++, at++) {
    const value = sound[frame];
    left[at] += value * toLeft;
    right[at] += value * toRight;
    toLeft += slopeLeft;
    toRight += slopeRight;
  }
}

/** Adds a stereo sound to a mix. */
export function mixStereo(
  soundLeft: Float64Array,
  soundRight: Float64Array,
  { now, slopes }: MixGains,
  left: Float64Array,
  right: Float64Array,
  from: number,
  count: number,
): void {
  let [ll, lr, rl, rr] = now;
  const [sll, slr, srl, srr] = slopes;
  if (lr === 0 && rl === 0 && slr === 0 && srl === 0) {
    for (let frame = 0, at = from; frame < count; frame++, at++) {
      left[at] += soundLeft[frame] * ll;
      right[at] += soundRight[frame] * rr;
      ll += sll;
      rr += srr;
    }
    return;
  }
  for (let frame = 0, at = from; frame < count; frame++, at++) {
    const a = soundLeft[frame];
    const b = soundRight[frame];
    left[at] += a * ll + b * lr;
    right[at] += a * rl + b * rr;
    ll += sll;
    lr += slr;
    rl += srl;
    rr += srr;
  }
}

/** Whether all of a sound are numbers that can be heard: NaN and infinity spoil a sum. */
export function areNumbers(left: Float64Array, right: Float64Array, count: number): boolean {
  let sum = 0;
  for (let frame = 0; frame < count; frame++) sum += left[frame];
  if (left !== right) for (let frame = 0; frame < count; frame++) sum += right[frame];
  return Number.isFinite(sum);
}
