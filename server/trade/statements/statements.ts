import type { MiddleC } from '../../model/keys';
import { isPlainHeading } from '../headings/plainHeadings';
import { bareWord, usualSigns } from '../languages/spelling';
import { loopWords } from '../loopWords';
import type { ColumnMeaning } from '../meaning';
import { rangeWords } from '../rangeWords';
import type { KeyReading } from '../readings/keyReading';
import { endsOnRelease } from '../readings/startInTitle';
import type { BracketValues } from './amounts/bracketValues';
import { bracketValuesIn } from './amounts/bracketValues';
import type { CountsDown } from './amounts/countsDown';
import { countsDownIn } from './amounts/countsDown';
import type { ForAll } from './amounts/forAll';
import { forAllIn } from './amounts/forAll';
import { forSomeIn } from './amounts/forSome';
import type { ForSome } from './amounts/levelChange';
import { blankIsAboveIn } from './blanks';
import { clausesOf } from './clauses';
import type { StatedFolder } from './folders';
import { folderIn } from './folders';
import type { BlankRoot } from './keys/blankRoots';
import { blankRootIn } from './keys/blankRoots';
import { keyCountIn } from './keys/keyCount';
import type { BlankEnd, RootAtEnd } from './keys/keyEnds';
import { blankEndIn, rootAtEndIn } from './keys/keyEnds';
import type { KeyReach } from './keys/keyReach';
import { keyReachIn } from './keys/keyReach';
import type { KeyShift } from './keys/keyShift';
import { keyShiftIn } from './keys/keyShift';
import type { KeySpread } from './keys/keySpread';
import { keySpreadIn, lowestKeyIn, outermostKeysIn } from './keys/keySpread';
import { pianoKeysIn } from './keys/pianoKeys';
import { middleCIn, middleKeyIn, otherOctavesIn } from './keys/statedOctave';
import type { StatedLayerOrder } from './layers/layerOrder';
import { layerOrderIn } from './layers/layerOrder';
import type { StatedDynamics } from './layers/statedDynamics';
import { statedDynamicsIn } from './layers/statedDynamics';
import type { MarkLegend } from './nameMarks';
import { nameMarksIn } from './nameMarks';
import { loopsToEndIn } from './playing/loopsToEnd';
import type { NamedReleases } from './playing/namedReleases';
import { namedReleasesIn } from './playing/namedReleases';
import type { NamedSwitches } from './playing/namedSwitches';
import { namedSwitchesIn } from './playing/namedSwitches';
import type { StatedEnds } from './playing/statedEnds';
import { endsIn } from './playing/statedEnds';
import { turnStatement, turnsOfSameKeys } from './playing/turns';
import type { RowStatement } from './rows/rowStatements';
import { rowStatementsIn } from './rows/rowStatements';
import type { StatedScale } from './statedScales';
import { statedScalesIn } from './statedScales';
import { tellingSentence } from './tellingSentence';

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
  /** Sentences that say that levels count how much quieter samples are. */
  countsDown: readonly CountsDown[];
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
    /** The keys that switch to named articulations. */
    named: NamedSwitches | undefined;
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
  folder: StatedFolder | undefined;
  /** The text that says that keys count as those of a piano, from 1 to 88. */
  pianoKeys: string | undefined;
  /** How numbers of keys are counted, where the text gives one of them its key. */
  keyCount: ReturnType<typeof keyCountIn>;
  /** Frames a second of all samples. */
  sampleRate: number | undefined;
  /** The text that says that the samples of a row play in turn. */
  turns: string | undefined;
  /** The text that says that rows of the same keys play in turn. */
  turnsOfSameKeys: string | undefined;
  /** What is said of rows by their place. */
  ofRows: readonly RowStatement[];
  /** How far the numbers of keys are off. */
  keyShift: KeyShift | undefined;
  /** What values in brackets are. */
  bracketValues: BracketValues | undefined;
  /** What marks behind names mean, by the marks. */
  nameMarks: ReadonlyMap<string, MarkLegend>;
  /** The sentence that says that an empty cell has the value above it. */
  blankIsAbove: string | undefined;
  /** What goes for root keys that are left out. */
  blankRoot: BlankRoot | undefined;
  /** What goes for an end of a key range that is left out. */
  blankEnd: BlankEnd | undefined;
  /** The end of their key range that all roots are. */
  rootAtEnd: RootAtEnd | undefined;
}

