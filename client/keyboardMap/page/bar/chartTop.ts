import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import { summaryText } from '../../../../server/map/describe';
import type { MapScene } from '../../../../server/map/mapScene';
import { isPiled } from '../../../../server/map/piled';
import { l10n } from '../../../webview/page/l10n';
import { onceFor } from '../shown/onceFor';
import type { ShownMap } from '../shown/shownMap';
import { articulationBar } from './articulationBar';
import type { FilterBarParts } from './filterBar';
import { filterBar } from './filterBar';
import { zoomButtons } from './zoomButtons';

/** What stands above a plot. */
export interface ChartTopParts {
  document: string;
  /** Whether the page has more than the chart. */
  isPart: boolean;
  zoom: number;
  zoomTo(zoom: number): void;
  /** What plays the instrument. */
  audition: unknown;
  /** What is chosen to be shown; nothing to choose without it. */
  filters: FilterBarParts | undefined;
}

/** The name of a document with what stands out in its map, the zoom, the sound, and what is shown. */
export function chartTop(parts: ChartTopParts): TemplateResult {
  const { document, isPart, zoom, zoomTo, audition, filters } = parts;
  return html`<div class="top">
    <header class="bar">
      ${isPart ? html`<h2>${document}</h2>` : html`<h1>${document}</h1>`}
      <p class="summary" role="status" aria-live="polite">${filters ? shownText(filters) : nothing}</p>
      ${zoomButtons(zoom, zoomTo)}
    </header>
    ${audition} ${filters ? html`${filterBar(filters)} ${articulationBar(filters)}` : nothing}
  </div>`;
}

function shownText({ map }: FilterBarParts): string {
  const text = summaryText(map.scene);
  const shown = map.scene.layers.length < 2 || !isPiledOnce(map.scene) ? 0 : layersIn(map);
  return shown > 1 ? `${text}, ${l10n.t('{0} groups one over the other', shown)}` : text;
}

/** How many groups have a shape that is shown. */
function layersIn({ order, scene }: ShownMap): number {
  return new Set(order.map((index) => scene.shapes[index].layer)).size;
}

const isPiledOnce = onceFor((scene: MapScene) => isPiled(scene));
