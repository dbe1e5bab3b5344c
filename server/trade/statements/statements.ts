import type { MiddleC } from '../../model/keys';
import { readHeading } from '../headings/headings';
import { unchangedAt } from '../headings/statedScale';
import { unitOf } from '../languages/cellWords';
import { languages } from '../languages/languages';
import { bareWord, usualSigns } from '../languages/spelling';
import { unitByStem } from '../languages/unitStems';
import { loopWords, namesLoop } from '../loopWords';
import type { ColumnMeaning, Unit } from '../meaning';
import { unitFractionIn } from '../phrases/unitFractions';
import { rangeWords } from '../rangeWords';
import type { KeyReading } from '../readings/keyReading';
import { endsOnRelease } from '../readings/startInTitle';
import { turningWords } from '../turningWords';
import type { BracketValues } from './amounts/bracketValues';
import { bracketValuesIn } from './amounts/bracketValues';
import type { ForAll } from './amounts/forAll';
import { forAllIn } from './amounts/forAll';
import { forSomeIn } from './amounts/forSome';
import type { ForSome } from './amounts/levelChange';
import { panEndsIn } from './amounts/statedSides';
import { blankIsAboveIn } from './blanks';
import type { BlankRoot } from './keys/blankRoots';
import { blankRootIn } from './keys/blankRoots';
import { keyCountIn } from './keys/keyCount';
import type { KeyReach } from './keys/keyReach';
import { keyReachIn } from './keys/keyReach';
import type { KeySpread } from './keys/keySpread';
import { keySpreadIn, lowestKeyIn, outermostKeysIn } from './keys/keySpread';
import { pianoKeysIn } from './keys/pianoKeys';
import { middleCIn, middleKeyIn, otherOctavesIn } from './keys/statedOctave';
import type { StatedLayerOrder } from './layers/layerOrder';
import { layerOrderIn } from './layers/layerOrder';
import type { StatedDynamics } from './layers/statedDynamics';
import { statedDynamicsIn } from './layers/statedDynamics';
import { loopsToEndIn } from './playing/loopsToEnd';
import type { NamedReleases } from './playing/namedReleases';
import { namedReleasesIn } from './playing/namedReleases';
import type { StatedEnds } from './playing/statedEnds';
import { endsIn } from './playing/statedEnds';
import { turnStatement } from './playing/turns';
import { tellingSentence } from './tellingSentence';

/** A scale that the text around a table gives for columns of a meaning. */
export interface StatedScale {
  unit: Unit | undefined;
  low: number | undefined;
  high: number | undefined;
  /** The clause that says so. */
  text: string;
}

/** What the text around tables says of how they are to be read. */
export interface Statements {
  /** The texts themselves. */
  texts: readonly string[];
  /** The note name of key 60. */
  middleC: { is: MiddleC; text: string } | undefined;
  /** How octaves are counted, where no name of key 60 that is usual says so. */
  otherOctaves: ReturnType<typeof otherOctavesIn>;
  /** The number that the table gives to middle C, where it is not 60. */
  middleKey: { is: number; text: string } | undefined;
  scales: ReadonlyMap<ColumnMeaning, StatedScale>;
  /** Whether the end of a loop or of a sample is the last frame that is played or the one behind it. */
  ends: StatedEnds | undefined;
  /** The sentence that says that loops end with their files. */
  loopsToEnd: string | undefined;
  /** The number of the first frame. */
  firstFrame: { is: 0 | 1; text: string } | undefined;
  /** The keys that switch between articulations, and the one that is taken at the start. */
  switches: {
    range: { low: number; high: number } | undefined;
    start: { name: string; text: string } | undefined;
  };
  /** Names that the text explains as letting the key go, bare. */
  releases: ReadonlySet<string>;
  /** Parts of file names that the text explains so. */
  namedReleases: readonly NamedReleases[];
  /** The velocities of dynamics. */
  dynamics: StatedDynamics | undefined;
  /** Which of numbered layers is the softest. */
  layerOrder: StatedLayerOrder | undefined;
  /** The key that the lowest zone starts with. */
  lowestKey: KeyReading | undefined;
  /** How roots share the keys out, or how far each reaches. */
  keySpread: KeySpread | KeyReach | undefined;
  /** The keys that the lowest and the highest zone reach to. */
  outermostKeys: ReturnType<typeof outermostKeysIn>;
  /** What is given for all zones. */
  forAll: readonly ForAll[];
  /** What is added to some zones. */
  forSome: readonly ForSome[];
  /** The folder that samples lie in. */
  folder: { path: string; text: string } | undefined;
  /** The text that says that keys count as those of a piano, from 1 to 88. */
  pianoKeys: string | undefined;
  /** How numbers of keys are counted, where the text gives one of them its key. */
  keyCount: ReturnType<typeof keyCountIn>;
  /** Frames a second of all samples. */
  sampleRate: number | undefined;
  /** The text that says that the samples of a row play in turn. */
  turns: string | undefined;
  /** What values in brackets are. */
  bracketValues: BracketValues | undefined;
  /** The sentence that says that an empty cell has the value above it. */
  blankIsAbove: string | undefined;
  /** What goes for root keys that are left out. */
  blankRoot: BlankRoot | undefined;
}

