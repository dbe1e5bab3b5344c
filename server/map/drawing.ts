import { escapeMarkup } from './escape';
import { labelSize, placeLabels, textWidth } from './labels';
import type { Box, MapLayout } from './layout';
import {
  cellBox,
  drawnKeys,
  keyboardTop,
  keyLeft,
  layerInset,
  octaveRow,
  px,
  velocityMiddle,
  velocityTicks,
} from './layout';
import type { MapScene, MapShape } from './mapScene';
import { fillOf, toneClass } from './textures';

/** How a plot is drawn. */
export interface PlotOptions {
  /** Put before the ids of patterns. */
  prefix?: string;
  /** Layers that are left out. */
  hiddenLayers?: ReadonlySet<number>;
  /** Further attributes of a shape, by its position in the scene; starts with a space unless empty. */
  attributes?: (shape: MapShape, index: number) => string;
  /** Markup within the element of a shape. */
  content?: (shape: MapShape, index: number) => string;
}

/** The plot of keys and velocities as SVG markup, its upper left corner at 0, 0. */
export function drawPlot(scene: MapScene, layout: MapLayout, options: PlotOptions = {}): string {
  const { prefix = '', hiddenLayers, attributes, content } = options;
  const order = visibleLargestFirst(scene, hiddenLayers);
  const parts = [drawGrid(layout), drawGaps(scene, layout)];
  for (const index of order) {
    const shape = scene.shapes[index];
    const box = cellBox(layout, shape, layerInset(layout, shape.layer));
    const inner = content?.(shape, index) ?? '';
    parts.push(
      `<rect class="shape ${toneClass(shape.layer)}" fill="url(#${prefix}fill-${fillOf(shape.layer)})"${boxAttributes(box)}${attributes?.(shape, index) ?? ''}`,
      inner === '' ? '/>' : `>${inner}</rect>`,
    );
  }
  parts.push(drawRootKeys(scene, layout, order), drawOverlaps(scene, layout, prefix, hiddenLayers));
  parts.push('<g class="labels" aria-hidden="true">');
  for (const { x, y, text, upright } of placeLabels(scene, layout, order.reverse())) {
    const turn = upright ? ` transform="rotate(-90 ${px(x)} ${px(y)})"` : '';
    parts.push(`<text class="label" x="${px(x)}" y="${px(y)}"${turn}>${escapeMarkup(text)}</text>`);
  }
  parts.push('</g>');
  return parts.join('');
}

/** The keyboard below the plot with octave names, in the coordinates of the plot. */
export function drawKeyboard(scene: MapScene, layout: MapLayout): string {
  const answered = answeredKeys(scene);
  const switches = new Set(scene.keyswitches.map(({ key }) => key));
  const parts = ['<g class="keyboard" aria-hidden="true">'];
  let signs = '';
  for (const drawn of drawnKeys(layout)) {
    const { key, raised, x, y, width, height } = drawn;
    const state = answered[key] ? '' : switches.has(key) ? ' switching' : ' silent';
    parts.push(`<rect class="${raised ? 'raised' : 'natural'}${state}"${boxAttributes(drawn)}/>`);
    if (switches.has(key)) {
      const size = Math.min(4.5, layout.keyWidth / 2);
      const middle = raised ? keyLeft(layout, key) + layout.keyWidth / 2 : x + width / 2;
      signs += switchSign(middle, y + height - (raised ? 2.5 : 1.6) * size, size, raised);
    }
  }
  const baseline = keyboardTop(layout) + layout.keyboardHeight + octaveRow - 5;
  for (const key of layout.namedKeys) {
    const left = keyLeft(layout, key);
    parts.push(
      `<path class="octave-mark" d="M${px(left + 0.5)} ${px(baseline - 11)}v12"/>`,
      `<text class="octave${key === 60 ? ' middle' : ''}" x="${px(left + 4)}" y="${px(baseline)}">C${key / 12 - 1}${middleWords(layout, key)}</text>`,
    );
  }
  parts.push(signs, '</g>');
  return parts.join('');
}

/** The sign of a switching key: a diamond. */
export function switchSign(x: number, y: number, size: number, raised: boolean): string {
  return `<path class="switch${raised ? ' on-raised' : ''}" d="${switchPath(x, y, size)}"/>`;
}

/** The outline of that sign around a point, as the data of a path of SVG. */
export function switchPath(x: number, y: number, size: number): string {
  return `M${px(x)} ${px(y - size)}l${px(size)} ${px(size)}l${px(-size)} ${px(size)}l${px(-size)} ${px(-size)}z`;
}

