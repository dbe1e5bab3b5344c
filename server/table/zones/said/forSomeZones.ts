import { listText } from '../../../model/wording/listText';
import { volumeBounds } from '../../../trade/bounds';
import { rounded } from '../../../trade/decimal';
import { dynamicIn } from '../../../trade/dynamics';
import { loudnessEnd } from '../../../trade/headings/headingStems';
import { bareWord } from '../../../trade/languages/spelling';
import { namesOfRows } from '../../../trade/statements/amounts/forSome';
import type { ForSome } from '../../../trade/statements/amounts/levelChange';
import { shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';
import { groupsNamedIn } from './groupsNamed';
import { zonesOfKindNamed } from './kindsNamed';

/** Zones that a word means, and how they are known. */
interface Meant {
  zones: readonly number[];
  how: string;
}

/**
 * Adds to the levels of some zones what the text around says: those of a group, of a dynamic, with a word or a letter in their names, or
 * of the lower or upper of two layers. Each sentence is noted, also where it stays open which zones it means.
 */
export function giveToSome(
  zones: ZoneList,
  statements: readonly ForSome[],
  headings: readonly string[],
  notes: TableNotes,
): void {
  for (const statement of statements) {
    // What a heading says of its own column is read with it.
    if (statement.name === undefined && headings.some((one) => one.includes(statement.text))) continue;
    const meant = zonesMeant(zones, statement);
    // A sentence that names no zones says something else.
    if (meant === 'none') continue;
    const { volume, text } = statement;
    const cell = zones.column('sample').cells[meant?.zones[0] ?? 0];
    const span = { start: zones.cells.starts[cell], end: zones.cells.ends[cell] };
    const levels = zones.values('volume');
    const sums = (meant?.zones ?? []).map((zone) =>
      rounded((levels && levels.cells[zone] >= 0 ? levels.numbers[zone] : 0) + volume),
    );
    notes.row = -2;
    const why = doubtOf(zones, statement, meant, sums);
    if (!meant || why !== undefined) {
      notes.add(
        'assumed',
        span,
        `"${shortened(text)}" is not done, as ${why}. Change the levels by hand if it is meant.`,
      );
      continue;
    }
    const column = zones.column('volume');
    const samples = zones.column('sample').cells;
    for (const [at, zone] of meant.zones.entries()) {
      const own = column.cells[zone] < 0 ? samples[zone] : column.cells[zone];
      column.set(zone, own, sums[at] ?? 0);
    }
    const count = meant.zones.length;
    notes.add(
      'assumed',
      span,
      `"${shortened(text)}": ${Math.abs(volume)} dB ${volume < 0 ? 'is taken off' : 'is added to'} the level of ${count} ${count === 1 ? 'zone' : 'zones'}, ${meant.how}.`,
    );
  }
}

/** Why a sentence is not done; `undefined` where nothing speaks against it. */
function doubtOf(
  zones: ZoneList,
  { name, doubt, volume, exceptions }: ForSome,
  meant: Meant | undefined,
  sums: readonly number[],
): string | undefined {
  if (doubt !== undefined) return doubt;
  if (!meant) return 'it does not tell for certain which zones are meant';
  if (exceptions !== '' && !speaksOfOthers(zones, meant, exceptions)) return 'it speaks of exceptions';
  if (sums.some((sum) => sum < volumeBounds.least || sum > volumeBounds.most))
    return 'levels would be out of bounds';
  // What the sentence tells of may be what the rows give.
  const levels = name === undefined ? zones.values('volume') : undefined;
  const isGiven =
    levels !== undefined &&
    meant.zones.every((zone) => levels.cells[zone] >= 0 && levels.numbers[zone] === volume);
  return isGiven ? 'the rows give that level already' : undefined;
}

/** Whether a text names zones, and none of those that are meant: `not the close ones` is no exception to others. */
function speaksOfOthers(zones: ZoneList, { zones: those }: Meant, text: string): boolean {
  const others = zonesNamedIn(zones, text);
  return others !== undefined && others !== 'none' && others.zones.every((zone) => !those.includes(zone));
}

/** The zones that a sentence means; `none` where it names none at all, `undefined` where it stays open which. */
function zonesMeant(zones: ZoneList, { name, among, doubt }: ForSome): Meant | 'none' | undefined {
  if (name !== undefined) return doubt === undefined ? zonesCalled(zones, name) : undefined;
  for (const text of among) {
    const meant = zonesNamedIn(zones, text);
    if (meant !== 'none') return meant;
  }
  return 'none';
}

function zonesCalled(zones: ZoneList, name: string): Meant | undefined {
  const all = Array.from({ length: zones.count }, (_, zone) => zone);
  const bare = bareWord(name);
  const dynamic = dynamicOf(name);
  const ways: readonly [how: string, isMeant: (zone: number) => boolean][] = [
    [
      `those of the group "${shortened(name)}"`,
      (zone) => isCalled(zones.groupNames[zones.groups[zone]] ?? '', bare),
    ],
    [
      `those that are ${shortened(name)}`,
      (zone) =>
        dynamic >= 0 &&
        !zones.areLayersNumbered &&
        (zones.dynamics?.cells[zone] ?? -1) >= 0 &&
        zones.dynamics?.numbers[zone] === dynamic,
    ],
    [`those with "${shortened(name)}" in their names`, (zone) => partsOf(zones.sample(zone)).includes(bare)],
    [
      `those whose names say "${shortened(name)}"`,
      (zone) => dynamic >= 0 && partsOf(zones.sample(zone)).some((part) => dynamicIn(part) === dynamic),
    ],
  ];
  for (const [how, isMeant] of ways) {
    const found = all.filter(isMeant);
    if (found.length > 0) return { zones: found, how };
  }
  return ofLayer(zones, all, dynamic);
}

/** The zones of the groups, or with the dynamic or the word in their names, that a text names in any of its words. */
function zonesNamedIn(zones: ZoneList, text: string): Meant | 'none' | undefined {
  const all = Array.from({ length: zones.count }, (_, zone) => zone);
  const groups = groupsNamedIn(
    [...new Set(zones.groups.slice(0, zones.count))].map((group) => zones.groupNames[group] ?? ''),
    text,
  );
  if (groups === undefined) return undefined;
  if (groups.length > 0) {
    const found = all.filter((zone) => groups.includes(zones.groupNames[zones.groups[zone]] ?? ''));
    return {
      zones: found,
      how: `those of the ${groups.length === 1 ? 'group' : 'groups'} ${listText(
        groups.map((one) => `"${shortened(one)}"`),
        'and',
      )}`,
    };
  }
  const meant = namesOfRows(text).flatMap((name) => zonesCalled(zones, name) ?? []);
  const [first] = meant;
  if (!first) {
    const ofKind = zonesOfKindNamed(zones, text);
    if (ofKind?.length === 0) return 'none';
    return ofKind && { zones: ofKind, how: 'those that it names by what they are' };
  }
  const isOne = meant.every((one) => one.zones.join() === first.zones.join());
  return isOne && first.zones.length < zones.count ? first : undefined;
}

/** Where there are two layers of velocities, soft ones are the lower and loud ones the upper. */
function ofLayer(zones: ZoneList, all: readonly number[], dynamic: number): Meant | undefined {
  const [low, high] = [zones.values('lovel'), zones.values('hivel')];
  const isSoft = dynamic === dynamicIn('p');
  if (!isSoft && dynamic !== dynamicIn('f')) return undefined;
  const rangeOf = (zone: number) => `${low?.oneMore(zone) || 2}-${high?.oneMore(zone) || 128}`;
  const ranges = [...new Set(all.map(rangeOf))].sort(
    (a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10),
  );
  const [lower = '', upper = ''] = ranges;
  if (ranges.length !== 2 || Number(lower.split('-')[1]) >= Number(upper.split('-')[0])) return undefined;
  const range = isSoft ? lower : upper;
  return {
    zones: all.filter((zone) => rangeOf(zone) === range),
    how: `the ${isSoft ? 'lower' : 'upper'} of two layers`,
  };
}

/** A dynamic by its word, inflected or not; −1 for none. */
function dynamicOf(name: string): number {
  const known = dynamicIn(name);
  if (known >= 0) return known;
  const end = loudnessEnd(name);
  return end === undefined ? -1 : dynamicIn(end === 'soft' ? 'p' : 'f');
}

function isCalled(group: string, bare: string): boolean {
  return group !== '' && (bareWord(group) === bare || partsOf(group).includes(bare));
}

/** The words and letters of a name, without its folder and its ending: `dulc_1s` has `dulc`, `1` and `s`. */
function partsOf(name: string): string[] {
  const file = name.replace(/^.*[/\\]/, '').replace(/\.\w{1,5}$/, '');
  // The letter of a note is no part that a text means: `_A4_b` is none of the `_a` files.
  const stem = file.replace(/(?<![\p{L}\d])[a-g][#b]?-?\d(?![\p{L}\d])/giu, ' ');
  return (bareWord(stem).match(/\p{L}+|\d+/gu) ?? []) as string[];
}
