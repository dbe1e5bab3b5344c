import { escapeMarkup } from '../../../map/escape';
import { toneClass } from '../../../map/textures';
import type { ViewChart } from '../../../map/views/viewChart';
import { keyChart, velocityChart } from '../../../map/views/viewChart';
import { curveSign } from '../../../map/views/viewMarks';
import { viewPicture } from '../../../map/views/viewPicture';
import { viewInWords } from '../../../map/views/viewWords';
import { noteNameOf } from '../../../model/keys';
import type { ReportViews } from './reportViews';

const mostWords = 400;
const mostGroups = 40;

/** The curves of an instrument, each as a picture and in words; one of which nothing is known says so. */
export function viewSections(views: ReportViews): string[] {
  const { scene, measures } = views;
  if (scene.shapes.length === 0) return [];
  const shown = scene.shapes.map((_, index) => index);
  const levels = measures.velocities;
  const assumed = levels.some(({ unmeasured }) => unmeasured !== undefined)
    ? ' Dashed where a sample is not measured: it counts as full scale, so the level there is too high.'
    : '';
  return [
    section(views, 'Tuning at the roots', keyChart('tuning', scene, shown, measures.regions), {
      says: 'How far each sample sounds above or below its root key when that key is played.',
      unless: 'No sample has a clear pitch.',
    }),
    section(views, 'Loudness', keyChart('loudness', scene, shown, measures.regions), {
      says: 'How loudly each region plays its sample at full velocity, with its gain counted in.',
      unless: 'No sample was measured. Check that the files are there.',
    }),
    section(views, 'Distance from the root', keyChart('stretch', scene, shown, []), {
      says: 'How many semitones each key is from the root of its sample.',
    }),
    section(
      views,
      `Level by velocity at ${noteNameOf(measures.key)}`,
      velocityChart(levels, () => 0),
      {
        says: `The level of this key from velocity 1 to 127, with layers and curves.${assumed}`,
      },
    ),
  ];
}

function section(
  { scene }: ReportViews,
  title: string,
  chart: ViewChart,
  { says, unless = 'No region sounds.' }: { says: string; unless?: string },
): string {
  const heading = `<h2>${escapeMarkup(title)}</h2><p class="soft">${escapeMarkup(says)}</p>`;
  if (chart.lines.length === 0) return `${heading}<p>${escapeMarkup(unless)}</p>`;
  const names = scene.layers.map(({ name }) => name);
  const words = viewInWords(chart, names);
  const more = words.length > mostWords ? `<p>… and ${words.length - mostWords} more.</p>` : '';
  const picture = viewPicture(chart, scene, `${title}; the list below says the same`);
  const list = words.slice(0, mostWords).map((line) => `<li>${escapeMarkup(line)}</li>`);
  return `${heading}
<div class="card wide map" tabindex="0" role="region" aria-label="${escapeMarkup(title)}">${picture}</div>
${chart.name === 'velocity' ? '' : groups(chart, names)}
<details><summary>${escapeMarkup(title)} in words</summary><ul class="words">${list.join('')}</ul>${more}</details>`;
}

/** Which sign and tone is which group's. */
function groups({ lines }: ViewChart, names: readonly string[]): string {
  const layers = [...new Set(lines.map(({ layer }) => layer))].sort((one, other) => one - other);
  if (layers.length < 2) return '';
  const items = layers
    .slice(0, mostGroups)
    .map(
      (layer) =>
        `<li><svg class="keyboard-map" viewBox="-7 -7 14 14" aria-hidden="true"><path class="curve-mark ${toneClass(layer)}" d="M0 0${curveSign(layer)}"/></svg>${escapeMarkup(names[layer])}</li>`,
    );
  const more = layers.length > mostGroups ? `<li>and ${layers.length - mostGroups} more groups</li>` : '';
  return `<ul class="groups" aria-label="Groups">${items.join('')}${more}</ul>`;
}
