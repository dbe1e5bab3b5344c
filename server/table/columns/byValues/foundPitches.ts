import { pitchSide, pitchUnit } from '../../../trade/headings/aimHeadings';
import { shareOf } from '../columnContents';
import type { ColumnReading } from '../columnReading';
import type { ColumnState } from '../columnState';

/** A sample that is farther off, in cents, is of another key (our choice). */
const farthest = 200;

/**
 * Two columns of pitches, one as they are meant and one as they were found (`Nominal Hz` and `Measured Hz`, `Soll (Cent)` and
 * `Ist (Cent)`), say together how far the samples are off.
 */
export function findFoundPitches(state: ColumnState): void {
  const { taken, chosen, columns, contents } = state;
  if (taken.has('deviation')) return;
  const sided = columns.filter(({ index, meaning }) => {
    const isFree = meaning === 'unknown' || meaning === 'tune' || meaning === 'pitch_keycenter';
    return isFree && !chosen.has(index) && shareOf(contents[index], 'number') >= 0.9;
  });
  const [aim, ...otherAims] = sided.filter(({ heading }) => pitchSide(heading) === 'aim');
  const [found, ...otherFound] = sided.filter(({ heading }) => pitchSide(heading) === 'found');
  if (!aim || !found || otherAims.length > 0 || otherFound.length > 0) return;
  // Pitches that give the roots are in tune with their keys already.
  if (found.meaning === 'pitch_keycenter') return;
  const unit = unitOf(state, aim) ?? unitOf(state, found);
  if (unit === undefined || (unitOf(state, found) ?? unit) !== unit || !areNear(state, aim, found, unit))
    return;
  if (aim.meaning === 'tune') {
    taken.delete('tune');
    aim.meaning = 'unknown';
  }
  for (const column of [aim, found]) {
    column.evidence.length = 0;
    column.repeats = undefined;
    column.unit = unit;
  }
  aim.isAim = true;
  found.aim = aim.index;
  state.claim(
    found.index,
    'deviation',
    0.9,
    'It gives pitches as they were found, beside those that are meant.',
  );
}

function unitOf({ contents }: ColumnState, { heading, index }: ColumnReading): 'Hz' | 'cents' | undefined {
  const { units, filled } = contents[index];
  const inCells = (['Hz', 'cents'] as const).find((one) => (units.get(one) ?? 0) * 2 > filled);
  return pitchUnit(heading) ?? inCells;
}

/** Whether the pitches of each row are about the same. */
function areNear(
  { contents }: ColumnState,
  aim: ColumnReading,
  found: ColumnReading,
  unit: 'Hz' | 'cents',
): boolean {
  const [aims, those] = [contents[aim.index].values, contents[found.index].values];
  return aims.every((meant, row) => {
    const off = centsOff(meant, those[row] ?? Number.NaN, unit);
    return Number.isNaN(off) || Math.abs(off) <= farthest;
  });
}

/** How many cents a pitch lies above the one that is meant (ISO 80000-8: 1200 · log2 of their ratio); NaN where one is none. */
export function centsOff(meant: number, found: number, unit: 'Hz' | 'cents'): number {
  if (unit === 'cents') return found - meant;
  return meant > 0 && found > 0 ? 1200 * Math.log2(found / meant) : Number.NaN;
}
