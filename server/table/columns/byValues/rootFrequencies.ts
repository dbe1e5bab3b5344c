import { keyOfFrequency } from '../../../model/keys';
import { frequencyHeading, speaksOfFilters } from '../../../trade/headings/frequencyHeadings';
import { unitInHeading } from '../../../trade/headings/headings';
import type { Unit } from '../../../trade/meaning';
import { keyMeanings } from '../../../trade/meaning';
import { conventions, octaveShifts } from '../../../trade/middleC';
import { keyFrequencies, readFrequency } from '../../../trade/readings/frequencyReading';
import type { KeyReading } from '../../../trade/readings/keyReading';
import { readKeyRange } from '../../../trade/readings/keyReading';
import type { ColumnState } from '../columnState';
import { settleKey } from '../settleColumns';

/** So many rows have to have a frequency that is that of a key near their own ones (our choice). */
const most = 0.9;
/** So far beyond its keys, in semitones, a root lies where its heading says that it is one (our choice). */
const farthest = 12;
/** A pitch is that of the nearest key, which lies half a semitone away at most. */
const half = 0.5;

/** The column of frequencies that are those of the keys of their rows, where no heading gives the root: `Frequenza base (Hz)`. */
export function findRootFrequencies(state: ColumnState): void {
  const { taken, columns } = state;
  if (taken.has('pitch_keycenter')) return;
  for (const index of state.rest()) {
    const heading = frequencyHeading(columns[index].heading);
    const unit = unitOfColumn(state, index);
    if (!heading || !areNearKeys(state, index, unit, heading === 'root' ? farthest : 0)) continue;
    columns[index].evidence.length = 0;
    columns[index].unit = unit;
    state.claim(index, 'pitch_keycenter', 0.85, 'Its cells are the frequencies of keys.');
    settleKey(state);
    return;
  }
  findBareFrequencies(state);
}

/** So many frequencies are those of keys, or give parts of a Hertz as somebody measured them (our choice). */
const mostMeasured = 0.8;
/** So much of a text may say that frequencies are those of filters. */
const mostText = 4096;
/** So far from a key, in semitones, the frequency of one lies (our choice). */
const inTune = 0.2;

/** The only column of frequencies, each with its unit, where no heading says what they are and nothing else gives keys. */
function findBareFrequencies(state: ColumnState): void {
  const { taken, columns, cells, looked } = state;
  if (keyMeanings.some((meaning) => taken.has(meaning))) return;
  const found = state.rest().flatMap((index) => {
    if (columns[index].heading !== '') return [];
    const texts = looked.map((row) => cells.plain(cells.cell(row, index))).filter((text) => text !== '');
    const pitches = texts.map((text) => (withHertz.test(text) ? readFrequency(text, undefined) : undefined));
    return pitches.every((hertz) => hertz !== undefined) ? [{ index, texts, pitches }] : [];
  });
  const [only, ...others] = found;
  if (!only || others.length > 0 || new Set(only.pitches).size < 2) return;
  if (speaksOfFilters(cells.text.slice(0, mostText))) return;
  const { texts, pitches, index } = only;
  const isOfKey = (hertz: number, at: number) => {
    if (hertz < keyFrequencies.least || hertz > keyFrequencies.most) return false;
    const key = keyOfFrequency(hertz);
    return Math.abs(key - Math.round(key)) <= inTune || /\d[.,]\d{1,3}(?!\d)/.test(texts[at] ?? '');
  };
  if (pitches.filter(isOfKey).length < pitches.length * mostMeasured) return;
  columns[index].evidence.length = 0;
  columns[index].unit = 'Hz';
  state.claim(
    index,
    'pitch_keycenter',
    0.85,
    'Its cells are frequencies in Hz, and nothing else gives keys.',
  );
}

/** A unit of frequencies behind a number. */
const withHertz = /\d\s?\p{L}{2,10}\.?\s*$/u;

/** The unit of frequencies that have none of their own. */
function unitOfColumn({ columns, contents }: ColumnState, index: number): Unit {
  const stated = unitInHeading(columns[index].heading);
  if (stated === 'Hz' || stated === 'kHz') return stated;
  const { greatest, fractional, units } = contents[index];
  return units.size === 0 && greatest * 1000 <= keyFrequencies.most && fractional > 0 ? 'kHz' : 'Hz';
}

/** Whether nearly all frequencies of a column are those of a key within those of their row, or `beyond` semitones from them. */
function areNearKeys(state: ColumnState, index: number, unit: Unit, beyond: number): boolean {
  const { cells, looked, taken } = state;
  const keysOf = (row: number) => {
    const ends = (['lokey', 'hikey', 'key_range', 'key'] as const).flatMap((meaning) => {
      const column = taken.get(meaning);
      const range = column === undefined ? undefined : readKeyRange(cells.plain(cells.cell(row, column)));
      return range ? [range.low, range.high] : [];
    });
    return ends.length > 0 ? ends : undefined;
  };
  const near = conventions.map(() => 0);
  let known = 0;
  for (const row of looked) {
    const text = cells.plain(cells.cell(row, index));
    const keys = keysOf(row);
    if (text === '' || !keys) continue;
    known++;
    const hertz = readFrequency(text, unit) ?? Number.NaN;
    if (!(hertz >= keyFrequencies.least && hertz <= keyFrequencies.most)) continue;
    for (const [at, one] of conventions.entries())
      if (isNear(keyOfFrequency(hertz), keys, octaveShifts[one], beyond)) near[at]++;
  }
  return known > 0 && Math.max(...near) >= known * most;
}

function isNear(pitch: number, keys: readonly KeyReading[], shift: number, beyond: number): boolean {
  const numbers = keys.map(({ number, named }) => number ?? (named ?? Number.NaN) + shift);
  const [low, high] = [Math.min(...numbers), Math.max(...numbers)];
  // Of a single key the frequency is its own: a drum at another pitch is not tuned to its key.
  const reach = low === high ? half : beyond + half;
  return pitch >= low - reach && pitch <= high + reach;
}
