import type { MapCell, MapShape } from '../map/mapScene';
import type { Arrangement, GestureRefusal } from './arrangement';
import type { Axis } from './borders';
import { highOf, lowOf } from './borders';

/** Shapes that are parted in two, each into itself and a copy of its regions. */
export interface Split {
  kind: 'split';
  shapes: readonly number[];
  axis: Axis;
  /** The key or velocity that the upper parts begin at. */
  at: number;
}

/** What a split changes: the regions keep the lower part, and their copies get the upper one. */
export function splitShapes(
  shapes: readonly MapShape[],
  { shapes: chosen, axis, at }: Split,
): Arrangement | GestureRefusal {
  const parted = chosen.filter(
    (index) => lowOf(shapes[index], axis) < at && at <= highOf(shapes[index], axis),
  );
  if (parted.length === 0) return { refusal: 'Nothing can be split here. Choose a place inside a shape.' };
  const headers = parted.flatMap((index) => shapes[index].regions.map(({ header }) => header));
  return {
    values: headers.map((header) => ({ header, [axis === 'keys' ? 'hikey' : 'hivel']: at - 1 })),
    copies: headers.map((header) => ({ header, [axis === 'keys' ? 'lokey' : 'lovel']: at })),
    removed: [],
  };
}

/** Shapes side by side that become the first of them. */
export interface Join {
  kind: 'join';
  /** The first is the one that stays. */
  shapes: readonly number[];
}

/** What joining changes: the first shape takes the place of all, and the regions of the others go. */
export function join(shapes: readonly MapShape[], { shapes: chosen }: Join): Arrangement | GestureRefusal {
  const [first, ...others] = chosen.map((index) => shapes[index]);
  if (!first || others.length === 0) return { refusal: 'Choose two or more shapes to join.' };
  const all = [first, ...others];
  const whole: MapCell = {
    lowKey: Math.min(...all.map(({ lowKey }) => lowKey)),
    highKey: Math.max(...all.map(({ highKey }) => highKey)),
    lowVelocity: Math.min(...all.map(({ lowVelocity }) => lowVelocity)),
    highVelocity: Math.max(...all.map(({ highVelocity }) => highVelocity)),
  };
  if (all.reduce((sum, one) => sum + areaOf(one), 0) !== areaOf(whole) || overlaps(all))
    return { refusal: 'Only shapes that lie side by side and make a rectangle together can be joined.' };
  return {
    values: first.regions.map(({ header }) => ({
      header,
      ...(first.lowKey !== whole.lowKey && { lokey: whole.lowKey }),
      ...(first.highKey !== whole.highKey && { hikey: whole.highKey }),
      ...(first.lowVelocity !== whole.lowVelocity && { lovel: whole.lowVelocity }),
      ...(first.highVelocity !== whole.highVelocity && { hivel: whole.highVelocity }),
    })),
    copies: [],
    removed: others.flatMap(({ regions }) => regions.map(({ header }) => header)),
  };
}

function areaOf({ lowKey, highKey, lowVelocity, highVelocity }: MapCell): number {
  return (highKey - lowKey + 1) * (highVelocity - lowVelocity + 1);
}

function overlaps(cells: readonly MapCell[]): boolean {
  return cells.some((one, at) =>
    cells
      .slice(at + 1)
      .some(
        (other) =>
          one.lowKey <= other.highKey &&
          other.lowKey <= one.highKey &&
          one.lowVelocity <= other.highVelocity &&
          other.lowVelocity <= one.highVelocity,
      ),
  );
}