const longest = 2000;
const fromOne =
  /(?:count\p{L}*|start\p{L}*|number\p{L}*|z[aä]hl\p{L}*|begin\p{L}*)[^.;]{0,30}\b(?:from|at|with|ab|von|bei|mit)\s+1\b|\b(?:one|1)[- ]based\b|first (?:frame|sample) is 1\b/iu;
const frames = new RegExp(String.raw`\b(?:frames?|samples?|positions?|points?)\b|abtast|${loopWords}`, 'iu');
const rate =
  /(?<![\d.,])(\d{1,3}(?:[.,]\d{1,3})?)\s?khz\b|(?<![\d.,])(\d{4,6}|\d{1,3}[ ,.\u202f']\d{3})\s?(?:hz\b|(?:frames?|samples?)\s?(?:\/|(?:per|a|each|in a|every|in each|in every)\s)\s?s(?:ec(?:ond)?)?\b|(?:frames?|samples?|abtastwerte|bilder) (?:pro|je|in der) sekunde|(?:trames|\u00e9chantillons) par seconde|(?:muestras|tramas|cuadros) por segundo|campioni al secondo|amostras por segundo|(?:frames?|samples?) per seconde)|(?:sample ?)?(?<!\p{L})(?:rate|sr|fs|sample ?rate)\W{0,3}(\d{4,6})\b/iu;
/** Reads what some texts around tables state; what is not understood says nothing. */
export function statementsIn(written: readonly string[]): Statements {
  const all = written.map(usualSigns);
  const texts = all.filter((text) => !isPlainHeading(text));
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
    otherOctaves ??= is ? undefined : otherOctavesIn(text);
    const key = middleKeyIn(text);
    if (key !== undefined)
      middleKey ??= { is: key, text: tellingSentence(text, (one) => middleKeyIn(one) === key) };
    sampleRate ??= rateIn(text);
    for (const clause of clausesOf(text)) {
      endsAre ??= endsIn(clause);
      if (fromOne.test(clause) && frames.test(clause)) firstFrame ??= { is: 1, text: clause };
    }
  }
  const forAll = forAllIn(texts);
  return {
    texts: all,
    middleC,
    otherOctaves: middleC ? undefined : otherOctaves,
    middleKey: middleKey?.is === 60 ? undefined : middleKey,
    scales: statedScalesIn(texts),
    countsDown: countsDownIn(texts),
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
    forAll,
    forSome: forSomeIn(texts),
    folder: folderIn(texts),
    pianoKeys: pianoKeysIn(texts),
    keyCount: keyCountIn(texts, middleC?.is),
    sampleRate,
    turns: turnStatement(texts),
    turnsOfSameKeys: turnsOfSameKeys(texts),
    ofRows: rowStatementsIn(texts),
    // What is said of all samples counts as it is.
    keyShift: forAll.some(({ values }) => values.has('transpose')) ? undefined : keyShiftIn(texts),
    bracketValues: bracketValuesIn(texts),
    nameMarks: nameMarksIn(texts),
    blankIsAbove: blankIsAboveIn(texts),
    blankRoot: blankRootIn(texts),
    blankEnd: blankEndIn(texts),
    rootAtEnd: rootAtEndIn(texts),
  };
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
  return { range, start, named: namedSwitchesIn(texts) };
}

function rateIn(text: string): number | undefined {
  const [, kilohertz, hertz, plain] = rate.exec(text) ?? [];
  const whole = (hertz ?? plain)?.replace(/\D/g, '');
  const found = kilohertz ? Number(kilohertz.replace(',', '.')) * 1000 : Number(whole ?? Number.NaN);
  return found >= 4000 && found <= 768_000 ? Math.round(found) : undefined;
}
