import { namesAudioFileIn } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import type { ColumnMeaning } from '../../../trade/meaning';
import { readKey, readKeyRange } from '../../../trade/readings/keyReading';
import { letterNote } from '../../../trade/readings/notePatterns';
import type { PlacedValue } from './clauseReader';
import { toldIn } from './toldLine';

const longest = 120;
const key = String.raw`(?:${letterNote}-?\d|\d{1,3})`;
/** A note, its number in brackets, and what stands behind. */
const led = new RegExp(
  String.raw`^([\s#*=\u2022\[-]*)(${key})(?:\s?[([](${key})[)\]])?(?![\p{L}\p{N}])[\s:,;=\u2013\u2014/|-]*(\S.*)?$`,
  'u',
);
const ofKeys: ReadonlySet<ColumnMeaning> = new Set(['key_range', 'lokey', 'hikey', 'key', 'pitch_keycenter']);

/**
 * The root and the keys that a title gives to the files below it: `A3 (57)  keys 55-58`, `Keys 55-58, root 57`. `undefined` for a line that
 * names a file or says anything else.
 */
export function keyTitle(text: string, { start, end }: Stretch): PlacedValue[] | undefined {
  const line = text.slice(start, end);
  if (line.length > longest || !/\d/.test(line) || namesAudioFileIn(line)) return undefined;
  const [, before = '', first = '', second, rest = ''] = led.exec(line.trimEnd()) ?? [];
  const keys =
    rest === '' ? undefined : keysIn(text, { start: start + line.indexOf(rest, before.length), end });
  const root = keys && rootOf(first, second);
  if (keys && root !== undefined && keys.every(({ meaning }) => meaning !== 'pitch_keycenter')) {
    const at = start + before.length;
    return [
      { meaning: 'pitch_keycenter', text: root, isNamed: true, start: at, end: at + first.length },
      ...keys,
    ];
  }
  return keysIn(text, { start, end });
}

/** The keys in a stretch that says nothing else. */
function keysIn(text: string, { start, end }: Stretch): PlacedValue[] | undefined {
  const written = text.slice(start, end).trim();
  const range = readKeyRange(written);
  if (range && !range.single && /^\S+(?:\s?\S\s?\S+)?$/u.test(written))
    return [{ meaning: 'key_range', text: written, isNamed: true, start, end: start + written.length }];
  const { values, rest } = toldIn(text, { start, end });
  const areKeys =
    values.some(({ meaning }) => meaning === 'key_range') &&
    values.every(({ meaning, isNamed, isOpen }) => isNamed && !isOpen && ofKeys.has(meaning)) &&
    !values.some(({ meaning }) => meaning === 'hikey' || meaning === 'lokey');
  if (!areKeys || rest.length > 0) return undefined;
  const hasRoot = values.some(({ meaning }) => meaning === 'pitch_keycenter');
  const asRoot = (one: PlacedValue): PlacedValue =>
    one.meaning === 'key' ? { ...one, meaning: 'pitch_keycenter' } : one;
  // Beside its keys, a note is the one that the title names.
  return hasRoot ? values.filter(({ meaning }) => meaning !== 'key') : values.map(asRoot);
}

/** The one root that two names of it give, the number before the note; `undefined` where they are two keys. */
function rootOf(first: string, second: string | undefined): string | undefined {
  if (second === undefined) return first;
  const [one, other] = [readKey(first), readKey(second)];
  const [number, named] = [one?.number ?? other?.number, one?.named ?? other?.named];
  if (number === undefined || named === undefined || (number - named) % 12 !== 0) return undefined;
  return one?.number === undefined ? second : first;
}
