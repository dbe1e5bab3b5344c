import { median } from '../model/median';
import { leastLayerStep } from './layers';
import type { NamePart } from './parts';
import type { Placed } from './placed';
import { grouped } from './placed';

/** Recordings with what their paths say. */
export type Pending = readonly { one: Placed; part: NamePart }[];

/** What words without a known meaning are taken for. */
export type WordKind = 'layer' | 'articulation' | 'microphone' | 'turn' | 'release';

/** The unknown words of one place of a recording's path, and what they are taken for. */
export interface UnknownWord {
  kind: WordKind;
  word: string;
}

/** No more words of one place are told apart (our choice). */
const mostWords = 8;
/** Lengths that differ by less tell nothing (our choice). */
const likeLength = 0.8;
/** What is shorter by so much and softer by so many LU may be of a key that goes up (our choice). */
const releaseLength = 0.5;
const releaseStep = 10;
/** The share of keys that have to show the same (our choice). */
const mostKeys = 0.75;

const kinds: readonly WordKind[] = ['articulation', 'microphone', 'layer', 'turn'];
/** Words that count takes or strokes of one kind instead of naming another sound (common practice). */
const countingWords =
  /^(?:[a-h]|up|down|upbow|downbow|auf|ab|aufstrich|abstrich|pousse|tire|alt|alternate|alternativ|var|variant|variante|variation|copy|bis|again|repeat|first|second|third|one|two|three)$/;

/**
 * What the words that no list knows are taken for, by recording: what others have in the same place, else what is heard. They count
 * only where they come back on several keys.
 */
export function unknownWordsOf(pending: Pending): ReadonlyMap<Placed, readonly UnknownWord[]> {
  const found = new Map<Placed, UnknownWord[]>();
  const depths = [...new Set(pending.flatMap(({ part }) => [...part.places.keys()]))].sort((a, b) => a - b);
  // Folders first, from the outermost in; what they hold is looked at apart.
  const order = [...depths.filter((depth) => depth >= 0), -1];
  const scopeOf = new Map<Placed, string>(
    pending.map(({ one, part }) => [one, [part.articulation, part.isRelease, part.microphone].join('\n')]),
  );
  for (const depth of order) {
    const shown = new Map(
      pending.flatMap(({ part }) => {
        const place = part.places.get(depth);
        return place ? [[place.unknown, place.shown] as const] : [];
      }),
    );
    const scopes = [...grouped(pending, ({ one }) => scopeOf.get(one) ?? '').values()];
    const byCompany = kindByCompany(pending, depth);
    for (const scope of byCompany ? [pending] : scopes) {
      const release = byCompany ? undefined : releaseByEar(scope, depth);
      const others =
        release === undefined ? scope : scope.filter(({ part }) => wordAt(part, depth) !== release);
      const rest = byCompany ?? kindByEar(others, depth);
      for (const { one, part } of scope) {
        const word = wordAt(part, depth);
        const kind = word === release ? 'release' : rest;
        if (!kind || (word === '' && byCompany)) continue;
        found.set(one, [...(found.get(one) ?? []), { kind, word: shown.get(word) ?? word }]);
        if (kind === 'articulation' || kind === 'microphone')
          scopeOf.set(one, `${scopeOf.get(one)}\n${word}`);
      }
    }
  }
  return found;
}

function wordAt(part: NamePart, depth: number): string {
  return part.places.get(depth)?.unknown ?? '';
}

/** What unknown words are where all others have a mark of one kind in the same place. */
function kindByCompany(pending: Pending, depth: number): WordKind | undefined {
  const unknown = pending.filter(({ part }) => wordAt(part, depth) !== '');
  const others = pending.filter(({ part }) => wordAt(part, depth) === '');
  if (unknown.length === 0 || others.length === 0) return undefined;
  const [roots, otherRoots] = [unknown, others].map((list) => new Set(list.map(({ one }) => one.root)));
  if (![...roots].some((root) => otherRoots.has(root))) return undefined;
  const kind = kinds.find(
    (one) =>
      others.every(({ part }) => part.places.get(depth)?.marks.has(one)) &&
      !unknown.some(({ part }) => part.places.get(depth)?.marks.has(one)),
  );
  return kind === 'layer' && areOfRelease(unknown, others) ? 'release' : kind;
}

