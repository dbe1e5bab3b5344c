import { escapeMarkup } from '../../map/escape';
import { pageFrame } from '../../pages/pageFrame';
import { tableSection } from '../../pages/tableSection';
import type { StereoSound } from '../soundDifference';
import type { MappedDifference } from './differenceMap';
import { differenceId, differenceMap } from './differenceMap';
import { peakOf, soundClips, waveOf } from './soundClips';
import { waveform } from './waveform';

/** A difference as a page shows it: words for its columns, its place on the map, and what sounds, for those that can be heard. */
export interface ShownDifference {
  cells: readonly string[];
  map: MappedDifference;
  sounds?: { a: StereoSound; b: StereoSound };
}

/** What a page of a comparison shows. */
export interface ComparisonPage {
  names: readonly [a: string, b: string];
  summary: readonly string[];
  columns: readonly string[];
  differences: readonly ShownDifference[];
  sampleRate: number;
  /** Bytes in base 64. */
  base64(bytes: Uint8Array): string;
}

/** One page with all that a comparison found, the worst differences to be seen and heard; it needs nothing besides itself. */
export function comparisonPage(page: ComparisonPage): string {
  const { names, summary, differences } = page;
  const heard = differences.filter(({ sounds }) => sounds !== undefined);
  const sections = [`<p>${summary.map(escapeMarkup).join('<br>')}</p>`];
  if (differences.length > 0) {
    const maps = differences.map(({ map }) => map);
    sections.push(
      `<h2>Where they differ</h2>\n<div class="card wide map" tabindex="0" role="region" aria-label="Map of the differences">${differenceMap(maps)}</div>`,
    );
  }
  if (heard.length > 0) sections.push(heardSection(page, heard));
  if (differences.length > 0)
    sections.push(
      tableSection(
        'All differences',
        page.columns,
        differences.map(({ cells }) => cells),
      ),
    );
  return pageFrame(`${names[0]} and ${names[1]}`, sections);
}

function heardSection(page: ComparisonPage, heard: readonly ShownDifference[]): string {
  const caution =
    '<p class="caution"><strong>Start quiet, above all with headphones.</strong> No sound here goes above −18 dB; both sides are made quieter by the same amount, and a difference may be raised.</p>';
  return `<h2>The worst to see and hear</h2>\n${caution}\n${heard.map((one, at) => card(page, one, at + 1)).join('\n')}`;
}

function card(
  { names, sampleRate, base64 }: ComparisonPage,
  { cells, map, sounds }: ShownDifference,
  number: number,
): string {
  if (!sounds) return '';
  const clips = soundClips(sounds.a, sounds.b, sampleRate);
  const full = Math.max(peakOf(clips.a), peakOf(clips.b), 1e-6);
  const level = (db: number) => `${db > 0 ? '+' : '−'}${Math.abs(db).toFixed(0)} dB`;
  const sound = (name: string, kind: string, clip: StereoSound, gainDb: number, edge: number) =>
    `<div class="${kind}"><div>${escapeMarkup(name)} <span class="soft">${gainDb === 0 ? '' : level(gainDb)}</span></div>${waveform(clip.left, edge, escapeMarkup(`Waveform of ${name}, left channel`))}<audio controls preload="none" aria-label="${escapeMarkup(`${number}: ${name}`)}" src="data:audio/wav;base64,${base64(waveOf(clip, sampleRate))}"></audio></div>`;
  const start = clips.startSeconds > 0 ? ` Heard from ${clips.startSeconds.toFixed(2)} s on.` : '';
  const id = differenceId(number - 1);
  return `<section class="card" id="${id}" aria-labelledby="${id}-name"><h3 id="${id}-name">${number}. ${escapeMarkup(cells[0])}</h3><div>${escapeMarkup(map.words)}${start}</div><div class="sounds">${[
    sound(`A, ${names[0]}`, 'first', clips.a, clips.gainDb, full),
    sound(`B, ${names[1]}`, 'second', clips.b, clips.gainDb, full),
    sound(
      'Difference',
      'rest',
      clips.difference,
      clips.differenceGainDb,
      Math.max(peakOf(clips.difference), 1e-6),
    ),
  ].join('')}</div></section>`;
}
