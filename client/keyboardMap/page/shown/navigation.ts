import type { MapCell, MapShape } from '../../../../server/map/mapScene';

export type Direction = 'left' | 'right' | 'up' | 'down';

/** Shapes by key, then velocity, then layer: the order in which they are stepped through. */
export function readingOrder(shapes: readonly MapShape[], hidden: ReadonlySet<number>): number[] {
  const order: number[] = [];
  shapes.forEach((shape, index) => {
    if (!hidden.has(shape.layer)) order.push(index);
  });
  return order.sort((left, right) => {
    const one = shapes[left];
    const other = shapes[right];
    return (
      one.lowKey - other.lowKey ||
      one.lowVelocity - other.lowVelocity ||
      one.layer - other.layer ||
      left - right
    );
  });
}

/**
 * The shape that lies nearest in a direction, judged by middles, those level with the present one before others;
 * `undefined` where none lies there. A key counts as wide as four velocities are high, about as drawn.
 */
export function nearestShape(
  shapes: readonly MapShape[],
  order: readonly number[],
  from: number,
  direction: Direction,
): number | undefined {
  const start = shapes[from];
  if (!start) return undefined;
  const across = direction === 'left' || direction === 'right';
  const sign = direction === 'right' || direction === 'up' ? 1 : -1;
  let nearest: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const index of order) {
    const shape = shapes[index];
    const ahead = sign * (middle(shape, across) - middle(start, across));
    if (index === from || ahead <= 0) continue;
    const aside = Math.abs(middle(shape, !across) - middle(start, !across));
    const cost = ahead + 3 * distanceAside(shape, start, !across) + aside / 8;
    if (cost < least) {
      least = cost;
      nearest = index;
    }
  }
  return nearest;
}

/** The shape of an earlier scene in a new one: the same rectangle of the same layer, else the one nearest to it. */
export function findAgain(
  shapes: readonly MapShape[],
  layerNames: readonly string[],
  cell: MapCell,
  layerName: string,
): number | undefined {
  let nearest: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  shapes.forEach((shape, index) => {
    const cost =
      4 * Math.abs(shape.lowKey - cell.lowKey) +
      4 * Math.abs(shape.highKey - cell.highKey) +
      Math.abs(shape.lowVelocity - cell.lowVelocity) +
      Math.abs(shape.highVelocity - cell.highVelocity) +
      (layerNames[shape.layer] === layerName ? 0 : 200);
    if (cost < least) {
      least = cost;
      nearest = index;
    }
  });
  return nearest;
}

/** Whether two cells have a key and a velocity in common. */
export function meets(one: MapCell, other: MapCell): boolean {
  return (
    one.lowKey <= other.highKey &&
    other.lowKey <= one.highKey &&
    one.lowVelocity <= other.highVelocity &&
    other.lowVelocity <= one.highVelocity
  );
}

function middle(cell: MapCell, across: boolean): number {
  return across ? 2 * (cell.lowKey + cell.highKey) : (cell.lowVelocity + cell.highVelocity) / 2;
}

function distanceAside(one: MapCell, other: MapCell, across: boolean): number {
  return across
    ? 4 * Math.max(0, one.lowKey - other.highKey, other.lowKey - one.highKey)
    : Math.max(0, one.lowVelocity - other.highVelocity, other.lowVelocity - one.highVelocity);
}
