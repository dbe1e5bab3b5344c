import { conventions, octaveShifts } from '../../middleC';
import { readKey } from '../../readings/keyReading';
import { noteInText, noteName } from '../../readings/notePatterns';
import { middleKeyIn } from './statedOctave';

/** The key number of MIDI 1.0 lies so far above that of the 88 keys of a piano, of which the first is A0, number 21 (common practice). */
export const pianoKeyShift = 20;
/** The number of the last key of a piano. */
export const lastPianoKey = 88;

const longest = 1000;
const pair = new RegExp(
  String.raw`(?<![\d.\p{L}])(\d{1,2})\s*(?:=|:|is|ist|est|es)\s*(${noteName}-?\d)(?!\d)|(${noteInText})\s*(?:=|:|is|ist|est|es)\s*(?:key |taste |touche |tecla )?(\d{1,2})(?![\d.])`,
  'giu',
);
const said =
  /\bpiano key (?:numbers?|no)|\bkeys? (?:are |is )?(?:numbered|counted|run|count) ?(?:from )?1\b|\b(?:keys?|key numbers?|tasten?|touches?|teclas?|tasti|toetsen|tangenter)\b\W{0,3}(?:numbered |from |von |de |da )?1\s?(?:-|\u2013|\.{2,3}|to|bis|\u00e0|a|tot|till)\s?88(?!\d)|klaviertasten?(?:nummern?| nr)|num\u00e9ros? de touches? (?:du|de) piano/iu;

/** A keyboard of 88 keys, and words for counting; two clauses may part them. */
const keyboard =
  /(?<!\d)88(?:[- ]?(?:note|keys?|tasten\p{L}*|er|touches|teclas|tasti|toets\p{L}*|tangent\p{L}*|koske\p{L}*|klawisz\p{L}*|kl[aá]ves\p{L}*|клавиш\p{L}*|tuş\p{L}*)(?!\p{L})|の?(?:鍵|キー)|个?(?:键|鍵|琴键)|개?\s?(?:건반|키))/iu;
const counting =
  /(?<!\p{L})(?:count\p{L}*|number(?:s|ed)?|from (?:the )?left|(?:ge|durch)?zähl\p{L}*|nummer\p{L}*|compt\p{L}*|numéro\p{L}*|cont(?:ad|and|at|ar|ée)\p{L}*|numer\p{L}*|número\p{L}*|getel\p{L}*|tel(?:len|t)|räkn\p{L}*|tæl\p{L}*|tell(?:e|er|es|et)|laske\p{L}*|numero\p{L}*|licz\p{L}*|počít\p{L}*|čísl\p{L}*|счит\p{L}*|номер\p{L}*|sayıl\p{L}*|sayar\p{L}*)(?!\p{L})|数え|番号|番目|数|编号|編號|번호|센|세어/iu;
const piano = String.raw`(?:piano(?:s|forte|ssa)?|klavi(?:er|atur)\p{L}*|fortepian\p{L}*|klavír\p{L}*|zongor\p{L}*|фортепиано|пианино|рояле|πιάνο)`;
const likePiano = new RegExp(
  String.raw`(?<!\p{L})(?:as|like|wie|zoals|als|comme|como|come|jak|som|kuten|jako|mint|как|όπως)\s+(?:\p{L}+\s+){0,2}${piano}(?!\p{L})`,
  'iu',
);
/** The lowest key of a piano as number 1: `1 = the lowest A`, `key 1 is the lowest A`. */
const lowestA =
  /(?<![\d.,\p{L}\p{N}])1\s*(?:=|:|is|ist|est|es|è|é|to|är|er|on)\s+(?:(?:the|das|die|der|de|het|la|le|el|il)\s+)?(?:(?:lowest|bottom|tiefste[sr]?|unterste[sr]?|laagste|lägsta|laveste|dybeste|najniższe|nejnižší|alin|matalin)\s+(?:a|la)|(?:a|la)\s+(?:(?:la|le|más|mais|plus|più|le plus)\s+){0,2}(?:grave|bass[oa]|baj[oa]|baix[oa]))(?!\p{L})/iu;
/** The number of middle C among the keys of a piano. */
const middlePianoKey = 40;

/** Whether a text tells of counting. */
export function tellsOfCounting(text: string): boolean {
  return (
    counting.test(text) ||
    /(?:start|begin|beginn|empiez|comenc|commenc|comincia|zaczyn|börja)\p{L}*/iu.test(text)
  );
}

/** Whether a text says that keys are counted as on a piano, or that the first one is its lowest. */
function countsLikePiano(text: string): boolean {
  const sentences = text.split(/[.!?](?=\s|$)|[\n\r。]/u);
  return sentences.some((one) => lowestA.test(one) || (likePiano.test(one) && counting.test(one)));
}

/** Whether a text says in words that keys are counted on a keyboard of 88. */
function countsKeyboard(text: string): boolean {
  return text
    .split(/[.!?](?=\s|$)|[\n\r。]/u)
    .some((one) => keyboard.test(one) && counting.test(one) && !/midi/i.test(one));
}

/** The sentence of a text that says that keys count as those of a piano do, from 1 to 88; `undefined` where none does. */
export function pianoKeysIn(texts: readonly string[]): string | undefined {
  const isMidi = texts.some((text) => middleKeyIn(text.slice(0, longest)) === 60);
  return texts.find((whole) => {
    const text = whole.slice(0, longest);
    if (
      said.test(text) ||
      countsLikePiano(text) ||
      (!isMidi && countsKeyboard(text)) ||
      middleKeyIn(text) === middlePianoKey
    )
      return true;
    return Array.from(text.matchAll(pair)).some(([, before, after, other, behind]) => {
      const number = Number(before ?? behind);
      const named = readKey(after ?? other ?? '')?.named;
      return (
        named !== undefined && conventions.some((one) => named + octaveShifts[one] === number + pianoKeyShift)
      );
    });
  });
}
