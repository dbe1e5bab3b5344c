import { readHeading } from '../headings/headings';
import { wordsOf } from '../languages/spelling';
import { namesKey, speaksOfPlaying, triggerPhrase } from './triggerPhrases';
import type { TriggerValue } from './triggers';
import { triggerOf } from './triggers';

/** Which way a key goes, in one word and without accents, in the languages of the trade. */
const moves = {
  release:
    /^(?:up|upwards?|hoch|oben|rauf|herauf|hinauf|haut|arriba|su|acima|cima|omhoog|upp|opp|op|ylos|gora|gore|nahoru|вверх|fel|yukari)$/u,
  attack:
    /^(?:down|downwards?|unten|runter|herunter|hinunter|bas|abajo|giu|baixo|abaixo|omlaag|ner|ned|alas|dol|dolu|вниз|le|asagi)$/u,
} as const;
/** Words for the time that something starts at. */
const when =
  /^(?:when|wann|wenn|quand|lorsque|cuando|quando|wanneer|nar|kun|kiedy|kdy|когда|starts?|event|moment|ereignis|evenement|evento)$/u;

/** Words for zones that sound as usual, beside others that sound when the key is let go; without accents. */
const usual =
  /^(?:notes?|noten?|nota|notas|nuta|noot|nuotti|нота|音符|音|normal|normale|normaal|regular|usual|main|body|sustain(?:ed)?|ton|tone|tones|toon|son|sons|suono|sonido|som|klang|sound|klank|dzwiek|zvuk|звук|обычн\p{L}*)$/u;

/** Whether a cell is a word for what sounds as usual, such as `note` beside `release`. */
export function saysUsual(text: string): boolean {
  const words = wordsOf(text);
  return words.length === 1 && usual.test(words[0] ?? '');
}

/**
 * What starts a zone by a cell that says which way a key goes, or how it is moved, where the heading speaks of a key or of what makes
 * zones play: `up` and `down` under `sounds when the key goes`. `undefined` under other headings, as of strokes of a bow.
 */
export function triggerBelow(heading: string, text: string): TriggerValue | undefined {
  const said = triggerOf(text);
  if (said) return said;
  const isTelling =
    namesKey(heading) ||
    speaksOfPlaying(heading) ||
    wordsOf(heading).some((word) => when.test(word)) ||
    readHeading(heading)?.meaning === 'trigger';
  if (!isTelling || triggerOf(heading)) return undefined;
  return moveOf(text);
}

/** What starts a zone by the way that a key goes, in one word or a few. */
export function moveOf(text: string): 'attack' | 'release' | undefined {
  const [word = '', ...others] = wordsOf(text);
  if (others.length === 0 && moves.release.test(word)) return 'release';
  if (others.length === 0 && moves.attack.test(word)) return 'attack';
  const phrase = triggerPhrase(`key ${text}`);
  return phrase === 'press' && !/^(?:on|an|ein|aan|til|pa|zap|wl|вкл)$/u.test(word)
    ? 'attack'
    : phrase === 'release' && !/^(?:off|aus|uit|av|fra|pois|wyl|vyp|выкл)$/u.test(word)
      ? 'release'
      : undefined;
}