const longest = 2000;
const fromOne =
  /(?:count\p{L}*|start\p{L}*|number\p{L}*|z[aä]hl\p{L}*|begin\p{L}*)[^.;]{0,30}\b(?:from|at|with|ab|von|bei|mit)\s+1\b|\b(?:one|1)[- ]based\b|first (?:frame|sample) is 1\b/iu;
const frames = new RegExp(String.raw`\b(?:frames?|samples?|positions?|points?)\b|abtast|${loopWords}`, 'iu');
const rate =
  /(?<![\d.,])(\d{1,3}(?:[.,]\d{1,3})?)\s?khz\b|(?<![\d.,])(\d{4,6})\s?hz\b|sample ?rate\W{0,3}(\d{4,6})\b/iu;
const range = new RegExp(
  String.raw`(?<![\p{L}\d.])([-\u2212]?\d+(?:[.,]\d+)?)\s*(?:%\s*)?(?:\.{2,3}|\u2026|[-\u2010-\u2015~\u2192]|through|and|und|e|y|${rangeWords})\s*([-\u2212+]?\d+(?:[.,]\d+)?)(?![\p{L}\d])`,
  'iu',
);
const fullLevel =
  /(?<![\d.,])(\d+(?:[.,]\d+)?)\s*%?\s*(?:=|is|means|ist|bedeutet|est|es)\s*(?:the\s+)?(?:full|max|unity|0 ?db|voll|plein|pleno|loudest)/iu;
const brackets = /[([][^()[\]]{0,200}[)\]]/gu;
/** The number at which a level is left as it is, with its scale: `100 = as recorded`. */
function unchangedScale(clause: string): Omit<StatedScale, 'text'> | undefined {
  const number = unchangedAt(clause);
  if (number === 1) return { unit: 'linear', low: undefined, high: undefined };
  if (number === 100) return { unit: 'percent', low: undefined, high: undefined };
  return number === 127 || number === 255 ? { unit: undefined, low: 0, high: number } : undefined;
}

const velocities: readonly ColumnMeaning[] = ['lovel', 'hivel', 'velocity_range'];
const positions: readonly ColumnMeaning[] = [
  'loop',
  'loop_start',
  'loop_end',
  'loop_length',
  'offset',
  'end',
];
/** Columns that one subject speaks of. */
const subjects: readonly (readonly ColumnMeaning[])[] = [
  ['volume', 'attenuation'],
  ['tune'],
  ['transpose'],
  ['pan'],
  velocities,
  positions,
];
const positionWord =
  /^(?:times?|positions?|points?|zeiten?|punkte?|positionen|temps|tiempos?|tempi|tijden)$/iu;
const positionUnits: ReadonlySet<Unit> = new Set(['s', 'ms', 'frames', 'percent']);

