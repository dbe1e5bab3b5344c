import { readHeading } from '../headings/headings';
import { bareWord, wordsOf } from '../languages/spelling';
import { namesLoop } from '../loopWords';
import type { ColumnMeaning } from '../meaning';
import { rangeWords } from '../rangeWords';
import { readKeyRange } from '../readings/keyReading';
import { loopModeInWords } from '../readings/loopPhrases';
import type { LoopReading } from '../readings/loopReading';
import { readLoop } from '../readings/loopReading';
import { letterNote, noteName } from '../readings/notePatterns';
import { readNumber } from '../readings/numberReading';
import { hasSide, readPan } from '../readings/panReading';
import { triggerPhrase } from '../readings/triggerPhrases';
import { readVelocities } from '../readings/velocityReading';
import { turningWords } from '../turningWords';
import type { ToldAmount } from './amounts';
import { toldCents, toldLevel } from './amounts';
import { leadsToKeys, saysOf, writtenWords } from './toldWords';

/** A value that a clause tells of a zone, as a cell of a column would give it. */
export interface ToldValue {
  meaning: ColumnMeaning;
  text: string;
  /** Whether words or a unit say what the value is, and not its place alone. */
  isNamed: boolean;
  /** Whether it is an amount of which no known word or sign says which way it goes. */
  isOpen?: true;
}

const longest = 120;
/** A clause of more words tells something else. */
const mostWords = 14;
const key = String.raw`(?:${letterNote}[-\u2212]?\d{0,2}(?:['\u2032]{1,4}|,{1,3}(?=\s|$))?|${noteName}[-\u2212]?\d{0,2}|\d{1,3})(?![.,]?\d)`;
const sides = String.raw`(?:\s?[-\u2010-\u2015~\u301c\uff5e]\s?|\s?(?:\.{2,3}|\u2026|\u2192|->)\s?|\s(?:${writtenWords('last')}|${rangeWords})\s|(?<=\d)(?:到|至)(?=\d|[A-H]))`;
const joined = `${writtenWords('behindFirst')},?\\s*`;
/** Scripts without blanks put the word right before the key. */
const opening = String.raw`(?:${writtenWords('first')}(?:\s+|(?<=[\u3000-\u9fff])))?`;
/** A key or two, with nothing else around them but the words of a range. */
const keys = new RegExp(
  `^${opening}(${key})(?:(?:${sides}|${joined})(${key})${writtenWords('behindLast')}?)?$`,
  'iu',
);
/** The word for keys once more before the second one: `from key 58 to key 62`, `de la touche 58 à la touche 62`. */
const again = new RegExp(
  String.raw`(\p{L}{3,})(\s${key}\s(?:${writtenWords('last')}|${rangeWords}))(?:\s\p{L}{1,3})?\s\1(?=\s${key})`,
  'iu',
);
/** An article, or a short word with one, before a second number: `de la tecla 36 a la 42`, `von Taste 36 bis zur 42`. */
const article = new RegExp(
  String.raw`(\d\s(?:${writtenWords('last')}|${rangeWords}))\s(?:las?|el|los?|les?|il|os?|as?|d(?:er|ie|as|e[mn]?)|zu[rm]|het|the)\s(?=\d{2,3}(?!\d))`,
  'iu',
);
const positions = new RegExp(
  String.raw`^${opening}(\d{1,9})(?:${sides}|${joined})(\d{1,9})${writtenWords('behindLast')}?$`,
  'iu',
);
/** A number, or a letter that may be a note. */
const valueLike = /\d|(?<!\p{L})[B-H](?:is)?(?!\p{L})/u;
/** Words that turn what a clause says round. */
const turning = new RegExp(
  String.raw`${turningWords('not', 'none', 'except')}|(?<!\p{L})but(?!\p{L})|除`,
  'iu',
);
/** Words that set bounds to it, which only what starts a zone may have. */
const bounding = new RegExp(turningWords('only'), 'iu');
/** What a heading of two numbers may be taken for where its words are known. */
const cellMeanings: ReadonlySet<ColumnMeaning> = new Set([
  'pitch_keycenter',
  'key',
  'lokey',
  'hikey',
  'key_range',
  'lovel',
  'hivel',
  'velocity_range',
  'loop_start',
  'loop_end',
  'loop_length',
  'offset',
  'end',
  'seq_position',
  'seq_length',
  'mute_group',
]);
const rangesOfEnds: Readonly<Partial<Record<ColumnMeaning, ColumnMeaning>>> = {
  lokey: 'key_range',
  lovel: 'velocity_range',
};
const keyed: ReadonlySet<ColumnMeaning> = new Set(['pitch_keycenter', 'key', 'lokey', 'hikey', 'key_range']);

