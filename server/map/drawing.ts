import { labelSize, placeLabels, textWidth } from './labels';
import type { Box, MapLayout } from './layout';
import {
  cellBox,
  drawnKeys,
  keyboardTop,
  keyLeft,
  octaveRow,
  px,
  shapeBox,
  showsRim,
  velocityMiddle,
  velocityTicks,
} from './layout';
import type { MapScene } from './mapScene';
import type { Mark } from './marks';
import type { Stack } from './stack';
import { fillOf, toneClass } from './textures';

/** The plot of keys and velocities, what lies lowest first. */
export function plotMarks(scene: MapScene, layout: MapLayout, stack: Stack): Mark[] {
  const boxes = stack.order.map((index) => shapeBox(layout, stack, scene.shapes[index], index));
  return [
    ...gridMarks(layout),
    ...gapMarks(scene, layout),
    ...shapeMarks(scene, layout, stack, boxes),
    ...hiddenEdges(scene, stack, boxes),
    ...rootMarks(scene, layout, stack, boxes),
    ...overlapMarks(scene, layout, stack),
    ...labelMarks(scene, layout, stack),
  ];
}

/** Shapes of which something is seen; those of which only a rim is seen are plain. */
function shapeMarks(scene: MapScene, layout: MapLayout, stack: Stack, boxes: readonly Box[]): Mark[] {
  const marks: Mark[] = [];
  for (let at = 0; at < boxes.length; at++) {
    const index = stack.order[at];
    if (stack.isSeen[index]) marks.push(shapeMark(scene, index, boxes[at]));
    else if (showsRim(layout, stack, scene.shapes[index], index)) {
      const className = `under ${toneClass(scene.shapes[index].layer)}`;
      marks.push({ kind: 'box', className, box: boxes[at], shape: index });
    }
  }
  return marks;
}

/** A shape by itself. */
export function shapeMark(scene: MapScene, shape: number, box: Box): Mark {
  const { layer } = scene.shapes[shape];
  return { kind: 'box', className: `shape ${toneClass(layer)}`, fill: `fill-${fillOf(layer)}`, box, shape };
}

/** The keyboard below the plot with octave names, in the coordinates of the plot. */
export function keyboardMarks(scene: MapScene, layout: MapLayout): Mark[] {
  const answered = answeredKeys(scene);
  const switches = new Set(scene.keyswitches.map(({ key }) => key));
  const marks: Mark[] = [];
  const signs: Mark[] = [];
  for (const { key, raised, ...box } of drawnKeys(layout)) {
    const state = answered[key] ? '' : switches.has(key) ? ' switching' : ' silent';
    marks.push({ kind: 'box', className: `${raised ? 'raised' : 'natural'}${state}`, box });
    if (switches.has(key)) {
      const size = Math.min(4.5, layout.keyWidth / 2);
      const middle = raised ? keyLeft(layout, key) + layout.keyWidth / 2 : box.x + box.width / 2;
      const foot = box.y + box.height - (raised ? 2.5 : 1.6) * size;
      signs.push({
        kind: 'path',
        className: `switch${raised ? ' on-raised' : ''}`,
        data: switchPath(middle, foot, size),
      });
    }
  }
  const baseline = keyboardTop(layout) + layout.keyboardHeight + octaveRow - 5;
  for (const key of layout.namedKeys) {
    const left = keyLeft(layout, key);
    marks.push(
      { kind: 'path', className: 'octave-mark', data: `M${px(left + 0.5)} ${px(baseline - 11)}v12` },
      {
        kind: 'text',
        className: `octave${key === 60 ? ' middle' : ''}`,
        x: left + 4,
        y: baseline,
        text: `C${key / 12 - 1}${middleWords(layout, key)}`,
      },
    );
  }
  return [...marks, ...signs];
}

/** Keys that sound just now. */
export function soundingKeyMarks(layout: MapLayout, keys: ReadonlySet<number>): Mark[] {
  return drawnKeys(layout)
    .filter(({ key }) => keys.has(key))
    .map(({ key: _, raised, ...box }) => ({
      kind: 'box',
      className: `mark sounding-key${raised ? ' on-raised' : ''}`,
      box,
    }));
}

/** The sign of a switching key around a point, a diamond, as the data of a path of SVG. */
export function switchPath(x: number, y: number, size: number): string {
  return `M${px(x)} ${px(y - size)}l${px(size)} ${px(size)}l${px(-size)} ${px(size)}l${px(-size)} ${px(-size)}z`;
}

