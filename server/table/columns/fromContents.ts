import { speaksOfOtherFrequency } from '../../trade/headings/frequencyHeadings';
import { aloneEnd } from '../../trade/headings/headingStems';
import { namesMeasure } from '../../trade/languages/measuredWords';
import type { ColumnMeaning } from '../../trade/meaning';
import { keyMeanings } from '../../trade/meaning';
import { keyFrequencies } from '../../trade/readings/frequencyReading';
import { readKeyRange } from '../../trade/readings/keyReading';
import { statedSettings } from '../../trade/statements/settings';
import { labelsSideBySide } from '../headings/labelsSideBySide';
import { findFoundPitches } from './byValues/foundPitches';
import { findEnds } from './byValues/keyEnds';
import { findKeyOrder, orderShare } from './byValues/keyOrder';
import { findLayers, reachAllVelocities } from './byValues/layeredRanges';
import { findMissingEnd } from './byValues/missingEnd';
import { namesBlocks } from './byValues/namedBlocks';
import { findPlayingSpeeds } from './byValues/playingSpeeds';
import { findDynamics, findPlayModes, findTriggers, velocityMeanings } from './byValues/playingWords';
import { findRootFrequencies } from './byValues/rootFrequencies';
import { findRoot, holdsKeys } from './byValues/rootWithin';
import { findSideValues } from './byValues/sideValues';
import { giveUpCountedTakes } from './byValues/takesCounted';
import type { ColumnContents } from './columnContents';
import { shareOf } from './columnContents';
import { columnName } from './columnReading';
import type { ColumnState } from './columnState';
import { isKeys } from './columnState';
import { countedMeaning } from './countedMeaning';
import { agrees } from './likeness';
import { settleKey } from './settleColumns';

const mostKeyColumns = 8;

/** Finds what columns hold that no heading explains, from their cells alone. */
export function readFromContents(state: ColumnState): void {
  findSample(state);
  findSideSamples(state);
  findSideValues(state);
  findDynamics(state);
  findTriggers(state);
  findPlayModes(state);
  if (!state.headingsKnown && hasNamedKeys(state)) findKeys(state, true);
  findKeyRanges(state);
  findPlayingSpeeds(state);
  findFoundPitches(state);
  findRootFrequencies(state);
  if (!state.headingsKnown && !state.taken.has('key_range') && hasVelocityRanges(state)) findKeys(state);
  findLayers(state);
  findPlain(state);
  findLoneEnds(state);
  if (state.headingsKnown && findEnds(state)) settleKey(state);
  findMissingEnd(state);
  findKeys(state);
  findRoot(state);
  findLayers(state);
  if (!state.headingsKnown) findFrames(state);
  giveUpCountedTakes(state);
  for (const index of state.rest()) {
    const column = state.columns[index];
    if (column.evidence.length === 0)
      column.evidence.push(
        column.heading === ''
          ? 'It has no heading, and its cells leave open what they are.'
          : 'Its heading is not known, and its cells leave open what they are.',
      );
  }
}

function findSample(state: ColumnState): void {
  const { taken, contents, holdsFiles } = state;
  if (taken.has('sample')) return;
  const rest = state.rest();
  let best = -1;
  for (const index of rest) {
    if (!holdsFiles[index]) continue;
    const share = shareOf(contents[index], 'file');
    if (best < 0 || share > shareOf(contents[best], 'file')) best = index;
  }
  if (best >= 0) {
    state.claim(best, 'sample', 0.9, 'Its cells are names of audio files.');
    return;
  }
  const keys =
    keyMeanings.some((meaning) => taken.has(meaning)) || rest.some((index) => isKeys(contents[index]));
  const named = rest.find((index) => {
    const { distinct, filled } = contents[index];
    return shareOf(contents[index], 'text') >= 0.8 && distinct * 2 > Math.min(filled, 256);
  });
  if (keys && named !== undefined)
    state.claim(named, 'sample', 0.5, 'Its cells are names that differ row by row.');
}