/** Whether recordings are much shorter and softer than all others of their keys, as the sound of a key that goes up is. */
function areOfRelease(some: Pending, others: Pending): boolean {
  const byRoot = grouped(others, ({ one }) => String(one.root));
  const alike = some.filter(({ one }) => {
    const beside = (byRoot.get(String(one.root)) ?? []).map((other) => other.one.recording);
    const loudness = one.recording.loudness ?? -70;
    return (
      beside.length > 0 &&
      beside.every(
        (other) => one.recording.frames < releaseLength * other.frames && loudness < (other.loudness ?? -70),
      ) &&
      beside.some((other) => loudness + releaseStep < (other.loudness ?? -70))
    );
  });
  return alike.length >= mostKeys * some.length;
}

/** The one word of which the recordings sound as those of keys that go up do, beside others of their keys. */
function releaseByEar(scope: Pending, depth: number): string | undefined {
  const byWord = grouped(scope, ({ part }) => wordAt(part, depth));
  if (byWord.size < 2 || (byWord.size === 2 && !byWord.has(''))) return undefined;
  for (const [word, list] of byWord) {
    const others = scope.filter(({ part }) => wordAt(part, depth) !== word);
    if (word !== '' && new Set(list.map(({ one }) => one.root)).size > 1 && areOfRelease(list, others))
      return word;
  }
  return undefined;
}

function kindByEar(scope: Pending, depth: number): WordKind | undefined {
  const byWord = grouped(scope, ({ part }) => wordAt(part, depth));
  const known = [...byWord].filter(
    ([, list]) => new Set(list.map(({ one }) => one.root)).size > 1 || scope.length < 4,
  );
  if (known.length < 2 || known.length > mostWords) return undefined;
  const isKnown = new Set(known.map(([word]) => word));
  const like = scope.filter(({ part }) => isKnown.has(wordAt(part, depth)));
  const contexts = [
    ...grouped(like, ({ one, part }) => `${one.root}\n${part.layer ?? ''}\n${part.turn ?? ''}`).values(),
  ].map((list) => grouped(list, ({ part }) => wordAt(part, depth)));
  const several = contexts.filter((words) => words.size > 1);
  if (several.length === 0 || several.length < contexts.length / 3) return undefined;
  const words = [...isKnown];
  const areCounted = words.every((word) => word === '' || countingWords.test(word));
  if (!areCounted && areSameStrokes(several)) return 'microphone';
  if (isStepped(several)) return 'layer';
  if (areCounted) return 'turn';
  return depth < 0 && areAlike(several) ? 'turn' : 'articulation';
}

/** The recordings of one key by their words. */
type Context = ReadonlyMap<string, Pending>;

/** Whether each key's recordings are of one length to the frame, and those of other keys of other lengths: one stroke, heard from several places. */
function areSameStrokes(contexts: readonly Context[]): boolean {
  const lengths = contexts.map((words) => [
    ...new Set(
      [...words.values()].map((list) =>
        list
          .map(({ one }) => one.recording.frames)
          .sort()
          .join(),
      ),
    ),
  ]);
  return (
    lengths.every((own) => own.length === 1) &&
    new Set(lengths.flat()).size > Math.max(2, contexts.length / 2)
  );
}

/** Whether words differ in loudness as layers do: by enough, and in the same order on most keys. */
function isStepped(contexts: readonly Context[]): boolean {
  const heard = contexts.map((words) =>
    [...words]
      .map(([word, list]) => ({
        word,
        loudness: median(list.map(({ one }) => one.recording.loudness ?? -70)),
      }))
      .sort((a, b) => a.loudness - b.loudness),
  );
  const spans = heard.map((list) => list[list.length - 1].loudness - list[0].loudness).sort((a, b) => a - b);
  if (spans[Math.floor(spans.length / 4)] < leastLayerStep) return false;
  const orders = grouped(heard, (list) => list.map(({ word }) => word).join('\n'));
  return Math.max(...[...orders.values()].map((list) => list.length)) >= mostKeys * contexts.length;
}

/** Whether nothing that is measured tells the recordings of a key apart. */
function areAlike(contexts: readonly Context[]): boolean {
  const alike = contexts.filter((words) => {
    const lengths = [...words.values()].map((list) => median(list.map(({ one }) => one.recording.frames)));
    const loudness = [...words.values()].map((list) =>
      median(list.map(({ one }) => one.recording.loudness ?? -70)),
    );
    return (
      Math.min(...lengths) >= likeLength * Math.max(...lengths) &&
      Math.max(...loudness) - Math.min(...loudness) < leastLayerStep / 2
    );
  });
  return alike.length >= mostKeys * contexts.length;
}
