import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import { shapeText } from '../../../../server/map/describe';
import type { MapCell, MapRegion, MapScene, MapShape } from '../../../../server/map/mapScene';
import type { ViewChart } from '../../../../server/map/views/viewChart';
import { shapeInWords } from '../../../../server/map/views/viewWords';
import { noteNameOf } from '../../../../server/model/keys';
import { counted } from '../../../../server/model/wording/counted';
import { noteNamesText, velocityText } from '../../../../server/model/wording/rangeWords';
import { l10n } from '../../../webview/page/l10n';
import { problemSign } from '../plot/problemSigns';
import { findAgain, meets } from '../shown/navigation';
import type { ShownMap } from '../shown/shownMap';

const mostRegions = 100;
const mostOthers = 8;
const mostPlaces = 60;

/** What the lists of regions and shapes do. */
export interface DetailsEvents {
  choose(region: MapRegion): void;
  goTo(shape: number): void;
  /** Hides all layers but one. */
  showOnly(layer: number): void;
}

/** One line on the shape that details are shown of. */
export function detailsLine({ scene, detailed }: ShownMap, chart: ViewChart | undefined): string {
  const shape = detailed === undefined ? undefined : scene.shapes[detailed];
  return shape
    ? [shapeText(scene, shape), chart && shapeInWords(chart, detailed ?? -1)].filter(Boolean).join(', ')
    : l10n.t('Point at a shape, or move to one with the arrow keys, to see its regions.');
}

/** The regions of the shape that details are shown of as buttons, and the shapes that lie over or under it. */
export function details(map: ShownMap, events: DetailsEvents): TemplateResult | typeof nothing {
  const shape = map.shape(map.detailed);
  if (!shape) return nothing;
  return html`<ol class="regions" aria-label=${l10n.t('Regions of the shape')}>
      ${regionItems(
        shape.regions,
        (
          region,
          number,
        ) => html`${regionButton(region, number, map.selectedHeaders.has(region.header), events)}
          ${problemLines(map, region)}`,
      )}
    </ol>
    ${others(map, shape, events)} ${onlyButton(map, shape, events)}`;
}

function problemLines(map: ShownMap, { header }: MapRegion): TemplateResult[] {
  return (map.problems.get(header) ?? []).map(
    ({ severity, message }) => html`<p class="problem">${problemSign(severity)} ${message}</p>`,
  );
}

function onlyButton(
  map: ShownMap,
  { layer }: MapShape,
  { showOnly }: DetailsEvents,
): TemplateResult | typeof nothing {
  const { layers } = map.scene;
  if (layers.length - map.hiddenLayers.size < 2) return nothing;
  const label = l10n.t('Only the group {0}', layers[layer].name);
  return html`<p class="only">
    <button type="button" class="row" aria-keyshortcuts="O" @click=${() => showOnly(layer)}>
      ${label} <kbd>O</kbd>
    </button>
  </p>`;
}

function regionItems<Region extends MapRegion>(
  regions: readonly Region[],
  item: (region: Region, number: number) => unknown,
): unknown[] {
  const items: unknown[] = regions
    .slice(0, mostRegions)
    .map((region, at) => html`<li>${item(region, at + 1)}</li>`);
  const more = regions.length - mostRegions;
  if (more > 0) items.push(html`<li>and ${counted(more, 'more region')}</li>`);
  return items;
}

function regionButton(
  region: MapRegion,
  number: number,
  isSelected: boolean,
  { choose }: DetailsEvents,
): TemplateResult {
  const sample = region.sample === '' ? l10n.t('no sample') : region.sample;
  return html`<button
    type="button"
    class="row region"
    aria-current=${isSelected ? 'true' : nothing}
    @click=${() => choose(region)}
  >
    <span class="number">${number}</span> ${sample}
    <span class="quiet">${l10n.t('root {0}', noteNameOf(region.rootKey))}</span>
  </button>`;
}

