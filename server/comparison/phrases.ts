import type { PlayableInstrument } from '../playing/playable/playableInstrument';
import { createPlayer } from '../playing/player/createPlayer';
import { playMessage } from '../playing/player/playMessage';
import type { PlayedNote } from '../playing/sweep/playedNote';
import { messagesOf } from '../playing/sweep/playedNote';
import type { RegionPair } from './causes';
import { regionsInScope } from './polyphonyScopes';
import type { ComparedSide } from './regionLikeness';
import { sameData } from './sameData';

/** Strikes in a phrase at the most: bounds on more voices than this are told by the text alone (our choice). */
const mostStrikes = 16;
/** Phrases that are tried without a sound, and that are heard (our choice). */
const mostTried = 64;
const mostHeard = 3;

/** Short phrases around a note in which the voices of two sides end otherwise: it is struck again, or with keys that end it or that it ends. */
export function phrasesOf(
  note: PlayedNote,
  sides: readonly [ComparedSide, ComparedSide],
  pair: RegionPair,
): PlayedNote[] {
  const [a, b] = sides.map(({ playable }) => playable);
  const heard: PlayedNote[] = [];
  let tried = 0;
  for (const phrase of phrasesAround(note, [a, b], pair)) {
    if (heard.length === mostHeard || tried++ === mostTried) break;
    if (!sameData(endsIn(a, phrase), endsIn(b, phrase))) heard.push(phrase);
  }
  return heard;
}

function* phrasesAround(
  note: PlayedNote,
  [a, b]: readonly [PlayableInstrument, PlayableInstrument],
  pair: RegionPair,
): Generator<PlayedNote> {
  const { key, velocity } = note;
  const bounds = [a.polyphony[pair.a], b.polyphony[pair.b], a.notePolyphony[pair.a], b.notePolyphony[pair.b]];
  const counts = [...new Set(bounds.filter((bound) => bound > 0 && bound < mostStrikes))];
  const softest = Math.max(1, Math.ceil(a.lowVelocity[pair.a]));
  const others = [...new Set([...strikesBeside(a, pair.a), ...strikesBeside(b, pair.b)])].map(strikeOfCode);
  for (const count of counts.toSorted((one, two) => one - two)) {
    const again = (one: { key: number; velocity: number }) =>
      Array.from({ length: count }, () => ({ key: one.key, velocity: one.velocity }));
    yield { ...note, followedBy: again({ key, velocity }) };
    yield { ...note, followedBy: again({ key, velocity: softest }) };
    for (const other of others) yield { ...note, followedBy: again(other) };
  }
  for (const other of others) {
    yield { ...note, followedBy: [other] };
    yield { ...note, ...other, followedBy: [{ key, velocity }] };
  }
}

/** Keys and velocities of regions that end a region, that it ends, or that count with it, each as one number. */
function strikesBeside(playable: PlayableInstrument, region: number): number[] {
  const { group, offBy, lowKey, lowVelocity, highVelocity, polyphonyScope } = playable;
  const strikes = new Set<number>();
  const counted = new Set(polyphonyScope[region] < 0 ? [] : regionsInScope(playable, region));
  for (let other = 0; other < playable.regionCount; other++) {
    const endsIt = offBy[region] !== 0 && offBy[region] === group[other];
    const isEnded = offBy[other] !== 0 && offBy[other] === group[region];
    if (lowKey[other] < 0 || !(endsIt || isEnded || counted.has(other))) continue;
    const velocity = Math.max(1, Math.min(127, Math.round((lowVelocity[other] + highVelocity[other]) / 2)));
    strikes.add(lowKey[other] * 128 + velocity);
  }
  return [...strikes];
}

function strikeOfCode(code: number): { key: number; velocity: number } {
  return { key: code >> 7, velocity: code & 127 };
}

/** When and how voices of a phrase end because of others, by the order in which they started. */
function endsIn(playable: PlayableInstrument, phrase: PlayedNote): unknown[] {
  const { channel, tempoBpm } = phrase;
  const player = createPlayer(playable, { ...(channel && { channel }), ...(tempoBpm && { tempoBpm }) });
  const order = new Map<number, number>();
  const ends: unknown[] = [];
  for (const { seconds, message } of messagesOf(phrase)) {
    for (const event of playMessage(player, message, seconds)) {
      if (event.kind === 'start') order.set(event.voice, order.size);
      else if (event.kind === 'stop') ends.push([seconds, order.get(event.voice), event.how]);
    }
  }
  return ends;
}
