import type { MapCell, MapShape } from '../map/mapScene';

export type Axis = 'keys' | 'velocities';
export type BorderSide = 'low' | 'high';

/** The lowest and highest place on each axis; velocity 0 is a note-off in MIDI 1.0. */
export const limits = { keys: { low: 0, high: 127 }, velocities: { low: 1, high: 127 } } as const;

/** The lowest key or velocity of a cell. */
export function lowOf(cell: MapCell, axis: Axis): number {
  return axis === 'keys' ? cell.lowKey : cell.lowVelocity;
}

/** The highest key or velocity of a cell. */
export function highOf(cell: MapCell, axis: Axis): number {
  return axis === 'keys' ? cell.highKey : cell.highVelocity;
}

/**
 * The shapes on the other side of a border that a shape has, which begin where it ends and meet it there. Those of its own
 * group are meant where there are any; else those that are started in the same way, as velocity layers in groups of their own.
 */
export function acrossBorder(
  shapes: readonly MapShape[],
  shown: readonly number[],
  index: number,
  axis: Axis,
  side: BorderSide,
): number[] {
  const shape = shapes[index];
  const along = axis === 'keys' ? 'velocities' : 'keys';
  const found = shown.filter((other) => {
    const one = shapes[other];
    const meets =
      side === 'low'
        ? highOf(one, axis) === lowOf(shape, axis) - 1
        : lowOf(one, axis) === highOf(shape, axis) + 1;
    return meets && lowOf(one, along) <= highOf(shape, along) && lowOf(shape, along) <= highOf(one, along);
  });
  const own = found.filter((other) => shapes[other].layer === shape.layer);
  return own.length > 0 ? own : found.filter((other) => isStartedAlike(shapes[other], shape));
}

function isStartedAlike({ regions: [one] }: MapShape, { regions: [other] }: MapShape): boolean {
  return one?.trigger === other?.trigger && String(one?.switchedBy) === String(other?.switchedBy);
}

/**
 * The place nearest to a wanted one at which other shapes have a border, where one lies within reach; else the wanted one.
 * Places are whole keys or velocities that the border lies below.
 */
export function snapped(wanted: number, borders: Iterable<number>, reach: number): number {
  let nearest = wanted;
  let least = Number.POSITIVE_INFINITY;
  for (const border of borders) {
    const distance = Math.abs(border - wanted);
    if (distance <= reach && distance < least) {
      nearest = border;
      least = distance;
    }
  }
  return nearest;
}

/** The borders that shapes have on an axis, as the places that they lie below; those of `without` are left out. */
export function bordersOf(
  shapes: readonly MapShape[],
  shown: readonly number[],
  without: readonly number[],
  axis: Axis,
): Set<number> {
  const moved = new Set(without);
  const borders = new Set<number>();
  for (const index of shown) {
    if (moved.has(index)) continue;
    borders.add(lowOf(shapes[index], axis)).add(highOf(shapes[index], axis) + 1);
  }
  return borders;
}
