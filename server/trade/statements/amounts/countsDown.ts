import { readHeading } from '../../headings/headings';
import { bareWord } from '../../languages/spelling';
import { saysOf } from '../../phrases/toldWords';
import { turningWords } from '../../turningWords';

/** A text that says that levels are numbers by which samples are quieter. */
export interface CountsDown {
  /** Whether it says so of numbers above 0, so that those below make louder. */
  isSigned: boolean;
  text: string;
}

const longest = 2000;
const longestSentence = 300;
/** Stems for an attenuation, without accents (common words of audio). */
const attenuation =
  /(?<!\p{L})(?:attenuat|attenuaz|attenuare|atenua|dampfung|daempfung|abschwachung|absenkung|affaibliss|demping|verzwakking|dampning|dæmpning|vaimennu|tlumieni|utlum|zeslabeni|prigusenj|slabljenj|ослаблени|затухани|послабленн|загасанн|затихван|csillapitas|halkitas|zayiflatma|εξασθενησ|εξασθενισ)|減衰|衰减|衰減|감쇠/u;
/** dB that count from a louder level: `dB below full scale`, `dB under the loudest`, `dB quieter than`. */
const below =
  /(?<!\p{L})(?:db|decibels?|dezibel|decibel\p{L}*|дб)\s+(?:are )?(?:(?:\p{L}+ ){0,2}(?:below|under|beneath|down|off|softer|quieter|lower|less|unter|unterhalb|leiser|sous|en dessous|au-dessous|por debajo|debajo|sotto|abaixo|onder|under|pod|ponizej|alle|ниже|тише)|(?:mas|plus|piu|mais) (?:baj|bas|pian|baix|faibl|dou[cx]|suav|debol|frac)\p{L}*|zachter|ciszej|tise|lagre|svagare|hiljaise\p{L}*|pienem\p{L}*|halkabb\p{L}*)(?!\p{L})/u;
/** The minus sign that stands before the unit once for all numbers: `in -dB`. */
const minusUnit =
  /(?:^|[\s([])(?:[-\u2013]\s?|(?:minus|negative|neg\.?|negativ\p{L}*|moins|menos|meno)\s)db(?!\p{L})/u;
/** Numbers above 0 that are said to be quieter. */
const positive =
  /(?<!\p{L})(?:positiv\p{L}*|plus values|\+|dodatni\p{L}*|kladn\p{L}*|положительн\p{L}*)(?!\p{L})/u;
/** Greater numbers that are said to be quieter. */
const greater =
  /(?<!\p{L})(?:(?:higher|greater|larger|bigger|more) (?:numbers?|values?|figures?|db|level|is|means|=)|(?:hohere|grossere|größere) (?:zahlen|werte|zahl)|(?:plus (?:grand|eleve)|valeurs? (?:plus )?(?:grande|elevee))\p{L}*|(?:numeros?|valores?) (?:mas|mais) (?:alto|grande|maiore)\p{L}*|(?:numeri|valori) (?:piu )?(?:alti|grandi|maggiori)|hogere (?:getallen|waarden)|hogre (?:tal|varden))(?!\p{L})/u;
/** Minus signs that were left out. */
const signless =
  /(?<!\p{L})(?:(?:minus(?:es)?|negative)(?: signs?)?(?: (?:is|are|was|were|has been|have been|being))? (?:left out|left off|omitted|dropped|missing|not (?:written|shown|typed)|implied|understood|lost|stripped|removed|skipped)|(?:without|no|omit\p{L}*|drop\p{L}*|leav\p{L}+ out|left out|skip\p{L}*) (?:(?:the|any|all) )?minus(?:es)?(?: signs?)?|ohne (?:das )?minus(?:zeichen)?|minus(?:zeichen)? (?:\p{L}+ )?(?:weggelassen|ausgelassen|fehlt|fehlen)|sans (?:le )?(?:signe )?moins|signes? moins (?:omis|oublie|absent)\p{L}*|sin (?:el )?(?:signo )?(?:menos|negativo)|senza (?:il )?(?:segno )?meno|sem (?:o )?(?:sinal )?(?:de )?menos|zonder (?:het )?min(?:teken)?|utan minus(?:tecken)?|uden minus(?:tegn)?|uten minus(?:tegn)?|ilman miinus\p{L}*|bez (?:znaku )?minus\p{L}*|без (?:знака )?минус\p{L}*)(?!\p{L})/u;
/** A number with what it means: `6 = 6 dB quieter`, `3 means -3 dB`. */
const example =
  /(?<![\p{L}\d.,+-])(\d{1,2}(?:[.,]\d+)?)\s*(?:=|:|->|→|is|means|ist|heisst|bedeutet|est|signifie|es|significa|è|betekent)\s*(-)?\s?(\d{1,2}(?:[.,]\d+)?)\s*db(?!\p{L})(.{0,30})/u;
/** An amount in dB, which a sentence takes off some zones or all. */
const amount = /\d\s?(?:db|decibels?|dezibel|дб)(?!\p{L})/u;
const nothing = /(?<![\d.,])0\s?(?:db|decibels?|dezibel|дб)(?!\p{L})/gu;
/** What is no level of zones (from memory). */
const otherThings =
  /(?<!\p{L})(?:filters?|releases?|velocit\p{L}*|pan|fades?|crossfades?|noise|rauschen|headroom|rms|lufs|anschlag\p{L}*|rolloff|slope)(?!\p{L})/u;
const turning = new RegExp(turningWords('not', 'except', 'none', 'already'), 'iu');

/** The sentences that say that levels count how much quieter samples are: `Levels are dB of attenuation`. */
export function countsDownIn(texts: readonly string[]): CountsDown[] {
  const found: CountsDown[] = [];
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/[.!?](?=\s|$)|[\n\r;。！]/u)) {
      const text = sentence.trim();
      if (text === '' || text.length > longestSentence) continue;
      const isSigned = countsDown(text);
      if (isSigned !== undefined) found.push({ isSigned, text });
    }
  return found;
}

/** Whether a sentence says so, and of numbers above 0; `undefined` where it does not. */
function countsDown(sentence: string): boolean | undefined {
  const text = bareWord(sentence.replaceAll('\u2212', '-')).replace(nothing, ' ');
  const [shown, number, sign, decibels, rest = ''] = example.exec(text) ?? [];
  if (shown !== undefined && number === decibels) {
    const isQuieter = sign === '-' || saysOf(rest, 'quieter') || below.test(`db ${rest.trim()}`);
    if (isQuieter && !saysOf(rest, 'louder')) return false;
  }
  const isLeftOut = signless.test(text);
  if (amount.test(text) || (!isLeftOut && turning.test(sentence))) return undefined;
  if (otherThings.test(text) && !attenuation.test(text)) return undefined;
  const isOfLevels = /(?<!\p{L})db(?!\p{L})/u.test(text) || namesLevels(sentence);
  if (!isOfLevels) return undefined;
  if (isLeftOut || minusUnit.test(text) || attenuation.test(text) || below.test(text)) return false;
  if (!saysOf(text, 'quieter')) return undefined;
  if (positive.test(text)) return true;
  return greater.test(text) && !saysOf(text.replace(greater, ' '), 'louder') ? false : undefined;
}

/** Whether a sentence names a column of levels. */
function namesLevels(sentence: string): boolean {
  const words = sentence.match(/\p{L}+/gu) ?? [];
  return words.slice(0, 12).some((word) => {
    const heading = word.length > 2 ? (readHeading(word) ?? readHeading(word.replace(/s$/, ''))) : undefined;
    return heading?.meaning === 'volume' && !heading.likeness;
  });
}
