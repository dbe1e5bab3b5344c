import { bareWord } from '../../languages/spelling';
import { numberOfWord, numberWords } from '../../numberWords';
import { saysOf } from '../../phrases/toldWords';
import { turningWords } from '../../turningWords';
import type { RowChoice } from '../rows/namedRows';
import { rowClausesIn } from '../rows/namedRows';
import type { RightRows } from './rightRows';
import { rightRowsIn, withoutException } from './rightRows';

/** How far the keys of a table are off, as the text says: what has to be added to them. */
export interface KeyShift {
  semitones: number;
  /** Whether root keys alone are meant. */
  isOfRoots: boolean;
  /** The rows that are meant; `undefined` for all. */
  rows: RowChoice | undefined;
  /** What is said of rows whose keys are right. */
  except: readonly RightRows[];
  /** Whether the sentence has more than is understood, so that nothing is done. */
  isOpen: boolean;
  text: string;
}

const octave = '(?:octav|oktav|ottav|octaaf|octave|oitav|oktaav|oktaw|октав|οκταβ)\\p{L}*';
const semitone =
  '(?:semi-?tones?|half[- ]?(?:steps?|tones?)|halbt\\p{L}+|demi-?\\s?tons?|semiton\\p{L}*|halvto\\p{L}*|poltoni?\\p{L}*|polton\\p{L}*|pulton\\p{L}*|полутон\\p{L}*|keys|tasten)';
const anyNumber = numberWords.map(([words]) => words).join('|');
const distance = new RegExp(
  `(?<![\\p{L}\\d.,])(?:(\\d{1,2})|(${anyNumber})|на|o)(?: (?:whole|full|ganze))?\\s?(?:(${octave})|(${semitone}))(?!\\p{L})`,
  'u',
);
/** What keys are called, and their numbers, without accents. */
const keyWords =
  /(?<!\p{L})(?:keys?|key ?numbers?|notes?|note names|ranges?|roots?|(?:midi-?)?noten(?:nummern|namen)?|tasten(?:nummern)?|tonnamen|grundtone?|touches?|fondamentales?|notas?|teclas?|tast[oi]|toets\p{L}*|tangent\p{L}*|noter(?:na|ne)?|klawisz\p{L}*|nut\p{L}*|klaves\p{L}*|клавиш\p{L}*|нот\p{L}*)(?!\p{L})/u;
/** Numbers of anything, which are those of keys beside an octave. */
const numbers =
  /(?<!\p{L})(?:numbers?|values?|nummern?|zahlen|werte|numeros?|valeurs?|valores?|numeri|valori|nummers|waarden|siffror\p{L}*|numren|tal(?:en|lene)?|numer\p{L}*|cisl\p{L}*|номер\p{L}*|числ\p{L}*)(?!\p{L})/u;
/** What else is counted in numbers. */
const ofOther =
  /(?<!\p{L})(?:veloc\p{L}*|vel|levels?|volumes?|gains?|loops?|frames?|pans?|cents?|db|anschlag\p{L}*|lautst\p{L}*|pegel\p{L}*|niveau\p{L}*|niveles?|livell\p{L}*|schleif\p{L}*|boucl\p{L}*)(?!\p{L})/u;
/** What a tuning is of. */
const ofSound =
  /(?<!\p{L})(?:samples?|recordings?|recorded|sounds?|tun(?:ed|ing|e)|pitched|aufnahmen?|klang\p{L}*|gestimmt|enregistrements?|echantillons?|accorde\p{L}*|grabacion\p{L}*|muestras?|registrazion\p{L}*|campion[ei]|gravac\p{L}*|amostras?|opnam\p{L}*|inspelning\p{L}*|optagelse\p{L}*|opptak\p{L}*|nagran\p{L}*|nahrav\p{L}*|запис\p{L}*)(?!\p{L})/u;
const tooHigh =
  /(?<!\p{L})(?:too (?:high|far up)|higher than|zu (?:hoch|weit oben)|trop (?:haut|aigu)\p{L}*|demasiado (?:alt|agud)\p{L}*|troppo (?:alt|acut)\p{L}*|(?:alt|agud)\p{L}+ demais|muito (?:alt|agud)\p{L}*|te hoog|for (?:hog|hoj|hoyt?|høj|høy)\p{L}*|liian korkea\p{L}*|za wysok\p{L}*|(?:prilis|moc) vysok\p{L}*|слишком высок\p{L}*|выше,? чем)/u;
