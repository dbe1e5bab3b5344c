import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import type { ViewChart, ViewName } from '../../../../server/map/views/viewChart';
import { viewNames } from '../../../../server/map/views/viewChart';
import { viewInWords } from '../../../../server/map/views/viewWords';
import { noteNameOf } from '../../../../server/model/keys';
import { choiceList } from '../../../webview/page/controls/choice';
import { l10n } from '../../../webview/page/l10n';
import type { ShownMap } from '../shown/shownMap';
import type { MapViews } from './mapViews';

const labels: Readonly<Record<ViewName, string>> = {
  map: l10n.t('Keys and velocities'),
  tuning: l10n.t('Tuning at the roots'),
  loudness: l10n.t('Loudness'),
  stretch: l10n.t('Distance from the root'),
  velocity: l10n.t('Level by velocity'),
};

const mostLines = 200;

/** The choice of what is drawn over the keyboard, and of the key whose velocities are. */
export function viewBar(
  map: ShownMap,
  views: MapViews,
  chosen: { view(name: ViewName): void; key(key: number): void },
): TemplateResult {
  const { played } = map.scene;
  const keys = played
    ? Array.from({ length: played.highKey - played.lowKey + 1 }, (_, at) => played.lowKey + at)
    : [];
  const keyList =
    views.name === 'velocity'
      ? choiceList({
          id: 'view-key',
          label: l10n.t('Key'),
          isSearched: true,
          options: keys.map((key) => ({ value: String(key), label: noteNameOf(key) })),
          value: String(views.keyIn(map)),
          choose: (value) => chosen.key(Number(value)),
        })
      : nothing;
  return html`${choiceList({
    id: 'view',
    label: l10n.t('Shown over the keyboard'),
    options: viewNames.map((value) => ({ value, label: labels[value] })),
    value: views.name,
    choose: (value) => chosen.view(value as ViewName),
  })}
  ${keyList}`;
}

/** What a chart says, or why it says nothing. */
export function viewText(map: ShownMap, views: MapViews, chart: ViewChart): TemplateResult {
  if (chart.lines.length === 0) {
    const why = views.isWaiting
      ? l10n.t('The samples are being measured.')
      : l10n.t('There is nothing to show here yet. Check that the samples are there.');
    return html`<p class="view-text" role="status">${why}</p>`;
  }
  const lines = viewInWords(
    chart,
    map.scene.layers.map(({ name }) => name),
  );
  return html`${chart.lines.some(({ isAssumed }) => isAssumed) ? html`<p class="view-text">${assumedText()}</p>` : nothing}
  <details class="view-words">
    <summary>${l10n.t('{0} in words', labels[chart.name])}</summary>
    <ul>
      ${lines.slice(0, mostLines).map((line) => html`<li>${line}</li>`)}
    </ul>
  </details>`;
}

function assumedText(): string {
  return l10n.t(
    'Dashed where a sample is not measured: it counts as full scale, so the level there is too high.',
  );
}