/** Reads what some texts around tables state; what is not understood says nothing. */
export function statementsIn(written: readonly string[]): Statements {
  const texts = written.map(usualSigns);
  const scales = new Map<ColumnMeaning, StatedScale>();
  let middleC: Statements['middleC'];
  let otherOctaves: Statements['otherOctaves'];
  let middleKey: Statements['middleKey'];
  let endsAre: Statements['ends'];
  let firstFrame: Statements['firstFrame'];
  let sampleRate: number | undefined;
  for (const whole of texts) {
    const text = whole.slice(0, longest);
    const is = middleCIn(text);
    if (is) middleC ??= { is, text: tellingSentence(text, (one) => middleCIn(one) === is) };
    if (!is) otherOctaves ??= otherOctavesIn(text);
    const key = middleKeyIn(text);
    if (key !== undefined)
      middleKey ??= { is: key, text: tellingSentence(text, (one) => middleKeyIn(one) === key) };
    sampleRate ??= rateIn(text);
    panEnds(text, scales);
    for (const clause of clausesOf(text)) {
      endsAre ??= endsIn(clause);
      if (fromOne.test(clause) && frames.test(clause)) firstFrame ??= { is: 1, text: clause };
      readScale(clause, scales);
    }
  }
  return {
    texts,
    middleC,
    otherOctaves: middleC ? undefined : otherOctaves,
    middleKey: middleKey?.is === 60 ? undefined : middleKey,
    scales,
    ends: endsAre,
    loopsToEnd: loopsToEndIn(texts),
    firstFrame,
    switches: switchesIn(texts),
    releases: releasesIn(texts),
    namedReleases: namedReleasesIn(texts),
    lowestKey: lowestKeyIn(texts),
    keySpread: keySpreadIn(texts) ?? keyReachIn(texts),
    outermostKeys: outermostKeysIn(texts),
    dynamics: statedDynamicsIn(texts),
    layerOrder: layerOrderIn(texts),
    forAll: forAllIn(texts),
    forSome: forSomeIn(texts),
    folder: folderIn(texts),
    pianoKeys: pianoKeysIn(texts),
    keyCount: keyCountIn(texts, middleC?.is),
    sampleRate,
    turns: turnStatement(texts),
    bracketValues: bracketValuesIn(texts),
    blankIsAbove: blankIsAboveIn(texts),
    blankRoot: blankRootIn(texts),
  };
}

function clausesOf(text: string): string[] {
  const clauses = text
    .split(/[.!?;,](?=\s|$)|[\n\r()[\]]/u)
    .map((clause) => clause.trim())
    .filter((clause) => clause !== '');
  return [...clauses.flatMap(joinedUnits), ...unitsInBrackets(text)];
}

const inUnit = String.raw`\p{L}+ (?:in|en|em|i|w|v|в) \p{L}+`;
const joined = new RegExp(
  String.raw`(?<=(?<!\p{L})${inUnit}) (?:and|und|et|y|e|en|och|og|i|a|и) (?=(?:\p{L}+ ){0,3}${inUnit}(?!\p{L}))`,
  'u',
);

/** Clauses that give a unit each, put side by side as `coarse in semitones and fine in cents`. */
function joinedUnits(clause: string): string[] {
  return clause.split(joined);
}

/** Words with the unit that stands in brackets behind them, as `levels dB` of `levels (dB) and tunings (cents, added)`. */
function unitsInBrackets(text: string): string[] {
  return Array.from(
    text.matchAll(/(\p{L}{2,})\s*[([]\s*(\p{L}{1,12}|%)\s*[,;)\]]/gu),
    ([, word, unit = '']) => `${word} ${unit}`,
  );
}

const folderWord = languages.flatMap(({ folders }) => folders).join('|');
const statedFolder = new RegExp(
  String.raw`(?:^|[^\p{L}])(?:(?:samples|files|recordings|wavs?|they) (?:are|lie|live|stand|sit|come) (?:all )?(?:in|from|under)(?: the)?(?: (?:folder|directory))?|(?:dateien|samples) (?:liegen|sind|stehen) (?:alle )?in|(?:${folderWord})\s*(?:is|ist|est|es|:|=>?))\s*(?:["'\u201c\u00ab]([^"'\u201d\u00bb\n]{1,120}[/\\][^"'\u201d\u00bb\n]{0,120})|((?:[\p{L}]:)?[\p{L}\p{N}_.()~-]*(?:[/\\][\p{L}\p{N}_.()~-]*)+))`,
  'iu',
);

