import { isFineTuning } from '../../trade/headings/fineTuning';
import type { ColumnMeaning } from '../../trade/meaning';
import type { ColumnReading } from './columnReading';
import type { ColumnState } from './columnState';

/** How surely two columns are told apart: by the units of both, by that of one, and by their names. */
const [surely, byOneUnit, byName] = [0.95, 0.8, 0.75];

/** `Tuning (semitones)` and `Tuning (cents)`: where two columns give one tuning, their units and names say which is the coarse one. */
export function settleTunings(state: ColumnState): void {
  const { columns, taken } = state;
  for (const [meaning, other] of [
    ['tune', 'transpose'],
    ['transpose', 'tune'],
  ] as const) {
    const holder = columns[taken.get(meaning) ?? -1];
    if (!holder || taken.has(other) || state.chosen.has(holder.index)) continue;
    const second = columns.find(({ repeats, index }) => repeats === holder.index && !state.chosen.has(index));
    const found = second && (coarseOf(state, holder, second) ?? coarseOf(state, second, holder));
    if (!second || !found) continue;
    const { coarse, confidence, evidence } = found;
    for (const column of [holder, second]) {
      column.repeats = undefined;
      column.evidence.length = 0;
    }
    taken.delete(meaning);
    for (const column of [holder, second]) {
      const is: ColumnMeaning = column === coarse ? 'transpose' : 'tune';
      column.meaning = 'unknown';
      // Where one unit is given, it is not that of the other column.
      if (confidence === byOneUnit && unitOf(state, column) === undefined)
        column.unit = is === 'tune' && !isBelowOne(state, column) ? 'cents' : 'semitones';
      state.claim(column.index, is, confidence, evidence);
    }
  }
}

/** Whether the first of two columns of tuning is the coarse one beside the second. */
function coarseOf(state: ColumnState, coarse: ColumnReading, fine: ColumnReading) {
  const [whole, parts] = [unitOf(state, coarse), unitOf(state, fine)];
  if (whole === 'semitones' && parts === 'cents')
    return {
      coarse,
      confidence: surely,
      evidence: 'Two columns give the tuning: one in semitones, one in cents.',
    };
  // A column in semitones is the coarse one beside one without a unit, and one without a unit beside one in cents.
  const isByUnit = whole === 'semitones' || parts === 'cents';
  const isWhole = whole === 'semitones' || (whole === undefined && isCounted(state, coarse));
  if (isByUnit && isWhole && whole !== parts)
    return {
      coarse,
      confidence: byOneUnit,
      evidence: 'Two columns give the tuning, and the unit of one tells them apart.',
    };
  const isNamed = isNamedFine(fine) && !isNamedFine(coarse);
  if (!isNamed || whole !== parts || (whole === undefined && !isCounted(state, coarse))) return undefined;
  const how = whole === undefined ? ' The other is taken for whole semitones.' : '';
  return {
    coarse,
    confidence: byName,
    evidence: `Two columns give the tuning, and one is named the fine one.${how}`,
  };
}

function unitOf(
  { contents }: ColumnState,
  { index, unit }: ColumnReading,
): 'semitones' | 'cents' | undefined {
  const units = [unit, ...contents[index].units.keys()];
  return units.find((one) => one === 'semitones' || one === 'cents');
}

/** Whether all numbers are whole and no more than two octaves away, as semitones are. */
function isCounted({ contents }: ColumnState, { index }: ColumnReading): boolean {
  const { fractional, least, greatest, counts, filled } = contents[index];
  return counts.number === filled && fractional === 0 && least >= -24 && greatest <= 24;
}

/** Whether all numbers are parts of a semitone, as 0.25, and not cents. */
function isBelowOne({ contents }: ColumnState, { index }: ColumnReading): boolean {
  const { fractional, least, greatest } = contents[index];
  return fractional > 0 && least > -1 && greatest < 1;
}

/** Whether a heading says so by its name, and not by its unit. */
function isNamedFine({ heading }: ColumnReading): boolean {
  return isFineTuning(heading.replace(/[([{（].*$/u, ''));
}
