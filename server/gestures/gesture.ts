import type { MapCell, MapShape } from '../map/mapScene';
import type { Arrangement, GestureRefusal, RegionValues } from './arrangement';
import type { Drag, RootDrag } from './dragged';
import { dragged, draggedRoots } from './dragged';
import type { Join, Split } from './splitAndJoin';
import { join, splitShapes } from './splitAndJoin';
import type { Layers, Spread } from './spread';
import { shareKeys, spreadVelocities } from './spread';

/** What a person does to shapes of a map, given by their position in the scene. */
export type Gesture = Drag | RootDrag | Split | Join | Spread | Layers;

/** What a gesture changes, or why it cannot be made. `shown` are the shapes that are seen; others are left alone. */
export function arranged(
  shapes: readonly MapShape[],
  shown: readonly number[],
  gesture: Gesture,
): Arrangement | GestureRefusal {
  switch (gesture.kind) {
    case 'drag':
      return dragged(shapes, shown, gesture);
    case 'root':
      return draggedRoots(shapes, gesture);
    case 'split':
      return splitShapes(shapes, gesture);
    case 'join':
      return join(shapes, gesture);
    case 'spread':
      return shareKeys(shapes, gesture);
    case 'layers':
      return spreadVelocities(shapes, gesture);
  }
}

/** Where a region of a cell lies with new values. */
export function cellWith(cell: MapCell, values: RegionValues): MapCell {
  return {
    lowKey: values.lokey ?? cell.lowKey,
    highKey: values.hikey ?? cell.highKey,
    lowVelocity: values.lovel ?? cell.lowVelocity,
    highVelocity: values.hivel ?? cell.highVelocity,
  };
}