/** The velocity axis; its right side is at 0 and it reaches about 40 pixels to the left. */
export function drawVelocityAxis(layout: MapLayout): string {
  const parts = ['<g class="axis" aria-hidden="true">'];
  for (const velocity of velocityTicks) {
    const y = velocityMiddle(layout, velocity);
    parts.push(
      `<path class="tick" d="M-5 ${px(y)}h5"/>`,
      `<text class="tick-name" x="-8" y="${px(y + 3.5)}" text-anchor="end">${velocity}</text>`,
    );
  }
  const middle = layout.plotHeight / 2;
  parts.push(
    `<text class="axis-name" x="-36" y="${px(middle)}" text-anchor="middle" transform="rotate(-90 -36 ${px(middle)})">velocity</text></g>`,
  );
  return parts.join('');
}

/** The four attributes of a rectangle, with a space before each. */
function boxAttributes({ x, y, width, height }: Box): string {
  return ` x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}"`;
}

/** Small shapes are drawn last so that a larger one never hides them. */
function visibleLargestFirst(scene: MapScene, hidden: ReadonlySet<number> | undefined): number[] {
  const order: number[] = [];
  for (let index = 0; index < scene.shapes.length; index++) {
    if (!hidden?.has(scene.shapes[index].layer)) order.push(index);
  }
  const areas = scene.shapes.map(
    (shape) => (shape.highKey - shape.lowKey + 1) * (shape.highVelocity - shape.lowVelocity + 1),
  );
  return order.sort((one, other) => areas[other] - areas[one] || one - other);
}

function drawGrid(layout: MapLayout): string {
  const { plotWidth, plotHeight } = layout;
  const size = ` width="${px(plotWidth)}" height="${px(plotHeight)}"`;
  let lines = '';
  for (let key = layout.lowKey; key <= layout.highKey; key++) {
    if (key % 12 === 0) lines += `M${px(keyLeft(layout, key))} 0v${px(plotHeight)}`;
  }
  for (const velocity of velocityTicks)
    lines += `M0 ${px(velocityMiddle(layout, velocity))}h${px(plotWidth)}`;
  return `<rect class="plot"${size}/><path class="grid" d="${lines}"/>`;
}

function drawGaps(scene: MapScene, layout: MapLayout): string {
  if (scene.gaps.length === 0) return '';
  const parts = ['<g class="gaps" aria-hidden="true">'];
  for (const gap of scene.gaps) {
    const box = cellBox(layout, gap, 1.5);
    parts.push(`<rect class="gap"${boxAttributes(box)}/>`, placeWord('gap', box));
  }
  parts.push('</g>');
  return parts.join('');
}

/** A word in the middle of a box that has room for it. */
function placeWord(word: string, box: Box): string {
  if (box.width < textWidth(word) + 8 || box.height < labelSize + 6) return '';
  return `<text class="gap-name" x="${px(box.x + box.width / 2)}" y="${px(box.y + box.height / 2 + 4)}" text-anchor="middle">${word}</text>`;
}

function drawOverlaps(
  scene: MapScene,
  layout: MapLayout,
  prefix: string,
  hidden: ReadonlySet<number> | undefined,
): string {
  const parts = ['<g class="overlaps" aria-hidden="true">'];
  for (const overlap of scene.overlaps) {
    if (hidden?.has(overlap.layer)) continue;
    const box = cellBox(layout, overlap, 0.75);
    parts.push(`<rect class="overlap" fill="url(#${prefix}overlap)"${boxAttributes(box)}/>`);
  }
  parts.push('</g>');
  return parts.join('');
}

/** A small triangle at the foot of a shape above each of its root keys, where the shape spans more than one key. */
function drawRootKeys(scene: MapScene, layout: MapLayout, order: readonly number[]): string {
  const size = Math.min(4, layout.keyWidth / 2 - 1);
  if (size < 1.5) return '';
  const paths = new Map<string, string>();
  for (const index of order) {
    const shape = scene.shapes[index];
    const box = cellBox(layout, shape, layerInset(layout, shape.layer));
    if (shape.lowKey === shape.highKey || box.height < 4 * size) continue;
    for (const key of shape.rootKeys) {
      if (key < shape.lowKey || key > shape.highKey) continue;
      const x = keyLeft(layout, key) + layout.keyWidth / 2;
      const tone = toneClass(shape.layer);
      paths.set(
        tone,
        `${paths.get(tone) ?? ''}M${px(x - size)} ${px(box.y + box.height - 1)}h${px(2 * size)}l${px(-size)} ${px(-1.6 * size)}z`,
      );
    }
  }
  return [...paths]
    .map(([tone, path]) => `<path class="root ${tone}" aria-hidden="true" d="${path}"/>`)
    .join('');
}

function middleWords(layout: MapLayout, key: number): string {
  return key === 60 && layout.keyWidth * 12 >= 84 ? ' middle C' : '';
}

/** Which keys a shape covers. */
function answeredKeys(scene: MapScene): Uint8Array {
  const keys = new Uint8Array(128);
  for (const { lowKey, highKey } of scene.shapes) keys.fill(1, lowKey, highKey + 1);
  return keys;
}
