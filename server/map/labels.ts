import type { Box, MapLayout } from './layout';
import { placeAt, shapeBox } from './layout';
import type { MapScene, MapShape } from './mapScene';
import type { Stack } from './stack';

/** A label with the start of its baseline; an upright one reads from there to the top. */
export interface PlacedLabel {
  x: number;
  y: number;
  text: string;
  upright: boolean;
}

/** Pixels of the letters of labels. */
export const labelSize = 11;
const line = 14;
const margin = 5;
/** Pixels beside a label of a few letters. */
const narrowMargin = 3;

/** Widths of the letters of ASCII in ems: a cautious guess that holds for common sans serif faces. */
const asciiEms = Float64Array.from({ length: 128 }, (_, code) => {
  const letter = String.fromCharCode(code);
  if ("iljtfrI.,:;|!()[]' ".includes(letter)) return 0.36;
  return /[A-Zmw_%@]/.test(letter) ? 0.74 : 0.59;
});

/** A cautious guess of how wide a text is in a sans serif face of so many pixels. */
export function textWidth(text: string, size: number = labelSize): number {
  let ems = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    ems += code < 128 ? asciiEms[code] : code < 0x1100 ? 0.74 : 1;
  }
  return ems * size;
}

/** As much of a text as fits a width, with `…` where it was cut. */
export function fitText(text: string, width: number, size: number = labelSize): string {
  if (textWidth(text, size) <= width) return text;
  let letters = [...text].slice(0, Math.ceil(width / 3));
  while (letters.length > 0 && textWidth(`${letters.join('')}…`, size) > width)
    letters = letters.slice(0, -1);
  return `${letters.join('').trimEnd()}…`;
}

/**
 * Places the labels of shapes: each where its shape is uppermost, along or upright, and no other label stands. A long name
 * gives way to the part of it that tells the shape from others of its layer; a label that fits nowhere is left out.
 * Small shapes choose first.
 */
export function placeLabels(scene: MapScene, layout: MapLayout, stack: Stack): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  const places = new LabelPlaces(layout, stack);
  for (let at = stack.order.length - 1; at >= 0; at--) {
    const index = stack.order[at];
    if (!stack.isSeen[index]) continue;
    const shape = scene.shapes[index];
    const box = shapeBox(layout, stack, shape, index);
    if (box.width < 12 || box.height < 12) continue;
    const label = placeLabel(box, shape, index, places);
    if (label) placed.push(label);
  }
  return placed;
}

function placeLabel(box: Box, shape: MapShape, index: number, places: LabelPlaces): PlacedLabel | undefined {
  const count = shape.regions.length > 1 ? ` ×${shape.regions.length}` : '';
  const texts = [`${shape.label}${count}`, `${shape.shortLabel}${count}`, shape.shortLabel];
  const tried = shape.shortLabel === '' ? texts.slice(0, 1) : texts;
  // Short words are read at once, upright ones with the head turned.
  for (const place of [placeAlong, placeUpright]) {
    for (const text of tried) {
      const label = place(box, text, index, places);
      if (label) return label;
    }
  }
  return undefined;
}

function placeAlong(box: Box, text: string, index: number, places: LabelPlaces): PlacedLabel | undefined {
  const width = textWidth(text);
  const aside = text.length <= 4 ? narrowMargin : margin;
  if (width + 2 * aside > box.width) return undefined;
  for (let top = box.y + 2; top + line <= box.y + box.height; top += line) {
    const x = box.x + aside;
    if (places.take({ x, y: top, width, height: line }, index))
      return { x, y: top + labelSize, text, upright: false };
  }
  return undefined;
}

function placeUpright(box: Box, text: string, index: number, places: LabelPlaces): PlacedLabel | undefined {
  const width = textWidth(text);
  if (width + 2 * margin > box.height || line + 1 > box.width) return undefined;
  const bottom = box.y + box.height - margin;
  const start = box.x + (box.width - Math.floor((box.width - 1) / line) * line) / 2;
  for (let left = start; left + line <= box.x + box.width; left += line) {
    if (places.take({ x: left, y: bottom - width, width: line, height: width }, index))
      return { x: left + labelSize, y: bottom, text, upright: true };
  }
  return undefined;
}

/** Where labels may stand: boxes that are in use, kept in columns so that a look-up meets few of them, and what is uppermost. */
class LabelPlaces {
  readonly #layout: MapLayout;
  readonly #stack: Stack;
  readonly #columns = new Map<number, Box[]>();

  constructor(layout: MapLayout, stack: Stack) {
    this.#layout = layout;
    this.#stack = stack;
  }

  /** Takes a place unless a part of it is in use or another shape lies over its start, middle or end. */
  take(box: Box, shape: number): boolean {
    for (const part of [0, 0.5, 1]) {
      if (this.#topAt(box.x + part * box.width, box.y + part * box.height) !== shape) return false;
    }
    const first = Math.floor(box.x / 64);
    const last = Math.floor((box.x + box.width) / 64);
    for (let column = first; column <= last; column++) {
      if (this.#columns.get(column)?.some((other) => touches(box, other))) return false;
    }
    for (let column = first; column <= last; column++) {
      const list = this.#columns.get(column);
      if (list) list.push(box);
      else this.#columns.set(column, [box]);
    }
    return true;
  }

  #topAt(x: number, y: number): number {
    const { key, velocity } = placeAt(this.#layout, x, y);
    return this.#stack.top[key * 128 + velocity];
  }
}

function touches(one: Box, other: Box): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  );
}
