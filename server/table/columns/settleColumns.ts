import { frequencyHeading } from '../../trade/headings/frequencyHeadings';
import { loudnessEnd } from '../../trade/headings/headingStems';
import { unitInHeading } from '../../trade/headings/headings';
import { wordsOf } from '../../trade/languages/spelling';
import type { ColumnMeaning } from '../../trade/meaning';
import { keyFrequencies, readFrequency } from '../../trade/readings/frequencyReading';
import { runsFromOne } from '../headings/headingFit';
import { settleKeyCounts } from './byValues/keyCounts';
import { orderShare } from './byValues/keyOrder';
import { settleLoopAndLength } from './byValues/loopAndLength';
import { settleLyingHeadings } from './byValues/lyingHeadings';
import { settleNumberedPoints } from './byValues/numberedPoints';
import { settleWithinGroups } from './byValues/widerRanges';
import { shareOf } from './columnContents';
import type { ColumnState } from './columnState';
import { isKeys } from './columnState';
import { settleTunings } from './settleTunings';

/** So many layers are numbered at most. */
const mostLayers = 10;
/** Usual rates of audio files that are no higher than the highest keys sound, in Hz (common practice). */
const lowRates: ReadonlySet<number> = new Set([8000, 11_025, 12_000]);

/** Settles what headings leave open: which of two columns they mean, or what they mean beside others. */
export function settleColumns(state: ColumnState): void {
  settleSecondRange(state);
  settleRanks(state);
  settleKeyCounts(state);
  settleRanges(state);
  settleRates(state);
  settleKey(state);
  settleLoopPoints(state);
  settleLoopAndLength(state);
  settleNumberedPoints(state);
  settleFromTo(state);
  settleWithinGroups(state);
  settleMuteGroups(state);
  settleTunings(state);
  settleLoudness(state);
  settleLyingHeadings(state);
}

/** `Low` and `High` twice, under a line of wider headings: the second pair is that of the velocities. */
function settleSecondRange(state: ColumnState): void {
  const { columns, contents, taken } = state;
  const again = (meaning: ColumnMeaning) =>
    columns.find(
      ({ index, repeats }) =>
        repeats !== undefined &&
        repeats === taken.get(meaning) &&
        isKeys(contents[index]) &&
        !contents[index].named,
    );
  const low = again('lokey');
  const high = again('hikey');
  if (!low || !high || taken.has('lovel') || taken.has('hivel')) return;
  if (orderShare(contents[low.index], contents[high.index]) < 0.95) return;
  for (const [column, meaning] of [
    [low, 'lovel'],
    [high, 'hivel'],
  ] as const) {
    column.repeats = undefined;
    column.evidence.length = 0;
    const evidence = 'Low and high stand twice; the second pair holds numbers as velocities are.';
    state.claim(column.index, meaning, 0.7, evidence);
  }
}

/** Velocities that count 1, 2, 3 number the layers. */
function settleRanks(state: ColumnState): void {
  const { taken, contents, chosen } = state;
  const meanings = (['velocity_range', 'lovel', 'hivel'] as const).filter((meaning) => taken.has(meaning));
  const index = taken.get(meanings[0] ?? 'unknown');
  if (meanings.length !== 1 || index === undefined || chosen.has(index) || taken.has('dynamics')) return;
  const { counts, filled, distinct, greatest, least } = contents[index];
  if (counts.number < filled || !runsFromOne(contents[index]) || least !== 1) return;
  if (distinct < 2 || greatest > mostLayers || filled <= distinct / 2) return;
  state.claim(index, 'dynamics', 0.75, 'Its numbers count from 1, so they are taken to number the layers.');
}

/** Frequencies above those of all keys, as `48 kHz`, are how many frames a second the files have. */
function settleRates(state: ColumnState): void {
  const { taken, chosen, cells, looked, columns } = state;
  const index = taken.get('pitch_keycenter');
  if (index === undefined || chosen.has(index) || taken.has('sample_rate')) return;
  if (!frequencyHeading(columns[index].heading)) return;
  const stated = unitInHeading(columns[index].heading);
  const texts = looked.map((row) => cells.plain(cells.cell(row, index))).filter((text) => text !== '');
  const hertz = texts.map((text) => readFrequency(text, stated === 'kHz' ? 'kHz' : 'Hz') ?? Number.NaN);
  if (hertz.length === 0 || !hertz.every((one) => one > keyFrequencies.most || lowRates.has(one))) return;
  taken.delete('pitch_keycenter');
  state.claim(
    index,
    'sample_rate',
    0.9,
    'Its cells are the usual rates of audio files, and higher than keys sound.',
  );
}

