import type { MiddleC } from '../../../model/keys';
import { keyOfFrequency } from '../../../model/keys';
import { firstOctave, insteadOf, lowestNote, notBehind } from '../../languages/octaveWords';
import { conventions, octaveShifts } from '../../middleC';
import { readKey } from '../../readings/keyReading';
import { withLatinNotes } from '../../readings/lookalikes';
import { noteName } from '../../readings/notePatterns';
import { turningWords } from '../../turningWords';
import { namedKeysIn } from './namedKeys';

/** Scripts without spaces between words may stand right before a name; `as` and `es` apart from a number are words. */
const note = String.raw`(?<![\p{Script=Latin}\p{Script=Cyrillic}\p{Script=Greek}\d])(?![ae]s\s)(${noteName}\s?[-\u2212]?\d)(?!\d)`;
/** Words between a name and what it is called, in the languages of the trade. */
const verbs =
  "is|equals|corresponds? to|(?:sits|lies) (?:at|on)|falls on|maps to|shows? as|entspricht|liegt (?:auf|bei)|corresponde? (?:\u00e0|a)|correspond \u00e0|corrisponde a|komt overeen met|ligt op|odpowiada|motsvarar|svarer til|vastaa|соответствует|ist|hei(?:\u00df|ss)t|est|s['\u2019](?:\u00e9crit|appelle)|es|se (?:llama|escribe)|è|si (?:chiama|scrive)|é|chama-se|heet|är|heter|er|hedder|on|to(?= (?:midi|nut|klawisz|dźwięk))|je|nazywa się|это|у меня|は|が|を|是|为|為|即|은|는|이|를|을";
const called = 'called|named|written|shown as|labell?ed|numbered|as|here|hier|bei uns|ici|aquí|qui';
const equals = String.raw`\s*(?:=+>?|:|->|\u2192|[([]\s?=?|,? ?(?<!\p{L})(?:${verbs}) ?(?:(?:${called})(?!\p{L}))?)\s*["'\u201c\u00ab]?`;
const keyWord = String.raw`(?:(?:the|die|der|das|la|le|el|il|de|midi|key|note|number|no|nr|taste|nota|νότα|πλήκτρο|tecla|touche|tasto|toets|numero|n[úu]mero|nummer|nuta|nuotti|нота|клавиша|ノート|鍵盤|鍵|キー|音符|音高|键|노트|건반)\W{0,2}\s*){0,3}`;
const noteIsKey = new RegExp(`${note}["'\u201d\u00bb]?${equals}${keyWord}(\\d{1,3})(?!\\d|[.,]\\d)`, 'giu');
const keyIsNote = new RegExp(
  `(?<![\\d.]|(?<!\\p{L})vel(?:o|ocity|ocit\u00e0|ocidade|ocidad)?\\s)(\\d{1,3})${equals}${keyWord}${note}`,
  'giu',
);
const noteInHertz = new RegExp(
  `${note}${equals}(?:(440)(?!\\d|[.,]\\d)|(\\d{2,5}(?:[.,]\\d{1,3})?)\\s?hz)`,
  'iu',
);
/** Middle C in the languages of the trade. */
const middleWords =
  /(?:middle|central)[- ]?c\b|mittler\p{L}*\s+c\b|\bc\s+central|d[oó]\s+central|d[oó]\s+medio|(?:do|ut)\s+(?:du\s+)?milieu|do\s+centrale|centrale\s+c\b|cent(?:er|re)\s+c\b|middelste\s+c\b|c\s+milieu|milieu\s+(?:do|ut|c)\b|eingestrichene\p{L}*\s+c\b|mell[ae]n\p{L}*[- ]c\b|mitt?(?:er)?[- ]c\b|keski-c\b|środkowe\s+c\b|(?:prost)?řední\s+c\b|orta\s+(?:do|c)(?!\p{L})|középső\s+c\b|до\s+первой\s+октавы|(?:κεντρικ|μεσαί)\p{L}*\s+ντο|ντο\s+κεντρικ|中央の?(?:ド|c)|中央c|가운데\s?(?:도|c)/iu;
const anyNote = new RegExp(note, 'giu');
const cNote = /^(?:c|d[oó]|ut|ντ[οό]|до)/iu;
/** Names that place middle C in the octave 4 (ISO 16 and the acoustics of music). */
const scientific = /\bscientific(?: pitch)?(?: notation)?\b|\bSPN\b|\bISO 16\b/iu;
/** The names of the lowest and the highest key, 0 and 127, by convention. */
const wholeRanges = {
  C3: /(?<![\p{L}\d])C[-\u2212]2(?!\d)[^.\n]{1,12}(?<![\p{L}\d])G8(?!\d)/iu,
  C4: /(?<![\p{L}\d])C[-\u2212]1(?!\d)[^.\n]{1,12}(?<![\p{L}\d])G9(?!\d)/iu,
  C5: /(?<![\p{L}\d])C0(?!\d)[^.\n]{1,12}(?<![\p{L}\d])G10(?!\d)/iu,
} as const;

/** Whether words name middle C, so that what stands beside them says how keys are counted: `middle c`, `do central`. */
export function namesMiddleC(words: string): boolean {
  return middleWords.test(words.normalize('NFC'));
}

/** Whether words say no more than that something is middle C: `(middle C!)`, `= do central`. */
export function isMiddleC(words: string): boolean {
  const rest = words.normalize('NFC').replace(middleWords, '');
  return rest.length < words.length && !/[\p{L}\d]{3}|\d/u.test(rest) && namesMiddleC(words);
}

