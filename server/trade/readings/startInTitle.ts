import { wordsOf } from '../languages/spelling';
import { turningWords } from '../turningWords';
import { namesKey, startInWords } from './triggerPhrases';
import { triggerOf } from './triggers';

/** A longer piece of a title is a sentence. */
const mostWords = 4;
const pieces = /[:;,()[\]/|\u2013\u2014\uff08\uff09\u3001\uff1a]|\s-\s|[.!?](?=\s|$)/u;
const onRelease =
  /\b(?:key|note)[- ]?(?:off|up)\b|\b(?:play|trigger|start|sound|fire)\w* (?:on|at|by|with|upon) (?:the )?(?:key )?release|\bon release\b|\brelease (?:samples?|noises?|triggers?|sounds?)\b|\bwhen (?:the key is )?(?:let go|released)|beim loslassen|au rel[\u00e2a]chement|al soltar|al rilascio|ao soltar|bij (?:het )?loslaten|vid sl\u00e4pp|ved slip|przy puszczeniu|při puštění|при отпускании|離鍵/iu;
/** Starts of words for what sounds then, without accents: `Loslassgeräusche`. */
const releaseNoise =
  /^(?:releas|loslass|loslaat|relach|rilasc|slapp|slipp?(?:lyd|stoj|stoy)|puszcz|zwolnien|vapaut|liberac|pusten|uvoln|отпуск|отпущ)/u;
/** Words with which letting the key go is what ends a sound, or is left out. */
const ending = new RegExp(
  // In Portuguese `no` is `at the`.
  String.raw`(?!no (?:soltar|momento|release))${turningWords('not', 'none', 'without')}|(?<!\p{L})(?:keeps?|continu\p{L}*|ring(?:s|ing)?|held|holds?|sustain(?:s|ed)|damp\p{L}*|chok\p{L}*|cut(?:s| off)?|d\u00e4mpf\p{L}*|ged\u00e4mpf\p{L}*|weiter\p{L}*|nachkling\p{L}*|\u00e9touff\p{L}*|apag\p{L}*|smorz\p{L}*|d\u00e4mpa\p{L}*|d\u00e6mp\p{L}*|demp\p{L}*|t\u0142um\p{L}*|until|till|stops?|ends?|mute[ds]?|silent|fade[sd]?|bis|stoppt|endet|verstumm\p{L}*|jusqu\p{L}*|s'arr\u00eate\p{L}*|hasta|termina\p{L}*|fino|finch\u00e9|si ferma|at\u00e9|tot|stopt|tills|slutar|indtil|asti|do (?:puszcz|zwoln)\p{L}*|dokud|до)(?!\p{L})|まで|까지`,
  'iu',
);

/**
 * What starts the zones below a title, such as `Release samples`, `Note-off noises` or `Klappern (klingt, sobald die Taste losgelassen
 * wird)`. `undefined` where it says nothing, or both.
 */
export function startInTitle(title: string): 'attack' | 'release' | undefined {
  const said = title.split(pieces).map(startInPiece);
  const [isReleased, isPressed] = [said.includes('release'), said.includes('attack')];
  return isReleased === isPressed ? undefined : isReleased ? 'release' : 'attack';
}

/** Whether a text says that what it speaks of sounds when a key is let go, and not only for how long: `klingen beim Loslassen der Taste`. */
export function saysOnRelease(text: string): boolean {
  return text.split(pieces).some(isOnRelease);
}

/** Whether letting a key go ends what a text speaks of, or plays no part in it: `sounds until the key is let go`. */
export function endsOnRelease(text: string): boolean {
  return ending.test(text);
}

function isOnRelease(piece: string): boolean {
  if (endsOnRelease(piece)) return false;
  return onRelease.test(piece) || (startInWords(piece) === 'release' && namesKey(piece));
}

function startInPiece(piece: string): 'attack' | 'release' | undefined {
  const words = wordsOf(piece);
  if (words.length > mostWords)
    return isOnRelease(piece) ? 'release' : startInWords(piece) === 'attack' ? 'attack' : undefined;
  const said = words.flatMap((word, at) => [triggerOf(word), triggerOf(words.slice(at, at + 2).join(' '))]);
  const isReleased = said.includes('release') || words.some((word) => releaseNoise.test(word));
  if (isReleased && !endsOnRelease(piece)) return 'release';
  return said.includes('attack') ? 'attack' : undefined;
}
