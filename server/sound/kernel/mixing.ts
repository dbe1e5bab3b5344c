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
  let toLeft = now[0];
  let toRight = now[2];
  const slopeLeft = slopes[0];
  const slopeRight = slopes[2];
  if (slopeLeft === 0 && slopeRight === 0) {
    for (let frame = 0, at = from; frame < count; frame++, at++) {
      const value = sound[frame];
      left[at] += value * toLeft;
      right[at] += value * toRight;
    }
    return;
  }
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
  return Number.isFinite(sumOf(left, count) + (left === right ? 0 : sumOf(right, count)));
}

/** A sum in four parts, none of which waits for another. */
function sumOf(values: Float64Array, count: number): number {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  const even = count - (count % 4);
  for (let at = 0; at < even; at += 4) {
    a += values[at];
    b += values[at + 1];
    c += values[at + 2];
    d += values[at + 3];
  }
  for (let at = even; at < count; at++) a += values[at];
  return a + b + (c + d);
}
