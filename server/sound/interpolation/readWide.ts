import type { Walk } from './readRows';
import type { SideTable } from './windowedSinc';
import { phases } from './windowedSinc';

/**
 * Reads `count` values at rising positions with a sinc that is stretched over `stretch` times as many frames, which
 * keeps what lies above half of the rate of the output out. `right` may be the same channel as `left`. All taps, up to
 * `lobes · stretch` frames to each side, have to lie inside of the input.
 */
export function readWide(
  { lobes, values }: SideTable,
  stretch: number,
  left: Float32Array,
  right: Float32Array,
  walk: Walk,
  outputLeft: Float64Array,
  outputRight: Float64Array,
  count: number,
): void {
  let { position, step } = walk;
  const { slope } = walk;
  const reach = lobes * stretch;
  const scale = phases / stretch;
  const isMono = left === right;
  for (let frame = 0; frame < count; frame++) {
    const last = Math.floor(position + reach);
    let sum = 0;
    let sumLeft = 0;
    let sumRight = 0;
    for (let at = Math.ceil(position - reach); at <= last; at++) {
      const place = Math.abs(at - position) * scale;
      const whole = place | 0;
      const value = values[whole];
      const tap = value + (place - whole) * (values[whole + 1] - value);
      sum += tap;
      sumLeft += tap * left[at];
      if (!isMono) sumRight += tap * right[at];
    }
    outputLeft[frame] = sumLeft / sum;
    outputRight[frame] = sumRight / sum;
    position += step;
    step += slope;
  }
  walk.position = position;
  walk.step = step;
}
