import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { noteNameOf } from '../../../server/model/keys';
import { noteNamesText } from '../../../server/model/wording/rangeWords';
import type { RecordingDecision } from '../../../server/recordings/recordedInstrument';
import { l10n } from '../../webview/page/l10n';
import type { ShownRecordings } from '../messages';

/** Recordings that are shown. */
const mostRows = 2000;

/** Takes a recording in or leaves it out. */
type Take = (path: string, isTaken: boolean) => void;

/** The recordings as rows: whether it is taken, its place on keys and velocities, and each reason. */
export function recordingTable({ decisions, leftOut }: ShownRecordings, take: Take): TemplateResult {
  const all: readonly (RecordingDecision & { isOut?: boolean })[] = [
    ...decisions,
    ...leftOut.map((path) => ({ path, because: [l10n.t('Left out by hand.')], isOut: true })),
  ];
  const more = all.length - mostRows;
  const headings = [
    ...[l10n.t('Taken'), l10n.t('Recording'), l10n.t('Root'), l10n.t('Keys'), l10n.t('Velocities')],
    ...[l10n.t('Tune'), l10n.t('Turn'), l10n.t('Group'), l10n.t('Why')],
  ];
  return html`<table class="recordings">
    <thead>
      <tr>
        ${headings.map((heading) => html`<th scope="col">${heading}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${all.slice(0, mostRows).map((one) => row(one, one.isOut === true, take))}
      ${
        more > 0
          ? html`<tr>
              <td colspan=${headings.length} class="quiet">${more === 1 ? l10n.t('and 1 more recording') : l10n.t('and {0} more recordings', more)}</td>
            </tr>`
          : nothing
      }
    </tbody>
  </table>`;
}

function row({ path, place, because }: RecordingDecision, isOut: boolean, take: Take): TemplateResult {
  // What is no part of the instrument by itself cannot be taken in.
  const canTake = place !== undefined || isOut;
  return html`<tr class=${classMap({ unused: !place })}>
    <td>
      ${
        canTake
          ? html`<input
              type="checkbox"
              aria-label=${l10n.t('Take {0}', path)}
              .checked=${!isOut}
              @change=${(event: Event) => take(path, (event.target as HTMLInputElement).checked)}
            />`
          : nothing
      }
    </td>
    <th scope="row" class="path">${path}</th>
    ${place ? cells(place) : html`<td colspan="6"></td>`}
    <td class="why">${because.join(' ')}</td>
  </tr>`;
}

function cells(place: NonNullable<RecordingDecision['place']>): TemplateResult {
  const { root, lowKey, highKey, lowVelocity, highVelocity, tuneCents, position, length, section } = place;
  return html`<td>${noteNameOf(root)}</td>
    <td>${noteNamesText(lowKey, highKey)}</td>
    <td class="number">${lowVelocity}–${highVelocity}</td>
    <td class="number">${tuneCents === 0 ? '' : tuneCents}</td>
    <td class="number">${length > 1 ? `${position} / ${length}` : ''}</td>
    <td>${section}</td>`;
}
