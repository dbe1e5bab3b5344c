import type { TemplateResult } from 'lit';
import { html, nothing, svg } from 'lit';
import { switchPath } from '../../../../server/map/drawing';
import type { MapScene } from '../../../../server/map/mapScene';
import { fillCount, fillOf, overlapTexture, textureOf, toneClass } from '../../../../server/map/textures';
import { noteNameOf } from '../../../../server/model/keys';
import { counted } from '../../../../server/model/wording/counted';
import { checkbox } from '../../../webview/page/controls/checkbox';
import { l10n } from '../../../webview/page/l10n';
import type { ShownMap } from '../shown/shownMap';

const mostSwitches = 24;

/** The layers as check boxes with their swatches, each with a button that shows it alone, or all again. */
export function layerList(
  { scene, hiddenLayers, onlyLayer }: ShownMap,
  showLayer: (layer: number, isShown: boolean) => void,
  showOnly: (layer: number | undefined) => void,
): TemplateResult {
  const only = (name: string, layer: number) => html`<button
    type="button"
    class="row"
    aria-pressed=${onlyLayer === layer}
    aria-label=${l10n.t('Show {0} alone', name)}
    @click=${() => showOnly(onlyLayer === layer ? undefined : layer)}
  >
    ${l10n.t('Alone')}
  </button>`;
  const rows = scene.layers.map(({ name, regionCount }, layer) => {
    const swatch = sign(
      svg`<rect class="shape ${toneClass(layer)}" fill="url(#fill-${fillOf(layer)})" x=".5" y=".5" width="25" height="15"/>`,
    );
    return html`<li>
      ${checkbox({
        label: html`<span class="layer"
          >${swatch}<span class="name">${name}</span
          ><span class="quiet">${counted(regionCount, 'region')}</span></span
        >`,
        isChecked: !hiddenLayers.has(layer),
        change: (isChecked) => showLayer(layer, isChecked),
      })}
      ${scene.layers.length > 1 ? only(name, layer) : nothing}
    </li>`;
  });
  return html`<fieldset class="layers">
    <legend>${l10n.t('Groups')}</legend>
    <ul>
      ${rows}
    </ul>
  </fieldset>`;
}

/** What the signs of the map mean, and the switching keys by name. */
export function signs(scene: MapScene): TemplateResult {
  const items: TemplateResult[] = [];
  if (scene.overlaps.length > 0) {
    const overlap = svg`<rect class="overlap" fill="url(#overlap)" x="1" y="1" width="24" height="14"/>`;
    items.push(html`${sign(overlap)}${l10n.t('overlap within a group')}`);
  }
  if (scene.gaps.length > 0) {
    const gap = svg`<rect class="gap" x="1" y="1" width="24" height="14"/>`;
    items.push(html`${sign(gap)}${l10n.t('gap: no region plays')}`);
  }
  items.push(html`${sign(svg`<path class="root sign" d="M9 12h8l-4 -7z"/>`)}${l10n.t('root key')}`);
  for (const { key, label } of scene.keyswitches.slice(0, mostSwitches)) {
    const name = l10n.t('keyswitch {0}', `${noteNameOf(key)} ${label}`).trim();
    items.push(html`${sign(svg`<path class="switch" d=${switchPath(13, 8, 5)}/>`)}${name}`);
  }
  return html`<ul class="signs" aria-label=${l10n.t('Signs')}>
    ${items.map((item) => html`<li>${item}</li>`)}
  </ul>`;
}

/** The fills of the swatches, which are those of the map. */
export function swatchFills({ layers }: MapScene): TemplateResult {
  const fills = layers.slice(0, fillCount).map((_, fill) => {
    const { width, height, lines, dots } = textureOf(fill);
    return svg`<pattern id="fill-${fill}" class=${toneClass(fill)} width=${width} height=${height} patternUnits="userSpaceOnUse">
      <rect class="ground" width=${width} height=${height}/><rect class="tint" width=${width} height=${height}/>
      <path class="texture-line" d=${lines ?? ''}/><path class="texture-dot" d=${dots ?? ''}/>
    </pattern>`;
  });
  const { width, height, lines } = overlapTexture;
  return html`<svg class="fills" aria-hidden="true">
    <defs>
      ${fills}
      ${svg`<pattern id="overlap" width=${width} height=${height} patternUnits="userSpaceOnUse"><path class="overlap-line" d=${lines ?? ''}/></pattern>`}
    </defs>
  </svg>`;
}

function sign(content: TemplateResult): TemplateResult {
  return html`<svg class="swatch" width="26" height="16" viewBox="0 0 26 16" aria-hidden="true">${content}</svg>`;
}
