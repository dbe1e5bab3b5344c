import { everyWords } from '../../everyWords';
import { bareWord } from '../../languages/spelling';
import { numberOfWord, numberWords } from '../../numberWords';
import { saysOf } from '../../phrases/toldWords';

/** How far all samples reach beyond their own keys, as a text says. */
export interface KeyReach {
  is: 'around';
  /** Keys below and above the root. */
  down: number;
  up: number;
  text: string;
}

const longest = 2000;
const semitone =
  'semi-?tones?|half[- ]?(?:steps?|tones?)|halbt\\p{L}+|demi-?\\s?tons?|semiton\\p{L}*|halve too?n\\p{L}*|halvto\\p{L}*|polton\\p{L}*|pulton\\p{L}*|полутон\\p{L}*|keys?|notes?|tasten?|touches?|teclas?|tast[oi]|toets\\p{L}*|tangent\\p{L}*';
const tone = '(?:whole )?(?:tones?|steps?)|ganzt\\p{L}+';
const anyNumber = numberWords.map(([words]) => words).join('|');
/** Before a word for up or down the unit may be left out the second time: `two semitones down and three up`. */
const spokenAgain = `one|einen|${numberWords
  .slice(1)
  .map(([words]) => words)
  .join('|')}`;
const way =
  '(?:nach |to the |vers le |hacia |para |per |plus )?(?:down|below|lower|up|above|higher|unten|oben|bas|haut|abajo|arriba|baixo|cima|giu|su|omlaag|omhoog|beneden|boven|ner|upp|ned|op)';
const distance = new RegExp(
  `(?<![\\p{L}\\d.,])(?:(?:(\\d{1,2})|(${anyNumber}))[ -](?:(?:${semitone})|(${tone}))|(\\d{1,2}|${spokenAgain})(?= ${way}(?!\\p{L})))(?!\\p{L})`,
  'gu',
);
const bothWays =
  /[±]|\+\/-|(?<!\p{L})(?:(?:on |to )?(?:either|each|both) (?:sides?|ways?|directions?)|up and down|down and up|above and below|below and above|nach oben und (?:nach )?unten|nach unten und (?:nach )?oben|in beide richtungen|nach beiden seiten|beiderseits|de chaque cote|de part et d'autre|vers le haut et (?:vers )?le bas|hacia arriba y (?:hacia )?abajo|a cada lado|in su e in giu|per (?:lato|parte)|para cima e para baixo|omhoog en omlaag|naar boven en (?:naar )?beneden|upp och ner|op og ned|at begge sider|at hver sin side)(?!\p{L})/u;
const downWords =
  /(?<!\p{L})(?:down|downwards?|below|under|lower|unten|darunter|hinunter|abwarts|tiefer|bas|dessous|abajo|giu|sotto|baixo|omlaag|beneden|ner|ned|dol|dolu|вниз|asagi|alas)(?!\p{L})/u;
const upWords =
  /(?<!\p{L})(?:up|upwards?|above|over|higher|oben|daruber|hinauf|aufwarts|hoher|haut|dessus|arriba|su|sopra|cima|omhoog|boven|upp|op|gore|nahoru|вверх|yukari|ylos)(?!\p{L})/u;
/** What says that a reach begins at the sample's own key, so that one way is all of it: `from its note up to three keys above`. */
const fromOwn =
  /(?<!\p{L})(?:(?:its|their) own|(?:from|ab|von|de|depuis|desde|da|dal|dalla|van|vanaf|fran|fra|od) (?:its|the|their|ihrer?m?|seine[rm]|der|dem|sa|son|la|su|il|sua?|zijn|haar|sin|swoj\p{L}*|sve\p{L}*) (?:own |eigene[nr] |propre |propi[oa] |propri[oa] |eigen |egen )?(?:key|note|root|taste|ton|grundton|touche|fondamentale|tecla|nota|tasto|toets|noot|tangent)|(?:eigene[nr]|propre|propi[oa]|propri[oa]|eigen|egen) (?:key|note|taste|ton|note|touche|tecla|nota|tasto|toets|noot|tangent))(?!\p{L})/u;
/** What such a sentence says of all samples. */
const each = new RegExp(String.raw`${everyWords}|(?<!\p{L})(?:everything|her)(?!\p{L})`, 'iu');
const stretches =
  /(?<!\p{L})(?:stretch|spread|extend|reach|map|used|gespannt|gedehnt|reich|verteilt|etend|etir|extiend|estir|estend|reik|racker|stracker|straekk|rekker|siega|rozciag|saha|охват|звуч)/u;
/** Sentences of tunings and of fades name distances too. */
const tunesOrFades =
  /(?<!\p{L})(?:(?:cross-?)?fad\p{L}*|blend\p{L}*|overlap\p{L}*|uberlapp\p{L}*|uberblend\p{L}*|fondu\p{L}*|tun(?:e|ed|ing)|detun\p{L}*|transpos\p{L}*|pitch(?:ed)?|(?:ver|ge)?stimm(?:t|ung)|accord\p{L}*|desafin\p{L}*|afinad\p{L}*|accordat\p{L}*|intonat\p{L}*|gestemd|stamd\p{L}*|stroj\p{L}*|bend|flat|sharp)(?!\p{L})/u;

/**
 * Reads how far each sample goes beyond its own key: `every sample is played one semitone down and one semitone up`, `jede Aufnahme
 * reicht zwei Halbtöne nach oben und unten`.
 */
export function keyReachIn(texts: readonly string[]): KeyReach | undefined {
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/[.;!?](?=\s|$)|[\n\r]/u)) {
      const found = reachOf(bareWord(sentence));
      if (found) return { is: 'around', ...found, text: sentence.trim() };
    }
  return undefined;
}

function reachOf(text: string): { down: number; up: number } | undefined {
  if (!each.test(text) || tunesOrFades.test(text) || !(saysOf(text, 'keys') || stretches.test(text)))
    return undefined;
  const [one, other, ...more] = [...text.matchAll(distance)];
  // The first of them has to say what is counted.
  if (!one || one[4] !== undefined || more.length > 0) return undefined;
  const [size, next] = [keysIn(one), other ? keysIn(other, one) : 0];
  if (!other) {
    if (bothWays.test(text)) return { down: size, up: size };
    const only = fromOwn.test(text) ? wayOf(text) : undefined;
    return only && (only === 'up' ? { down: 0, up: size } : { down: size, up: 0 });
  }
  const behind = [text.slice(one.index, other.index), text.slice(other.index)];
  const before = [text.slice(0, one.index), text.slice(one.index + one[0].length, other.index)];
  for (const [first, second] of [behind, before]) {
    const [way, then] = [wayOf(first ?? ''), wayOf(second ?? '')];
    if (way === 'down' && then === 'up') return { down: size, up: next };
    if (way === 'up' && then === 'down') return { down: next, up: size };
  }
  return undefined;
}

function wayOf(part: string): 'down' | 'up' | undefined {
  const [isDown, isUp] = [downWords.test(part), upWords.test(part)];
  return isDown === isUp ? undefined : isDown ? 'down' : 'up';
}

/** A distance in keys; in the unit of the one before where it gives none. */
function keysIn([, digits, word, ownTone, again]: RegExpMatchArray, before?: RegExpMatchArray): number {
  const text = digits ?? word ?? again ?? '';
  const spoken = numberOfWord(text);
  const isTone = (again === undefined ? ownTone : before?.[3]) !== undefined;
  return (spoken ?? Number(text)) * (isTone ? 2 : 1);
}
