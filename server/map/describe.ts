import { noteNameOf } from '../model/keys';
import { counted } from '../model/wording/counted';
import { noteNamesText, velocityText } from '../model/wording/rangeWords';
import type { MapScene, MapShape } from './mapScene';

/** One line that says all of a shape, as a screen reader speaks it. */
export function shapeText(scene: MapScene, shape: MapShape): string {
  const layer = scene.layers[shape.layer]?.name ?? '';
  const sample = shape.regions[0]?.sample;
  return [
    noteNamesText(shape.lowKey, shape.highKey),
    velocityText(shape.lowVelocity, shape.highVelocity),
    layer === 'no group' ? layer : `group ${layer}`,
    counted(shape.regions.length, 'region'),
    sample ? `sample ${sample}${shape.regions.length > 1 ? ' and others' : ''}` : 'no sample',
    `${shape.rootKeys.length > 1 ? 'root keys' : 'root key'} ${shape.rootKeys.map(noteNameOf).join(', ')}`,
  ].join(', ');
}

/** What stands out in a map: `2 gaps, no overlaps`, and regions without a place. */
export function summaryText(scene: MapScene): string {
  const parts = [
    scene.gaps.length === 0 ? 'no gaps' : counted(scene.gaps.length, 'gap'),
    scene.overlaps.length === 0 ? 'no overlaps' : counted(scene.overlaps.length, 'overlap'),
  ];
  if (scene.leftOut > 0) parts.push(`the last ${counted(scene.leftOut, 'region')} not shown`);
  if (scene.unplaced.length > 0) parts.push(`${counted(scene.unplaced.length, 'region')} without a place`);
  return parts.join(', ');
}

/** The whole map in two sentences. */
export function sceneText(scene: MapScene): string {
  const what = `${counted(scene.regionCount, 'region')} in ${counted(scene.layers.length, 'group')}`;
  if (!scene.played) return `${what}. No key plays anything.`;
  return `${what}, played from ${noteNameOf(scene.played.lowKey)} to ${noteNameOf(scene.played.highKey)}. ${capital(summaryText(scene))}.`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
