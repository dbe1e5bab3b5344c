import { keyOfFrequency } from '../../../model/keys';
import { frequencyHeading } from '../../../trade/headings/frequencyHeadings';
import { unitInHeading } from '../../../trade/headings/headings';
import type { Unit } from '../../../trade/meaning';
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
}

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
