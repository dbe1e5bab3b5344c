import { conventions, octaveShifts } from '../../trade/middleC';
import { notesInFileName } from '../../trade/readings/keyReading';
import type { ZoneList } from '../zones/zoneList';

/** So many names have to agree with the roots that are given, and so large a share of all (our choice). */
const allOfThem = { fewest: 2, most: 1 };

/**
 * Tells the root that the one note in a name of a sample gives, in the octaves that all names with a note share with the roots of their
 * zones, those from number `first` on; but for zones that are `doubted`. It tells none where the names do not agree, or fewer than
 * have to.
 */
export function rootsInNames(
  zones: ZoneList,
  first: number,
  doubted: ReadonlySet<number> = new Set(),
  { fewest, most } = allOfThem,
): (name: string) => number | undefined {
  const roots = zones.column('pitch_keycenter');
  const shifts = new Map<number, number>();
  let named = 0;
  for (let zone = first; zone < zones.count; zone++) {
    if (roots.cells[zone] < 0 || doubted.has(zone)) continue;
    const notes = notesInFileName(zones.sample(zone));
    if (notes.length === 0) continue;
    named++;
    for (const convention of conventions) {
      const shift = octaveShifts[convention];
      if (notes.some((note) => note + shift === roots.numbers[zone]))
        shifts.set(shift, (shifts.get(shift) ?? 0) + 1);
    }
  }
  const [agreed] = [...shifts].find(([, count]) => count >= named * most && count >= fewest) ?? [];
  return (name) => {
    const [note, ...others] = agreed === undefined ? [] : notesInFileName(name);
    return note === undefined || others.length > 0 ? undefined : note + (agreed ?? 0);
  };
}
