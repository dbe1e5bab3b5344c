import { conventions, octaveShifts } from '../middleC';
import { readKey } from '../readings/keyReading';

/** The key number of MIDI 1.0 lies so far above that of the 88 keys of a piano, of which the first is A0, number 21 (common practice). */
export const pianoKeyShift = 20;
/** The number of the last key of a piano. */
export const lastPianoKey = 88;

const longest = 1000;
const pair =
  /(?<![\d.\p{L}])(\d{1,2})\s*(?:=|:|is|ist|est|es)\s*([A-G][#b\u266f\u266d]?-?\d)(?!\d)|(?<![\p{L}\d])([A-G][#b\u266f\u266d]?-?\d)\s*(?:=|:|is|ist|est|es)\s*(?:key |taste |touche |tecla )?(\d{1,2})(?![\d.])/giu;
const said =
  /\bpiano key (?:numbers?|no)|\bkeys? (?:are |is )?(?:numbered|counted|run|count) ?(?:from )?1\b|\b(?:keys?|key numbers?|tasten?|touches?|teclas?|tasti|toetsen|tangenter)\b\W{0,3}(?:numbered |from |von |de |da )?1\s?(?:-|\u2013|\.{2,3}|to|bis|\u00e0|a|tot|till)\s?88(?!\d)|klaviertasten?(?:nummern?| nr)|num\u00e9ros? de touches? (?:du|de) piano/iu;

/** The sentence of a text that says that keys count as those of a piano do, from 1 to 88; `undefined` where none does. */
export function pianoKeysIn(texts: readonly string[]): string | undefined {
  return texts.find((whole) => {
    const text = whole.slice(0, longest);
    if (said.test(text)) return true;
    return Array.from(text.matchAll(pair)).some(([, before, after, other, behind]) => {
      const number = Number(before ?? behind);
      const named = readKey(after ?? other ?? '')?.named;
      return (
        named !== undefined && conventions.some((one) => named + octaveShifts[one] === number + pianoKeyShift)
      );
    });
  });
}