/** A range in one cell means something else beside low and high columns. */
function settleRanges(state: ColumnState): void {
  const { taken, chosen, contents } = state;
  const ranged = (index: number) => shareOf(contents[index], 'note-range', 'number-range') >= 0.5;
  const pairs = [
    { low: 'lokey', high: 'hikey', range: 'key_range' },
    { low: 'lovel', high: 'hivel', range: 'velocity_range' },
  ] as const;
  for (const { low, high, range } of pairs) {
    const single = range === 'key_range' ? (['key', 'pitch_keycenter'] as const) : [];
    for (const meaning of [low, high, ...single]) {
      const index = taken.get(meaning);
      if (index === undefined || taken.has(range) || !ranged(index)) continue;
      if (chosen.has(index)) continue;
      state.claim(index, range, 0.9, 'Its cells hold ranges.');
    }
    const index = taken.get(range);
    if (index === undefined || ranged(index) || chosen.has(index)) continue;
    const missing = !taken.has(low) ? low : !taken.has(high) ? high : undefined;
    if (range === 'key_range' && missing && numbersRows(state, index)) {
      state.claim(index, 'row_number', 0.8, 'Its numbers count the rows, and lie far below the other keys.');
      continue;
    }
    const lowIndex = taken.get(low);
    if (
      range === 'key_range' &&
      missing === high &&
      lowIndex !== undefined &&
      isCount(state, index, lowIndex)
    ) {
      state.claim(index, 'key_count', 0.8, 'Its numbers lie below the low keys, so they count keys.');
    } else if (missing && (taken.has(low) || taken.has(high))) {
      state.claim(index, missing, 0.7, 'The other end of the range stands in a column of its own.');
    } else if (missing && range === 'velocity_range' && contents[index].filled > 0) {
      const evidence = 'Its cells are single velocities, taken for the highest of each layer.';
      state.claim(index, high, 0.6, evidence);
    }
  }
}

/**
 * Whether numbers that count the rows can be no ends of keys: as low ones they would make each range hold all of those before, as
 * high ones they would lie below their low keys. How many keys zones have may rise so too, where each then ends right below the next.
 */
function numbersRows({ contents, taken }: ColumnState, index: number): boolean {
  const numbers = contents[index];
  const lacksLow = !taken.has('lokey');
  const other = contents[taken.get(lacksLow ? 'hikey' : 'lokey') ?? -1];
  if (!other || !numbers.counting) return false;
  const { values } = numbers;
  if (lacksLow) return values.every((number, row) => row === 0 || number <= other.values[row - 1]);
  const isLower = values.every((number, row) => number < other.values[row]);
  return (
    isLower &&
    values.some((_, row) => row > 0 && other.values[row - 1] + values[row - 1] !== other.values[row])
  );
}

/** Whether numbers are too small for high keys beside the low ones, as numbers of keys are. */
function isCount({ contents }: ColumnState, index: number, lowIndex: number): boolean {
  const [counts, lows] = [contents[index], contents[lowIndex]];
  const areNumbers = shareOf(counts, 'number') >= 0.9 && counts.fractional === 0 && counts.least >= 1;
  return areNumbers && !counts.named && orderShare(lows, counts) < 0.5;
}

/** Beside a column of who silences whom, groups in numbers are those that silence one another. */
function settleMuteGroups(state: ColumnState): void {
  const { taken, chosen, contents } = state;
  const group = taken.get('group');
  if (group === undefined || chosen.has(group) || taken.has('mute_group')) return;
  if (!taken.has('off_by') && !taken.has('mutes')) return;
  if (shareOf(contents[group], 'number') < 0.9) return;
  state.claim(group, 'mute_group', 0.85, 'Its numbers are the groups that another column silences.');
}

