import { keyOfFrequency } from '../../model/keys';
import { resolveOpcode } from '../../model/opcodes/resolve';
import { dynamicIn } from '../../trade/dynamics';
import { namesMiddleC } from '../../trade/statements/keys/statedOctave';
import { readNumberText } from '../forms/numberText';
import { areTuningsInUnits } from '../forms/tuningSum';
import { rangesOf } from './ranges/rangeText';
import type { Column } from './values/column';
import type { ColumnFacts } from './values/columnFacts';
import { isPlausible } from './values/plausible';
import { headingMeaning } from './words/headingMeanings';
import type { InferredTarget } from './words/meaningRules';
import type { Meaning } from './words/meanings';
import { isBare, isLevelOfBand, meaningsOf, octaves } from './words/meanings';
import { nameWords } from './words/nameWords';
import { conceptsOf } from './words/tradeWords';
import { isOneShotName } from './words/words';

/** What the name of a place says, likeliest first. The outermost element has no range of its own, so a bare `from` there means something else. */
export function meaningsFor(column: Column, level: readonly string[], isOutermost: boolean): Meaning[] {
  return inRange(ofController(namedMeanings(column, level, isOutermost), column), column);
}

/** What is counted from a number to another one; a place that is so from below 0 to as far above lies between left and right. */
function inRange(meanings: readonly Meaning[], { own, range }: Column): Meaning[] {
  if (!range) return [...meanings];
  const isPlace = own.every((word) => conceptsOf(word)?.concepts.every((one) => placeConcepts.has(one)));
  const isBothSided = range.low < 0 && range.low === -range.high;
  const pan: Meaning = { target: 'pan', weight: 0.85, unit: undefined };
  return (isPlace && isBothSided ? [pan] : meanings).map((meaning) => ({ ...meaning, range }));
}

const placeConcepts: ReadonlySet<string> = new Set(['pos', 'place', 'pan']);

/** Ranges of controllers are those of the controller whose number is known; without one they say nothing. */
function ofController(meanings: readonly Meaning[], { controller }: Column): Meaning[] {
  return meanings.flatMap((meaning) => {
    if (!controllerTargets.has(meaning.target)) return [meaning];
    return controller === undefined ? [] : [{ ...meaning, target: `${meaning.target}${controller}` }];
  });
}

/** What a unit beside a number says by itself. */
const unitMeanings: ReadonlyMap<string, Meaning> = new Map([
  ['dB', { target: 'volume', weight: 0.74, unit: 'dB' }],
  ['cents', { target: 'tune', weight: 0.74, unit: 'cents' }],
  ['semis', { target: 'tune', weight: 0.74, unit: 'semitones' }],
  ['millibels', { target: 'volume', weight: 0.74, unit: 'millibels' }],
  [octaves, { target: 'tune', weight: 0.74, unit: 'octaves' }],
]);

/** Whether a target can have the unit. */
function unitAgrees(target: InferredTarget, unit: string | undefined): boolean {
  return unit === 'dB' || unit === 'millibels'
    ? ['volume', 'attenuation', 'ampeg_sustain', 'resonance', 'amp_veltrack'].includes(target)
    : ['tune', 'transpose', 'loop_tune', 'bend_up', 'bend_down'].includes(target);
}

/** What is given in Hz; nothing else can be. */
const inHertz: ReadonlySet<InferredTarget> = new Set(
  'pitch_keycenter key tune root_frequency cutoff fil_type resonance'.split(' '),
);

const controllerTargets: ReadonlySet<InferredTarget> = new Set(['locc', 'hicc', 'cc_range']);

/** Greatest numbers of scales that names end with (MIDI 1.0, percentages, bytes). */
const scaleEnds: ReadonlySet<string> = new Set(['100', '127', '255']);
/** What is counted from 0 to such a number. */
const scaledTargets: ReadonlySet<InferredTarget> = new Set(
  'volume attenuation lovel hivel velocity_range'.split(' '),
);

/** What a name says that ends with the greatest number of its scale, as `vol127` and `gain_0_255`. */
function scaledMeanings(column: Column, level: readonly string[], isOutermost: boolean): Meaning[] {
  const { own } = column;
  const last = own.at(-1) ?? '';
  if (own.length < 2 || !scaleEnds.has(last)) return [];
  const rest = own.slice(0, own.at(-2) === '0' ? -2 : -1);
  const range = { low: 0, high: Number(last) };
  return namedMeanings({ ...column, own: rest }, level, isOutermost)
    .filter(({ target }) => scaledTargets.has(target))
    .map((meaning) => ({ ...meaning, range }));
}