/** Several columns of samples are a zone each; their headings say how they belong together. */
function findSideSamples(state: ColumnState): void {
  const { taken, columns, chosen, holdsFiles } = state;
  const sample = columns[taken.get('sample') ?? -1];
  if (!sample || chosen.has(sample.index)) return;
  const others = state.rest().filter((index) => holdsFiles[index]);
  if (others.length === 0) return;
  const beside = columns.filter((column) => column === sample || others.includes(column.index));
  const hasKeys = (['key', 'lokey', 'hikey', 'key_range'] as const).some((meaning) => taken.has(meaning));
  const labels = labelsSideBySide(beside, hasKeys);
  const [label] = labels ?? [];
  const stated: Readonly<Record<string, readonly ColumnMeaning[]>> = {
    dynamics: [...velocityMeanings, 'dynamics'],
    velocity: velocityMeanings,
    round_robin: ['seq_position'],
    trigger: ['trigger'],
  };
  if (!labels || !label || stated[label.kind]?.some((meaning) => taken.has(meaning))) {
    const because = `Its cells are names of audio files too, but each row is read as one zone, with the sample in ${columnName(sample)}. If they are zones of their own, give each a row.`;
    for (const index of others) columns[index]?.evidence.splice(0, Number.POSITIVE_INFINITY, because);
    return;
  }
  for (const [at, column] of beside.entries()) {
    column.meaning = 'sample';
    column.confidence = 0.9;
    column.side = labels[at];
    const settings = statedSettings(column.heading);
    if (settings && label.kind !== 'velocity') column.settings = settings;
    column.evidence = ['Its cells are names of audio files; each column of them makes a zone of each row.'];
  }
}

/** What cells show by their form: units, ranges, pan positions, counting, names that recur. */
function findPlain(state: ColumnState): void {
  for (const index of state.rest()) {
    const found = plainMeaning(state, index);
    if (found && !state.taken.has(found.meaning))
      state.claim(index, found.meaning, found.confidence, found.evidence);
  }
}

function plainMeaning(
  state: ColumnState,
  index: number,
): { meaning: ColumnMeaning; confidence: number; evidence: string } | undefined {
  const contents = state.contents[index];
  const { taken, headingsKnown } = state;
  const half = contents.filled / 2;
  const is = (meaning: ColumnMeaning, confidence: number, evidence: string) => ({
    meaning,
    confidence,
    evidence,
  });
  if (contents.chokes > 1 && contents.chokes >= contents.filled * 0.9)
    return is('mute_group', 0.85, 'Its cells name groups that silence one another.');
  if (index === 0 && contents.counting) return is('row_number', 0.8, 'Its numbers count the rows.');
  if (shareOf(contents, 'note-range') >= 0.5)
    return taken.has('lokey') ? undefined : is('key_range', 0.85, 'Its cells are ranges of notes.');
  if (shareOf(contents, 'number-range') >= 0.5 && !headingsKnown) {
    const keysKnown = contents.portions >= half || taken.has('key_range') || noteRangesAhead(state, index);
    return is(keysKnown ? 'velocity_range' : 'key_range', 0.6, 'Its cells are ranges of numbers.');
  }
  // A bare list of files may give single keys and ranges of them.
  const isBareList = !headingsKnown && state.columns.length === 2 && state.othersHoldFiles(index);
  if (isBareList && shareOf(contents, 'number-range') > 0 && areAllKeys(state, index))
    return is('key_range', 0.75, 'Its cells are keys and ranges of keys, each beside a file.');
  for (const [unit, meaning] of [
    ['dB', 'volume'],
    ['cents', 'tune'],
    ['semitones', 'transpose'],
  ] as const)
    if ((contents.units.get(unit) ?? 0) >= half && contents.filled > 0)
      return is(meaning, 0.85, `Its cells are in ${unit}.`);
  const hertz = (contents.units.get('Hz') ?? 0) + (contents.units.get('kHz') ?? 0);
  const least = contents.least * (contents.units.has('Hz') ? 1 : 1000);
  if (hertz >= half && hertz > 0 && least > keyFrequencies.most && state.columns[index].heading === '')
    return is('sample_rate', 0.85, 'Its cells are in Hz, and higher than the tones of keys.');
  if (hertz >= half && contents.units.has('Hz') && !speaksOfOtherFrequency(state.columns[index].heading))
    return is('pitch_keycenter', 0.85, 'Its cells are in Hz.');
  if (areFrameRanges(contents))
    return is('loop', 0.6, 'Its cells are ranges of numbers that are too great for keys or velocities.');
  const counted = countedMeaning(state.columns[index].heading, contents);
  if (counted) {
    state.columns[index].unit = counted.unit;
    const how = counted.unit === 'linear' ? 'a factor' : counted.unit;
    return is(counted.meaning, 0.8, `Its heading gives ${how}, and its cells are numbers.`);
  }
  if (contents.counts.pan > 0 && shareOf(contents, 'pan', 'number') >= 0.9)
    return is('pan', 0.85, 'Its cells are pan positions.');
  if (headingsKnown)
    return keysGiven(state) && namesBlocks(state, index)
      ? is('group', 0.6, 'Its cells are names, and the rows of each stand together.')
      : undefined;
  if (shareOf(contents, 'text') >= 0.8 && contents.distinct * 2 <= contents.filled)
    return is('group', 0.5, 'Its cells are names that recur.');
  const isLevel =
    contents.fractional > 0 && contents.negative > 0 && !namesMeasure(state.columns[index].heading);
  if (isLevel && contents.least >= -96 && contents.greatest <= 24 && shareOf(contents, 'number') >= 0.9) {
    const evidence = 'Its numbers have fractions and lie within −96 and 24, as levels in dB do.';
    return is('volume', 0.4, evidence);
  }
  return undefined;
}

