import type { Box, MapLayout } from './layout';
import { cellBox, layerInset } from './layout';
import type { MapScene, MapShape } from './mapScene';

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
 * Places the labels of shapes: each within its shape, along or upright, where no other label stands; a label that fits
 * nowhere is left out. Shapes given first choose first.
 */
export function placeLabels(scene: MapScene, layout: MapLayout, order: readonly number[]): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  const taken = new TakenPlaces();
  for (const index of order) {
    const shape = scene.shapes[index];
    const box = cellBox(layout, shape, layerInset(layout, shape.layer));
    if (box.width < 12 || box.height < 12) continue;
    const label = placeLabel(box, shape, taken);
    if (label) placed.push(label);
  }
  return placed;
}

function placeLabel(box: Box, shape: MapShape, taken: TakenPlaces): PlacedLabel | undefined {
  const count = shape.regions.length;
  const whole = count > 1 ? `${shape.label} ×${count}` : shape.label;
  const label = placeAlong(box, whole, margin, taken) ?? placeUpright(box, whole, taken);
  return label || count === 1 ? label : placeAlong(box, `×${count}`, 4, taken);
}

function placeAlong(box: Box, text: string, aside: number, taken: TakenPlaces): PlacedLabel | undefined {
  const width = textWidth(text);
  if (width + 2 * aside > box.width) return undefined;
  for (let top = box.y + 2; top + line <= box.y + box.height; top += line) {
    const x = box.x + aside;
    if (taken.take({ x, y: top, width, height: line }))
      return { x, y: top + labelSize, text, upright: false };
  }
  return undefined;
}

function placeUpright(box: Box, text: string, taken: TakenPlaces): PlacedLabel | undefined {
  const width = textWidth(text);
  if (width + 2 * margin > box.height || line + 1 > box.width) return undefined;
  const bottom = box.y + box.height - margin;
  const start = box.x + (box.width - Math.floor((box.width - 1) / line) * line) / 2;
  for (let left = start; left + line <= box.x + box.width; left += line) {
    if (taken.take({ x: left, y: bottom - width, width: line, height: width }))
      return { x: left + labelSize, y: bottom, text, upright: true };
  }
  return undefined;
}

/** Boxes that are in use, kept in columns so that a look-up meets few of them. */
class TakenPlaces {
  readonly #columns = new Map<number, Box[]>();

  /** Takes a place unless a part of it is in use. */
  take(box: Box): boolean {
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
}

function touches(one: Box, other: Box): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  );
}
