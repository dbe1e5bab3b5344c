import { isRaisedKey } from '../model/keys';
import type { MapCell, MapScene, MapShape } from './mapScene';
import type { Stack } from './stack';
import { mostLevels } from './stack';

/** A rectangle in pixels, from its upper left corner. */
export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Where keys and velocities lie in a drawing; the plot's upper left corner is 0, 0 and the keyboard stands below it. */
export interface MapLayout {
  lowKey: number;
  highKey: number;
  /** Pixels a key takes across. */
  keyWidth: number;
  plotWidth: number;
  /** Pixels that the velocities 1..127 take. */
  plotHeight: number;
  keyboardHeight: number;
  /** From the top of the plot to the bottom of the octave names. */
  height: number;
  /** The octave C's that have room for their name. */
  namedKeys: number[];
}

/** Half of the width of a shape's outline in pixels: outlines of neighbours stand side by side. */
const halfOutline = 0.6;

/** Pixels of a side from which on a shape shows the rims of those under it. */
const leastRimmed = 18;

/** Pixels between the plot and the keyboard, and the height of the row of octave names. */
const keyboardGap = 3;
export const octaveRow = 18;

/** Velocities that the axis names: the ends, and the quarters of the range at which instruments commonly split. */
export const velocityTicks = [1, 32, 64, 96, 127] as const;

/** Lays out a scene for a width of a key and heights in pixels. */
export function layOut(
  scene: Pick<MapScene, 'lowKey' | 'highKey'>,
  size: { keyWidth: number; plotHeight: number; keyboardHeight: number },
): MapLayout {
  const { lowKey, highKey } = scene;
  const { keyWidth, plotHeight, keyboardHeight } = size;
  return {
    lowKey,
    highKey,
    keyWidth,
    plotWidth: (highKey - lowKey + 1) * keyWidth,
    plotHeight,
    keyboardHeight,
    height: plotHeight + keyboardGap + keyboardHeight + octaveRow,
    namedKeys: namedKeys(lowKey, highKey, keyWidth),
  };
}

/** Octave names every one, two or more octaves, such that they keep apart and C4 is among them. */
function namedKeys(lowKey: number, highKey: number, keyWidth: number): number[] {
  const step = 12 * Math.max(1, Math.ceil(30 / (12 * keyWidth)));
  const keys: number[] = [];
  for (let key = 60 % step; key <= highKey; key += step) if (key >= lowKey) keys.push(key);
  return keys;
}

/** The left side of a key's column. */
export function keyLeft(layout: MapLayout, key: number): number {
  return (key - layout.lowKey) * layout.keyWidth;
}

/** The middle of a velocity's row. */
export function velocityMiddle(layout: MapLayout, velocity: number): number {
  return ((127.5 - velocity) * layout.plotHeight) / 127;
}

/** The key and velocity at a point of the plot; points beside it count as its nearest. */
export function placeAt(layout: MapLayout, x: number, y: number): { key: number; velocity: number } {
  const key = layout.lowKey + Math.floor(x / layout.keyWidth);
  const velocity = 127 - Math.floor((y * 127) / layout.plotHeight);
  return {
    key: Math.max(layout.lowKey, Math.min(layout.highKey, key)),
    velocity: Math.max(1, Math.min(127, velocity)),
  };
}

/** The top of the keyboard. */
export function keyboardTop(layout: MapLayout): number {
  return layout.plotHeight + keyboardGap;
}

/** The rectangle of a cell, drawn in by `inset` pixels on all sides, though never to nothing. */
export function cellBox(layout: MapLayout, cell: MapCell, inset = 0): Box {
  const { x, y, width, height } = wholeBox(layout, cell);
  const across = Math.min(inset, width / 3);
  const up = Math.min(inset, height / 3);
  return { x: x + across, y: y + up, width: width - 2 * across, height: height - 2 * up };
}

/**
 * The rectangle of a shape: as large as it is, but for the width of its outline and for sides that it has in common with
 * shapes under it, which are drawn in so that those show.
 */
export function shapeBox(layout: MapLayout, { levels }: Stack, shape: MapShape, index: number): Box {
  const rim = layout.keyWidth >= 14 ? 3 : layout.keyWidth >= 7 ? 2 : 1;
  const { x, y, width, height } = wholeBox(layout, shape);
  const at = 4 * index;
  const hasRoom = hasRimRoom({ width, height });
  const across = hasRoom ? Math.min(rim, width / 16) : 0;
  const up = hasRoom ? Math.min(rim, height / 16) : 0;
  const west = halfOutline + across * levels[at];
  const north = halfOutline + up * levels[at + 2];
  return {
    x: x + west,
    y: y + north,
    width: Math.max(width / 4, width - west - halfOutline - across * levels[at + 1]),
    height: Math.max(height / 4, height - north - halfOutline - up * levels[at + 3]),
  };
}

/** Whether something of a shape is seen around those that lie over it. */
export function showsRim(layout: MapLayout, { levels }: Stack, shape: MapShape, index: number): boolean {
  const at = 4 * index;
  const isShallow = [0, 1, 2, 3].some((side) => levels[at + side] < mostLevels);
  return isShallow && hasRimRoom(wholeBox(layout, shape));
}

/** Small shapes have no room for rims, which would be all that is seen of a dense map. */
function hasRimRoom({ width, height }: Pick<Box, 'width' | 'height'>): boolean {
  return width >= leastRimmed && height >= leastRimmed;
}

function wholeBox(layout: MapLayout, cell: MapCell): Box {
  const rowHeight = layout.plotHeight / 127;
  return {
    x: keyLeft(layout, cell.lowKey),
    y: (127 - cell.highVelocity) * rowHeight,
    width: (cell.highKey - cell.lowKey + 1) * layout.keyWidth,
    height: (cell.highVelocity - cell.lowVelocity + 1) * rowHeight,
  };
}

/** One key of the drawn keyboard. */
export interface DrawnKey extends Box {
  key: number;
  raised: boolean;
}

/**
 * The keys of the keyboard, naturals before raised keys. Raised keys are as wide as their column; naturals meet in the
 * middle of the raised key between them, so that every key stands below its column of the plot.
 */
export function drawnKeys(layout: MapLayout): DrawnKey[] {
  const naturals: DrawnKey[] = [];
  const raised: DrawnKey[] = [];
  const top = keyboardTop(layout);
  for (let key = layout.lowKey; key <= layout.highKey; key++) {
    const left = keyLeft(layout, key);
    if (isRaisedKey(key)) {
      const box = { x: left, y: top, width: layout.keyWidth, height: layout.keyboardHeight * 0.62 };
      raised.push({ key, raised: true, ...box });
      continue;
    }
    const half = layout.keyWidth / 2;
    const x = key > layout.lowKey && isRaisedKey(key - 1) ? left - half : left;
    const right = left + layout.keyWidth + (key < layout.highKey && isRaisedKey(key + 1) ? half : 0);
    naturals.push({ key, raised: false, x, y: top, width: right - x, height: layout.keyboardHeight });
  }
  return [...naturals, ...raised];
}

/** A number of pixels as it is written in a drawing: at most two decimals. */
export function px(value: number): string {
  return String(Math.round(value * 100) / 100);
}