/** A name that a sentence turns down: `not C4`, `C4 ではなく`. */
const turnedDown = new RegExp(
  String.raw`(?:${turningWords('not', 'none')}|${insteadOf})\s*(?:(?:as|at|on|als|auf|como|comme|come|en|op|es|est|è|é|är|er|to|je)\s){0,2}["'\u201c\u00ab]?${note}|${note}["'\u201d\u00bb]?\s?${notBehind}`,
  'giu',
);

const middleNumber = /(?<![\d.,])(\d{2})(?![\d]|[.,]\d)/gu;

/** The number of the key that a text calls middle C, where it gives one and no octave: `middle C is key 48`. */
export function middleKeyIn(written: string): number | undefined {
  const text = written.normalize('NFKC');
  const clause = text.split(/[,;.:](?=\s)|[\n()]/u).find((one) => middleWords.test(one));
  const place = clause === undefined ? undefined : middleWords.exec(clause);
  if (clause === undefined || !place) return undefined;
  const around = clause.slice(Math.max(0, place.index - 30), place.index + place[0].length + 30);
  const numbers = new Set(Array.from(around.matchAll(middleNumber), ([, number]) => Number(number)));
  const [only] = numbers;
  return numbers.size === 1 && only >= 24 && only <= 84 ? only : undefined;
}

/** The octave that a text states: `C5 = 60`, `60 is called C3`, `middle C (C4)`, `A4 = 440 Hz`, `C-2 to G8`. */
export function middleCIn(written: string): MiddleC | undefined {
  const text = withLatinNotes(written.normalize('NFKC'));
  const of = (shift: number) => conventions.find((one) => octaveShifts[one] === shift);
  for (const { shift } of statedKeys(text)) {
    const found = of(shift);
    if (found) return found;
  }
  const whole = conventions.find((one) => wholeRanges[one].test(text));
  if (whole) return whole;
  const middle = middleNoteIn(text);
  return (middle && of(middle.shift)) ?? firstOctaveIn(text) ?? (scientific.test(text) ? 'C4' : undefined);
}

/** The octave that a text states by the number of the lowest one, in which key 0 is. */
function firstOctaveIn(text: string): MiddleC | undefined {
  const numbers = [...firstOctave, lowestNote].flatMap((pattern) => pattern.exec(text)?.[1] ?? []);
  const [only, ...more] = new Set(numbers.map((number) => Number(number.replace(/[\u2212\u2013]/, '-'))));
  if (only === undefined || more.length > 0) return undefined;
  return conventions.find((one) => octaveShifts[one] === (-1 - only) * 12);
}

/** A note that a text gives a key. */
interface StatedNote {
  name: string;
  key: number;
  /** Semitones from the note, read with middle C = C4, to that key. */
  shift: number;
}

/** The notes that a text gives a key by its number, or the frequency of one. */
function statedKeys(text: string): StatedNote[] {
  const found: (StatedNote | undefined)[] = [];
  for (const [, name = '', key] of text.matchAll(noteIsKey)) found.push(statedNote(name, Number(key)));
  for (const [, key, name = ''] of text.matchAll(keyIsNote)) found.push(statedNote(name, Number(key)));
  for (const { name, key } of namedKeysIn(text, anyNote)) found.push(statedNote(name, key));
  const [, tuned = '', concert, hertz] = noteInHertz.exec(text) ?? [];
  if (tuned !== '') {
    const frequency = Number((concert ?? hertz ?? '').replace(',', '.'));
    found.push(statedNote(tuned, Math.round(keyOfFrequency(frequency))));
  }
  return found.filter((one) => one !== undefined);
}

/** The one name of a C that a text has beside the words for middle C, or that the clause with these words has. */
function middleNoteIn(text: string): StatedNote | undefined {
  const kept = text.replace(turnedDown, ' ');
  for (const clause of [kept, ...kept.split(/[,;.:](?=\s)|[\n()]/u)]) {
    if (!middleWords.test(clause)) continue;
    const names = Array.from(clause.matchAll(anyNote), ([, name = '']) => name).filter((name) =>
      cNote.test(name),
    );
    if (new Set(names.map((name) => name.toLowerCase())).size === 1) return statedNote(names[0] ?? '', 60);
  }
  return undefined;
}

function statedNote(name: string, key: number): StatedNote | undefined {
  const named = readKey(name.replace(/\s/g, ''))?.named;
  return named === undefined || key > 127 ? undefined : { name, key, shift: key - named };
}

/** Octaves that are counted in another way than by the usual conventions. */
export interface OtherOctaves {
  /** Semitones from a name as it is read with middle C = C4 to its key. */
  shift: number;
  /** Whether small letters with the number of their lines are meant, so that `C1` is not `c1`. */
  isLined: boolean;
  /** The text that says so. */
  text: string;
}

const linesShift = 36;

/**
 * How a text counts octaves where it ties a name to a key and no usual convention does so: `c1 is middle C`, as names of lines do
 * (Helmholtz), or `C2 = 60`. A single number must be that of middle C or of the concert pitch: any other may count something else.
 */
export function otherOctavesIn(written: string): OtherOctaves | undefined {
  const text = withLatinNotes(written.normalize('NFKC'));
  const middle = middleNoteIn(text);
  const stated = [...(middle ? [middle] : []), ...statedKeys(text)];
  const [first] = stated;
  if (!first || stated.some(({ shift }) => shift !== first.shift)) return undefined;
  const { shift } = first;
  if (shift % 12 !== 0 || Math.abs(shift) > 48 || conventions.some((one) => octaveShifts[one] === shift))
    return undefined;
  if (!stated.some(({ key }) => key === 60 || key === 69) && stated.length < 2) return undefined;
  return {
    shift,
    isLined: shift === linesShift && stated.every(({ name }) => /^[a-h]/.test(name)),
    text: written.trim(),
  };
}
