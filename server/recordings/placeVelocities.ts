import { median } from '../model/median';
import { velocitiesOfLayer } from '../trade/layerVelocities';
import { leastLayerStep, orderedLayers } from './layers';
import type { Placed } from './placed';
import { grouped } from './placed';
import { keysShown } from './placementNotes';

/** Numbers of layers above this are velocities (our choice). */
const mostLayers = 32;

/**
 * Gives the recordings of each key their velocities and their turns: by the names of layers; where there are none, by loudness
 * where that differs, else as round robins. The recordings are changed in place; answers notes.
 */
export function placeVelocities(placed: readonly Placed[]): string[] {
  // What holds of several families is told once.
  const families = new Map<string, string[]>();
  for (const [family, members] of grouped(placed, (one) => one.family))
    for (const note of placeSection(members)) families.set(note, [...(families.get(note) ?? []), family]);
  const notes = [...families].map(([note, names]) => note.replace(familiesHere, () => familiesShown(names)));
  return [...notes, ...placeTurns(placed)];
}

/** Stands in notes for the families that they are about. */
const familiesHere = '{of families}';
const mostFamilies = 6;

function familiesShown(families: readonly string[]): string {
  if (families.length === 1 && families[0] === '') return '';
  const names = families.map((name) => (name === '' ? 'those without a word' : name));
  const more = names.length - mostFamilies;
  return ` of ${more > 1 ? `${names.slice(0, mostFamilies).join(', ')} and ${more} more` : names.join(', ')}`;
}

function placeSection(members: readonly Placed[]): string[] {
  if (members.some(({ velocities }) => velocities)) return byRange(members);
  const numbers = velocitiesByNumber(members);
  if (numbers) return byNumber(members, numbers);
  const labels = new Set(members.map(({ layer }) => layer));
  if (labels.size === 1) return byEar(members);
  markForAllLayers(members);
  const layered = members.filter(({ isForAllLayers }) => !isForAllLayers);
  return byName(layered);
}

/** Velocities as ranges in the names; recordings without one sound at all. */
function byRange(members: readonly Placed[]): string[] {
  for (const one of members) {
    if (!one.velocities) continue;
    one.lowVelocity = one.velocities.low;
    one.highVelocity = one.velocities.high;
    one.layer = `${one.lowVelocity}-${one.highVelocity}`;
    one.because.push(`Its path gives the velocities ${one.lowVelocity} to ${one.highVelocity}.`);
  }
  const without = members.filter(({ velocities }) => !velocities);
  return [
    `The paths${familiesHere} give the velocities as ranges.`,
    ...(without.length === 0
      ? []
      : [
          `The paths${familiesHere} at ${keysShown(without.map(({ root }) => root))} give none, so all velocities are used.`,
        ]),
  ];
}

