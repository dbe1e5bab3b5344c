import { sceneText, shapeText } from './describe';
import { axisMarks, keyboardMarks, plotMarks } from './drawing';
import { escapeMarkup } from './escape';
import { fitText } from './labels';
import type { MapLayout } from './layout';
import { layOut, px } from './layout';
import { drawLegend } from './legend';
import type { MapScene } from './mapScene';
import type { Mark } from './marks';
import { markupOf } from './markup';
import { mapStyle } from './palette';
import { isPiled } from './piled';
import { stackShapes } from './stack';
import { patternDefinitions } from './textures';
import type { ViewChart } from './views/viewChart';
import { velocityMarks, viewAxis, viewMarks } from './views/viewMarks';

/** `auto` follows what the reader prefers; the other two hold everywhere. */
export type MapTheme = 'auto' | 'light' | 'dark';

const left = 56;
const right = 24;
/** So many of the groups that are drawn are named above them. */
const mostNames = 4;
const top = 70;
/** Ids start with this, so that several maps can stand in one page with others' drawings. */
const prefix = 'keyboard-map-';

/** What of a map is drawn: without groups that are hidden, and with a curve in the place of its shapes. */
export interface MapPart {
  hiddenLayers?: ReadonlySet<number>;
  chart?: ViewChart | undefined;
}

/**
 * Draws a keyboard map as an SVG 1.1 document that stands on its own: keys across, velocities up, a keyboard below and a
 * legend. Colours, textures and letters are part of it; a title and a description tell what it shows in words.
 */
export function drawMapSvg(scene: MapScene, theme: MapTheme = 'auto', part: MapPart = {}): string {
  const keys = scene.highKey - scene.lowKey + 1;
  const layout = layOut(scene, {
    keyWidth: Math.max(10, Math.min(22, Math.floor(1120 / keys))),
    plotHeight: 381,
    keyboardHeight: 58,
  });
  const width = left + layout.plotWidth + right;
  const legend = drawLegend(scene, layout.plotWidth, prefix);
  const legendTop = top + layout.height + 22;
  const height = legendTop + legend.height + 14;
  const title = scene.name === '' ? 'Keyboard map' : `Keyboard map of ${scene.name}`;
  const marks = partMarks(scene, layout, part);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="keyboard-map" width="${px(width)}" height="${px(height)}" viewBox="0 0 ${px(width)} ${px(height)}" role="img" aria-labelledby="${prefix}title ${prefix}description">`,
    `<title id="${prefix}title">${escapeMarkup(title)}</title>`,
    `<desc id="${prefix}description">${escapeMarkup(sceneText(scene))}</desc>`,
    `<style>${mapStyle(theme)}</style>`,
    `<defs>${patternDefinitions(scene.layers.length, prefix)}</defs>`,
    '<rect class="paper" width="100%" height="100%"/>',
    `<text class="title" x="${left}" y="32">${escapeMarkup(fitText(title, layout.plotWidth, 17))}</text>`,
    `<text class="summary quiet" x="${left}" y="52">${escapeMarkup(fitText([sceneText(scene), ...shownText(scene, part)].join(' '), layout.plotWidth, 12))}</text>`,
    `<g transform="translate(${left} ${top})">`,
    markupOf(marks, { prefix, titleOf: (shape) => shapeText(scene, scene.shapes[shape]) }),
    '</g>',
    `<g transform="translate(${left} ${px(legendTop)})">${legend.markup}</g>`,
    '</svg>\n',
  ].join('\n');
}

/** Says which groups are drawn where not all are, or that they lie one over the other. */
function shownText(scene: MapScene, { hiddenLayers, chart }: MapPart): string[] {
  const { layers, shapes } = scene;
  const shown = layers.filter((_, layer) => !hiddenLayers?.has(layer));
  if (shown.length < layers.length) {
    const names = shown.slice(0, mostNames).map(({ name }) => name);
    return [`Shown: ${names.join(', ')}${shown.length > mostNames ? ' and others' : ''}.`];
  }
  const isHidden = !chart && layers.length > 1 && isPiled({ shapes });
  return isHidden ? ['Groups overlap on the map. The uppermost is shown.'] : [];
}

function partMarks(scene: MapScene, layout: MapLayout, { chart, hiddenLayers }: MapPart): Mark[] {
  if (!chart)
    return [
      ...axisMarks(layout),
      ...plotMarks(scene, layout, stackShapes(scene, hiddenLayers)),
      ...keyboardMarks(scene, layout),
    ];
  return [
    ...viewAxis(chart, layout),
    ...viewMarks(chart, layout),
    ...(chart.name === 'velocity' ? velocityMarks(layout) : keyboardMarks(scene, layout)),
  ];
}
