import { median } from '../model/median';
import { velocitiesOfLayer } from '../trade/layerVelocities';
import { leastLayerStep, orderedLayers } from './layers';
import type { Placed } from './placed';
import { grouped } from './placed';

/**
 * Gives the recordings of each key their velocities and their turns: by the names of layers; where there are none, by loudness
 * where that differs, else as round robins. The recordings are changed in place; answers notes.
 */
export function placeVelocities(placed: readonly Placed[]): string[] {
  const notes = new Set<string>();
  for (const [section, members] of grouped(placed, (one) => one.family)) {
    const labels = new Set(members.map(({ layer }) => layer));
    if (labels.size > 1 || members.some(({ layer }) => layer?.startsWith('#')))
      for (const note of byName(section, members)) notes.add(note);
    else for (const note of byEar(section, members)) notes.add(note);
  }
  for (const members of grouped(placed, ({ family, root, lowVelocity, pan }) =>
    [family, root, lowVelocity, pan].join('\n'),
  ).values()) {
    members.sort((a, b) => a.turn - b.turn);
    for (const [at, one] of members.entries()) {
      one.position = at + 1;
      one.length = members.length;
      if (members.length > 1)
        one.because.push(`It is take ${at + 1} of ${members.length} that answer the same: they take turns.`);
    }
  }
  return [...notes];
}

function byName(section: string, members: readonly Placed[]): string[] {
  const numbers = [
    ...new Set(members.flatMap(({ layer }) => (layer?.startsWith('#') ? [Number(layer.slice(1))] : []))),
  ];
  if (numbers.length > 0) {
    const bounds = numbers.sort((a, b) => a - b);
    for (const one of members) {
      const at = bounds.indexOf(Number(one.layer?.slice(1)));
      one.lowVelocity = (bounds[at - 1] ?? 0) + 1;
      one.highVelocity = at === bounds.length - 1 ? 127 : (bounds[at] ?? 127);
      one.because.push(
        `The number ${bounds[at]} in its name is taken for the highest velocity of its layer.`,
      );
    }
    return [
      `The numbers ${bounds.join(', ')} in the names are taken for the highest velocity of each layer.`,
    ];
  }
  const heard = [...grouped(members, ({ layer }) => layer ?? '')].map(([label, list]) => ({
    label,
    loudness: list.flatMap(({ recording }) => recording.loudness ?? []),
  }));
  const { labels, contradicted } = orderedLayers(heard);
  for (const one of members) {
    const layer = labels.indexOf(one.layer ?? '');
    const { low, high } = velocitiesOfLayer(layer, labels.length);
    const word = one.layer === undefined ? 'Its name says nothing of a layer' : `Its name says ${one.layer}`;
    one.because.push(`${word}: layer ${layer + 1} of ${labels.length}.`);
    one.lowVelocity = low;
    one.highVelocity = high;
  }
  const shown = labels.map((label) => (label === '' ? 'without a word' : label)).join(', ');
  const where = section === '' ? '' : ` of ${section}`;
  return [
    `The layers${where} share the velocities in equal parts, from soft to loud: ${shown}.`,
    ...(contradicted
      ? [`By their loudness the layers${where} are in another order than by their names: listen to them.`]
      : []),
  ];
}

function byEar(section: string, members: readonly Placed[]): string[] {
  const several = [...grouped(members, ({ root, pan }) => `${root} ${pan}`).values()].filter(
    (one) => one.length > 1,
  );
  if (several.length === 0) return [];
  const steps = several.map((list) => {
    const loudness = list.flatMap(({ recording }) => recording.loudness ?? []);
    return loudness.length < 2 ? 0 : (Math.max(...loudness) - Math.min(...loudness)) / (loudness.length - 1);
  });
  const where = section === '' ? '' : ` in ${section}`;
  if (median(steps) < leastLayerStep)
    return [`Several recordings of a key${where} are about as loud: they are taken for round robins.`];
  for (const list of several) {
    list.sort((a, b) => (a.recording.loudness ?? -100) - (b.recording.loudness ?? -100));
    for (const [at, one] of list.entries()) {
      const { low, high } = velocitiesOfLayer(at, list.length);
      const lufs = one.recording.loudness?.toFixed(1).replace('-', '−');
      one.because.push(
        `At ${lufs} LUFS it is layer ${at + 1} of ${list.length} on its key, from soft to loud.`,
      );
      one.lowVelocity = low;
      one.highVelocity = high;
    }
  }
  const isDownwards = several.every((list) =>
    list.every((one, at) => at === 0 || one.turn < (list[at - 1]?.turn ?? 0)),
  );
  return [
    `Several recordings of a key${where} differ in loudness: they are taken for layers, the softest lowest.`,
    ...(isDownwards ? ['The numbers in the names count from loud to soft: the loudness decides.'] : []),
  ];
}