/** `Key` alone means something else beside other columns of keys. */
export function settleKey(state: ColumnState): void {
  const { taken, chosen } = state;
  const key = taken.get('key');
  if (key === undefined || chosen.has(key) || standsInPlaceOfRanges(state, key)) return;
  if (taken.has('lokey') || taken.has('hikey') || taken.has('key_range')) {
    const evidence = 'The keys it sounds on stand in other columns: this is the root key.';
    state.claim(key, 'pitch_keycenter', 0.85, evidence);
    // Where the root has a column as well, single keys must not win over the ranges.
    if (state.columns[key].repeats !== undefined) {
      state.columns[key].meaning = 'unknown';
      taken.delete('key');
    }
  } else if (taken.has('pitch_keycenter')) {
    const evidence = 'The root key stands in another column: this is the key it sounds on.';
    state.claim(key, 'key_range', 0.8, evidence);
  }
}

/** Whether rows give either a key or a range of keys, each at least once, and never both: then the key is the only one. */
function standsInPlaceOfRanges({ taken, cells, looked }: ColumnState, key: number): boolean {
  const ranges = (['lokey', 'hikey', 'key_range'] as const).flatMap((meaning) => taken.get(meaning) ?? []);
  const isFilled = (row: number, column: number) => cells.plain(cells.cell(row, column)).trim() !== '';
  let [keys, others] = [0, 0];
  for (const row of looked) {
    const hasRange = ranges.some((column) => isFilled(row, column));
    if (hasRange) others++;
    if (!isFilled(row, key)) continue;
    if (hasRange) return false;
    keys++;
  }
  return keys > 0 && others > 0;
}

/** `Start` and `End` right behind a loop switch are those of the loop. */
function settleLoopPoints(state: ColumnState): void {
  const { taken, chosen } = state;
  const loop = taken.get('loop');
  const [start, end] = [taken.get('offset'), taken.get('end')];
  if (loop === undefined || start !== loop + 1 || end !== loop + 2) return;
  if (taken.has('loop_start') || taken.has('loop_end')) return;
  if (chosen.has(start) || chosen.has(end) || !areSingleWords(state, start, end)) return;
  const evidence =
    'They stand right after the loop, so they are read as its points, not those of the sample.';
  state.claim(start, 'loop_start', 0.7, evidence);
  state.claim(end, 'loop_end', 0.7, evidence);
}

/** `From` and `To` that hold keys are the ends of the key range: no sample ends within its first 128 frames. */
function settleFromTo(state: ColumnState): void {
  const { taken, chosen, contents } = state;
  const [start, end] = [taken.get('offset'), taken.get('end')];
  if (start === undefined || end === undefined || chosen.has(start) || chosen.has(end)) return;
  if ((['lokey', 'hikey', 'key_range', 'key'] as const).some((meaning) => taken.has(meaning))) return;
  const [low, high] = [contents[start], contents[end]];
  if (!isKeys(low) || !isKeys(high) || high.greatest <= 0 || orderShare(low, high) < 0.6) return;
  const evidence = 'Its numbers are keys; no sample ends within its first 128 frames.';
  state.claim(start, 'lokey', 0.8, evidence);
  state.claim(end, 'hikey', 0.8, evidence);
}

/** `Soft limit` and `Loud limit`, `leiseste` and `lauteste` over numbers that are velocities. */
function settleLoudness(state: ColumnState): void {
  const { taken, contents, columns } = state;
  if (taken.has('lovel') || taken.has('hivel') || taken.has('velocity_range')) return;
  const free = columns.filter(
    ({ index, meaning, heading }) =>
      (meaning === 'unknown' || meaning === 'dynamics' || meaning === 'group' || meaning === 'volume') &&
      heading !== '' &&
      isKeys(contents[index]) &&
      !contents[index].named,
  );
  const soft = free.find(({ heading }) => loudnessEnd(heading) === 'soft');
  const loud = free.find(({ heading }) => loudnessEnd(heading) === 'loud');
  if (!soft || !loud || orderShare(contents[soft.index], contents[loud.index]) < 0.95) return;
  // `loud` alone would be a level.
  for (const { index } of [soft, loud]) if (taken.get('volume') === index) taken.delete('volume');
  const evidence = 'Their headings speak of soft and loud, and their numbers are velocities.';
  for (const [{ index }, meaning] of [
    [soft, 'lovel'],
    [loud, 'hivel'],
  ] as const) {
    columns[index].evidence.length = 0;
    columns[index].repeats = undefined;
    state.claim(index, meaning, 0.8, evidence);
  }
}

function areSingleWords({ columns }: ColumnState, ...indexes: number[]): boolean {
  return indexes.every((index) => wordsOf(columns[index]?.heading ?? '').length === 1);
}
