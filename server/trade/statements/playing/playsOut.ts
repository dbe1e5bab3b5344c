import { everyWords } from '../../everyWords';
import { loopWord } from '../../languages/cellWords';
import { turningWords } from '../../turningWords';
import { saysLoopsGoToEnd } from './loopsToEnd';

/** Words for a sound that plays to its end, in the languages of the trade. */
const toTheEnd =
  /(?<!\b(?:you|we|one|i|to|can|could|may|will) )\b(?:play|sound|ring)(?:s|ed)? (?:\p{L}+ ){0,3}(?:to (?:(?:the|its|their) )?(?:very )?end|out|through|in full)\b|\bone[- ]?shots?\b|\bkling(?:t|en) (?:\p{L}+ )?aus\b|\b(?:spielt|spielen|l\u00e4uft|laufen|klingt|klingen) (?:\p{L}+ ){0,3}(?:bis zum (?:ende|schluss)|durch)\b|\bjusqu(?:['\u2019]\u00e0 la fin|['\u2019]au bout)|\bhasta el final|\bfino (?:in fondo|alla fine)|\bat\u00e9 (?:ao|o) fim|\btot het einde|\b(?:klinkt|klinken) (?:\p{L}+ )?(?:helemaal )?uit\b|\bdo ko\u0144ca|\btill slutet|\btil slutt?|\bdo konce|до конца|sonuna kadar|v\u00e9gig ?sz\u00f3l|loppuun (?:asti|saakka)|(?:ως|έως|μέχρι) (?:το )?τέλος|μέχρι τέλους|fins al final|helt ud\b|播放到(?:底|结尾)|放完|播完|最後まで|끝까지/iu;
/** Words that make it a rule for all sounds, or that say that letting the key go changes nothing. */
const forAll = new RegExp(
  String.raw`${everyWords}|(?<!\p{L})(?:always|everything|immer|toujours|siempre|sempre|altijd|her|mind|aina|altid|tot(?! (?:aan|het)))(?!\p{L})|毎回|항상|let go|releas|loslass|losl\u00e4sst|losgelassen|rel\u00e2ch|l\u00e2ch|solt|suelt|rilasci|loslaten|losgelaten`,
  'iu',
);
const excepts = new RegExp(String.raw`${turningWords('except', 'only')}|\bif\b|=`, 'iu');
const sentences = /[.!?;](?=\s|$)|[\n\r]{2,}/u;
const longest = 2000;

/** Whether a heading says of its column that sounds play to their end: `One-shot`, `spielt bis zum Ende`. */
export function headsPlaysOut(heading: string): boolean {
  if (heading.length > 80) return false;
  const bare = heading
    .replace(/[([{（].*$/u, '')
    .replace(/\?\s*$/u, '')
    .trim();
  return toTheEnd.test(bare) || loopWord(bare) === 'one_shot';
}

/** The sentence that says that all sounds play to their end whatever the key does; `undefined` where none does. */
export function playsOutIn(texts: readonly string[]): string | undefined {
  for (const text of texts) {
    for (const sentence of text.slice(0, longest).split(sentences)) {
      const said = sentence.replace(/\s+/g, ' ').trim();
      if (toTheEnd.test(said) && forAll.test(said) && !excepts.test(said) && !saysLoopsGoToEnd(said))
        return said;
    }
  }
  return undefined;
}