/**
 * Reads what a clause of a sentence tells of a zone: `plays from C2 to E2`, `základní tón Fis`, `při síle úhozu 1 až 72`, `abbassato di
 * 1,5 dB`, `4 cent te hoog`. `undefined` where it tells nothing that a zone has, or where it can't be told what.
 */
export function readClause(written: string): ToldValue | undefined {
  const clause = written
    .normalize('NFC')
    .trim()
    .replace(/\s+/g, ' ')
    .replace(again, '$1$2')
    .replace(article, '$1 ');
  if (clause === '' || clause.length > longest || clause.split(' ').length > mostWords) return undefined;
  if (turning.test(clause) && !readLoop(clause)) return undefined;
  if (bounding.test(clause) && !readLoop(clause)) return triggerIn(clause);
  return amountIn(clause) ?? placeIn(clause) ?? wordIn(clause);
}

const amounts = /\d+(?:[.,]\d+)?/gu;

/** A level or a tuning, by its unit. */
function amountIn(clause: string): ToldValue | undefined {
  // A number beside that of the amount would be lost.
  if ((clause.match(amounts)?.length ?? 0) > 1) return undefined;
  const level = toldLevel(clause);
  if (level)
    return { meaning: 'volume', text: `${signed(level.amount)} dB`, isNamed: true, ...openIn(level) };
  const cents = toldCents(clause);
  if (!cents) return undefined;
  return {
    meaning: cents.isDeviation ? 'deviation' : 'tune',
    text: `${signed(cents.amount)} ct`,
    isNamed: true,
    ...openIn(cents),
  };
}

function openIn({ isOpen }: ToldAmount): Pick<ToldValue, 'isOpen'> {
  return isOpen ? { isOpen: true } : {};
}

function signed(number: number): string {
  return number > 0 ? `+${number}` : String(number);
}

/** Keys, velocities or frames behind the words that name them. */
function placeIn(clause: string): ToldValue | undefined {
  for (let at = 0; at < clause.length; at++) {
    if (!mayStart(clause, at)) continue;
    const value = clause.slice(at);
    const label = clause.slice(0, at).trim();
    // A value before this one would be lost.
    if (valueLike.test(label)) return undefined;
    const found = keysBehind(label, value) ?? framesBehind(label, value) ?? cellBehind(label, value);
    if (found) return found;
  }
  return undefined;
}

/** Whether a value may start here: no word goes on, and no number. */
function mayStart(text: string, at: number): boolean {
  if (at === 0) return true;
  const [before, here] = [text[at - 1], text[at]];
  if (here === ' ') return false;
  if (/\d/.test(here)) return !/[\d.,+-]/.test(before);
  return !/[\p{Script=Latin}\p{Script=Cyrillic}\d]/u.test(before);
}

function keysBehind(label: string, value: string): ToldValue | undefined {
  const [, low, high] = keys.exec(value) ?? [];
  if (low === undefined) return undefined;
  const isNamed = label !== '';
  // Without a word only names of notes with their octaves are keys for sure.
  if (!isNamed && !/^\P{N}+\d.*\s\P{N}+\d+$/u.test(`${low} ${high ?? ''}`)) return undefined;
  const said = high !== undefined && leadsToKeys(label) ? 'key_range' : meaningOf(label);
  if (!said) return undefined;
  // `von 52 bis 60` gives both ends, though the word alone names the lower one.
  const meaning = high === undefined ? said : (rangesOfEnds[said] ?? said);
  const text = high === undefined ? low : `${low} \u2013 ${high}`;
  if (meaning === 'velocity_range' || meaning === 'lovel' || meaning === 'hivel') {
    if (/\D/.test(low + (high ?? ''))) return undefined;
    const end = high === undefined ? limitOf(label, value) : text;
    return end === undefined ? undefined : { meaning, text: end, isNamed };
  }
  if (!keyed.has(meaning)) return undefined;
  const isRange = high !== undefined;
  if (isRange && meaning !== 'key_range' && meaning !== 'key') return undefined;
  const isKey = readKeyRange(text) ?? readKeyRange(text, 'german lines');
  if (!isKey) return undefined;
  const isOfKeys = meaning === 'key_range' || meaning === 'key';
  return { meaning: isOfKeys ? (isRange ? 'key_range' : 'key') : meaning, text, isNamed };
}