/** A folder in an attribute of markup: `folder="strings"`. */
const attributeFolder = new RegExp(String.raw`(?:^|\s)(?:${folderWord})="([^"\n/\\.][^"\n]{0,120})"`, 'iu');

/** The folder that the text says samples lie in: a path, to be told from other words by its slash. */
function folderIn(texts: readonly string[]): Statements['folder'] {
  for (const text of texts) {
    const found = statedFolder.exec(text.slice(0, longest));
    const quoted = attributeFolder.exec(text.slice(0, longest))?.[1];
    const path = (found?.[1] ?? found?.[2] ?? quoted)?.trim().replaceAll('\\', '/').replace(/\/\.$/, '/');
    if (path && path.length > 1 && !/\.\w{2,5}$/.test(path) && !/^[/.]+$/.test(path))
      return { path: path.endsWith('/') ? path : `${path}/`, text: text.trim() };
  }
  return undefined;
}

const switchRange = new RegExp(
  String.raw`(?:key ?switch(?:es)?|umschalttasten|schalttasten|ks)\b\D{0,40}?(\d{1,3})\s?(?:-|\u2013|\.{2,3}|${rangeWords})\s?(\d{1,3})(?!\d)`,
  'iu',
);
const switchStart =
  /\b(?:default|standard|initial|start(?:ing)?)\W{1,2}(?:articulation|key ?switch|technique|artikulation|spielweise|switch)?\s*(?:is|ist|:|=)?\s*["'\u201c]?([\p{L}\d#][\p{L}\d# -]{0,40})/iu;

const letGo =
  /(?:^|[\s,;("'])(\p{L}[\p{L}\d-]{0,15})["']?\s?[=:]\s?[^,.;=:\n]{0,40}\b(?:let go|released?|key[- ]?up|note[- ]?off|loslassen|losgelassen|rel\u00e2ch\p{L}*|soltar|suelta|rilascia\p{L}*|loslaten)/giu;

function releasesIn(texts: readonly string[]): ReadonlySet<string> {
  return new Set(
    texts.flatMap((text) =>
      Array.from(text.slice(0, longest).matchAll(letGo), ([says, name = '']) =>
        endsOnRelease(says) ? [] : [bareWord(name)],
      ).flat(),
    ),
  );
}

const startsIn =
  /\b(?:starts?|begins?|opens?|beginnt|startet) (?:in|with|on|mit|in der)\s+["'\u201c]?(\p{L}[\p{L}\d# -]{0,40})/iu;

function switchesIn(texts: readonly string[]): Statements['switches'] {
  let range: Statements['switches']['range'];
  let start: Statements['switches']['start'];
  for (const text of texts) {
    const [, low, high] = switchRange.exec(text.slice(0, longest)) ?? [];
    if (low !== undefined && Number(low) < Number(high) && Number(high) < 128)
      range ??= { low: Number(low), high: Number(high) };
    const said = switchStart.exec(text.slice(0, longest)) ?? startsIn.exec(text.slice(0, longest));
    if (said)
      start ??= {
        name: said[1]?.trim() ?? '',
        text: clausesOf(text).find((one) => switchStart.test(one) || startsIn.test(one)) ?? text,
      };
  }
  return { range, start };
}

function rateIn(text: string): number | undefined {
  const [, kilohertz, hertz, plain] = rate.exec(text) ?? [];
  const found = kilohertz ? numberOf(kilohertz) * 1000 : Number(hertz ?? plain ?? Number.NaN);
  return found >= 4000 && found <= 768_000 ? Math.round(found) : undefined;
}

/** Numbers beside the words for left and right. */
function panEnds(text: string, scales: Map<ColumnMeaning, StatedScale>): void {
  const found = scales.has('pan') ? undefined : panEndsIn(text);
  if (found) scales.set('pan', { unit: undefined, ...found, text: text.trim() });
}

/** Words before what a statement does not hold for. */
const exception = new RegExp(turningWords('except'), 'iu');

/** A clause that names columns and gives a unit, two ends, or the number for the full level. */
function readScale(whole: string, scales: Map<ColumnMeaning, StatedScale>): void {
  const clause = whole.split(exception)[0] ?? whole;
  const words = clause.match(/[\p{L}%]+/gu) ?? [];
  const meanings = subjectOf(words);
  if (!meanings || meanings.some((meaning) => isKnown(scales.get(meaning)))) return;
  const stated = scaleOf(clause, meanings);
  if (!stated) return;
  for (const meaning of meanings) scales.set(meaning, { ...scales.get(meaning), ...stated });
}

/** Whether nothing remains to be said of a scale: a law such as `linear` alone leaves its ends open. */
function isKnown(scale: StatedScale | undefined): boolean {
  return scale !== undefined && (scale.unit !== 'linear' || scale.high !== undefined);
}

/** The unit and the ends that a clause gives for values of columns of these meanings; `undefined` where it gives neither. */
export function scaleOf(clause: string, meanings: readonly ColumnMeaning[]): StatedScale | undefined {
  const isPosition = meanings.includes('loop');
  const isVelocity = meanings.includes('lovel');
  // A letter alone is a unit behind `in` only, as in `loops in s`.
  const isUnit = (word: string) =>
    word.length > 1 || new RegExp(`\\b(?:in|en|em)\\s+${word}$`, 'iu').test(clause);
  const unitIn = (text: string) =>
    (text.match(/[\p{L}%]+/gu) ?? [])
      .filter((word) => word === '%' || isUnit(word))
      .map((word) => unitByStem(word))
      .findLast((one) => one !== undefined && fits(one, meanings));
  const part = unitFractionIn(clause, (one) => fits(one, meanings));
  if (part === 'unknown') return undefined;
  // An example in brackets may be in another unit: `in semitones (0.1 = ten cents up)`.
  const unit = part ?? unitIn(clause.replace(brackets, ' ')) ?? unitIn(clause);
  const ends = isPosition ? null : range.exec(clause);
  const full = meanings[0] === 'volume' ? fullLevel.exec(clause)?.[1] : undefined;
  const low = ends ? numberOf(ends[1]) : full === undefined ? undefined : 0;
  const high = ends ? numberOf(ends[2]) : full === undefined ? undefined : numberOf(full);
  const isOrdered = low !== undefined && high !== undefined && low < high;
  const unchanged = meanings[0] === 'volume' && !isOrdered ? unchangedScale(clause) : undefined;
  if (unchanged && (unit === undefined || unit === 'linear')) return { ...unchanged, text: clause };
  if (unit === undefined && !isOrdered) return undefined;
  if (isVelocity && unit !== 'percent' && !isOrdered) return undefined;
  return { unit, low: isOrdered ? low : undefined, high: isOrdered ? high : undefined, text: clause };
}

/** The columns that the words of a clause name. */
function subjectOf(words: readonly string[]): readonly ColumnMeaning[] | undefined {
  if (words.some((word) => positionWord.test(word) || namesLoop(word))) return positions;
  for (let from = 0; from < Math.min(words.length, 12); from++) {
    for (const length of [3, 2, 1]) {
      if (from + length > words.length) continue;
      const phrase = words.slice(from, from + length).join(' ');
      const meaning = (readHeading(phrase) ?? readHeading(phrase.replace(/e?[sn]$/, '')))?.meaning;
      const subject = meaning && subjects.find((one) => one.includes(meaning));
      // Small words such as `in` and `to` name ends of samples only in headings.
      const isSmall = (meaning === 'offset' || meaning === 'end') && !/\p{L}{6}/u.test(phrase);
      if (subject && phrase.length > 1 && !isSmall && unitOf(phrase) === undefined) return subject;
    }
  }
  return undefined;
}

function fits(unit: Unit, meanings: readonly ColumnMeaning[]): boolean {
  switch (meanings[0]) {
    case 'volume':
      return unit === 'dB' || unit === 'percent' || unit === 'linear' || unit === 'centibels';
    case 'tune':
    case 'transpose':
      return unit === 'cents' || unit === 'semitones' || unit === 'linear';
    case 'loop':
      return positionUnits.has(unit);
    default:
      return unit === 'percent';
  }
}

function numberOf(text: string): number {
  return Number(text.replace('\u2212', '-').replace(',', '.'));
}
