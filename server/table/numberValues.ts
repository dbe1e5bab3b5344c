import type { Unit } from './meaning';
import { unitOf } from './meaning';

/** A number as a cell gives it. */
export interface NumberReading {
  number: number;
  /** The unit behind the number, where there is one. */
  unit: Unit | undefined;
}

const longest = 64;
const plain = /^-?\d{1,15}(?:\.\d{1,15})?$/;
const general =
  /^([+-]?)\s?(inf|infinity|∞|\d[\d.,'\u2019 \u00a0\u202f]{0,40}|[.,]\d{1,20})\s?([^\d\s].{0,20})?$/i;
const minusSigns = /^[\u2212\u2010\u2011\u2013\u2014\uff0d]/;
const groups = /^\d{1,3}(?:[.,'\u2019 \u00a0\u202f]\d{3})+$/;

/**
 * Reads a number with an optional sign (a real minus sign too), a decimal point or comma, and a known unit behind
 * it: `-3.5 dB`, `12 ct`, `−3,5`. `-inf` is negative infinity. With `whole`, marks between groups of three digits
 * part thousands: `44,100`. `undefined` for anything else.
 */
export function readNumber(text: string, whole = false): NumberReading | undefined {
  if (text.length === 0 || text.length > longest) return undefined;
  if (plain.test(text) && !(whole && text.includes('.'))) return { number: Number(text), unit: undefined };
  const match = general.exec(text.trim().replace(minusSigns, '-'));
  if (!match) return undefined;
  const [, sign, digits = '', word] = match;
  const unit = word === undefined ? undefined : unitOf(word);
  if (word !== undefined && unit === undefined) return undefined;
  const size = magnitude(digits.trim(), whole);
  return Number.isNaN(size) ? undefined : { number: sign === '-' ? 0 - size : size, unit };
}

function magnitude(digits: string, whole: boolean): number {
  if (/^[i∞]/i.test(digits)) return Number.POSITIVE_INFINITY;
  if (whole && groups.test(digits)) return Number(digits.replace(/\D/g, ''));
  const marks = digits.replace(/\d/g, '');
  if (marks === '') return Number(digits);
  const last = marks.at(-1) as string;
  const decimal = (last === '.' || last === ',') && !marks.slice(0, -1).includes(last) ? last : '';
  const cut = decimal === '' ? digits.length : digits.lastIndexOf(decimal);
  const head = digits.slice(0, cut);
  if (/\D/.test(head) && !groups.test(head)) return Number.NaN;
  return Number(`${head.replace(/\D/g, '')}.${digits.slice(cut + 1)}`);
}

/**
 * Reads a pan position, −100 (left) to 100 (right): a signed number, `L50`, `20 R`, `50 % L`, `C`, `left`, `centre`.
 * `undefined` for anything else.
 */
export function readPan(text: string): number | undefined {
  const word = text.trim().toLowerCase();
  if (word.length > 24) return undefined;
  if (/^<?(?:c|ctr|mid|middle|center|centre)>?$/.test(word)) return 0;
  if (word === 'l' || word === 'left') return -100;
  if (word === 'r' || word === 'right') return 100;
  const lead = /^(l|r|left|right)\s?(\d.*)$/.exec(word);
  const trail = /^(\d.*?)\s?(l|r|left|right)$/.exec(word);
  const side = lead?.[1] ?? trail?.[2];
  const reading = readNumber(side === undefined ? word : ((lead?.[2] ?? trail?.[1]) as string));
  if (!reading || (reading.unit !== undefined && reading.unit !== 'percent')) return undefined;
  return side?.startsWith('l') ? 0 - reading.number : reading.number;
}

/** What a cell says of a loop. */
export interface LoopReading {
  mode: 'no_loop' | 'one_shot' | 'loop_continuous' | 'loop_sustain' | undefined;
  /** The way back is played too, or the loop runs backwards; the open format names it `loop_type`. */
  type: 'alternate' | 'backward' | undefined;
  start: number | undefined;
  end: number | undefined;
}

const loopWords: Readonly<Record<NonNullable<LoopReading['mode']>, readonly string[]>> = {
  no_loop: ['off', 'no', 'false', 'none', 'no loop', 'noloop', 'unlooped', '-', '–', '—', '✗', 'n'],
  one_shot: ['one shot', 'oneshot', 'once'],
  loop_continuous:
    'on yes true loop looped looping forward forwards continuous infinite always ✓ ✔ x • y loop continuous'.split(
      ' ',
    ),
  loop_sustain: [
    'sustain',
    'sustained',
    'loop sustain',
    'until release',
    'loop until release',
    'sustain loop',
  ],
};

const loopModes: ReadonlyMap<string, LoopReading['mode']> = new Map([
  ...(Object.keys(loopWords) as NonNullable<LoopReading['mode']>[]).flatMap((mode) =>
    loopWords[mode].map((word) => [word, mode] as const),
  ),
  ['loop continuous', 'loop_continuous'],
]);

const loopTypes: ReadonlyMap<string, LoopReading['type']> = new Map([
  ['alternate', 'alternate'],
  ['alternating', 'alternate'],
  ['ping pong', 'alternate'],
  ['pingpong', 'alternate'],
  ['bidirectional', 'alternate'],
  ['bi directional', 'alternate'],
  ['forward backward', 'alternate'],
  ['backward', 'backward'],
  ['backwards', 'backward'],
  ['reverse', 'backward'],
]);

/** Reads a loop cell: a switch (`on`, `off`, `0`, `1`, `✓`), a mode in words, or `start-end` in frames. */
export function readLoop(text: string): LoopReading | undefined {
  const word = text.trim().toLowerCase();
  if (word.length > 40) return undefined;
  const none = { type: undefined, start: undefined, end: undefined };
  if (word === '0') return { ...none, mode: 'no_loop' };
  if (word === '1') return { ...none, mode: 'loop_continuous' };
  const words = word.length > 1 ? word.replace(/[_-]/g, ' ') : word;
  const mode = loopModes.get(words);
  if (mode) return { ...none, mode };
  const type = loopTypes.get(words);
  if (type) return { ...none, mode: 'loop_continuous', type };
  const range = /^(\d[\d.,']{0,15})\s?(?:-|–|—|−|\.{2,3}|…|to|:)\s?(\d[\d.,']{0,15})$/.exec(word);
  const start = range ? readNumber(range[1] as string, true)?.number : undefined;
  const end = range ? readNumber(range[2] as string, true)?.number : undefined;
  if (start === undefined || end === undefined || !Number.isInteger(start) || !Number.isInteger(end))
    return undefined;
  return { mode: undefined, type: undefined, start, end };
}

/** Reads a round robin position, with the number of positions where the cell gives it: `2`, `2/4`, `2 of 4`, `rr2`. */
export function readSequence(text: string): { position: number; length: number | undefined } | undefined {
  const match = /^(?:[a-z]{1,12}[ ._#-]?)?(\d{1,3})(?:\.0+)?(?:\s?(?:\/|of)\s?(\d{1,3}))?$/i.exec(
    text.trim(),
  );
  if (!match) return undefined;
  return { position: Number(match[1]), length: match[2] === undefined ? undefined : Number(match[2]) };
}

const audioEndings: ReadonlySet<string> = new Set(
  'wav wave bwf rf64 w64 aif aiff aifc flac ogg oga opus mp3 snd au'.split(' '),
);

/** Whether a text ends like the name of an audio file. */
export function isAudioFileName(text: string): boolean {
  const dot = text.lastIndexOf('.');
  return dot > 0 && text.length - dot <= 5 && audioEndings.has(text.slice(dot + 1).toLowerCase());
}