/** Whether a column gives the keys of zones; roots alone share the keys out by groups. */
function keysGiven({ taken }: ColumnState): boolean {
  return (['lokey', 'hikey', 'key_range', 'key'] as const).some((meaning) => taken.has(meaning));
}

/** Whether several columns hold names of notes, which tell the keys before numbers do. */
function hasNamedKeys(state: ColumnState): boolean {
  const named = state.rest().filter((index) => state.contents[index].named && isKeys(state.contents[index]));
  return named.length > 1;
}

/**
 * The one column of ranges that hold the root key on all rows, where no heading gives the keys; where none gives the root either, the
 * two columns of which the one lies within the other.
 */
function findKeyRanges(state: ColumnState): void {
  const { taken, contents, headingsKnown } = state;
  if (taken.has('key_range') || taken.has('lokey') || taken.has('hikey')) return;
  const given = taken.get('pitch_keycenter') ?? taken.get('key');
  const rest = state.rest();
  const roots =
    given !== undefined ? [given] : headingsKnown ? [] : rest.filter((index) => isKeys(contents[index]));
  const ranges = rest.filter(
    (index) =>
      shareOf(contents[index], 'note-range', 'number-range') >= 0.9 &&
      contents[index].distinct > 1 &&
      !(contents[index].counts['note-range'] === 0 && reachAllVelocities(state, index)),
  );
  const found = ranges.flatMap((range) =>
    roots
      .filter((root) => contents[root].distinct > 1 && holdsKeys(state, range, root))
      .map((root) => ({ range, root })),
  );
  const [only] = found;
  if (!only || found.length > 1) return;
  state.columns[only.range].evidence.length = 0;
  state.claim(only.range, 'key_range', 0.8, 'Its ranges hold the root key on all rows.');
  if (given === undefined)
    state.claim(
      only.root,
      'pitch_keycenter',
      0.7,
      'Its keys lie within the ranges of another column on all rows.',
    );
  settleKey(state);
}

/** Whether a column of ranges reaches over all velocities, so that others give the keys. */
function hasVelocityRanges(state: ColumnState): boolean {
  return state
    .rest()
    .some(
      (index) => shareOf(state.contents[index], 'number-range') >= 0.9 && reachAllVelocities(state, index),
    );
}

