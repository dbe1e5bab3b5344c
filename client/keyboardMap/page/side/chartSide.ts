import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import type { ViewChart } from '../../../../server/map/views/viewChart';
import { l10n } from '../../../webview/page/l10n';
import type { Arranging } from '../editing/arranging';
import { changeButtons } from '../editing/changeButtons';
import type { ShownMap } from '../shown/shownMap';
import type { MapViews } from '../views/mapViews';
import { viewText } from '../views/viewBar';
import type { DetailsEvents } from './details';
import { details, detailsLine } from './details';
import { layerList, signs, swatchFills } from './legend';
import { mapHelp } from './mapHelp';

/** What stands beside or below a plot, and what it tells. */
export interface ChartSideParts {
  chart: ViewChart | undefined;
  views: MapViews;
  arranging: Arranging;
  events: DetailsEvents;
  hasMapFocus: boolean;
  /** The place on the map that was clicked last. */
  place: { key: number; velocity: number } | undefined;
  focusMap(): void;
  /** Shares velocities out by what is measured. */
  byLoudness(): void;
  /** Saves what is shown as a picture. */
  savePicture(): void;
  /** Shows the report on the samples of the instrument. */
  report(): void;
  showLayer(layer: number, isShown: boolean): void;
  /** Hides all layers but one, or none. */
  showOnly(layer: number | undefined): void;
  lists: unknown;
}

/** The details of a shape with what can be changed in it, the legend, lists in words, and help. */
export function chartSide(map: ShownMap, parts: ChartSideParts): TemplateResult {
  const { chart, arranging, focusMap } = parts;
  const leave = ({ key }: KeyboardEvent) => {
    if (key === 'Escape') focusMap();
  };
  return html`<div class="side">
    ${map.order.length === 0 ? html`<p>${l10n.t('No region matches what is shown.')}</p>` : nothing}
    <section class="details" aria-label=${l10n.t('Details')}>
      <p class="details-text" aria-live=${parts.hasMapFocus ? 'off' : 'polite'}>${detailsLine(map, chart)}</p>
      <div class="details-body" @keydown=${leave}>${details(map, parts.events)}</div>
      ${chart ? nothing : changes(map, parts)}
      <p class="gesture" role="status">${arranging.message}</p>
    </section>
    ${chart ? viewText(map, parts.views, chart) : nothing} ${swatchFills(map.scene)}
    ${layerList(map, parts.showLayer, parts.showOnly)} ${signs(map.scene)} ${parts.lists}
    ${arranging.isPossible ? wholeButtons(parts) : nothing}
    <p id="keyboard-map-help" class="help quiet">${mapHelp(arranging.isPossible)}</p>
  </div>`;
}

function changes(map: ShownMap, { arranging, place, focusMap, byLoudness }: ChartSideParts): unknown {
  const hold = () => {
    focusMap();
    arranging.hold();
  };
  return changeButtons({ map, arranging, place, hold, byLoudness });
}

/** What is done with all of an instrument. */
function wholeButtons({ report, savePicture }: ChartSideParts): TemplateResult {
  return html`<p class="whole">
    <button type="button" class="row" @click=${report}>${l10n.t('Report on the samples')}</button>
    <button type="button" class="row" @click=${savePicture}>${l10n.t('Save what is shown as a picture')}</button>
  </p>`;
}
