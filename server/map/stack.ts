import type { MapScene, MapShape } from './mapScene';

/** Which shapes lie over which. Shapes are given by their position in the scene. */
export interface Stack {
  /** Those that are shown, the lowest first: a larger one before a smaller one, so that no small one is ever hidden. */
  order: readonly number[];
  /** The uppermost shape by key × 128 + velocity; −1 where there is none. */
  top: Int32Array;
  /**
   * Four numbers a shape, for its left, right, upper and lower side: how many shapes one under the other have that side
   * in common with it. Such a side is drawn in, so that the one below it shows; all others stand where they are.
   */
  levels: Uint8Array;
  /** 1 for shapes that others lie over a part of. */
  isCovered: Uint8Array;
  /** 1 for shapes that are uppermost somewhere. */
  isSeen: Uint8Array;
}

/** Shapes below so many others with the same sides show no rim of their own. */
export const mostLevels = 4;
/** So many cells are looked at for covered shapes; beyond them each counts as covered, which costs a thin line. */
const mostCells = 20_000_000;

/** Puts the shapes of a scene one over the other, those of hidden layers left out. */
export function stackShapes(scene: MapScene, hiddenLayers?: ReadonlySet<number>): Stack {
  const { shapes } = scene;
  const order = shownLargestFirst(shapes, hiddenLayers);
  const stack: Stack = {
    order,
    top: new Int32Array(128 * 128).fill(-1),
    levels: new Uint8Array(4 * shapes.length),
    isCovered: new Uint8Array(shapes.length),
    isSeen: new Uint8Array(shapes.length),
  };
  const sides = Array.from({ length: 4 }, () => new Uint8Array(128 * 128));
  let cells = 0;
  for (const index of order) {
    const shape = shapes[index];
    cells += areaOf(shape);
    lay(stack, shape, index, cells <= mostCells);
    const { lowKey, highKey, lowVelocity, highVelocity } = shape;
    const at = 4 * index;
    stack.levels[at] = takeSide(sides[0], lowKey, lowVelocity, highVelocity);
    stack.levels[at + 1] = takeSide(sides[1], highKey, lowVelocity, highVelocity);
    stack.levels[at + 2] = takeSide(sides[2], highVelocity, lowKey, highKey);
    stack.levels[at + 3] = takeSide(sides[3], lowVelocity, lowKey, highKey);
  }
  for (const index of stack.top) if (index >= 0) stack.isSeen[index] = 1;
  return stack;
}

function shownLargestFirst(shapes: readonly MapShape[], hidden: ReadonlySet<number> | undefined): number[] {
  const order: number[] = [];
  for (let index = 0; index < shapes.length; index++) {
    if (!hidden?.has(shapes[index].layer)) order.push(index);
  }
  const areas = shapes.map(areaOf);
  return order.sort((one, other) => areas[other] - areas[one] || one - other);
}

function areaOf({ lowKey, highKey, lowVelocity, highVelocity }: MapShape): number {
  return (highKey - lowKey + 1) * (highVelocity - lowVelocity + 1);
}

function lay({ top, isCovered }: Stack, shape: MapShape, index: number, isLooked: boolean): void {
  const { lowKey, highKey, lowVelocity, highVelocity } = shape;
  if (!isLooked) isCovered[index] = 1;
  for (let key = lowKey; key <= highKey; key++) {
    const end = key * 128 + highVelocity;
    if (isLooked) {
      for (let cell = key * 128 + lowVelocity; cell <= end; cell++)
        if (top[cell] >= 0) isCovered[top[cell]] = 1;
    }
    top.fill(index, key * 128 + lowVelocity, end + 1);
  }
}

/** How many shapes below have a side at a place in common, over a stretch of it; counts one more there. */
function takeSide(taken: Uint8Array, place: number, from: number, to: number): number {
  const start = place * 128 + from;
  const end = place * 128 + to;
  let level = 0;
  for (let at = start; at <= end; at++) if (taken[at] > level) level = taken[at];
  taken.fill(Math.min(level + 1, mostLevels), start, end + 1);
  return level;
}
