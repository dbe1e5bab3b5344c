import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { l10n } from '../../../webview/page/l10n';
import type { ShownMap } from '../shown/shownMap';
import type { DetailsEvents } from './details';
import { placesInWords, problemsInWords, unplacedRegions } from './details';

/**
 * Gaps, overlaps and problems in words, and the regions that have no place on the keyboard, in lists that can be opened.
 * `toggled` is told of a list by its name.
 */
export function mapLists(
  map: ShownMap,
  events: DetailsEvents,
  openLists: readonly string[],
  toggled: (name: string, isOpen: boolean) => void,
): TemplateResult[] {
  const list = (name: string, heading: string, content: TemplateResult) => html`<details
    class=${name}
    ?open=${openLists.includes(name)}
    @toggle=${({ currentTarget }: Event) => toggled(name, (currentTarget as HTMLDetailsElement).open)}
  >
    <summary>${heading}</summary>
    ${content}
  </details>`;
  const { scene } = map;
  const places = placesInWords(map, events);
  const problems = problemsInWords(map, events);
  const unplaced = scene.unplaced.length;
  const lists: TemplateResult[] = [];
  if (places.length > 0) {
    lists.push(list('places', l10n.t('Gaps and overlaps in words'), html`<ul>${places}</ul>`));
  }
  if (problems.length > 0)
    lists.push(list('problems', l10n.t('Problems of regions in words'), html`<ul>${problems}</ul>`));
  if (unplaced > 0) {
    const heading =
      unplaced === 1
        ? l10n.t('1 region not on the keyboard')
        : l10n.t('{0} regions not on the keyboard', unplaced);
    const items = unplacedRegions(scene, events);
    lists.push(list('unplaced', heading, html`<ol class="regions">${items}</ol>`));
  }
  return lists;
}
