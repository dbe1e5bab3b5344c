import { noteNameOf } from '../model/keys';
import { counted } from '../model/wording/counted';
import { switchPath } from './drawing';
import { escapeMarkup } from './escape';
import { fitText, textWidth } from './labels';
import { px } from './layout';
import type { MapScene } from './mapScene';
import { fillOf, toneClass } from './textures';

const rowHeight = 22;
const columnWidth = 250;
const mostLayers = 120;
const mostSwitches = 12;
const nameSize = 12;

interface Entry {
  sign: string;
  name: string;
  /** Quieter words behind the name. */
  note: string;
}

/** The legend of a map on its own: layers, then signs and switching keys. Its upper left corner is at 0, 0. */
export function drawLegend(
  scene: MapScene,
  width: number,
  prefix: string,
): { markup: string; height: number } {
  const columns = Math.max(1, Math.floor(width / columnWidth));
  let markup = '';
  let top = 0;
  for (const [heading, entries] of [
    ['Groups', layerEntries(scene, prefix)],
    ['Signs', signEntries(scene, prefix)],
    ['Keyswitches', switchEntries(scene)],
  ] as const) {
    if (entries.length === 0) continue;
    markup += `<text class="heading" x="0" y="${px(top + 12)}">${heading}</text>`;
    top += 20;
    entries.forEach((entry, position) => {
      const x = (position % columns) * columnWidth;
      const y = top + Math.floor(position / columns) * rowHeight;
      markup += `<g transform="translate(${x} ${y})">${drawEntry(entry)}</g>`;
    });
    top += Math.ceil(entries.length / columns) * rowHeight + 10;
  }
  return { markup, height: top };
}

function drawEntry({ sign, name, note }: Entry): string {
  const room = columnWidth - 34 - 12 - (note === '' ? 0 : textWidth(note) + 8);
  const shown = fitText(name, room, nameSize);
  const words = note === '' ? '' : `<tspan class="quiet" dx="8">${escapeMarkup(note)}</tspan>`;
  return `${sign}<text class="legend-name" x="34" y="12">${escapeMarkup(shown)}${words}</text>`;
}

function layerEntries(scene: MapScene, prefix: string): Entry[] {
  const entries = scene.layers.slice(0, mostLayers).map(({ name, regionCount }, layer) => ({
    sign: `<rect class="shape ${toneClass(layer)}" fill="url(#${prefix}fill-${fillOf(layer)})" x=".5" y=".5" width="25" height="15"/>`,
    name,
    note: counted(regionCount, 'region'),
  }));
  const more = scene.layers.length - mostLayers;
  return more > 0
    ? [...entries, { sign: '', name: `and ${counted(more, 'more group')}`, note: '' }]
    : entries;
}

function signEntries(scene: MapScene, prefix: string): Entry[] {
  const entries: Entry[] = [
    {
      sign: `<rect class="overlap" fill="url(#${prefix}overlap)" x=".5" y=".5" width="25" height="15"/>`,
      name: 'overlap within a group',
      note: count(scene.overlaps.length),
    },
    {
      sign: '<rect class="gap" x="1" y="1" width="24" height="14"/>',
      name: 'gap: no region plays',
      note: count(scene.gaps.length),
    },
    { sign: '<path class="root tone-0" d="M9 12h8l-4 -7z"/>', name: 'root key', note: '' },
  ];
  if (scene.unplaced.length > 0) {
    entries.push({ sign: '', name: 'not on the keyboard', note: counted(scene.unplaced.length, 'region') });
  }
  return entries;
}

function switchEntries(scene: MapScene): Entry[] {
  const entries = scene.keyswitches.slice(0, mostSwitches).map(({ key, label }) => ({
    sign: `<path class="switch" d="${switchPath(13, 8, 5)}"/>`,
    name: label === '' ? noteNameOf(key) : `${noteNameOf(key)} ${label}`,
    note: '',
  }));
  const more = scene.keyswitches.length - mostSwitches;
  return more > 0 ? [...entries, { sign: '', name: `and ${more} more`, note: '' }] : entries;
}

function count(places: number): string {
  return places === 0 ? 'none' : counted(places, 'place');
}
