import { counted, keysText, shapeText, velocitiesText } from '../../../server/map/describe';
import { escapeMarkup } from '../../../server/map/escape';
import type { MapRegion, MapScene, MapShape } from '../../../server/map/scene';
import { noteNameOf } from '../../../server/model/keys';
import { meets } from './navigation';

const mostRegions = 100;
const mostOthers = 8;
const mostPlaces = 60;

/** One line on a shape, for the head of the details. */
export function detailsLine(scene: MapScene, index: number | undefined): string {
  const shape = index === undefined ? undefined : scene.shapes[index];
  return shape
    ? shapeText(scene, shape)
    : 'Point at a shape, or move to one with the arrow keys, to see its regions.';
}

/** The regions of a shape as buttons, and the shapes that lie over or under it. */
export function detailsMarkup(
  scene: MapScene,
  index: number | undefined,
  selected: ReadonlySet<number>,
  hidden: ReadonlySet<number>,
): string {
  const shape = index === undefined ? undefined : scene.shapes[index];
  if (!shape) return '';
  const buttons = shape.regions
    .slice(0, mostRegions)
    .map((region, position) => `<li>${regionButton(region, position + 1, selected.has(region.header))}</li>`);
  const more = shape.regions.length - mostRegions;
  if (more > 0) buttons.push(`<li>and ${counted(more, 'more region')}</li>`);
  return `<ol class="regions" aria-label="Regions of the shape">${buttons.join('')}</ol>${othersMarkup(scene, shape, hidden)}`;
}

function regionButton(region: MapRegion, number: number, selected: boolean): string {
  const sample = region.sample === '' ? 'no sample' : region.sample;
  return `<button type="button" class="region" data-header="${region.header}"${selected ? ' aria-current="true"' : ''}><span class="number">${number}</span> ${escapeMarkup(sample)} <span class="quiet">root ${noteNameOf(region.rootKey)}</span></button>`;
}

function othersMarkup(scene: MapScene, shape: MapShape, hidden: ReadonlySet<number>): string {
  const buttons: string[] = [];
  for (let index = 0; index < scene.shapes.length && buttons.length < mostOthers; index++) {
    const other = scene.shapes[index];
    if (other === shape || hidden.has(other.layer) || !meets(shape, other)) continue;
    const name = `${scene.layers[other.layer]?.name}: ${other.label}`;
    buttons.push(
      `<li><button type="button" class="other" data-shape="${index}">${escapeMarkup(name)}</button></li>`,
    );
  }
  if (buttons.length === 0) return '';
  return `<div class="others"><span class="quiet">Also here</span><ul aria-label="Shapes over or under this one">${buttons.join('')}</ul></div>`;
}

/** Gaps and overlaps in words, and the regions that have no place on the keyboard. */
export function placesMarkup(scene: MapScene): string {
  const lines = [
    ...scene.overlaps.map(
      (overlap) =>
        `Overlap: ${keysText(overlap)}, ${velocitiesText(overlap)}, in ${scene.layers[overlap.layer]?.name}`,
    ),
    ...scene.gaps.map(
      (gap) => `Gap: ${keysText(gap)}${gap.kind === 'key' ? '' : `, ${velocitiesText(gap)}`}`,
    ),
  ];
  const shown = lines.slice(0, mostPlaces);
  if (lines.length > mostPlaces) shown.push(`and ${counted(lines.length - mostPlaces, 'more place')}`);
  const places =
    shown.length === 0
      ? ''
      : `<details class="places"><summary>Gaps and overlaps in words</summary><ul>${shown.map((line) => `<li>${escapeMarkup(line)}</li>`).join('')}</ul></details>`;
  if (scene.unplaced.length === 0) return places;
  const buttons = scene.unplaced.slice(0, mostRegions).map((region, position) => {
    const why = region.reason === 'keys-off' ? 'not triggered by keys' : 'low end above high end';
    return `<li>${regionButton(region, position + 1, false)} <span class="quiet">${why}</span></li>`;
  });
  const more = scene.unplaced.length - mostRegions;
  if (more > 0) buttons.push(`<li>and ${counted(more, 'more region')}</li>`);
  return `${places}<details class="unplaced"><summary>${counted(scene.unplaced.length, 'region')} not on the keyboard</summary><ol class="regions">${buttons.join('')}</ol></details>`;
}
