import type { KeyReading } from '../../../trade/readings/keyReading';
import { readKeyRange } from '../../../trade/readings/keyReading';
import type { ColumnState } from '../columnState';
import { isKeys } from '../columnState';

interface Ends {
  low: number;
  high: number;
}

/**
 * `From` and `To` beside the keys of a group, as each of its zones repeats them: on all rows they lie within those keys, and either hold the
 * root or share the keys of the group out. Then they are the keys of the zones, and those of the group say no more.
 */
export function settleWithinGroups(state: ColumnState): void {
  const { taken, chosen, columns, contents } = state;
  const [start, end] = [taken.get('offset'), taken.get('end')];
  if (start === undefined || end === undefined || taken.has('key')) return;
  const range = taken.get('key_range');
  const [low, high] = range === undefined ? [taken.get('lokey'), taken.get('hikey')] : [range, range];
  if (low === undefined || high === undefined) return;
  if ([start, end, low, high].some((index) => chosen.has(index))) return;
  if (!isKeys(contents[start]) || !isKeys(contents[end]) || !areWithin(state, start, end, low, high)) return;
  for (const index of new Set([low, high])) {
    taken.delete(columns[index].meaning);
    columns[index].meaning = 'unknown';
    columns[index].evidence = ['Its keys are those of a group: each zone in it gives its own, within them.'];
  }
  const evidence =
    'Its numbers are keys within those of the group; no sample ends within its first 128 frames.';
  state.claim(start, 'lokey', 0.8, evidence);
  state.claim(end, 'hikey', 0.8, evidence);
}

function areWithin(state: ColumnState, start: number, end: number, low: number, high: number): boolean {
  const { cells, looked, taken } = state;
  const root = taken.get('pitch_keycenter');
  const at = (row: number, column: number) => readKeyRange(cells.plain(cells.cell(row, column)).trim());
  const groups = new Map<string, { group: Ends; zones: Ends }>();
  let [narrower, withoutRoot] = [0, 0];
  for (const row of looked) {
    const [from, to, least, most] = [at(row, start), at(row, end), at(row, low), at(row, high)];
    if (!from || !to) continue;
    if (!least || !most) return false;
    const zone = { low: numberOf(from.low), high: numberOf(to.high) };
    const group = { low: numberOf(least.low), high: numberOf(most.high) };
    if (!(group.low <= zone.low && zone.low <= zone.high && zone.high <= group.high)) return false;
    if (zone.low > group.low || zone.high < group.high) narrower++;
    const own = root === undefined ? undefined : at(row, root);
    if (!own) withoutRoot++;
    else if (numberOf(own.low) < zone.low || numberOf(own.low) > zone.high) return false;
    const name = `${group.low} ${group.high}`;
    const known = groups.get(name)?.zones ?? zone;
    groups.set(name, {
      group,
      zones: { low: Math.min(known.low, zone.low), high: Math.max(known.high, zone.high) },
    });
  }
  const isShared = [...groups.values()].every(
    ({ group, zones }) => group.low === zones.low && group.high === zones.high,
  );
  return narrower > 0 && (withoutRoot === 0 || isShared);
}

/** A key by its number, or its name as one: those of a text are written alike. */
function numberOf({ number, named }: KeyReading): number {
  return number ?? named ?? Number.NaN;
}
