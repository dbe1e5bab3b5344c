import { noteNameOf } from '../model/keys';
import { counted } from '../model/wording/counted';
import type { Placed } from './placed';
import { grouped } from './placed';

/** Recordings that are stretched further than this from their root are told, in semitones (our choice). */
const farthest = 12;
const mostShown = 6;

/** What is to be told of the whole: groups that sound together, layers that keys lack, keys far from a recording. */
export function placementNotes(placed: readonly Placed[]): string[] {
  return [...togetherNotes(placed), ...groupNotes(placed), ...lackingLayers(placed), ...gapNotes(placed)];
}

/** Groups that lie on the same keys sound together as long as nothing parts them. */
function togetherNotes(placed: readonly Placed[]): string[] {
  const struck = placed.filter(({ isRelease }) => !isRelease);
  const articulations = grouped(struck, ({ articulation }) => articulation);
  if (articulations.size < 2) return [];
  const roots = [...articulations.values()].map((list) => new Set(list.map(({ root }) => root)));
  const range = roots.map((own) => [Math.min(...own), Math.max(...own)]);
  const overlap = range.some(([low, high], at) =>
    range.some(([otherLow, otherHigh], other) => other < at && low <= otherHigh && otherLow <= high),
  );
  if (!overlap) return [];
  const shown = [...articulations.keys()].map((word) => (word === '' ? 'without a word' : word)).sort();
  return [
    `The articulations ${shown.join(', ')} lie on the same keys and sound together. Separate them with keyswitches, or make an instrument of each.`,
  ];
}

/** Says which microphones sound together, and how many recordings sound when a key goes up. */
function groupNotes(placed: readonly Placed[]): string[] {
  const microphones = new Set(placed.map(({ microphone }) => microphone).filter((word) => word !== ''));
  const released = placed.filter(({ isRelease }) => isRelease).length;
  return [
    ...(microphones.size < 2
      ? []
      : [
          `The microphones ${[...microphones].sort().join(', ')} sound together. Turn down those that you do not need.`,
        ]),
    ...(released === 0 || released === placed.length
      ? []
      : [`${counted(released, 'recording sounds', 'recordings sound')} when the key goes up.`]),
  ];
}

/** Says which keys have fewer layers than others of their group. */
function lackingLayers(placed: readonly Placed[]): string[] {
  return [...grouped(placed, ({ family }) => family)].flatMap(([family, members]) => {
    const layered = members.filter(({ isForAllLayers }) => !isForAllLayers);
    const layers = new Set(layered.map(({ lowVelocity }) => lowVelocity)).size;
    const lacking = [...grouped(layered, ({ root }) => String(root)).values()].filter(
      (list) => new Set(list.map(({ lowVelocity }) => lowVelocity)).size < layers,
    );
    const where = family === '' ? '' : ` of ${family}`;
    const alone = members.filter(({ isForAllLayers }) => isForAllLayers);
    return [
      ...(lacking.length === 0
        ? []
        : [
            `Not all layers${where} were recorded at ${keysShown(lacking.map(([one]) => one.root))}. There the nearest recordings of the same layer sound.`,
          ]),
      ...(alone.length === 0
        ? []
        : [
            `The recordings${where} at ${keysShown(alone.map(({ root }) => root))} have no word for a layer and no other layers beside them, so they sound at all velocities.`,
          ]),
    ];
  });
}

/** Says between which roots keys lie that are far from all. */
function gapNotes(placed: readonly Placed[]): string[] {
  const gaps = new Set<string>();
  for (const members of grouped(
    placed.filter(({ isRelease }) => !isRelease),
    ({ section, layer }) => `${section}\n${layer ?? ''}`,
  ).values()) {
    const roots = [...new Set(members.map(({ root }) => root))].sort((a, b) => a - b);
    for (const [at, root] of roots.entries()) {
      const next = roots.at(at + 1);
      if (next !== undefined && next - root > 2 * farthest)
        gaps.add(
          `Nothing was recorded between ${noteNameOf(root)} and ${noteNameOf(next)}, ${counted(next - root, 'semitone')} apart: keys there are stretched by up to ${Math.floor((next - root) / 2)}.`,
        );
    }
  }
  return [...gaps];
}

/** The names of keys, the first few. */
export function keysShown(keys: readonly number[]): string {
  const names = [...new Set(keys)].sort((a, b) => a - b).map(noteNameOf);
  const more = names.length - mostShown;
  return more > 1 ? `${names.slice(0, mostShown).join(', ')} and ${more} more` : names.join(', ');
}