/** One velocity with a word that says which end it is. */
function limitOf(label: string, value: string): string | undefined {
  const last = `${label.split(' ').at(-1) ?? ''} ${value}`;
  const reading = readVelocities(last) ?? readVelocities(value);
  if (!reading) return undefined;
  const { low, high } = reading;
  return low === undefined ? `<=${high}` : high === undefined ? `>=${low}` : `${low}`;
}

function framesBehind(label: string, value: string): ToldValue | undefined {
  if (!wordsOf(label).some(namesLoop)) return undefined;
  const [, start, end] = positions.exec(value) ?? [];
  return start === undefined ? undefined : { meaning: 'loop', text: `${start}-${end}`, isNamed: true };
}

/** Any other value behind a known heading. */
function cellBehind(label: string, value: string): ToldValue | undefined {
  const said = label === '' ? undefined : readHeading(label);
  if (!said || said.likeness !== undefined || !cellMeanings.has(said.meaning)) return undefined;
  if (keyed.has(said.meaning))
    return readKeyRange(value) ? { meaning: said.meaning, text: value, isNamed: true } : undefined;
  return readNumber(value, 'frames') ? { meaning: said.meaning, text: value, isNamed: true } : undefined;
}

/** What the words before a key or a number name; `key_range` where there are none. */
function meaningOf(label: string): ColumnMeaning | undefined {
  if (label === '') return 'key_range';
  const said = readHeading(label);
  if (said && said.likeness === undefined && cellMeanings.has(said.meaning)) return said.meaning;
  // In some languages a verb that says where keys run looks like a word for loops: `loopt`.
  if (wordsOf(label).some((word) => namesLoop(word) && !saysOf(word, 'keys'))) return undefined;
  if (saysOf(label, 'velocities')) return 'velocity_range';
  if (saysOf(label, 'root')) return 'pitch_keycenter';
  return saysOf(label, 'keys') ? 'key_range' : undefined;
}

/** Words that answer a heading, as `yes`, `with` and `without`, say nothing of a loop in a sentence. */
function speaksOfLoop(clause: string, mode: LoopReading['mode']): boolean {
  if (mode !== 'loop_continuous' && mode !== 'no_loop') return true;
  if (wordsOf(clause).some(namesLoop)) return true;
  return mode === 'loop_continuous' && loopModeInWords(clause)?.mode === mode;
}

/** A side, a loop or what starts a zone, in words. */
function wordIn(clause: string): ToldValue | undefined {
  const bare = clause.replace(
    /^(?:(?:ge)?pan\p{L}*|position\p{L}*|posizion\p{L}*|balance|balans|zbalansowan\p{L}*|панорам\p{L}*)[\s:=]+(?:to\s)?/iu,
    '',
  );
  if (
    readPan(bare) !== undefined &&
    hasSide(bare) &&
    (bare !== clause || bareWord(bare).length > 1 || /\d/.test(bare))
  )
    return { meaning: 'pan', text: bare, isNamed: true };
  const loop = /\p{L}{3}/u.test(clause) ? readLoop(clause) : undefined;
  if (loop?.mode && loop.start === undefined && speaksOfLoop(clause, loop.mode))
    return { meaning: 'loop', text: clause, isNamed: true };
  return triggerIn(clause);
}

function triggerIn(clause: string): ToldValue | undefined {
  const trigger = triggerPhrase(clause);
  return trigger && { meaning: 'trigger', text: trigger, isNamed: true };
}