/** Ranges of numbers that are too great for keys and velocities are loops in frames. */
function areFrameRanges(contents: ColumnContents): boolean {
  return shareOf(contents, 'number-range', 'switch', 'text') === 1 && contents.beyond >= 2;
}

function noteRangesAhead({ contents }: ColumnState, index: number): boolean {
  return contents.some((one, other) => other > index && shareOf(one, 'note-range') >= 0.5);
}

/** `aguda` or `hoog` alone over names of notes: the end of the keys that no other column gives. */
function findLoneEnds(state: ColumnState): void {
  for (const index of state.rest()) {
    const contents = state.contents[index];
    const end = contents.named && isKeys(contents) ? aloneEnd(state.columns[index].heading) : undefined;
    if (!end || state.taken.has(end) || state.taken.has('key_range') || !agrees(state, index, end)) continue;
    state.columns[index].evidence.length = 0;
    state.claim(index, end, 0.9, 'Its heading names an end, and its cells are names of notes.');
  }
}

/**
 * Columns of keys by their order. Where headings are known, numbers alone count only if no heading gives any key and they rise
 * from the low key over the root to the high one.
 */
function findKeys(state: ColumnState, byNames = false): void {
  const { contents, headingsKnown } = state;
  const taken = new Set(state.taken.keys());
  const anyKeys = keyMeanings.some((meaning) => taken.has(meaning));
  const candidates = state
    .rest()
    .filter(
      (index) =>
        isKeys(contents[index]) && ((!byNames && (!headingsKnown || !anyKeys)) || contents[index].named),
    )
    .slice(0, mostKeyColumns);
  if (taken.has('key_range')) for (const meaning of ['lokey', 'hikey', 'key'] as const) taken.add(meaning);
  if (taken.has('velocity_range')) for (const meaning of ['lovel', 'hivel'] as const) taken.add(meaning);
  const found = findKeyOrder(
    candidates.map((index) => contents[index]),
    taken,
  );
  if (!found) return;
  const isTelling = found.meanings.includes('lokey') && found.meanings.includes('pitch_keycenter');
  const isNamed = candidates.every((index) => contents[index].named);
  if (headingsKnown && !isTelling && !isNamed) return;
  for (const [at, meaning] of found.meanings.entries())
    state.claim(candidates[at], meaning, found.confidence, found.evidence);
}

/** Two or four columns of frame counts in rising order. */
function findFrames(state: ColumnState): void {
  const { contents } = state;
  const frames = state.rest().filter((index) => isFrames(contents[index]));
  const [first, second, third, fourth] = frames;
  const ordered = (a: number | undefined, b: number | undefined) =>
    a !== undefined && b !== undefined && orderShare(contents[a], contents[b]) >= 0.95;
  const evidence = 'Its numbers are frame counts that rise from column to column.';
  if (frames.length === 2 && ordered(first, second)) {
    state.claim(first, 'loop_start', 0.45, evidence);
    state.claim(second, 'loop_end', 0.45, evidence);
  } else if (frames.length === 4 && ordered(first, second) && ordered(third, fourth)) {
    const meanings = ['offset', 'end', 'loop_start', 'loop_end'] as const;
    for (const [at, meaning] of meanings.entries()) state.claim(frames[at], meaning, 0.4, evidence);
  }
}

function isFrames(contents: ColumnContents): boolean {
  return (
    shareOf(contents, 'number') >= 0.9 &&
    contents.fractional === 0 &&
    contents.negative === 0 &&
    contents.greatest > 1000
  );
}

/** Whether the cells of a column that hold something are keys or ranges of keys, of 0 to 127. */
function areAllKeys({ cells, looked }: ColumnState, index: number): boolean {
  const texts = looked.map((row) => cells.plain(cells.cell(row, index))).filter((text) => text !== '');
  return texts.every((text) => {
    const range = readKeyRange(text);
    return range !== undefined && (range.low.number ?? 0) <= 127 && (range.high.number ?? 0) <= 127;
  });
}