/** The velocities that numbers in the names stand for, in rising order; `undefined` where they count layers, or there are none. */
function velocitiesByNumber(members: readonly Placed[]): number[] | undefined {
  const numbers = members.map(({ layer }) => /^(?:#|v)(\d+)$/.exec(layer ?? '')?.[1]);
  if (numbers.includes(undefined) && !members.some(({ layer }) => layer?.startsWith('#'))) return undefined;
  const distinct = [...new Set(numbers.flatMap((one) => (one === undefined ? [] : [Number(one)])))].sort(
    (a, b) => a - b,
  );
  const [highest = 0] = distinct.slice(-1);
  return highest > mostLayers && highest <= 127 && distinct.length > 1 ? distinct : undefined;
}

function byNumber(members: readonly Placed[], bounds: readonly number[]): string[] {
  for (const one of members) {
    const number = Number(one.layer?.slice(1));
    const at = bounds.indexOf(number);
    if (at < 0) continue;
    one.layer = `#${number}`;
    one.lowVelocity = (bounds[at - 1] ?? 0) + 1;
    one.highVelocity = at === bounds.length - 1 ? 127 : bounds[at];
    one.because.push(`The number ${bounds[at]} in its name is read as the highest velocity of its layer.`);
  }
  return [`The numbers ${bounds.join(', ')} in the names are read as the highest velocity of each layer.`];
}

/** Marks recordings without the name of a layer that are alone on their keys, where others have one. */
function markForAllLayers(members: readonly Placed[]): void {
  const keys = grouped(members, ({ root }) => String(root));
  const unnamed = [...keys.values()].filter((list) => list.every(({ layer }) => (layer ?? '') === ''));
  if (unnamed.length === 0 || unnamed.length > keys.size / 2) return;
  for (const one of unnamed.flat()) one.isForAllLayers = true;
}

function byName(members: readonly Placed[]): string[] {
  const heard = [...grouped(members, ({ layer }) => layer ?? '')].map(([label, list]) => ({
    label,
    loudness: list.flatMap(({ recording }) => recording.loudness ?? []),
  }));
  const { labels, order } = orderedLayers(heard);
  for (const one of members) {
    const layer = labels.indexOf(one.layer ?? '');
    const { low, high } = velocitiesOfLayer(layer, labels.length);
    const word =
      (one.layer ?? '') === ''
        ? 'Its name says nothing of a layer'
        : `Its name says "${one.layerWords ?? one.layer}"`;
    one.because.push(`${word}: layer ${layer + 1} of ${labels.length}.`);
    one.lowVelocity = low;
    one.highVelocity = high;
  }
  if (labels.length < 2) return [];
  const shown = labels.map((label) => (label === '' ? 'without a word' : label)).join(', ');
  const odd = order === 'contradicted' ? [] : oddKeys(members, labels);
  return [
    `The layers${familiesHere} share the velocities in equal parts, from soft to loud: ${shown}.`,
    ...(order === 'contradicted'
      ? [`Loudness and names give the layers${familiesHere} different orders. Listen to them.`]
      : []),
    ...(order === 'alike'
      ? [`The layers${familiesHere} are about equally loud, so only their names give their order.`]
      : []),
    ...(odd.length === 0
      ? []
      : [
          `At ${keysShown(odd)} loudness and names give the layers${familiesHere} different orders. The names count. Listen to them.`,
        ]),
  ];
}

/** The roots at which layers are clearly louder than ones above them. */
function oddKeys(members: readonly Placed[], labels: readonly string[]): number[] {
  return [...grouped(members, ({ root }) => String(root)).values()].flatMap((list) => {
    const heard = list.map(({ layer, recording }) => ({
      layer: labels.indexOf(layer ?? ''),
      loudness: recording.loudness ?? -70,
    }));
    const isOdd = heard.some((soft) =>
      heard.some((loud) => soft.layer < loud.layer && soft.loudness > loud.loudness + leastLayerStep / 2),
    );
    return isOdd ? [list[0].root] : [];
  });
}

function byEar(members: readonly Placed[]): string[] {
  const several = [...grouped(members, ({ root, pan }) => `${root} ${pan}`).values()].filter(
    (one) => one.length > 1,
  );
  if (several.length === 0) return [];
  for (const list of several) list.sort((a, b) => loudnessOf(a) - loudnessOf(b));
  const steps = several.map((list) => {
    const [soft, loud] = [list[0], list[list.length - 1]].map(loudnessOf);
    return (loud - soft) / (list.length - 1);
  });
  const clusters = several.map(clustersOf);
  const counts = clusters.map((list) => list.length);
  const areTakes = median(counts) > 1 && counts.every((count) => count === counts[0]);
  if (median(steps) < leastLayerStep && !areTakes) {
    const shown = several.length * 2 > new Set(members.map(({ root }) => root)).size ? '' : several;
    const keys = shown === '' ? 'a key' : `the same key (${keysShown(shown.map(([one]) => one.root))})`;
    return [
      `Several recordings of ${keys}${familiesHere} are about equally loud, so they are read as round robins.`,
    ];
  }
  for (const [number, list] of several.entries()) {
    const layers = areTakes ? clusters[number] : list.map((one) => [one]);
    for (const [at, layer] of layers.entries()) for (const one of layer) placeByEar(one, at, layers.length);
  }
  return [
    `Several recordings of a key${familiesHere} differ in loudness, so they are read as layers, the softest lowest.`,
    ...(isDownwards(several)
      ? ['The numbers in the names count from loud to soft, so the loudness decides.']
      : []),
  ];
}

function loudnessOf({ recording }: Placed): number {
  return recording.loudness ?? -100;
}

/** Recordings in the order of loudness, parted where that rises by as much as layers differ. */
function clustersOf(list: readonly Placed[]): Placed[][] {
  const clusters: Placed[][] = [];
  for (const [at, one] of list.entries()) {
    const isNext = at === 0 || loudnessOf(one) - loudnessOf(list[at - 1]) >= leastLayerStep;
    if (isNext) clusters.push([one]);
    else clusters[clusters.length - 1].push(one);
  }
  return clusters;
}

function placeByEar(one: Placed, at: number, count: number): void {
  const { low, high } = velocitiesOfLayer(at, count);
  const lufs = one.recording.loudness?.toFixed(1).replace('-', '−');
  one.because.push(`At ${lufs} LUFS it is of layer ${at + 1} of ${count} on its key, from soft to loud.`);
  one.lowVelocity = low;
  one.highVelocity = high;
}

function isDownwards(several: readonly (readonly Placed[])[]): boolean {
  return several.every((list) => list.every((one, at) => at === 0 || one.turn < list[at - 1].turn));
}

/** Gives recordings that answer the same their turns. */
function placeTurns(placed: readonly Placed[]): string[] {
  for (const members of grouped(placed, ({ family, root, lowVelocity, pan }) =>
    [family, root, lowVelocity, pan].join('\n'),
  ).values()) {
    members.sort(
      (a, b) => a.turn - b.turn || (a.turnWord < b.turnWord ? -1 : a.turnWord > b.turnWord ? 1 : 0),
    );
    for (const [at, one] of members.entries()) {
      one.position = at + 1;
      one.length = members.length;
      if (members.length > 1)
        one.because.push(
          `It is take ${at + 1} of ${members.length} with the same keys and velocities; they take turns.`,
        );
    }
  }
  const words = [...new Set(placed.map(({ turnWord }) => turnWord))].filter((word) => word !== '').sort();
  return words.length === 0
    ? []
    : [`Recordings with the words ${words.join(', ')} take turns, because nothing else tells them apart.`];
}