function namedMeanings(column: Column, level: readonly string[], isOutermost: boolean): Meaning[] {
  const scaled = scaledMeanings(column, level, isOutermost);
  if (scaled.length > 0) return scaled;
  if (namesMiddleC([...(column.around.at(-1) ?? []), ...column.own].join(' '))) return [];
  if (isLevelOfBand(column.own)) return [];
  const written = column.own.join('_');
  const exact = column.own.length > 1 && written.includes('_') ? resolveOpcode(written) : undefined;
  const named = [...meaningsOf(column.own, column.around, level, column.unit)];
  if (isOneShotName(column.own)) return [{ target: 'one_shot', weight: 0.95, unit: undefined }, ...named];
  if (isOutermost && column.around.length === 0 && isBare(column.own)) return [];
  const unit = unitMeanings.get(column.unit ?? '');
  if (unit && !named.some(({ target }) => target === unit.target || unitAgrees(target, column.unit)))
    return [unit];
  if (column.unit === 'hertz' && !named.some(({ target }) => inHertz.has(target)))
    return [{ target: 'root_frequency', weight: 0.74, unit: 'Hz' }];
  const heading = headingMeaning(column.own, column.around);
  if (heading && !named.some(({ target }) => target === heading.target))
    named.push(named.length === 0 ? heading : { ...heading, weight: heading.weight * 0.7 });
  if (!exact || named[0]?.target === exact.canonical || exact.facts.pattern.includes('*')) return named;
  return [{ target: exact.canonical, weight: 0.95, unit: undefined }, ...named];
}

/** What the name of a place says first of all; `undefined` where it says nothing. */
export function namedMeaning(column: Column, chain: readonly string[]): Meaning | undefined {
  return meaningsFor(column, nameWords(chain[column.level]), column.level === 0)[0];
}

/** Paths to audio files are samples whatever the name says. */
export function withAudio(meanings: readonly Meaning[], facts: ColumnFacts): readonly Meaning[] {
  if (facts.files * 10 < facts.filled * 6) return meanings;
  const named = meanings.some(({ target }) => target === 'sample');
  return [{ target: 'sample', weight: named ? 1 : 0.9, unit: undefined }];
}

/** Facts of levels in tenths or hundredths of a dB as those of levels in dB, so that their sizes can be told. */
function inDecibels({ unit }: Meaning, facts: ColumnFacts): ColumnFacts {
  const parts = unit === 'millibels' ? 100 : unit === 'centibels' ? 10 : 1;
  return parts === 1 ? facts : { ...facts, least: facts.least / parts, greatest: facts.greatest / parts };
}