const tooLow =
  /(?<!\p{L})(?:too (?:low|far down)|lower than|zu (?:tief|niedrig|weit unten)|trop (?:bas|grave)\p{L}*|demasiado (?:baj|grave)\p{L}*|troppo (?:bass|grav)\p{L}*|(?:baix|grave)\p{L}* demais|muito (?:baix|grave)\p{L}*|te laag|for (?:lag|lav)\p{L}*|liian matala\p{L}*|za nisk\p{L}*|(?:prilis|moc) nizk\p{L}*|слишком низк\p{L}*|ниже,? чем)/u;
/** What has to be done with them. */
const should =
  /(?<!\p{L})(?:should|must|needs? to|ha(?:ve|s) to|ought to|please|shift|move|lower|raise|transpose|mussen|sollten|sollen|bitte|doivent|faut|hay que|deben|vanno|devono|precisam|moeten|ska|skal|nalezy|je treba|нужно|надо)(?!\p{L})/u;
const added =
  /(?<!\p{L})(?:add|plus|addiere\p{L}*|ajoute[rz]?|sum[ae]r?|aggiung\p{L}*|tel)(?!\p{L})[^.\d]{0,20}(?<![\d.,])(\d{1,2})(?![\d.,]\d|\d)/u;
const taken =
  /(?<!\p{L})(?:subtract|minus|deduct|take(?: away| off)?|abzieh\p{L}*|zieh\p{L}*|soustra\p{L}+|enleve[rz]?|rest[ae]r?|sottra\p{L}+|togli\p{L}*|subtra\p{L}+|trek)(?!\p{L})[^.\d]{0,20}(?<![\d.,])(\d{1,2})(?![\d.,]\d|\d)/u;
const doubtful = new RegExp(
  String.raw`${turningWords('not', 'none', 'except', 'only', 'already')}|(?<!\p{L})(?:if|maybe|perhaps|might|may|could|some|falls|vielleicht|si|peut-etre|quizas?|forse|talvez|misschien)(?!\p{L})`,
  'iu',
);
const rootWord =
  /(?<!\p{L})(?:root keys?|root notes?|roots?|grundtone?|fondamentales?|fundamental\p{L}*)(?!\p{L})/u;
const sentences = /[.!?](?=\s|$)|[;\n\r。]/u;
const longest = 2000;
const longestSentence = 300;
const most = 48;

/**
 * Reads how far the numbers of keys are off: `The numbers are all one octave too high`, `Bitte von allen Tasten 12 abziehen`. The pitch
 * of recordings is something else.
 */
export function keyShiftIn(texts: readonly string[]): KeyShift | undefined {
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(sentences)) {
      if (sentence.length > longestSentence) continue;
      const { head, except } = withoutException(sentence.trim());
      const found = shiftIn(head);
      if (found) return { ...found, text: sentence.trim(), except: [...except, ...rightRowsIn(texts)] };
    }
  return undefined;
}

function shiftIn(text: string): Omit<KeyShift, 'except'> | undefined {
  const bare = bareWord(text);
  const [clause] = rowClausesIn(text);
  // `Rows 2 and 3 are an octave too high` means what stands in them.
  if (ofSound.test(clause?.says ?? bare) || ofOther.test(bare)) return undefined;
  if (!clause && !keyWords.test(bare) && !numbers.test(bare)) return undefined;
  const semitones = semitonesIn(bare);
  if (semitones === undefined || semitones === 0 || Math.abs(semitones) > most) return undefined;
  const others = bare.replace(rootWord, ' ').replace(/(?<!\p{L})(?:keys?|notes?)(?=\s*$)/u, ' ');
  const isOfRoots = rootWord.test(bare) && !keyWords.test(others);
  return { semitones, isOfRoots, rows: clause?.rows, isOpen: doubtful.test(text), text };
}

function semitonesIn(bare: string): number | undefined {
  const [plus, minus] = [added.exec(bare), taken.exec(bare)];
  if ((plus || minus) && keyWords.test(bare))
    return plus && minus ? undefined : plus ? Number(plus[1]) : -Number(minus?.[1]);
  const [match, digits, word, inOctaves] = distance.exec(bare) ?? [];
  if (match === undefined) return undefined;
  const size =
    (digits === undefined ? (numberOfWord(word ?? 'one') ?? 1) : Number(digits)) * (inOctaves ? 12 : 1);
  const [isHigh, isLow] = [tooHigh.test(bare), tooLow.test(bare)];
  if (isHigh || isLow) return isHigh === isLow ? undefined : isHigh ? -size : size;
  if (!should.test(bare)) return undefined;
  const isUp = saysOf(bare, 'up') || /(?<!\p{L})(?:higher|raise)(?!\p{L})/u.test(bare);
  const isDown = saysOf(bare, 'down') || /(?<!\p{L})lower(?!\p{L})/u.test(bare);
  return isUp === isDown ? undefined : isUp ? size : -size;
}
