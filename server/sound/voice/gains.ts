import type { Fade } from '../program/recipe';

/** The gain of the standard velocity curve, (v / 127)² (public SFZ documentation, amp_veltrack), or of a curve of points. */
export function velocityCurveGain(velocity: number, curve: Float64Array | null): number {
  if (curve) return curve[Math.max(0, Math.min(127, Math.round(velocity)))];
  return (velocity / 127) ** 2;
}

/** How much of a velocity curve's gain is left by `amp_veltrack`, in percent. */
export function velocityGain(curveGain: number, trackPercent: number): number {
  const track = Math.max(-1, Math.min(1, trackPercent / 100));
  return track >= 0 ? 1 - track + track * curveGain : 1 + track * curveGain;
}

/** The gain of a crossfade where its subject has a value. */
export function fadeGain({ low, high, isIn, isPower }: Fade, value: number): number {
  const way = low >= high ? (value >= low ? 1 : 0) : Math.max(0, Math.min(1, (value - low) / (high - low)));
  const share = isIn ? way : 1 - way;
  return isPower ? Math.sqrt(share) : share;
}

/**
 * How two channels become two: left from left and right, then right from left and right. `pan`, `width` and `position`
 * are percent; W3C Web Audio, StereoPannerNode, for pan of mono and for position.
 */
export function stereoGains(
  isMono: boolean,
  isBalance: boolean,
  pan: number,
  width: number,
  position: number,
  into: Float64Array,
): void {
  const side = Math.max(-1, Math.min(1, pan / 100));
  const far = side === 0 ? 1 : Math.cos((Math.abs(side) * Math.PI) / 2);
  const left = side > 0 ? far : 1;
  const right = side < 0 ? far : 1;
  if (isMono) {
    const angle = ((side + 1) * Math.PI) / 4;
    into[0] = isBalance ? left : Math.cos(angle);
    into[1] = 0;
    into[2] = isBalance ? right : Math.sin(angle);
    into[3] = 0;
    return;
  }
  const same = 0.5 + width / 200;
  const crossed = 0.5 - width / 200;
  const place = Math.max(-1, Math.min(1, position / 100));
  const keeps = place === 0 ? 1 : Math.cos((Math.abs(place) * Math.PI) / 2);
  const gives = place === 0 ? 0 : Math.sin((Math.abs(place) * Math.PI) / 2);
  const toLeft = place < 0 ? gives : 0;
  const toRight = place > 0 ? gives : 0;
  const keepsLeft = place > 0 ? keeps : 1;
  const keepsRight = place < 0 ? keeps : 1;
  into[0] = left * (keepsLeft * same + toLeft * crossed);
  into[1] = left * (keepsLeft * crossed + toLeft * same);
  into[2] = right * (keepsRight * crossed + toRight * same);
  into[3] = right * (keepsRight * same + toRight * crossed);
}
