import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { l10n } from '../../../webview/page/l10n';
import type { MapDrop } from '../editing/mapDrop';
import type { MapKeys } from '../editing/mapKeys';
import type { MapPointer } from '../editing/mapPointer';

/** What the elements of a plot tell. */
export interface PlotRowParts {
  keys: MapKeys;
  pointer: MapPointer;
  drop: MapDrop;
  focusChanged(hasFocus: boolean): void;
  left(): void;
  wheel(event: WheelEvent): void;
}

/** The elements of a plot: canvases that nobody reads under a list box that everybody can. */
export function plotRow({ keys, pointer, drop, focusChanged, left, wheel }: PlotRowParts): TemplateResult {
  return html`<div class="plot-row">
    <canvas class="axis" aria-hidden="true"></canvas>
    <div class="scroller" tabindex="-1" @wheel=${wheel}>
      <div
        class="map"
        role="listbox"
        tabindex="0"
        aria-multiselectable="true"
        aria-label=${l10n.t('Regions by key and velocity')}
        aria-describedby="keyboard-map-help"
        @keydown=${(event: KeyboardEvent) => keys.onMap(event)}
        @focus=${() => focusChanged(true)}
        @blur=${() => focusChanged(false)}
        @pointerdown=${(event: PointerEvent) => pointer.down(event)}
        @pointerup=${() => pointer.up()}
        @pointercancel=${() => pointer.cancel()}
        @pointermove=${(event: PointerEvent) => pointer.move(event)}
        @pointerleave=${left}
        @click=${(event: MouseEvent) => pointer.click(event)}
        @dragover=${(event: DragEvent) => drop.over(event)}
        @dragleave=${() => drop.leave()}
        @drop=${(event: DragEvent) => drop.drop(event)}
      >
        <canvas class="picture" aria-hidden="true"></canvas>
        <canvas class="picture marks" aria-hidden="true"></canvas>
      </div>
    </div>
  </div>`;
}
