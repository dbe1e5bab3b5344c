import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import type { MapScene } from '../../../../server/map/mapScene';
import { isPiled } from '../../../../server/map/piled';
import { noteNameOf } from '../../../../server/model/keys';
import { l10n } from '../../../webview/page/l10n';
import { switchKeysOf } from '../shown/mapFilter';
import { onceFor } from '../shown/onceFor';
import type { FilterBarParts } from './filterBar';

/** So many stand side by side; more are chosen from a list. */
const mostArticulations = 16;

const isPiledOnce = onceFor((scene: MapScene) => isPiled(scene));

interface Articulation {
  label: string;
  isChosen: boolean;
  choose(): void;
}

/**
 * One press for each articulation of an instrument: its keyswitches, else its groups where they lie over one another.
 * Nothing where a list serves better.
 */
export function articulationBar(parts: FilterBarParts): TemplateResult | typeof nothing {
  const switches = switchKeysOf(parts.scene);
  const areGroups = switches.length < 2 && isPiledOnce(parts.scene);
  const articulations = switches.length < 2 ? (areGroups ? ofGroups(parts) : []) : ofSwitches(parts);
  if (articulations.length < 3 || articulations.length > mostArticulations + 1) return nothing;
  const name = areGroups ? l10n.t('Groups to show') : l10n.t('Keyswitches to show');
  return html`<div class="articulations ${areGroups ? 'groups' : 'switches'}" role="group" aria-label=${name}>
    ${articulations.map(
      ({ label, isChosen, choose }) =>
        html`<button type="button" class="row" aria-pressed=${isChosen} @click=${choose}>${label}</button>`,
    )}
  </div>`;
}

function ofSwitches({ scene, filter, change }: FilterBarParts): Articulation[] {
  const all: Articulation = {
    label: l10n.t('All keyswitches'),
    isChosen: filter.switchKey === null,
    choose: () => change({ switchKey: null }),
  };
  const each = switchKeysOf(scene).map(({ key, label }) => ({
    label: `${noteNameOf(key)} ${label}`.trim(),
    isChosen: filter.switchKey === key,
    choose: () => change({ switchKey: key }),
  }));
  return [all, ...each];
}

function ofGroups({ scene, map, showOnly }: FilterBarParts): Articulation[] {
  const all: Articulation = {
    label: l10n.t('All groups'),
    isChosen: map.hiddenLayers.size === 0,
    choose: () => showOnly(undefined),
  };
  const each = scene.layers.map(({ name }, layer) => ({
    label: name,
    isChosen: map.onlyLayer === layer,
    choose: () => showOnly(layer),
  }));
  return [all, ...each];
}