/** The velocity axis; its right side is at 0 and it reaches about 40 pixels to the left. */
export function axisMarks(layout: MapLayout): Mark[] {
  const marks: Mark[] = [];
  for (const velocity of velocityTicks) {
    const y = velocityMiddle(layout, velocity);
    marks.push(
      { kind: 'path', className: 'tick', data: `M-5 ${px(y)}h5` },
      { kind: 'text', className: 'tick-name', x: -8, y: y + 3.5, text: String(velocity), anchor: 'end' },
    );
  }
  marks.push({
    kind: 'text',
    className: 'axis-name',
    x: -36,
    y: layout.plotHeight / 2,
    text: 'velocity',
    anchor: 'middle',
    isUpright: true,
  });
  return marks;
}

function gridMarks(layout: MapLayout): Mark[] {
  const { plotWidth, plotHeight } = layout;
  let lines = '';
  for (let key = layout.lowKey; key <= layout.highKey; key++) {
    if (key % 12 === 0) lines += `M${px(keyLeft(layout, key))} 0v${px(plotHeight)}`;
  }
  for (const velocity of velocityTicks)
    lines += `M0 ${px(velocityMiddle(layout, velocity))}h${px(plotWidth)}`;
  return [
    { kind: 'box', className: 'plot', box: { x: 0, y: 0, width: plotWidth, height: plotHeight } },
    { kind: 'path', className: 'grid', data: lines },
  ];
}

function gapMarks(scene: MapScene, layout: MapLayout): Mark[] {
  return scene.gaps.flatMap((gap) => {
    const box = cellBox(layout, gap, 1.5);
    return [{ kind: 'box', className: 'gap', box }, ...wordMarks('gap', box)] as Mark[];
  });
}

/** A word in the middle of a box that has room for it. */
function wordMarks(word: string, box: Box): Mark[] {
  if (box.width < textWidth(word) + 8 || box.height < labelSize + 6) return [];
  const { x, y, width, height } = box;
  return [
    {
      kind: 'text',
      className: 'gap-name',
      x: x + width / 2,
      y: y + height / 2 + 4,
      text: word,
      anchor: 'middle',
    },
  ];
}

/** Thin outlines of shapes that others lie over a part of, so that their extents show through. */
function hiddenEdges(
  { shapes }: MapScene,
  { order, isCovered, isSeen }: Stack,
  boxes: readonly Box[],
): Mark[] {
  const marks: Mark[] = [];
  for (let at = 0; at < order.length; at++) {
    const index = order[at];
    if (isCovered[index] && isSeen[index])
      marks.push({ kind: 'box', className: `edge ${toneClass(shapes[index].layer)}`, box: boxes[at] });
  }
  return marks;
}

/** Where regions of a layer that is shown overlap without being meant to. */
export function overlapMarks(scene: MapScene, layout: MapLayout, { order }: Stack): Mark[] {
  const shown = new Set(order.map((index) => scene.shapes[index].layer));
  return scene.overlaps
    .filter(({ layer }) => shown.has(layer))
    .map((overlap) => ({
      kind: 'box',
      className: 'overlap',
      fill: 'overlap',
      box: cellBox(layout, overlap, 0.75),
    }));
}

/** A small triangle at the foot of a shape above each of its root keys, where the shape spans more than one key. */
function rootMarks(scene: MapScene, layout: MapLayout, stack: Stack, boxes: readonly Box[]): Mark[] {
  const size = Math.min(4, layout.keyWidth / 2 - 1);
  if (size < 1.5) return [];
  const paths = new Map<string, string>();
  for (let at = 0; at < boxes.length; at++) {
    const index = stack.order[at];
    const shape = scene.shapes[index];
    const box = boxes[at];
    if (shape.lowKey === shape.highKey || box.height < 4 * size || !stack.isSeen[index]) continue;
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
  return [...paths].map(([tone, data]) => ({ kind: 'path', className: `root ${tone}`, data }));
}

function labelMarks(scene: MapScene, layout: MapLayout, stack: Stack): Mark[] {
  return placeLabels(scene, layout, stack).map(({ x, y, text, upright }) => ({
    kind: 'text',
    className: 'label',
    x,
    y,
    text,
    isUpright: upright,
  }));
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
