import { drumKeysOf } from '../trade/names/drumKeys';
import type { NoteReading } from './noteNames';
import type { NamePart } from './parts';
import type { Placed } from './placed';
import { grouped, placedAt } from './placed';
import type { Recording } from './recording';
import type { Root } from './root';

/** The lowest key of sounds that have none of their own: the bass drum of General MIDI System Level 1. */
const firstKey = 36;

/**
 * Places recordings without notes: each sound on a key of its own, by the number in its name or its file, by the percussion key
 * map of General MIDI System Level 1 (MIDI Manufacturers Association, 1991), or on the next free one.
 */
export function placeKit(
  recordings: readonly Recording[],
  parts: readonly NamePart[],
  roots: readonly (Root | undefined)[],
  reading: NoteReading | undefined,
  notes: string[],
): Placed[] {
  const all = recordings.map((recording, at) => ({ recording, at, part: parts[at] as NamePart }));
  const sounds = new Map<string, typeof all>();
  for (const [base, list] of grouped(all, ({ part, recording }) => soundOf(part, recording))) {
    if (areLayers(list.map(({ part }) => part.layer))) sounds.set(base, list);
    else
      for (const [word, some] of grouped(list, ({ part }) => part.layer ?? ''))
        sounds.set(`${base} ${word}`.trim(), some);
  }
  const given = [...sounds.values()].map((list) =>
    givenKey(
      list.map(({ at }) => at),
      roots,
      reading,
    ),
  );
  const areGiven = given.every((key) => key !== undefined) && new Set(given).size === given.length;
  const taken = new Set<number>();
  const placed: Placed[] = [];
  for (const [number, [sound, list]] of [...sounds].entries()) {
    const wished = drumKeysOf(sound);
    const key = areGiven ? (given[number] as number) : freeKey(wished, taken);
    if (key === undefined) continue;
    const because = areGiven
      ? 'It sounds no note; its name or its file gives this key.'
      : wished.includes(key)
        ? `It sounds no note; "${sound}" has this key in the General MIDI key map.`
        : `It sounds no note; "${sound}" has the next key that is free.`;
    taken.add(key);
    for (const { recording, part } of list) {
      const one = placedAt(recording, { key, tuneCents: 0 });
      one.because.push(because);
      one.section = part.microphone ?? '';
      one.family = `${sound} ${one.section}`.trim();
      one.layer = areLayers(list.map((other) => other.part.layer)) ? part.layer : undefined;
      one.layerWords = part.layerWords;
      one.velocities = part.velocities;
      one.turn = part.turn ?? part.numbers.at(-1) ?? 0;
      placed.push(one);
    }
  }
  notes.push(
    areGiven
      ? 'The sounds have no notes; their keys are those that their names or files give.'
      : `The sounds have no notes: each of the ${sounds.size} has a key of its own, drums that of their name in the General MIDI key map.`,
  );
  return placed;
}

/** Whether the recordings of a sound are layers by their names: all have a word for one, and not all the same. */
function areLayers(words: readonly (string | undefined)[]): boolean {
  return !words.includes(undefined) && new Set(words).size > 1;
}

/** A sound by its words, without those for layers and turns; where nothing is left, by its name. */
function soundOf(part: NamePart, { path }: Recording): string {
  const side = part.side ?? '';
  const words = [part.rest, part.articulation ?? '', side, part.isRelease ? 'release' : ''].filter(
    (word) => word !== '',
  );
  const isCounted = part.turn !== undefined || part.layer !== undefined || part.numbers.length > 0;
  return words.length > 0 ? words.join(' ') : isCounted ? 'sound' : path;
}

function givenKey(
  members: readonly number[],
  roots: readonly (Root | undefined)[],
  reading: NoteReading | undefined,
): number | undefined {
  const keys = new Set(
    members.map((at) =>
      reading?.kind === 'numbers'
        ? reading.keys[at]
        : roots[at]?.from === 'file'
          ? roots[at]?.key
          : undefined,
    ),
  );
  return keys.size === 1 ? [...keys][0] : undefined;
}

function freeKey(wished: readonly number[], taken: ReadonlySet<number>): number | undefined {
  const free = wished.find((key) => !taken.has(key));
  if (free !== undefined) return free;
  for (let key = firstKey; key <= 127; key++) if (!taken.has(key)) return key;
  for (let key = firstKey - 1; key >= 0; key--) if (!taken.has(key)) return key;
  return undefined;
}