/** What a meaning comes to with these values: bare keys may be a range, a range may be a single key. */
export function fittingTo(
  meaning: Meaning,
  facts: ColumnFacts,
  texts: readonly (string | undefined)[],
): Meaning[] {
  const { target, weight } = meaning;
  if ((target === 'tune' || target === 'transpose') && areTuningsInUnits(facts.tally.keys()))
    return [{ target: 'tune', weight: Math.max(weight, 0.85), unit: undefined }];
  // A channel of two that is called left or right is a side.
  if (target === 'channel' && facts.numeric === 0 && isPlausible('pan', facts, texts))
    return [{ target: 'pan', weight: weight * 0.75, unit: undefined }];
  const fitting: Meaning[] = [];
  const counted = inDecibels(meaning, facts);
  const add = (one: InferredTarget, times = 1) => {
    if (isPlausible(one, counted, texts)) fitting.push({ ...meaning, target: one, weight: weight * times });
  };
  const isRoot = frequencyTargets.has(target) && areFrequencies(meaning, facts, texts);
  if (isRoot) return [{ target: 'pitch_keycenter', weight: Math.max(weight, 0.85), unit: 'Hz' }];
  if (target === 'root_frequency') return [];
  // A root key is one key: ranges in a place of that name are those that the keys are shared out in.
  if (target === 'pitch_keycenter' && isPlausible('key_range', facts, texts))
    return [{ ...meaning, target: 'key_range' }];
  // What counts the regions is no key.
  const likely = facts.isCounting && facts.filled > 1 ? 0.4 : 1;
  if (target === 'key' || target === 'key_range') {
    add('key_range');
    if (fitting.length === 0) {
      add('key', likely);
      add('pitch_keycenter', 0.9 * likely);
    }
    return fitting;
  }
  // Pairs of numbers are no name.
  const ranges = target === 'group_name' || target === 'label' ? rangesOf(texts) : undefined;
  if (ranges) {
    if (ranges.second.every((text) => Number(text ?? 0) <= 127))
      fitting.push({ ...meaning, target: 'velocity_range', weight: 0.72 });
    return fitting;
  }
  if (isBareShare(meaning) && meaning.unit === 'percent' && facts.greatest > 100) return [];
  if (isBareShare(meaning) && meaning.unit === 'ratio' && (target === 'volume') !== areShares(facts))
    return [];
  // A ratio of nothing, or of many octaves, is no tuning.
  if (
    meaning.unit === 'ratio' &&
    (target === 'tune' || target === 'transpose') &&
    !(facts.least > 0 && facts.greatest <= 16)
  )
    return [];
  // No time is written in percent, though a level that is held is.
  if (target === 'ampeg_hold' && facts.unit === 'percent')
    return isPlausible('ampeg_sustain', facts, texts) ? [{ ...meaning, target: 'ampeg_sustain' }] : [];
  const isWhole = facts.whole === facts.numeric;
  if (target === 'velocity_range' && areDynamics(facts)) add('dynamics');
  const isInCents = (meaning.unit ?? facts.unit) === 'cents';
  if (target === 'transpose' && (!isWhole || isInCents || meaning.unit === 'ratio')) {
    const unit = isInCents ? 'cents' : (meaning.unit ?? 'semitones');
    if (isPlausible('tune', facts, texts)) fitting.push({ target: 'tune', weight, unit });
  } else if (target === 'tune' && (meaning.unit ?? facts.unit) === 'semitones' && isWhole) add('transpose');
  else if (target === 'loop' && rangesOf(texts)) add('loop_range');
  else if (target === 'loop' && isPlausible('loop_on', facts, texts)) add('loop_on');
  else if (target === 'lokey') {
    add('lokey');
    // Numbers that no key has are velocities.
    if (fitting.length === 0 && weight < 0.95) add('lovel', 0.9);
  } else if (target === 'seq') {
    add('seq');
    // Beside a position the other number is how many there are.
    add('seq_length', 0.8);
  } else add(target);
  if (target === 'group_name' && fitting.length > 0 && facts.numeric === facts.filled)
    return isPlausible('group', facts, texts) ? [{ ...meaning, target: 'group' }] : [];
  return fitting;
}

/** Whether a name says no more than that it holds factors or percentages. */
function isBareShare({ target, weight }: Meaning): boolean {
  return (target === 'tune' || target === 'volume') && weight <= 0.6;
}

/** Few decimals and less than three semitones down are no tuning (our choice). */
const leastTuned = 0.84;

/** Whether factors are those of levels: none raises, and some lower farther than one retunes a recording, in round numbers. */
function areShares({ least, greatest, decimals }: ColumnFacts): boolean {
  return least >= 0 && greatest <= 1 && least < leastTuned && decimals <= 2;
}

/** Whether all texts are dynamics, such as `p` or `very loud`. */
function areDynamics({ tally }: ColumnFacts): boolean {
  return tally.size > 1 && [...tally.keys()].every((text) => dynamicIn(text) >= 0);
}

/** What a frequency may be named after. */
const frequencyTargets: ReadonlySet<InferredTarget> = new Set(
  'pitch_keycenter key tune root_frequency'.split(' '),
);
/** Frequencies that a sample can be of, in Hz: from half a key below key 0 (ISO 16: 440 Hz is key 69) to the least usual sample rate. */
const audible = { least: 7.95, most: 7999 };
const mostOff = 0.05;
const greatestKeyNumber = 139;

/** Whether numbers are frequencies of samples: by their unit, and of a place named frequency alone only where they are those of keys. */
function areFrequencies(
  { target, unit }: Meaning,
  facts: ColumnFacts,
  texts: readonly (string | undefined)[],
): boolean {
  if (facts.numeric < facts.filled || facts.filled === 0) return false;
  // A point before three digits is one before a fraction here.
  const numbers = texts.flatMap((text) =>
    text === undefined ? [] : [readNumberText(text)?.number ?? Number.NaN],
  );
  if (!numbers.every((one) => one > audible.least && one < audible.most)) return false;
  if ((unit ?? facts.unit) === 'Hz' && target !== 'root_frequency') return true;
  // One number for all is a standard of tuning such as 440.
  if (facts.tally.size < 2) return false;
  if (target !== 'root_frequency')
    return facts.unit === undefined && numbers.some((one) => one > greatestKeyNumber);
  return numbers.map(keyOfFrequency).every((key) => Math.abs(key - Math.round(key)) < mostOff);
}
