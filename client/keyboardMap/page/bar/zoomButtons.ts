import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { button } from '../../../webview/page/controls/button';
import { l10n } from '../../../webview/page/l10n';

/** How much larger each press makes the map. */
export const zoomStep = 1.5;

/** Buttons that zoom, with the zoom as it is: 1 is all of the map. */
export function zoomButtons(zoom: number, zoomTo: (zoom: number) => void): TemplateResult {
  return html`<div class="zoom" role="group" aria-label=${l10n.t('Zoom')}>
    ${button({ label: '−', name: l10n.t('Zoom out'), isSecondary: true, press: () => zoomTo(zoom / zoomStep) })}
    <output aria-label=${l10n.t('Zoom level')}>${Math.round(zoom * 100)} %</output>
    ${button({ label: '+', name: l10n.t('Zoom in'), isSecondary: true, press: () => zoomTo(zoom * zoomStep) })}
  </div>`;
}
