import type { MapShape } from '../map/mapScene';
import type { Arrangement, RegionValues } from './arrangement';
import { valuesOnly } from './arrangement';
import type { Axis, BorderSide } from './borders';
import { acrossBorder, highOf, limits, lowOf } from './borders';

/** What of a shape is held, on each of the two axes: one side, or both for the whole of it. */
export interface Grip {
  keys?: BorderSide | 'both';
  velocities?: BorderSide | 'both';
}

/** Shapes, or sides of them, that are moved together. Shapes are given by their position in the scene. */
export interface Drag {
  kind: 'drag';
  shapes: readonly number[];
  grip: Grip;
  /** How far, in keys and velocities; less where something would leave the keyboard or vanish. */
  keys: number;
  velocities: number;
  /** Whether a border that other shapes share is moved without them. */
  isParted: boolean;
  /** Whether root keys go along with whole shapes; where nothing is said, those of shapes on one key that is their root. */
  takesRoots?: boolean;
}

const axisNames = {
  keys: { low: 'lokey', high: 'hikey' },
  velocities: { low: 'lovel', high: 'hivel' },
} as const;

/** The values that a drag changes. `shown` are the shapes that a shared border can be shared with. */
export function dragged(shapes: readonly MapShape[], shown: readonly number[], drag: Drag): Arrangement {
  const byHeader = new Map<number, RegionValues>();
  const set = (header: number, values: Omit<RegionValues, 'header'>) =>
    byHeader.set(header, { ...(byHeader.get(header) ?? { header }), ...values });
  for (const axis of ['keys', 'velocities'] as const) {
    const moved = movedSides(shapes, shown, drag, axis);
    const by = nearestAllowed(shapes, moved, axis, drag[axis]);
    if (by === 0) continue;
    for (const [index, sides] of moved) {
      const shape = shapes[index];
      const values = Object.fromEntries(
        [...sides].map((side) => [
          axisNames[axis][side],
          (side === 'low' ? lowOf : highOf)(shape, axis) + by,
        ]),
      );
      for (const { header } of shape.regions) set(header, values);
      if (axis === 'velocities' || sides.size < 2 || drag.grip.keys !== 'both') continue;
      for (const { header, rootKey } of shape.regions) {
        const isOnRoot = shape.lowKey === shape.highKey && rootKey === shape.lowKey;
        const root = rootKey + by;
        if ((drag.takesRoots ?? isOnRoot) && root >= 0 && root <= 127) set(header, { pitch_keycenter: root });
      }
    }
  }
  return valuesOnly([...byHeader.values()]);
}

/** Which sides of which shapes move on an axis: those held, and those of others at a border that is shared. */
function movedSides(
  shapes: readonly MapShape[],
  shown: readonly number[],
  { shapes: held, grip, isParted }: Drag,
  axis: Axis,
): Map<number, Set<BorderSide>> {
  const moved = new Map<number, Set<BorderSide>>();
  const side = grip[axis];
  if (!side) return moved;
  const add = (index: number, ...sides: BorderSide[]) =>
    moved.set(index, new Set([...(moved.get(index) ?? []), ...sides]));
  for (const index of held) {
    if (side === 'both') add(index, 'low', 'high');
    else {
      add(index, side);
      if (isParted) continue;
      for (const other of acrossBorder(shapes, shown, index, axis, side))
        add(other, side === 'low' ? 'high' : 'low');
    }
  }
  return moved;
}

/** How far all sides can move together such that each shape stays on the keyboard and keeps a key and a velocity. */
function nearestAllowed(
  shapes: readonly MapShape[],
  moved: ReadonlyMap<number, ReadonlySet<BorderSide>>,
  axis: Axis,
  wanted: number,
): number {
  let [down, up] = [-127, 127];
  for (const [index, sides] of moved) {
    const [low, high] = [lowOf(shapes[index], axis), highOf(shapes[index], axis)];
    if (sides.has('low')) down = Math.max(down, limits[axis].low - low);
    else down = Math.max(down, low - high);
    if (sides.has('high')) up = Math.min(up, limits[axis].high - high);
    else up = Math.min(up, high - low);
  }
  return Math.max(down, Math.min(up, wanted));
}

/** Root keys that are moved, by as many keys as it takes the one of the first shape; regions keep their distances. */
export interface RootDrag {
  kind: 'root';
  shapes: readonly number[];
  /** How many keys. */
  keys: number;
}

/** The root keys that a drag of root marks gives; those that would leave the keyboard stop at its end. */
export function draggedRoots(shapes: readonly MapShape[], { shapes: held, keys }: RootDrag): Arrangement {
  if (keys === 0) return valuesOnly([]);
  const values = held.flatMap((index) =>
    shapes[index].regions.flatMap(({ header, rootKey }) => {
      const root = Math.max(0, Math.min(127, rootKey + keys));
      return root === rootKey ? [] : [{ header, pitch_keycenter: root }];
    }),
  );
  return valuesOnly(values);
}
