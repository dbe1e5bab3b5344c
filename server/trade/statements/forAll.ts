import { loopWord } from '../languages/cellWords';
import { readNumber } from '../numberReading';
import { readPan } from '../panReading';

/** Parameters that many zones may share. */
export type SharedName = 'volume' | 'transpose' | 'tune' | 'pan' | 'loop_mode';

/** Values that the text gives for all zones: parameters of the open SFZ format, and the sentence that says so. */
export interface ForAll {
  values: ReadonlyMap<SharedName, number | string>;
  text: string;
}

const longest = 2000;
const allZones =
  /(?<!\p{L})(?:all|every|each|alle[nrs]?|jede[rs]?|tou(?:s|tes)(?: les)?|chaque|todos(?: los| os)?|todas(?: las| as)?|cada|tutt[ie](?: le| i| gli)?|ogni)\s+(?:the\s+|of the\s+|of them\s+)?(?:zones?|zonen?|zonas?|samples?|regions?|regionen|files?|dateien|rows?|sounds?|notes?|recordings?|aufnahmen|\u00e9chantillons?|muestras?|amostras?|campioni?|one[- ]?shots?)(?!\p{L})([^.;\n\r]{0,160}|(?<=one[- ]?shots?))/giu;
const excepts =
  /\b(?:except|but|unless|apart from|other than|only|au\u00dfer|ohne|nur|sauf|excepto|salvo|menos|tranne|mostly|meist|usually|about)\b/iu;
const decibels = /([-+\u2212\u2013]?)\s?(\d+(?:[.,]\d+)?)\s*dB\b/iu;
const quieter =
  /\b(?:quieter|softer|lower|down|less|below|cut|leiser|weniger|tiefer|moins|plus bas|menos|m\u00e1s bajo|meno|pi\u00f9 basso|zachter|minder|l\u00e4gre|svagare|ciszej|tišeji)\b|тише/iu;
const louder =
  /\b(?:louder|higher|up|boost\p{L}*|hotter|lauter|mehr|plus fort|m\u00e1s alto|pi\u00f9 alto|mais alto|harder|luider|h\u00f6gre|starkare|gło\u015bniej)\b|громче/iu;
/** Words behind the zones that make them some of all. */
const someOnly =
  /^(?:of|in|with|from|that|which|whose|above|below|under|over|der|des|in der|mit|von|\u00fcber|unter|de|du|des|avec|del|de la|con|que|della|che|do|da|van|met|av|i|med)\b(?! (?:the |this |diese[rmns]? |ce |cette |este |esta |questo |dit |deze )?(?:instrument|set|kit|list|table|folder|map|library))/iu;
const semitones =
  /(?:transpos\p{L}*|semitones?|halbt\u00f6ne?|demi-tons?|semitonos?|semitoni)\W{1,3}(?:by\s|um\s|de\s|di\s|=\s?)?([-+\u2212\u2013]\s?\d{1,3})(?![\d.,]\d)|([-+\u2212\u2013]\s?\d{1,3})\s*(?:semitones?|st\b|halbt\u00f6ne?|demi-tons?|semitonos?|semitoni)/iu;
const octave = /\b(?:an?|one)\s+octave\s+(lower|down|higher|up)\b/iu;
const cents = /([-+\u2212\u2013]\s?\d+(?:[.,]\d+)?)\s*(?:cents?|ct)\b/iu;
const pan = /\bpan(?:ned)?\W{1,3}(?:to\s|hard\s|at\s)*([\p{L}\d+-]+)/iu;
const once =
  /\bone[- ]?shots?\b|\bplay(?:ed|s)? (?:once|to the(?:ir)? end)\b|\beinmal\b|\bune fois\b|\buna vez\b|\buna volta\b/iu;
const unlooped =
  /\b(?:no loops?|not looped|unlooped|without loops?|ohne schleifen?|sans boucles?|sin bucles?|senza loop)\b/iu;
const looped = /\b(?:are |is |be )?looped(?! (?:from|at|between))\b|\bloop forever\b/iu;

/** Reads what a text says of all zones: `All zones -3 dB and transpose -12`, `all samples are one-shots`. */
export function forAllIn(texts: readonly string[]): ForAll[] {
  const found: ForAll[] = [];
  for (const whole of texts) {
    const text = whole.slice(0, longest);
    for (const match of text.matchAll(allZones)) {
      const rest = match[0];
      if (excepts.test(rest) || someOnly.test((match[1] ?? '').trim())) continue;
      const values = valuesIn(rest);
      if (values.size === 0) continue;
      const said = rest.trim();
      // A sentence that goes over two lines comes once more as a whole.
      const part = found.findIndex((one) => said.startsWith(one.text));
      if (part >= 0) found.splice(part, 1);
      found.push({ values, text: said });
    }
  }
  return found;
}

/** A level in dB with a sign, or with a word that says which way it goes. */
function levelIn(text: string): number | undefined {
  const [, sign = '', digits = ''] = decibels.exec(text) ?? [];
  if (digits === '') return undefined;
  const size = Number(digits.replace(',', '.'));
  if (sign !== '') return sign === '+' ? size : 0 - size;
  if (quieter.test(text)) return 0 - size;
  return louder.test(text) || size === 0 ? size : undefined;
}

/** The values that a text gives for the zones it speaks of. */
export function valuesIn(text: string): Map<SharedName, number | string> {
  const values = new Map<SharedName, number | string>();
  const number = (one: string | undefined) =>
    one === undefined ? undefined : readNumber(one.replace(/\s/g, '').replace('\u2013', '-'))?.number;
  const set = (name: 'volume' | 'transpose' | 'tune', value: number | undefined) => {
    if (value !== undefined && Number.isFinite(value)) values.set(name, value);
  };
  set('volume', levelIn(text));
  const [, behind, before] = semitones.exec(text) ?? [];
  set('transpose', number(behind ?? before));
  const way = octave.exec(text)?.[1];
  if (way && !values.has('transpose')) set('transpose', /lower|down/i.test(way) ? -12 : 12);
  set('tune', number(cents.exec(text)?.[1]));
  const side = pan.exec(text)?.[1];
  const position = side === undefined ? undefined : readPan(side);
  if (typeof position === 'number') values.set('pan', position);
  if (once.test(text)) values.set('loop_mode', 'one_shot');
  else if (unlooped.test(text)) values.set('loop_mode', 'no_loop');
  else if (looped.test(text)) values.set('loop_mode', loopWord('looped') ?? 'loop_continuous');
  return values;
}
