import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';

/** The number of the first curve that is not built in. */
const firstOwn = 7;

/** The curves that the format has built in (public SFZ documentation, headers/curve). */
function builtIn(): Map<number, Float64Array> {
  const shapes: ((x: number) => number)[] = [
    (x) => x,
    (x) => 2 * x - 1,
    (x) => 1 - x,
    (x) => 1 - 2 * x,
    (x) => x * x,
    (x) => Math.sqrt(x),
    (x) => Math.sqrt(1 - x),
  ];
  return new Map(
    shapes.map((shape, number) => [number, Float64Array.from({ length: 128 }, (_, at) => shape(at / 127))]),
  );
}

/**
 * All curves of an instrument by number: those that are built in and its `<curve>` headers. Between the points of a curve
 * lie straight lines; where they are not given, it starts at 0 and ends at 1. The last of one number counts.
 */
export function curvesOf(instrument: Instrument): Map<number, Float64Array> {
  const curves = builtIn();
  let next = firstOwn;
  for (let header = 0; header < instrument.headers.count; header++) {
    if (instrument.kind(header) !== HeaderKind.curve) continue;
    const points = new Map<number, number>([
      [0, 0],
      [127, 1],
    ]);
    let number = next;
    for (let at = instrument.firstParameter(header); at < instrument.endParameter(header); at++) {
      const name = instrument.names.text(instrument.canonicalName(at));
      const value = instrument.number(at);
      const point = /^v(\d{1,3})$/.exec(name);
      if (Number.isNaN(value)) continue;
      if (name === 'curve_index') number = Math.trunc(value);
      else if (point && Number(point[1]) <= 127) points.set(Number(point[1]), value);
    }
    curves.set(number, throughPoints(points));
    next = Math.max(next, number + 1);
  }
  return curves;
}

/** Values at 0..127 on straight lines between points; flat outside of them. */
export function throughPoints(points: ReadonlyMap<number, number>): Float64Array {
  const sorted = [...points].sort(([a], [b]) => a - b);
  const values = new Float64Array(128);
  let next = 0;
  for (let at = 0; at < 128; at++) {
    while (next < sorted.length && sorted[next][0] <= at) next++;
    const [lowAt, low] = sorted[Math.max(0, next - 1)];
    const [highAt, high] = sorted[Math.min(next, sorted.length - 1)];
    values[at] = highAt === lowAt ? low : low + ((at - lowAt) / (highAt - lowAt)) * (high - low);
  }
  return values;
}
