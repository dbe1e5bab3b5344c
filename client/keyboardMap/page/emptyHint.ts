import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { l10n } from '../../webview/page/l10n';
import type { MapDrop } from './editing/mapDrop';

/** What stands in the place of a map that is not there: why, and, where it is all of a page, what to do for one. */
export function emptyHint(reason: string, isPart: boolean, drop: MapDrop): TemplateResult {
  if (isPart) return html`<p class="reason" role="status">${reason}</p>`;
  return html`<section
    class="empty"
    @dragover=${(event: DragEvent) => drop.over(event)}
    @drop=${(event: DragEvent) => drop.drop(event)}
  >
    <h1>${l10n.t('Keyboard map')}</h1>
    <p class="reason" role="status">${reason}</p>
    <p class="quiet">
      ${l10n.t(
        'The keyboard map shows which keys and velocities play which sample. Write a region with a sample and a key range in an instrument document, and it appears here. Or drop samples here from the explorer, with Shift held down.',
      )}
    </p>
  </section>`;
}
