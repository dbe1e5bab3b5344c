import type { Axis } from '../../../../server/gestures/borders';
import { bordersOf, highOf, lowOf, snapped } from '../../../../server/gestures/borders';
import type { Gesture } from '../../../../server/gestures/gesture';
import type { MapShape } from '../../../../server/map/mapScene';
import type { GripName } from './grips';
import { gripSides } from './grips';

/** Shapes that somebody holds and moves, by the pointer or by keys. */
export interface InHand {
  /** The shapes that move, the one that is held first. */
  shapes: readonly number[];
  grip: GripName;
  keys: number;
  velocities: number;
  /** Whether a border that other shapes share moves without them. */
  isParted: boolean;
  /** Whether root keys go along or stay where that is not as usual. */
  takesRoots?: boolean | undefined;
}

/** What is done to the shapes. */
export function gestureOf({ grip, ...held }: InHand): Gesture {
  return grip === 'root'
    ? { kind: 'root', shapes: held.shapes, keys: held.keys }
    : {
        kind: 'drag',
        shapes: held.shapes,
        grip: gripSides[grip],
        keys: held.keys,
        velocities: held.velocities,
        isParted: held.isParted,
        ...(held.takesRoots !== undefined && { takesRoots: held.takesRoots }),
      };
}

/**
 * How far a side that is moved by `by` goes where it settles on the border of another shape within reach, in keys or
 * velocities; of a whole shape the side that is nearer to one.
 */
export function settled(
  shapes: readonly MapShape[],
  shown: readonly number[],
  held: Pick<InHand, 'shapes' | 'grip'>,
  axis: Axis,
  by: number,
  reach: number,
): number {
  const [first] = held.shapes;
  const side = held.grip === 'root' ? undefined : gripSides[held.grip][axis];
  if (first === undefined || !side) return by;
  const shape = shapes[first];
  const places = [
    ...(side === 'high' ? [] : [lowOf(shape, axis)]),
    ...(side === 'low' ? [] : [highOf(shape, axis) + 1]),
  ];
  const borders = bordersOf(shapes, shown, held.shapes, axis);
  // A border that is shared moves along and is none to settle on.
  for (const place of places) borders.delete(place);
  const moves = places.map((place) => snapped(place + by, borders, reach) - place);
  const settling = moves.filter((move) => move !== by);
  return settling.sort((one, other) => Math.abs(one - by) - Math.abs(other - by))[0] ?? by;
}