function others(map: ShownMap, shape: MapShape, { goTo }: DetailsEvents): TemplateResult | typeof nothing {
  const { scene, hiddenLayers } = map;
  const found: number[] = [];
  for (let index = 0; index < scene.shapes.length && found.length < mostOthers; index++) {
    const other = scene.shapes[index];
    if (other !== shape && !hiddenLayers.has(other.layer) && meets(shape, other)) found.push(index);
  }
  if (found.length === 0) return nothing;
  const items = found.map((index) => {
    const other = scene.shapes[index];
    const name = `${scene.layers[other.layer]?.name}: ${other.label}`;
    return html`<li><button type="button" class="row" @click=${() => goTo(index)}>${name}</button></li>`;
  });
  return html`<div class="others">
    <span class="quiet">${l10n.t('Also here')}</span>
    <ul aria-label=${l10n.t('Shapes over or under this one')}>
      ${items}
    </ul>
  </div>`;
}

/** Gaps and overlaps in words, each a way to the text of a region at it; empty where there are none. */
export function placesInWords(map: ShownMap, { choose }: DetailsEvents): TemplateResult[] {
  const { scene } = map;
  const places = [
    ...scene.overlaps.map((place) => ({
      place,
      line: `Overlap: ${noteNamesText(place.lowKey, place.highKey)}, ${velocityText(place.lowVelocity, place.highVelocity)}, in ${scene.layers[place.layer]?.name}`,
    })),
    ...scene.gaps.map((place) => ({
      place,
      line: `Gap: ${noteNamesText(place.lowKey, place.highKey)}${place.kind === 'key' ? '' : `, ${velocityText(place.lowVelocity, place.highVelocity)}`}`,
    })),
  ];
  const items = places.slice(0, mostPlaces).map(({ place, line }) => {
    const at = regionAt(scene, place);
    return at
      ? html`<li><button type="button" class="row" @click=${() => choose(at)}>${line}</button></li>`
      : html`<li>${line}</li>`;
  });
  const more = places.length - mostPlaces;
  return more > 0 ? [...items, html`<li>and ${counted(more, 'more place')}</li>`] : items;
}

/** A region to look at for a place: the last one that an overlap is of, or the one nearest to a gap. */
function regionAt(scene: MapScene, place: MapCell & { layer?: number }): MapRegion | undefined {
  const isOverlap = place.layer !== undefined;
  const found = isOverlap
    ? scene.shapes.findLast((shape) => shape.layer === place.layer && meets(shape, place))
    : scene.shapes[findAgain(scene.shapes, [], place, '') ?? -1];
  return found?.regions.at(-1);
}

/** What is wrong with regions, each line a way to the text; the first of them where there are many. */
export function problemsInWords(map: ShownMap, { choose }: DetailsEvents): TemplateResult[] {
  const lines: TemplateResult[] = [];
  if (map.problems.size === 0) return lines;
  for (const index of map.order) {
    for (const region of map.scene.shapes[index].regions) {
      const { lowKey, highKey } = map.scene.shapes[index];
      for (const { severity, message } of map.problems.get(region.header) ?? []) {
        if (lines.length === mostRegions) return lines;
        lines.push(
          html`<li>
            <button type="button" class="row" @click=${() => choose(region)}>
              ${problemSign(severity)} ${noteNamesText(lowKey, highKey)}: ${message}
            </button>
          </li>`,
        );
      }
    }
  }
  return lines;
}

/** The regions that have no place on the keyboard, each with the reason. */
export function unplacedRegions(scene: MapScene, events: DetailsEvents): unknown[] {
  return regionItems(
    scene.unplaced,
    (region, number) =>
      html`${regionButton(region, number, false, events)}
        <span class="quiet"
          >${region.reason === 'keys-off' ? l10n.t('not triggered by keys') : l10n.t('low end above high end')}</span
        >`,
  );
}
