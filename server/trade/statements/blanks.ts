import { languages } from '../languages/languages';
import { bareWord } from '../languages/spelling';

/** Words for a cell without a value, in the languages of the trade and without accents. */
const blank =
  /(?<!\p{L})(?:blanks?|empty|leer\p{L}*|vides?|vacias?|vacios?|en blanco|em branco|vuot[aeio]|vazi[ao]s?|leeg|lege|tom|tomt|tomma|tomme|tyhja\p{L}*|pust[aey]\p{L}*|prazdn\p{L}*|пуст\p{L}*|κεν[οαη]\p{L}*|αδει\p{L}*|ures\p{L}*)(?!\p{L})|空欄|空白|空の|空格|留空|빈 ?칸/iu;
/** Words for what stands above. */
const above =
  /(?:same|as|like|repeats?|carr\p{L}+)\b.{0,25}\b(?:above|before|previous|last)(?!\p{L})|\bwie\b.{0,20}\b(?:oben|daruber|zuvor|vorher|vorige\p{L}*|zeile)(?!\p{L})|\bcomme\b.{0,20}\b(?:dessus|haut|precedent\p{L}*)(?!\p{L})|\b(?:igual|como|lo mismo|o mesmo|mesmo)\b.{0,25}\b(?:arriba|encima|acima|anterior)(?!\p{L})|\b(?:come|uguale)\b.{0,20}\b(?:sopra|precedente)(?!\p{L})|\bals\b.{0,20}\b(?:boven|hierboven|erboven|vorige)(?!\p{L})|\bsom\b.{0,20}\b(?:ovan|ovanfor|ovenfor|over|foregaende)(?!\p{L})|\bkuin\b.{0,20}\b(?:ylla|ylapuolella|edellisella)(?!\p{L})|(?:jak|co)\b.{0,20}\b(?:wyzej|powyzej|poprzedni\p{L}*)(?!\p{L})|(?:jako|stejn\p{L}*)\b.{0,20}\b(?:vyse|nad|predchozi\p{L}*)(?!\p{L})|как.{0,20}(?:выше|предыдущ\p{L}*)|οπως.{0,20}(?:πανω|παραπανω)|(?:上|前)(?:の行)?と同じ|同上|与上|與上|위와 ?같/iu;
const dittos = languages
  .flatMap(({ ditto }) => ditto.map(bareWord))
  .filter((word) => word.length > 4 && word.includes(' '));
const sentences = /[.!?;](?=\s|$)|[\n\r]/u;
const longest = 2000;
const reach = 70;

/** The words of a sentence before and behind a word for an empty cell, without accents; `undefined` where it speaks of none. */
export function aroundBlank(sentence: string): { before: string; behind: string } | undefined {
  const bare = bareWord(sentence);
  const found = blank.exec(bare);
  return found
    ? { before: bare.slice(0, found.index), behind: bare.slice(found.index + found[0].length) }
    : undefined;
}

/** The sentence that says that an empty cell has the value of the cell above it; `undefined` where none does. */
export function blankIsAboveIn(texts: readonly string[]): string | undefined {
  for (const whole of texts) {
    for (const sentence of whole.slice(0, longest).split(sentences)) {
      // Without accents, marks and syllables of Asian scripts come apart.
      if ([bareWord(sentence), sentence.normalize('NFKC')].some(saysSo)) return sentence.trim();
    }
  }
  return undefined;
}

function saysSo(sentence: string): boolean {
  const found = blank.exec(sentence);
  if (!found) return false;
  const rest = sentence.slice(Math.max(0, found.index - reach), found.index + found[0].length + reach);
  return above.test(rest) || dittos.some((word) => rest.includes(word));
}
