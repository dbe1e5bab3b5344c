import type { MiddleC } from '../../../model/keys';
import { octaveShifts } from '../../middleC';
import { readKey } from '../../readings/keyReading';
import { tellingSentence } from '../tellingSentence';
import { tellsOfCounting } from './pianoKeys';
import { middleCIn } from './statedOctave';

/** How numbers of keys are counted where a text gives one of them its key. */
export interface KeyCount {
  /** What is added to a number for the key of MIDI. */
  shift: number;
  text: string;
}

const longest = 1000;
const clauseEnd = /[,;:](?=\s)|[.!?](?=\s|$)|[\n\r]/u;
const verb = String.raw`\s*(?:=+>?|:|->|\u2192|(?:is|ist|est|es|è|é|to|är|er|on|at|bei|bij|auf|sur|på|entspricht|equals|corresponds to|komt overeen met|correspond à|corresponde a|corrisponde a|odpowiada|motsvarar|svarer til)(?!\p{L}))\s*`;
const keyWords =
  '(?:keys?|notes?|taste|toets|touche|tecla|tasto|klawisz|klavesa|kosketin|tangent|клавиша|tuş|numbers?|no|nr|nummer|numero|número|numéro|numer|номер|n[°º])';
const digits = String.raw`(?<![\d.,\p{L}\p{N}])(\d{1,2})(?!\d)`;
const isMidi = new RegExp(
  String.raw`${digits}${verb}(?:[^\d\n]{0,40}?|[^\d\n]{0,20}\p{L}[#b]?[-\u2212]?\d\W{1,4})\bmidi\W{0,3}(?:${keyWords}\W{0,2}){0,2}(\d{1,3})(?![\d.,]\d|\d)`,
  'iu',
);
const note = String.raw`((?:[a-h](?:is|es|[#\u266fb\u266d])?|do|re|mi|fa|sol|la|si)\s?[-\u2212]?\d)(?![\p{L}\d])`;
const article = String.raw`(?:(?:the|das|die|der|de|la|le|el|il|note|ton)\s+){0,2}`;
const isNote = new RegExp(`${digits}${verb}${article}${note}`, 'iu');
const noteIs = new RegExp(
  String.raw`(?<![\p{L}\d])${note}${verb}(?:the |die |la |le |el |de )?${keyWords}\W{0,2}${digits}`,
  'iu',
);
const firstIs = new RegExp(
  String.raw`(?<!\p{L})(?:first|lowest|leftmost|erste|unterste|tiefste|premi[eè]re|primera|prim[ao]|primeira|eerste|laagste|pierwszy|första|første)\s${keyWords}\p{L}{0,2}(?:${verb}|,?\s)${article}${note}`,
  'iu',
);
const keyBefore = new RegExp(String.raw`(?<!\p{L})${keyWords}\W{0,2}$`, 'iu');

/** The sentence of some texts that gives a number its key: `key 1 is C2`, `1 = MIDI 21`; `undefined` where none does, or they contradict one another. */
export function keyCountIn(texts: readonly string[], middleC: MiddleC | undefined): KeyCount | undefined {
  let found: KeyCount | undefined;
  for (const whole of texts) {
    const text = whole.slice(0, longest);
    const counts = tellsOfCounting(text);
    for (const clause of text.split(clauseEnd)) {
      const shift = shiftIn(clause, counts, octaveShifts[middleC ?? 'C4']);
      if (shift === undefined) continue;
      if (found && found.shift !== shift) return undefined;
      found ??= { shift, text: tellingSentence(text, (one) => one.includes(clause.trim())) };
    }
  }
  return found?.shift === 0 ? undefined : found;
}

/** What a clause says to be added to numbers; `counts`: the text tells of counting. */
function shiftIn(clause: string, counts: boolean, octave: number): number | undefined {
  const keys = isMidi.exec(clause);
  // Another word before the number says that it counts something else.
  const isOfKeys = (index: number) => {
    const before = clause.slice(0, index);
    return !/[\p{L}\d]/u.test(before) || keyBefore.test(before) || (counts && /[(]\s*$/.test(before));
  };
  if (keys && isOfKeys(keys.index)) return Number(keys[2]) - Number(keys[1]);
  if (middleCIn(clause)) return undefined;
  const at = (name: string, number: number) => {
    const named = readKey(name.replace(/\s/g, ''))?.named;
    return named === undefined ? undefined : named + octave - number;
  };
  const named = isNote.exec(clause);
  if (named) {
    const before = clause.slice(0, named.index);
    if (keyBefore.test(before) || (counts && (isOfKeys(named.index) || tellsOfCounting(before))))
      return at(named[2], Number(named[1]));
  }
  const behind = noteIs.exec(clause);
  if (behind) return at(behind[1], Number(behind[2]));
  const first = counts ? firstIs.exec(clause) : null;
  return first ? at(first[1], 1) : undefined;
}
