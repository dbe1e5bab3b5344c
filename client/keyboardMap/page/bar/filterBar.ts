import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import type { MapScene } from '../../../../server/map/mapScene';
import { noteNameOf } from '../../../../server/model/keys';
import { button } from '../../../webview/page/controls/button';
import { checkbox } from '../../../webview/page/controls/checkbox';
import { choiceList } from '../../../webview/page/controls/choice';
import { l10n } from '../../../webview/page/l10n';
import type { MapFilter, ProblemsByHeader } from '../shown/mapFilter';
import { controllerStatesOf, isOff, noFilter, strikesOf, switchKeysOf, triggersOf } from '../shown/mapFilter';
import type { ShownMap } from '../shown/shownMap';

/** So many strikes in turn are offered. */
const mostStrikes = 100;

/** What the filters are of: the whole scene, not what they leave of it. */
export interface FilterBarParts {
  scene: MapScene;
  problems: ProblemsByHeader;
  filter: MapFilter;
  map: ShownMap;
  change(change: Partial<MapFilter>): void;
  /** Hides all layers but one, or none. */
  showOnly(layer: number | undefined): void;
  /** What chooses between the map and curves. */
  views: unknown;
}

/** What of a map is shown: lists of groups, keyswitches and triggers where there are several, and only what is wrong. */
export function filterBar(parts: FilterBarParts): TemplateResult | typeof nothing {
  const shown = [
    parts.views,
    groupChoice(parts),
    switchChoice(parts),
    triggerChoice(parts),
    strikeChoice(parts),
    controllerChoice(parts),
    problemBox(parts),
    allButton(parts),
  ];
  if (shown.every((one) => one === nothing)) return nothing;
  return html`<div class="filters" role="group" aria-label=${l10n.t('What is shown')}>${shown}</div>`;
}

function allButton({ filter, map, change, showOnly }: FilterBarParts): TemplateResult | typeof nothing {
  if (isOff(filter) && map.hiddenLayers.size === 0) return nothing;
  const showAll = () => {
    showOnly(undefined);
    change(noFilter);
  };
  return button({ id: 'show-all', label: l10n.t('Show all'), isSecondary: true, press: showAll });
}

function groupChoice({ scene, map, showOnly }: FilterBarParts): TemplateResult | typeof nothing {
  if (scene.layers.length < 2) return nothing;
  const { onlyLayer } = map;
  const isMixed = onlyLayer === undefined && map.hiddenLayers.size > 0;
  return choiceList({
    id: 'group-filter',
    label: l10n.t('Group'),
    isSearched: scene.layers.length > 12,
    options: [
      { value: 'all', label: l10n.t('All groups') },
      ...(isMixed ? [{ value: 'some', label: l10n.t('Some groups') }] : []),
      ...scene.layers.map(({ name }, layer) => ({ value: String(layer), label: name })),
    ],
    value: isMixed ? 'some' : onlyLayer === undefined ? 'all' : String(onlyLayer),
    choose: (value) => {
      if (value !== 'some') showOnly(value === 'all' ? undefined : Number(value));
    },
  });
}

function switchChoice({ scene, filter, change }: FilterBarParts): TemplateResult | typeof nothing {
  const keys = switchKeysOf(scene);
  if (keys.length === 0) return nothing;
  return choiceList({
    id: 'switch-filter',
    label: l10n.t('Keyswitch'),
    isSearched: keys.length > 12,
    options: [
      { value: '', label: l10n.t('All keyswitches') },
      ...keys.map(({ key, label }) => ({ value: String(key), label: `${noteNameOf(key)} ${label}`.trim() })),
    ],
    value: filter.switchKey === null ? '' : String(filter.switchKey),
    choose: (value) => change({ switchKey: value === '' ? null : Number(value) }),
  });
}

function triggerChoice({ scene, filter, change }: FilterBarParts): TemplateResult | typeof nothing {
  const triggers = triggersOf(scene);
  if (triggers.length < 2) return nothing;
  return choiceList({
    id: 'trigger-filter',
    label: l10n.t('Trigger'),
    options: [
      { value: '', label: l10n.t('All triggers') },
      ...triggers.map((trigger) => ({ value: trigger, label: `trigger=${trigger}` })),
    ],
    value: filter.trigger ?? '',
    choose: (value) => change({ trigger: value === '' ? null : value }),
  });
}

function strikeChoice({ scene, filter, change }: FilterBarParts): TemplateResult | typeof nothing {
  const strikes = strikesOf(scene);
  if (strikes < 2) return nothing;
  const options = Array.from({ length: Math.min(strikes, mostStrikes) }, (_, at) => String(at + 1));
  return choiceList({
    id: 'strike-filter',
    label: l10n.t('Round robin'),
    isSearched: strikes > 12,
    options: [
      { value: '', label: l10n.t('All round robins') },
      ...options.map((value) => ({ value, label: l10n.t('Round robin: strike {0}', value) })),
    ],
    value: filter.strike === null ? '' : String(filter.strike),
    choose: (value) => change({ strike: value === '' ? null : Number(value) }),
  });
}

function controllerChoice({ scene, filter, change }: FilterBarParts): TemplateResult | typeof nothing {
  const states = controllerStatesOf(scene);
  if (states.length === 0) return nothing;
  const { controller } = filter;
  return choiceList({
    id: 'controller-filter',
    label: l10n.t('Controller'),
    isSearched: states.length > 12,
    options: [
      { value: '', label: l10n.t('All controller values') },
      ...states.map(({ number, low, high }) => ({
        value: `${number} ${low}`,
        label: l10n.t('Controller {0}: {1} to {2}', number, low, high),
      })),
    ],
    value: controller ? `${controller.number} ${controller.value}` : '',
    choose: (value) => {
      const [number, low] = value.split(' ').map(Number);
      change({ controller: value === '' ? null : { number, value: low } });
    },
  });
}

function problemBox({ problems, filter, change }: FilterBarParts): TemplateResult | typeof nothing {
  if (problems.size === 0 && !filter.isProblem) return nothing;
  return checkbox({
    id: 'problem-filter',
    label: html`${l10n.t('Only regions with problems')} <span class="quiet">${problems.size}</span>`,
    isChecked: filter.isProblem,
    change: (isProblem) => change({ isProblem }),
  });
}
