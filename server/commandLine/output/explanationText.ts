import { visibleText } from '../../model/text/visibleText';
import { byCount, counted } from '../../model/wording/counted';
import { keyText } from '../../model/wording/rangeWords';
import { silentReasons } from '../../playing/player/conditions';
import type { PlayedNote } from '../../playing/sweep/playedNote';
import type { RegionPlace } from '../input/regionPlaces';

/** A region that a note leaves silent, with where it stands. */
export interface SilentPlace extends RegionPlace {
  reason: string;
  message: string;
}

/** What a note starts, and why the rest stays silent, with where the regions stand. */
export interface ExplainedPlaces {
  sounds: readonly RegionPlace[];
  silent: readonly SilentPlace[];
}

/** Sentences under one reason, and regions under one sentence, that are shown. */
const mostMessages = 12;
const mostRegions = 8;

/** An explanation for a person to read: what sounds, then the silent regions by their first reason and its sentence. */
export function explanationText(note: PlayedNote, { sounds, silent }: ExplainedPlaces): string {
  const strike = (note.strike ?? 1) > 1 ? `, struck for the ${ordinal(note.strike ?? 1)} time` : '';
  const all = sounds.length + silent.length;
  const lines = [
    `${keyText(note.key)} at velocity ${note.velocity}${strike}: ${sounds.length} of ${counted(all, 'region')} ${byCount(sounds.length, 'sounds', 'sound')}.`,
  ];
  if (sounds.length > 0) lines.push('', 'Sounds', ...sounds.map((place) => `  ${placeText(place)}`));
  if (silent.length > 0) lines.push('', 'Silent, by the first reason', ...silentLines(silent));
  return `${lines.map(visibleText).join('\n')}\n`;
}

/** Lines about silent regions by reason and sentence. */
export function silentLines(silent: readonly SilentPlace[]): string[] {
  const lines: string[] = [];
  for (const reason of [...silentReasons, 'missed']) {
    const found = silent.filter((one) => one.reason === reason);
    if (found.length === 0) continue;
    // Most regions of an instrument answer other keys; which ones is rarely what is asked.
    const showsPlaces = reason !== 'key' || found.length <= mostRegions;
    lines.push(`  ${reason}: ${counted(found.length, 'region')}`, ...messageLines(found, showsPlaces));
  }
  return lines;
}

function messageLines(silent: readonly SilentPlace[], showsPlaces: boolean): string[] {
  const byMessage = new Map<string, SilentPlace[]>();
  for (const one of silent) {
    const same = byMessage.get(one.message);
    if (same) same.push(one);
    else byMessage.set(one.message, [one]);
  }
  const lines: string[] = [];
  for (const [message, places] of [...byMessage].slice(0, mostMessages)) {
    if (!showsPlaces) {
      lines.push(`    ${counted(places.length, 'region')}: ${message}`);
      continue;
    }
    lines.push(`    ${message}`, ...places.slice(0, mostRegions).map((place) => `      ${placeText(place)}`));
    if (places.length > mostRegions)
      lines.push(`      and ${counted(places.length - mostRegions, 'more region')}`);
  }
  const rest = [...byMessage.values()].slice(mostMessages).reduce((sum, places) => sum + places.length, 0);
  if (rest > 0) lines.push(`    and ${counted(rest, 'more region')} for other values`);
  return lines;
}

function placeText({ file, line, sample }: RegionPlace): string {
  return `${file === undefined ? '' : `${file} `}line ${line}: ${sample ?? 'no sample'}`;
}

function ordinal(number: number): string {
  const isTeen = Math.floor(number / 10) % 10 === 1;
  const ending = isTeen ? undefined : ['th', 'st', 'nd', 'rd'][number % 10];
  return `${number}${ending ?? 'th'}`;
}
