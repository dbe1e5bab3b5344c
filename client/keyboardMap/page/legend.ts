import { counted } from '../../../server/map/describe';
import { switchSign } from '../../../server/map/drawing';
import { escapeMarkup } from '../../../server/map/escape';
import type { MapScene } from '../../../server/map/scene';
import { fillOf, toneClass } from '../../../server/map/textures';
import { noteNameOf } from '../../../server/model/keys';

/** The layers as check boxes with their swatches. */
export function layersMarkup(scene: MapScene, hidden: ReadonlySet<number>): string {
  const rows = scene.layers.map(({ name, regionCount }, layer) => {
    const swatch = sign(
      `<rect class="shape ${toneClass(layer)}" fill="url(#fill-${fillOf(layer)})" x=".5" y=".5" width="25" height="15"/>`,
    );
    const checked = hidden.has(layer) ? '' : ' checked';
    return `<li><label><input type="checkbox" data-layer="${layer}"${checked}>${swatch}<span class="name">${escapeMarkup(name)}</span><span class="quiet">${counted(regionCount, 'region')}</span></label></li>`;
  });
  return `<legend>Groups</legend><ul>${rows.join('')}</ul>`;
}

/** What the signs of the map mean, and the switching keys by name. */
export function signsMarkup(scene: MapScene): string {
  const items: string[] = [];
  if (scene.overlaps.length > 0) {
    items.push(
      `${sign('<rect class="overlap" fill="url(#overlap)" x="1" y="1" width="24" height="14"/>')}overlap within a group`,
    );
  }
  if (scene.gaps.length > 0) {
    items.push(`${sign('<rect class="gap" x="1" y="1" width="24" height="14"/>')}gap: no region answers`);
  }
  items.push(`${sign('<path class="root sign" d="M9 12h8l-4 -7z"/>')}root key`);
  for (const { key, label } of scene.keyswitches.slice(0, 24)) {
    items.push(
      `${sign(switchSign(13, 8, 5, false))}${escapeMarkup(label === '' ? `keyswitch ${noteNameOf(key)}` : `keyswitch ${noteNameOf(key)} ${label}`)}`,
    );
  }
  return items.map((item) => `<li>${item}</li>`).join('');
}

function sign(markup: string): string {
  return `<svg class="swatch" width="26" height="16" viewBox="0 0 26 16" aria-hidden="true">${markup}</svg>`;
}
